/** Other amounts of the same kind: scaled within reason, and in other units. */
import fc from 'fast-check';

/** A number with a unit, or two of them; what follows (`a week`) stays. */
export const QUANTITY =
  /^(?<number>-?\d+(?:\.\d+)?) ?(?<unit>%|°[CF]|k?W|s|min|h|hours?|days?|weeks?|months?|m?L|gal|[cm]?m|in|ft|k?g|oz|mL\/min|mL\/h|L\/h|m\/h|g\/h|g\/m²|g\/kg|m²|feeds?)(?<rest>| .*)$/u;

/** What one of a unit is in another of its kind. */
const UNITS: Readonly<Record<string, readonly (readonly [unit: string, factor: number])[]>> = {
  W: [['kW', 1e-3]],
  s: [['min', 1 / 60]],
  min: [
    ['s', 60],
    ['h', 1 / 60],
  ],
  h: [['min', 60]],
  days: [['weeks', 1 / 7]],
  weeks: [['days', 7]],
  L: [
    ['mL', 1000],
    ['gal', 0.264172],
  ],
  mL: [['L', 1e-3]],
  cm: [
    ['in', 0.393701],
    ['mm', 10],
    ['m', 0.01],
  ],
  g: [['kg', 1e-3]],
  'mL/min': [['L/h', 0.06]],
  'mL/h': [['mL/min', 1 / 60]],
};
const SCALES = [0.5, 0.8, 0.9, 1.1, 1.25, 1.5, 2];

/** Returns amounts near this one, at times in another unit. */
export function otherQuantity(text: string): fc.Arbitrary<string> {
  const { number = '0', unit = '', rest = '' } = QUANTITY.exec(text)?.groups ?? {};
  const amount = Number(number);
  const written = (value: number, as: string) => `${Number(value.toPrecision(6))} ${as}${rest}`;
  if (unit === '%') return fc.integer({ min: 0, max: 100 }).map((percent) => written(nearer(amount, percent), '%'));
  if (unit === '°C' || unit === '°F')
    return fc.tuple(fc.integer({ min: -3, max: 3 }), fc.boolean()).map(([by, isTurned]) => {
      if (!isTurned) return written(amount + by, unit);
      return unit === '°C' ? written(amount * 1.8 + 32 + by, '°F') : written((amount - 32) / 1.8 + by, '°C');
    });
  const others = fc.constantFrom<readonly [string, number]>([unit, 1], [unit, 1], ...(UNITS[unit] ?? []));
  return fc.tuple(fc.constantFrom(...SCALES), others).map(([scale, [as, factor]]) => {
    const value = amount * scale * factor;
    const isWhole = Number.isInteger(amount) && factor === 1;
    return written(isWhole ? Math.max(Math.sign(amount), Math.round(value)) : value, as);
  });
}

/** Half way to what was drawn, so that ranges seldom turn round. */
function nearer(amount: number, drawn: number): number {
  return Math.round((3 * amount + drawn) / 4);
}

/** Returns numbers near this one; whole where it is. */
export function otherNumber(value: number): fc.Arbitrary<number> {
  if (!Number.isInteger(value))
    return fc.constantFrom(...SCALES).map((scale) => Number((value * scale).toPrecision(8)));
  return fc.oneof(
    fc.integer({ min: -2, max: 3 }).map((by) => Math.max(Math.min(value, 1), value + by)),
    fc.constantFrom(...SCALES).map((scale) => Math.round(value * scale)),
  );
}
