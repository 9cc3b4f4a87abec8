/** Reads the pins of the dials off a one-bit picture of a page: where an ON pin reaches and an OFF pin does not. */
import type { Page, Part } from '../../../src/layout/page.ts';
import type { Shape } from '../../../src/layout/shapes.ts';

/** A picture in the binary form of PBM: a bit a pixel, 1 is black. */
export class OneBitPicture {
  readonly #bits: Uint8Array;
  readonly #rowBytes: number;
  readonly width: number;
  readonly height: number;

  constructor(pbm: Uint8Array) {
    const head = /^P4\s+(?:#[^\n]*\s+)*(\d+)\s+(\d+)\s/.exec(Buffer.from(pbm.subarray(0, 200)).toString('latin1'));
    if (!head) throw new Error('not a binary PBM picture');
    this.width = Number(head[1]);
    this.height = Number(head[2]);
    this.#rowBytes = Math.ceil(this.width / 8);
    this.#bits = pbm.subarray(head[0].length);
  }

  isBlack(x: number, y: number): boolean {
    const byte = this.#bits[Math.round(y) * this.#rowBytes + (Math.round(x) >> 3)] ?? 0;
    return ((byte >> (7 - (Math.round(x) & 7))) & 1) === 1;
  }

  /** Returns whether there is ink outside of a frame that is so far from the edges. */
  hasInkWithin(edgePixels: number): boolean {
    for (let y = 0; y < this.height; y++)
      for (let x = 0; x < this.width; x++) {
        const isInside =
          x >= edgePixels && y >= edgePixels && x < this.width - edgePixels && y < this.height - edgePixels;
        if (isInside) x = this.width - edgePixels - 1;
        else if (this.isBlack(x, y)) return true;
      }
    return false;
  }
}

export interface DrawnDial {
  readonly dial: string;
  readonly setting: string;
  readonly centreX: number;
  readonly centreY: number;
  readonly radius: number;
  /** From the ring to the tip of an ON pin. */
  readonly pinMm: number;
}

/** Returns where the dials of a page stand; nothing of which pins are on. */
export function dialsOn(page: Page): readonly DrawnDial[] {
  return shapesOf(page.parts).flatMap((shape) => {
    if (shape.kind !== 'group' || shape.mark?.dial === undefined) return [];
    const [ring] = shape.shapes;
    if (ring?.kind !== 'circle') return [];
    const { x, y, radius } = ring;
    const tips = shape.shapes.flatMap(pointsOf).map((point) => Math.hypot(point.x - x, point.y - y));
    return [
      {
        dial: String(shape.mark.dial),
        setting: String(shape.mark.setting),
        centreX: x,
        centreY: y,
        radius,
        pinMm: Math.max(...tips) - radius,
      },
    ];
  });
}

function shapesOf(parts: readonly Part[]): readonly Shape[] {
  return parts.flatMap(({ shapes, children }) => [...shapes, ...shapesOf(children ?? [])]);
}

function pointsOf(shape: Shape): readonly { readonly x: number; readonly y: number }[] {
  if (shape.kind === 'group') return shape.shapes.flatMap(pointsOf);
  return shape.kind === 'path' ? shape.steps.flatMap((step) => (step.to === 'close' ? [] : [step])) : [];
}

/** Returns the slots whose middle is black at three quarters of the length of an ON pin. */
export function slotsInPicture(
  picture: OneBitPicture,
  drawn: DrawnDial,
  stepMinutes: number,
  dpi: number,
): readonly number[] {
  const pixels = (mm: number): number => (mm / 25.4) * dpi;
  const reach = drawn.radius + drawn.pinMm * 0.75;
  return Array.from({ length: 1440 / stepMinutes }, (_, slot) => slot).filter((slot) => {
    const angle = (((slot + 0.5) * stepMinutes) / 1440) * 2 * Math.PI;
    return picture.isBlack(
      pixels(drawn.centreX + reach * Math.sin(angle)),
      pixels(drawn.centreY - reach * Math.cos(angle)),
    );
  });
}
