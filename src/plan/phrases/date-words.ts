/** Dates in words, for instance `Friday 1 January 2027`. */
import { civilOf, epochDay, weekdayOf } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import type { Words } from '../words/words.ts';

export function dateInWords(date: IsoDate, { shelf }: Pick<Words, 'shelf'>): string {
  const day = epochDay(date);
  const { year, month, dayOfMonth } = civilOf(day);
  return shelf.weekdayDate(shelf.weekdays[weekdayOf(day)], shelf.date(year, month, dayOfMonth));
}
