/** Quantities of water, air and time as messages show them, in the household's units. */
import { clockTimeOf } from '../../../basics/minute-of-day.ts';
import type { Range, UnitSystem } from '../../../plan/plan.ts';
import type { Run } from '../../../science/enclosure-day.ts';

const FLUID_OUNCE_ML = 29.5735;
const GALLON_ML = 3785.41;

/** Returns grams of water as `540 mL`, `3.8 L`, `18 fl oz` or `1.2 gal`. */
export function waterWords(grams: number, units: UnitSystem): string {
  if (units === 'us')
    return grams >= GALLON_ML / 2 ? `${tenths(grams / GALLON_ML)} gal` : `${tenths(grams / FLUID_OUNCE_ML)} fl oz`;
  return grams >= 1000 ? `${tenths(grams / 1000)} L` : `${Math.round(grams)} mL`;
}

function tenths(value: number): number {
  return value >= 10 ? Math.round(value) : Math.round(value * 10) / 10;
}

/** Returns a share as `45 %` or `45.3 %`. */
export function percentWords(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

/** Returns a band as `50 % to 70 %`. */
export function bandWords(band: Range): string {
  return `${percentWords(band[0])} to ${percentWords(band[1])}`;
}

/** Returns a difference of humidities as `1.2 points`. */
export function pointsWords(by: number): string {
  const points = Number((by * 100).toFixed(1));
  return `${points} point${points === 1 ? '' : 's'}`;
}

/** Returns a volume as `1 L` or `50 m³`. */
export function volumeWords(cubicMetres: number): string {
  return cubicMetres < 1
    ? `${Number((cubicMetres * 1000).toPrecision(2))} L`
    : `${Number(cubicMetres.toPrecision(2))} m³`;
}

/** Returns entries as `08:00 60 s, 16:30 270 s`. */
export function entriesWords(entries: readonly Run[]): string {
  return [...entries]
    .sort((a, b) => a.startMinute - b.startMinute)
    .map(({ startMinute, seconds }) => `${clockTimeOf(startMinute)} ${seconds} s`)
    .join(', ');
}
