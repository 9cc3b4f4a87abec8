/** Reads quantities such as `24 in`, `78 °F`, `5 gal`, `45 %`: a number, a unit, nothing else. */
import { DIMENSIONS, type Dimension, type Unit, unitsOf } from './units.ts';
import type { CalendarSpan } from './units-of-measure.ts';

export type { Dimension } from './units.ts';

export type Quantity =
  | { readonly kind: 'read'; readonly base: number }
  /** A number without a unit. */
  | { readonly kind: 'bare'; readonly number: number }
  /** A number with a unit of another kind, or with none that is known. */
  | { readonly kind: 'unit'; readonly unit: string; readonly measures: Dimension | null }
  | { readonly kind: 'none' };

const NUMBER_AND_UNIT = /^([+\-−]?(?:\d+(?:\.\d+)?|\.\d+))\s*(.*)$/su;

/** Returns the quantity in the base unit of its dimension (see `unitsOf`), or what is wrong with the text. */
export function parseQuantity(text: string, dimension: Dimension): Quantity {
  const parts = splitQuantity(text);
  if (!parts) return { kind: 'none' };
  if (parts.unit === '') return { kind: 'bare', number: parts.number };
  const unit = findUnit(parts.unit, dimension);
  if (unit) return { kind: 'read', base: toBase(parts.number, unit) };
  const measures = DIMENSIONS.find((other) => findUnit(parts.unit, other)) ?? null;
  return { kind: 'unit', unit: parts.unit, measures };
}

/** Returns a span of days, weeks or months, or null; a year is twelve months. */
export function parseCalendarSpan(text: string): CalendarSpan | null {
  const parts = splitQuantity(text);
  const unit = parts && SPAN_UNITS[parts.unit.toLowerCase()];
  return parts && unit ? { unit: unit[0], count: parts.number * unit[1] } : null;
}

const SPAN_UNITS: Readonly<Record<string, readonly [CalendarSpan['unit'], number]>> = {
  day: ['day', 1],
  days: ['day', 1],
  d: ['day', 1],
  week: ['week', 1],
  weeks: ['week', 1],
  month: ['month', 1],
  months: ['month', 1],
  year: ['month', 12],
  years: ['month', 12],
};

/** Returns the number and the words behind it, or null where the text does not begin with a number. */
export function splitQuantity(text: string): { readonly number: number; readonly unit: string } | null {
  const match = NUMBER_AND_UNIT.exec(text.trim());
  if (!match) return null;
  const number = Number((match[1] ?? '').replace('−', '-'));
  return { number, unit: (match[2] ?? '').replace(/\s+/gu, ' ').trim() };
}

/** Returns the printed names of a dimension's units, in the table's order. */
export function unitNames(dimension: Dimension): readonly string[] {
  return unitsOf[dimension].map((unit) => unit.names[0]);
}

function findUnit(name: string, dimension: Dimension): Unit | undefined {
  const wanted = name.toLowerCase();
  return unitsOf[dimension].find((unit) => unit.names.some((known) => known.toLowerCase() === wanted));
}

/** Fourteen digits hide what binary fractions add: 57 % is 0.57. */
function toBase(number: number, unit: Unit): number {
  return Number((((number + (unit.zero ?? 0)) * unit.times) / unit.per).toPrecision(14));
}
