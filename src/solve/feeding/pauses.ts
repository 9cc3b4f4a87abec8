/** Days on which a stream is not fed, or nothing is dusted: rest, shedding, quarantine, illness, an absence without a visit. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { FoodStream } from '../../plan/plan.ts';
import type { Care, CareAbsence, CareEnclosure, Rest } from '../../resolve/care.ts';
import { restEnd } from '../../resolve/rest-of.ts';

/** Days in [from, to], both inclusive. */
export interface DaySpan {
  readonly from: EpochDay;
  readonly to: EpochDay;
}

/** Returns the days without feed of a rest: from the day after the last feed to the day before it ends. */
function restFast(rest: Rest): DaySpan {
  return { from: rest.from - rest.lastFeedDays + 1, to: restEnd(rest) - 1 };
}

/** Returns the spans in which a stream is not fed for the animal's own sake. */
export function fastingSpans(enclosure: CareEnclosure, food: FoodStream): readonly DaySpan[] {
  const rest = enclosure.rest ? [restFast(enclosure.rest)] : [];
  const shedding = food === 'rodents' ? enclosure.states.filter(({ is }) => is === 'shedding') : [];
  return [...rest, ...shedding.map(({ from, to }) => ({ from, to }))];
}

/** Returns the spans in which nothing is dusted unless a veterinarian said otherwise. */
export function undustedSpans(enclosure: CareEnclosure): readonly DaySpan[] {
  return enclosure.states
    .filter(({ is, vet }) => (is === 'quarantine' || is === 'ill') && vet === null)
    .map(({ from, to }) => ({ from, to }));
}

/** Tells whether a day lies in one of the spans, both ends included. */
export function isWithin(spans: readonly DaySpan[], day: EpochDay): boolean {
  return spans.some(({ from, to }) => from <= day && day <= to);
}

/** Returns the absence that covers a day, or null. */
export function absenceOn(care: Care, day: EpochDay): CareAbsence | null {
  return care.away.find(({ from, to }) => from <= day && day <= to) ?? null;
}

/** Returns whether somebody is there on a day: the household, or a sitter on a visit. */
export function someoneThere(care: Care, day: EpochDay): boolean {
  const absence = absenceOn(care, day);
  return absence === null || (absence.sitter !== null && absence.visits.includes(day));
}

/** Returns whether somebody can buy feeders on a day: the household, or a sitter on a visit who shops. */
export function someoneShops(care: Care, day: EpochDay): boolean {
  const absence = absenceOn(care, day);
  if (absence === null) return true;
  const sitter = care.people.find(({ id }) => id === absence.sitter);
  return sitter?.shops === true && absence.visits.includes(day);
}
