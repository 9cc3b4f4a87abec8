/**
 * Drawings as data: millimetres from the top left corner, x to the right, y down. Painters turn them into SVG and PDF; nothing else
 * knows either format. Black on white unless a shape names a shade; meaning never hangs on a shade alone.
 */

export type Shade = 'ink' | 'mid' | 'light' | 'none';

export interface Stroke {
  readonly widthMm: number;
  readonly shade: Shade;
  /** Lengths of marks and gaps in mm; absent: solid. */
  readonly dashMm?: readonly number[];
}

export interface Fill {
  readonly shade: Shade;
  /** Lines across the fill, to tell areas apart without colour. */
  readonly hatch?: 'rising' | 'falling' | 'dots';
}

export type PathStep =
  | { readonly to: 'move' | 'line'; readonly x: number; readonly y: number }
  | {
      readonly to: 'arc';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly large: boolean;
      readonly clockwise: boolean;
    }
  | { readonly to: 'close' };

export interface TextShape {
  readonly kind: 'text';
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly text: string;
  readonly sizePt: number;
  readonly weight: 'regular' | 'bold';
  readonly anchor: 'start' | 'middle' | 'end';
  /** What the text is, for the ledger and its floor of size: `title`, `label`, `numeral`, `note`, … */
  readonly role: string;
  /** Degrees clockwise about (x, y). */
  readonly turnDegrees?: number;
  readonly shade?: Shade;
}

export type Shape =
  | {
      readonly kind: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly stroke: Stroke;
    }
  | {
      readonly kind: 'rect';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly stroke?: Stroke;
      readonly fill?: Fill;
    }
  | {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly stroke?: Stroke;
      readonly fill?: Fill;
    }
  | { readonly kind: 'path'; readonly steps: readonly PathStep[]; readonly stroke?: Stroke; readonly fill?: Fill }
  | TextShape
  /** A part with a meaning of its own; `mark` holds machine-readable facts (pin number, state) that a test decodes. */
  | {
      readonly kind: 'group';
      readonly label?: string;
      readonly mark?: Readonly<Record<string, string | number>>;
      readonly shapes: readonly Shape[];
    };

export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Says what the drawing shows, for readers who cannot see it. */
  readonly title: string;
  readonly description: string;
  readonly shapes: readonly Shape[];
}
