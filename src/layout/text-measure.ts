/** What a layout must know of the fonts that its text is set in; handed in, so that layouts know no font file. */
export type Weight = 'regular' | 'bold';

export interface TextMeasure {
  /** Width of one line of text, in mm; at least 0. */
  readonly widthMm: (text: string, sizePt: number, weight: Weight) => number;
  /** Above and below the baseline, and the height of a small x, as parts of the size; descent is positive. */
  readonly ascentEm: number;
  readonly descentEm: number;
  readonly xHeightEm: number;
  /** Characters of a text that no font has, each once; empty where all can be set. */
  readonly missing: (text: string) => readonly string[];
}

export const MM_PER_PT = 25.4 / 72;

/** Returns the height of a line of text, in mm: from the top of its tallest letters to the foot of its deepest. */
export function lineBoxMm(measure: TextMeasure, sizePt: number): number {
  return (measure.ascentEm + measure.descentEm) * sizePt * MM_PER_PT;
}
