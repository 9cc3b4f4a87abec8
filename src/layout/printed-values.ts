/** Numbers with their units as they are printed; what belongs together is held together by spaces that do not break. */
import { civilOf, epochDay, weekdayOf } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import type { Range, UnitSystem } from '../plan/plan.ts';
import type { PageWords } from './page-words.ts';

const NB = '\u00a0';

/** For instance `22–28`, in the degrees of the scale. */
export function temperatureNumbers([low, high]: Range, units: UnitSystem): string {
  return `${degrees(low, units)}–${degrees(high, units)}`;
}

/** For instance `28 °C`, `82 °F`. */
export function temperature(celsius: number, units: UnitSystem): string {
  return `${degrees(celsius, units)}${NB}${degreeSign(units)}`;
}

/** Returns the sign of the household's scale. */
export function degreeSign(units: UnitSystem): string {
  return units === 'us' ? '°F' : '°C';
}

/** Returns whole degrees of the scale. */
export function degrees(celsius: number, units: UnitSystem): number {
  return Math.round(units === 'us' ? celsius * 1.8 + 32 : celsius);
}

/** For instance `50–70`, in whole percents of a share. */
export function percentNumbers([low, high]: Range): string {
  return `${Math.round(low * 100)}–${Math.round(high * 100)}`;
}

const GALLON_ML = 231 * 2.54 ** 3;

/** For instance `15 L`, `4 gal`; one decimal where it says something. */
export function volume(millilitres: number, units: UnitSystem, words: PageWords): string {
  const large = units === 'us' ? millilitres / GALLON_ML : millilitres / 1000;
  const rounded = large >= 10 ? Math.round(large) : Math.round(large * 10) / 10;
  return `${words.number(String(rounded))}${NB}${units === 'us' ? 'gal' : 'L'}`;
}

/** For instance `Sat 9 Jan`. */
export function dayAndDate(date: IsoDate, words: PageWords): string {
  return words.dayDate(weekdayShort(date, words), dayAndMonth(date, words)).replaceAll(' ', NB);
}

/** For instance `9 Jan`. */
export function dayAndMonth(date: IsoDate, words: PageWords): string {
  const { month, dayOfMonth } = civilOf(epochDay(date));
  return words.date(month, dayOfMonth).replaceAll(' ', NB);
}

/** For instance `9 January 2027`. */
export function fullDate(date: IsoDate, words: PageWords): string {
  const { year, month, dayOfMonth } = civilOf(epochDay(date));
  return words.fullDate(year, month, dayOfMonth).replaceAll(' ', NB);
}

/** For instance `Sat`. */
export function weekdayShort(date: IsoDate, words: PageWords): string {
  return words.weekdays[weekdayOf(epochDay(date))];
}
