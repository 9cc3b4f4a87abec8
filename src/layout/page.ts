/**
 * Pages as data: a tree of parts in reading order, each with the shapes that show it, in millimetres from the top left corner of its
 * page. Painters turn it into PDF; the ledger is read off it, so that a layout is tested without any format.
 */
import type { PaperSize } from './page-style.ts';
import type { Shape } from './shapes.ts';

/** What a part is, in the terms of tagged PDF; an artifact is a rule or an ornament that says nothing by itself. */
export type Tag =
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Artifact';

/** In mm from the page's upper left corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Part {
  readonly tag: Tag;
  readonly shapes: readonly Shape[];
  readonly children?: readonly Part[];
  /** Said instead of what is seen, to those who cannot see it. */
  readonly alt?: string;
  /** Of a TH. */
  readonly scope?: 'Row' | 'Column';
  /** Of a Figure, and of a cell that is to be written in. */
  readonly box?: Box;
}

export interface Page {
  readonly size: Pick<PaperSize, 'widthMm' | 'heightMm'>;
  readonly parts: readonly Part[];
}

export interface PaperDocument {
  readonly title: string;
  readonly subject: string;
  readonly language: 'en' | 'es';
  /** `YYYY-MM-DD`: stands as the date of making. */
  readonly made: string;
  readonly pages: readonly Page[];
}

/** Returns a rule or ornament. */
export function artifact(...shapes: readonly Shape[]): Part {
  return { tag: 'Artifact', shapes };
}
