/**
 * Sizes of text by role. A sheet on a door is read at 60 to 80 cm, a card beside a timer and a cell that is written in at 40 to 50 cm.
 * Source: Legge GE, Bigelow CA (2011) J. Vision 11(5):8: reading is at full speed from an x-height of 0.2 degrees on, which with this
 * font is 7.2 pt at 40 cm, 9.0 pt at 50 cm and 10.9 pt at 60 cm; RNIB Clear Print asks for 12 pt at least, large print for 16 pt (memory).
 * A role never goes below its size: what does not fit is refused.
 */
import { MM_PER_PT, type Weight } from './text-measure.ts';

export type TextRole =
  | 'title'
  | 'heading'
  | 'emergency'
  | 'job'
  | 'text'
  | 'code'
  | 'numeral'
  | 'dial-numeral'
  | 'switch-time'
  | 'card'
  | 'footer';

export interface RoleSize {
  readonly sizePt: number;
  /** From where it is read, in cm. */
  readonly distanceCm: number;
}

const SIZES: Readonly<Record<TextRole, RoleSize>> = {
  title: { sizePt: 15, distanceCm: 60 },
  heading: { sizePt: 12, distanceCm: 60 },
  emergency: { sizePt: 14, distanceCm: 60 },
  job: { sizePt: 12, distanceCm: 60 },
  text: { sizePt: 11, distanceCm: 60 },
  code: { sizePt: 10, distanceCm: 50 },
  numeral: { sizePt: 9.1, distanceCm: 50 },
  'dial-numeral': { sizePt: 7.3, distanceCm: 40 },
  'switch-time': { sizePt: 9.1, distanceCm: 50 },
  card: { sizePt: 8, distanceCm: 40 },
  footer: { sizePt: 8, distanceCm: 40 },
};

export const ROLES = Object.keys(SIZES) as readonly TextRole[];

/** Large print: 16 pt at least for what a person does. */
export const LARGE_PRINT = 1.5;

export interface PageStyle {
  readonly paper: PaperSize;
  /** 1, or LARGE_PRINT. */
  readonly scale: number;
  /** `close` puts more on a page at the same sizes: weekly jobs stand in the list by date, rings are smaller. */
  readonly density: 'roomy' | 'close';
}

export interface PaperSize {
  readonly name: 'a4' | 'letter';
  readonly widthMm: number;
  readonly heightMm: number;
}

export const PAPERS: Readonly<Record<'a4' | 'letter', PaperSize>> = {
  a4: { name: 'a4', widthMm: 210, heightMm: 297 },
  letter: { name: 'letter', widthMm: 215.9, heightMm: 279.4 },
};

/** Kept free of everything; printers cannot reach the outermost 4 to 5 mm. */
export const MARGIN_MM = 10;

/** Returns the size of a role in points, scaled for large print. */
export function sizePtOf(role: TextRole, { scale }: Pick<PageStyle, 'scale'>): number {
  return SIZES[role].sizePt * scale;
}

/** Returns the least size of a role, pt, and the distance from which it is read, cm. */
export function floorOf(role: TextRole): RoleSize {
  return SIZES[role];
}

/** Baseline to baseline, in mm. */
export function lineHeightMm(role: TextRole, style: Pick<PageStyle, 'scale'>): number {
  return sizePtOf(role, style) * MM_PER_PT * LINE_EM;
}

const LINE_EM = 1.17;

export const WEIGHT_OF: Readonly<Record<TextRole, Weight>> = {
  title: 'bold',
  heading: 'bold',
  emergency: 'bold',
  job: 'regular',
  text: 'regular',
  code: 'bold',
  numeral: 'regular',
  'dial-numeral': 'regular',
  'switch-time': 'bold',
  card: 'regular',
  footer: 'regular',
};
