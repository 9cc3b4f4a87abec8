/** Labels above a chart, each over its mark: side by side where they fit, else in rows one above the other. */
import { MM_PER_PT } from './text-measure.ts';

/** Of one character of a bold condensed sans, as a share of the size: wide enough for figures. */
const CHARACTER = 0.6;
const GAP_MM = 1;

export interface MarkedLabel {
  /** Where its middle stands. */
  readonly xMm: number;
  readonly text: string;
}

/** Returns the row of each label, 0 the lowest, for labels from left to right; where no row has room, the one whose last label is farthest. */
export function labelRows(labels: readonly MarkedLabel[], sizePt: number, rows: number): readonly number[] {
  const ends = Array.from({ length: rows }, () => Number.NEGATIVE_INFINITY);
  return labels.map(({ xMm, text }) => {
    const half = (text.length * sizePt * MM_PER_PT * CHARACTER) / 2;
    const free = ends.findIndex((end) => end + GAP_MM <= xMm - half);
    const row = free >= 0 ? free : ends.indexOf(Math.min(...ends));
    ends[row] = xMm + half;
    return row;
  });
}
