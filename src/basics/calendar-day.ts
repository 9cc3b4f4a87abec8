/**
 * Calendar dates as whole days since 1970-01-01 (proleptic Gregorian), so that spans are subtractions and no time zone can move a date.
 */
import type { IsoDate, Weekday } from './civil.ts';

export type EpochDay = number;

export const WEEKDAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Returns the day number of `YYYY-MM-DD`, or null where no such date exists. */
export function parseIsoDate(text: string): EpochDay | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const epochDay = epochDayOf(year, month, day);
  return isoDateOf(epochDay) === text ? epochDay : null;
}

/** The dates that a file or a command may name; every day that a plan counts from one of them is a date of four digits. */
export const FIRST_DATE: IsoDate = '1900-01-01';
export const LAST_DATE: IsoDate = '2199-12-31';

/** Returns the day number of a date that somebody names, or null where there is no such date or none so far away is planned for. */
export function parseNamedDate(text: string): EpochDay | null {
  return text >= FIRST_DATE && text <= LAST_DATE ? parseIsoDate(text) : null;
}

/** Returns the day number of a date that is known to exist; throws on any other text. */
export function epochDay(text: IsoDate): EpochDay {
  const day = parseIsoDate(text);
  if (day === null) throw new Error(`not a date: ${text}`);
  return day;
}

/** Days before each month in a year that begins on 1 March. */
const BEFORE_MONTH: readonly number[] = [0, 31, 61, 92, 122, 153, 184, 214, 245, 275, 306, 337];
/** Days from 0000-03-01 to 1970-01-01. */
const EPOCH_FROM_MARCH_0 = 719_468;
const DAYS_IN_400_YEARS = 146_097;

/** Returns the day number of a year, month 1 to 12 and day of month; values beyond run on into the next or the last. */
export function epochDayOf(year: number, month: number, dayOfMonth: number): EpochDay {
  const months = year * 12 + month - 3;
  const marchYear = Math.floor(months / 12);
  const before = BEFORE_MONTH[months - marchYear * 12] ?? 0;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return marchYear * 365 + leapDays + before + dayOfMonth - 1 - EPOCH_FROM_MARCH_0;
}

/** Returns `YYYY-MM-DD`. */
export function isoDateOf(day: EpochDay): IsoDate {
  const { year, month, dayOfMonth } = civilOf(day);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

/** Returns year, month 1 to 12 and day of month. */
export function civilOf(day: EpochDay): { readonly year: number; readonly month: number; readonly dayOfMonth: number } {
  const since = day + EPOCH_FROM_MARCH_0;
  const era = Math.floor(since / DAYS_IN_400_YEARS);
  const dayOfEra = since - era * DAYS_IN_400_YEARS;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const leapDays = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  const dayOfYear = dayOfEra - (365 * yearOfEra + leapDays);
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return { year, month, dayOfMonth: dayOfYear - (BEFORE_MONTH[marchMonth] ?? 0) + 1 };
}

/** Returns 0 for Monday to 6 for Sunday. */
export function weekdayIndex(day: EpochDay): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** Returns the weekday of a day. */
export function weekdayOf(day: EpochDay): Weekday {
  return WEEKDAYS[weekdayIndex(day)] ?? 'mon';
}
