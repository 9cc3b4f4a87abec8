/** Spans of the calendar as days, where a date need not be met to the day. */
import type { CalendarSpan } from '../basics/units-of-measure.ts';

/** Mean length of a Gregorian month: 146097 days in 4800 months. */
const DAYS_A_MONTH = 146097 / 4800;

/** Returns whole days, months at their mean length. */
export function approximateDays({ unit, count }: CalendarSpan): number {
  switch (unit) {
    case 'day':
      return count;
    case 'week':
      return count * 7;
    case 'month':
      return Math.round(count * DAYS_A_MONTH);
  }
}
