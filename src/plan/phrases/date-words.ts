/** Dates in words, for instance `Friday 1 January 2027`. */
import { civilOf, epochDay, weekdayOf } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import type { Words } from '../words/words.ts';

/** Returns a date with its weekday, for instance `Saturday 9 January 2027`. */
export function dateInWords(date: IsoDate, { shelf }: Pick<Words, 'shelf'>): string {
  return shelf.weekdayDate(shelf.weekdays[weekdayOf(epochDay(date))], plainDate(date, shelf));
}

/** Returns a date without its weekday. */
export function plainDate(date: IsoDate, shelf: Words['shelf']): string {
  const { year, month, dayOfMonth } = civilOf(epochDay(date));
  return shelf.date(year, month, dayOfMonth);
}
