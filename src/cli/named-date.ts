import { FIRST_DATE, LAST_DATE, parseNamedDate } from '../basics/calendar-day.ts';
import { UsageError } from './usage.ts';

/** Throws UsageError where the text that an option was given is no date, or one that nothing can be planned for. */
export function checkNamedDate(option: string, text: string): void {
  if (parseNamedDate(text) !== null) return;
  throw new UsageError(
    `${option} ${text}: dates are written YYYY-MM-DD, for instance 2027-01-31, and lie from ${FIRST_DATE} to ${LAST_DATE}`,
  );
}
