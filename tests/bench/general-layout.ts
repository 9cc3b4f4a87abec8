/**
 * The content of a page of ours as a document of pdfmake: the same headings, paragraphs, lists and tables with the same texts in the same
 * sizes and fonts, in the layout that it has for them. Pictures and lines to write on are left out, which is to its advantage.
 */
import type { PaperDocument, Part } from '../../src/layout/page.ts';
import type { Shape, TextShape } from '../../src/layout/shapes.ts';

export type Node = Readonly<Record<string, unknown>>;

const PT_PER_MM = 72 / 25.4;
const MARGIN_MM = 10;
/** From so many columns on they are days, narrow and alike, beside a name that takes its share of the width as in ours. */
const MANY_COLUMNS = 12;
const NAME_WIDTH = '37.5%';
/** Points around the text of a cell. */
const PADDING = 1;

/** Returns the fonts that ours are set in, under pdfmake's names of their faces. */
export function generalFonts(pathOf: (file: string) => string): Node {
  const [normal, bold] = [pathOf('DejaVuSansCondensed.ttf'), pathOf('DejaVuSansCondensed-Bold.ttf')];
  return { DejaVu: { normal, bold, italics: normal, bolditalics: bold } };
}

/** Its tables have wide cells of their own accord; these are as tight as ours. */
export const GENERAL_TABLES = {
  tight: {
    paddingLeft: () => PADDING,
    paddingRight: () => PADDING,
    paddingTop: () => PADDING,
    paddingBottom: () => PADDING,
    hLineWidth: () => 0.3,
    vLineWidth: () => 0.3,
  },
} as const;

/** Returns the definition of the same content for pdfmake. */
export function generalLayout(paper: PaperDocument): Node {
  const [first] = paper.pages;
  const size = first?.size ?? { widthMm: 210, heightMm: 297 };
  return {
    pageSize: { width: size.widthMm * PT_PER_MM, height: size.heightMm * PT_PER_MM },
    pageMargins: MARGIN_MM * PT_PER_MM,
    info: { title: paper.title, subject: paper.subject },
    defaultStyle: { font: 'DejaVu', fontSize: 11, lineHeight: 1 },
    content: paper.pages.flatMap(({ parts }) => parts.flatMap(nodesOf)),
  };
}

function nodesOf(part: Part): readonly Node[] {
  const { tag, children = [] } = part;
  if (tag === 'Artifact' || tag === 'Figure') return [];
  if (tag === 'Table') return [tableOf(children)];
  if (tag === 'L') return [listOf(children)];
  const own = textOf(part);
  return [...(own ? [own] : []), ...children.flatMap(nodesOf)];
}

/** Returns the texts of a part as one that wraps anew; null where it has none. */
function textOf({ shapes }: Part): Node | null {
  const texts = shapes.flatMap(textsIn);
  if (texts.length === 0) return null;
  return {
    text: texts.map(({ text, weight, sizePt }, i) => ({
      text: i === 0 ? text : ` ${text}`,
      bold: weight === 'bold',
      fontSize: sizePt,
    })),
  };
}

function textsIn(shape: Shape): readonly TextShape[] {
  if (shape.kind === 'text') return [shape];
  return shape.kind === 'group' ? shape.shapes.flatMap(textsIn) : [];
}

/** A list with marks of its own, or one in two columns as ours has it. */
function listOf(items: readonly Part[]): Node {
  const rows = items.map((item) => {
    const bodies = (item.children ?? []).filter(({ tag }) => tag === 'LBody');
    return { stack: bodies.flatMap((body) => [...(body.children ?? []).flatMap(nodesOf)]) };
  });
  const hasMarks = items.some((item) => item.children?.some(({ tag }) => tag === 'Lbl'));
  if (hasMarks) return { ul: rows };
  const half = Math.ceil(rows.length / 2);
  return { columns: [{ stack: rows.slice(0, half) }, { stack: rows.slice(half) }] };
}

function tableOf(rows: readonly Part[]): Node {
  const body = rows.map(({ children = [] }) => children.map((cell) => textOf(cell) ?? { text: '' }));
  const columns = Math.max(...body.map(({ length }) => length));
  const widths =
    columns >= MANY_COLUMNS
      ? [NAME_WIDTH, ...Array.from({ length: columns - 1 }, () => '*')]
      : Array.from({ length: columns }, () => 'auto');
  return { table: { headerRows: 1, widths, body: body.map((row) => filled(row, columns)) }, layout: 'tight' };
}

function filled(row: readonly Node[], columns: number): readonly Node[] {
  return [...row, ...Array.from({ length: columns - row.length }, () => ({ text: '' }))];
}
