/** The ledger of a document: every text with its box, in reading order, read off the pages themselves. */
import type { Box, PaperDocument, Part } from './page.ts';
import type { Shape, TextShape } from './shapes.ts';
import { MM_PER_PT, type TextMeasure } from './text-measure.ts';

export interface LedgerEntry {
  /** 0 for the first. */
  readonly page: number;
  readonly role: string;
  readonly sizePt: number;
  readonly text: string;
  readonly box: Box;
}

/** Returns every text of a document in reading order. */
export function ledgerOf(document: PaperDocument, measure: TextMeasure): readonly LedgerEntry[] {
  return document.pages.flatMap(({ parts }, page) => entriesOf(textsOf(parts), page, measure));
}

/** Returns the entries of texts in their order. */
function entriesOf(texts: readonly TextShape[], page: number, measure: TextMeasure): readonly LedgerEntry[] {
  return texts.map((shape) => ({
    page,
    role: shape.role,
    sizePt: shape.sizePt,
    text: shape.text,
    box: textBox(shape, measure),
  }));
}

/** Returns the texts of parts in reading order. */
export function textsOf(parts: readonly Part[]): readonly TextShape[] {
  return parts.flatMap(({ shapes, children }) => [...shapes.flatMap(textsIn), ...textsOf(children ?? [])]);
}

function textsIn(shape: Shape): readonly TextShape[] {
  if (shape.kind === 'group') return shape.shapes.flatMap(textsIn);
  return shape.kind === 'text' ? [shape] : [];
}

/** From the ascent to the descent of the font, so that boxes that do not touch leave every letter free. */
function textBox({ x, y, text, sizePt, weight, anchor }: TextShape, measure: TextMeasure): Box {
  const width = measure.widthMm(text, sizePt, weight);
  const shift = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const em = sizePt * MM_PER_PT;
  return {
    left: x - shift,
    top: y - measure.ascentEm * em,
    width,
    height: (measure.ascentEm + measure.descentEm) * em,
  };
}
