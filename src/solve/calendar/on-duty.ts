/** Who does what no chore names a person for: the keeper, and the sitter while the keeper is away. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import type { CalendarParts } from './event-seed.ts';

export type OnDuty = (date: EpochDay | string) => string;

/** Returns the person of a date; without a sitter the keeper stays in charge. */
export function onDutyIn(parts: Pick<CalendarParts, 'away'>, keeper: string): OnDuty {
  const spans = parts.away
    .filter(({ sitter }) => sitter !== '')
    .map(({ from, to, sitter }) => ({ from: epochDay(from), to: epochDay(to), sitter }));
  return (date) => {
    const day = typeof date === 'string' ? epochDay(date) : date;
    return spans.find(({ from, to }) => from <= day && day <= to)?.sitter ?? keeper;
  };
}
