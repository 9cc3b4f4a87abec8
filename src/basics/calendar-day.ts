/**
 * Calendar dates as whole days since 1970-01-01 (proleptic Gregorian), so that spans are subtractions and no time zone can move a date.
 */
import type { IsoDate, Weekday } from './civil.ts';

export type EpochDay = number;

const DAY_MS = 86_400_000;
export const WEEKDAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Returns the day number of `YYYY-MM-DD`, or null where no such date exists. */
export function parseIsoDate(text: string): EpochDay | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const epochDay = epochDayOf(year, month, day);
  return isoDateOf(epochDay) === text ? epochDay : null;
}

/** Returns the day number of a date that is known to exist; throws on any other text. */
export function epochDay(text: IsoDate): EpochDay {
  const day = parseIsoDate(text);
  if (day === null) throw new Error(`not a date: ${text}`);
  return day;
}

/** Returns the day number of a year, month 1 to 12 and day of month. */
export function epochDayOf(year: number, month: number, dayOfMonth: number): EpochDay {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, dayOfMonth);
  return Math.round(date.getTime() / DAY_MS);
}

/** Returns `YYYY-MM-DD`. */
export function isoDateOf(day: EpochDay): IsoDate {
  const { year, month, dayOfMonth } = civilOf(day);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

/** Returns year, month 1 to 12 and day of month. */
export function civilOf(day: EpochDay): { readonly year: number; readonly month: number; readonly dayOfMonth: number } {
  const date = new Date(day * DAY_MS);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, dayOfMonth: date.getUTCDate() };
}

/** Returns 0 for Monday to 6 for Sunday. */
export function weekdayIndex(day: EpochDay): number {
  return (((day + 3) % 7) + 7) % 7;
}

export function weekdayOf(day: EpochDay): Weekday {
  return WEEKDAYS[weekdayIndex(day)] ?? 'mon';
}
