/** What can be wrong with a laid-out document, read off its ledger and its shapes, whatever laid it out. */
import { type LedgerEntry, ledgerOf } from '../../../src/layout/ledger.ts';
import type { PaperDocument, Part } from '../../../src/layout/page.ts';
import { floorOf, MARGIN_MM, ROLES, type TextRole } from '../../../src/layout/page-style.ts';
import type { Shape } from '../../../src/layout/shapes.ts';
import type { TextMeasure } from '../../../src/layout/text-measure.ts';

/** Printers cannot reach the outermost 4 mm (common practice, no source). */
const UNPRINTABLE_MM = 4;
const SLACK_MM = 0.02;

export interface Lines {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** Returns a sentence for each fault; empty where there is none. `marginMm` is what the kind of document keeps free. */
export function pageFaults(
  document: PaperDocument,
  measure: TextMeasure,
  scale = 1,
  marginMm = MARGIN_MM,
): readonly string[] {
  const ledger = ledgerOf(document, measure);
  return document.pages.flatMap(({ size, parts }, page) => {
    const entries = ledger.filter((entry) => entry.page === page);
    const shapes = shapesOf(parts);
    return [
      ...entries.flatMap((entry) => outside(entry, size.widthMm, size.heightMm, marginMm)),
      ...shapes.flatMap((shape) => inkOutside(shape, size.widthMm, size.heightMm)),
      ...overlaps(entries),
      ...crossings(entries, shapes.flatMap(linesOf)),
      ...entries.flatMap((entry) => belowFloor(entry, scale)),
    ];
  });
}

export function shapesOf(parts: readonly Part[]): readonly Shape[] {
  return parts.flatMap(({ shapes, children }) => [...shapes.flatMap(flat), ...shapesOf(children ?? [])]);
}

function flat(shape: Shape): readonly Shape[] {
  return shape.kind === 'group' ? shape.shapes.flatMap(flat) : [shape];
}

function outside(
  { text, box, page }: LedgerEntry,
  widthMm: number,
  heightMm: number,
  marginMm: number,
): readonly string[] {
  const isIn =
    box.left >= marginMm - SLACK_MM &&
    box.top >= marginMm - SLACK_MM &&
    box.left + box.width <= widthMm - marginMm + SLACK_MM &&
    box.top + box.height <= heightMm - marginMm + SLACK_MM;
  return isIn ? [] : [`page ${page}: "${text}" leaves the margins`];
}

function inkOutside(shape: Shape, widthMm: number, heightMm: number): readonly string[] {
  const points = pointsOf(shape);
  const isIn = points.every(
    ([x, y]) =>
      x >= UNPRINTABLE_MM && y >= UNPRINTABLE_MM && x <= widthMm - UNPRINTABLE_MM && y <= heightMm - UNPRINTABLE_MM,
  );
  return isIn ? [] : [`a ${shape.kind} reaches into the outer ${UNPRINTABLE_MM} mm`];
}

function pointsOf(shape: Shape): readonly (readonly [number, number])[] {
  switch (shape.kind) {
    case 'line':
      return [
        [shape.x1, shape.y1],
        [shape.x2, shape.y2],
      ];
    case 'rect':
      return [
        [shape.x, shape.y],
        [shape.x + shape.width, shape.y + shape.height],
      ];
    case 'circle':
      return [
        [shape.x - shape.radius, shape.y - shape.radius],
        [shape.x + shape.radius, shape.y + shape.radius],
      ];
    case 'path':
      return shape.steps.flatMap((step) => (step.to === 'close' ? [] : [[step.x, step.y] as const]));
    default:
      return [];
  }
}

function overlaps(entries: readonly LedgerEntry[]): readonly string[] {
  return entries.flatMap((a, index) =>
    entries.slice(index + 1).flatMap((b) => {
      const wide = Math.min(a.box.left + a.box.width, b.box.left + b.box.width) - Math.max(a.box.left, b.box.left);
      const high = Math.min(a.box.top + a.box.height, b.box.top + b.box.height) - Math.max(a.box.top, b.box.top);
      return wide > SLACK_MM && high > SLACK_MM ? [`"${a.text}" overlaps "${b.text}"`] : [];
    }),
  );
}

/** A rule through the letters of a text; one that only grazes the box is none. */
function crossings(entries: readonly LedgerEntry[], lines: readonly Lines[]): readonly string[] {
  return entries.flatMap(({ text, box, role }) => {
    if (role === 'dial-numeral' || role === 'switch-time') return [];
    const [left, right] = [box.left + 0.2, box.left + box.width - 0.2];
    const [top, bottom] = [box.top + box.height * 0.25, box.top + box.height * 0.8];
    const hit = lines.some(
      ({ x1, y1, x2, y2 }) =>
        Math.max(Math.min(x1, x2), left) < Math.min(Math.max(x1, x2), right) + (x1 === x2 ? SLACK_MM : 0) &&
        Math.max(Math.min(y1, y2), top) < Math.min(Math.max(y1, y2), bottom) + (y1 === y2 ? SLACK_MM : 0),
    );
    return hit ? [`a rule runs through "${text}"`] : [];
  });
}

function linesOf(shape: Shape): readonly Lines[] {
  if (shape.kind === 'line') return [shape];
  if (shape.kind !== 'rect' || !shape.stroke) return [];
  const { x, y, width, height } = shape;
  return [
    { x1: x, y1: y, x2: x + width, y2: y },
    { x1: x, y1: y + height, x2: x + width, y2: y + height },
    { x1: x, y1: y, x2: x, y2: y + height },
    { x1: x + width, y1: y, x2: x + width, y2: y + height },
  ];
}

function belowFloor({ role, sizePt, text }: LedgerEntry, scale: number): readonly string[] {
  if (!(ROLES as readonly string[]).includes(role)) return [`"${text}" has no role of a page: ${role}`];
  const least = floorOf(role as TextRole).sizePt * scale;
  return sizePt < least - 1e-9 ? [`"${text}" is set in ${sizePt} pt, ${role} asks for ${least}`] : [];
}
