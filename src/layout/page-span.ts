/** The days and the animals that a page is for. */
import { civilOf, epochDay, epochDayOf, isoDateOf } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import type { Chore, Plan, PlanEnclosure } from '../plan/plan.ts';

export interface PageSpan {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly days: readonly IsoDate[];
}

export interface PageScope {
  readonly enclosures: readonly PlanEnclosure[];
  /** Whether the jobs of the shelf itself (tanks, timers, feeders) stand on the page too. */
  readonly shelf: boolean;
}

/** Returns the dates of so many days from a date on. */
export function pageSpan(from: IsoDate, days: number): PageSpan {
  const first = epochDay(from);
  const dates = Array.from({ length: days }, (_, index) => isoDateOf(first + index));
  return { from, to: dates.at(-1) ?? from, days: dates };
}

/** Returns whole weeks from the day of making, or from the plan's first where that is later; cut where the plan ends. */
export function weeksFrom(plan: Plan, weeks: number): PageSpan {
  const from = dateWithin(plan.made, plan);
  const left = epochDay(plan.to) - epochDay(from) + 1;
  return pageSpan(from, Math.min(weeks * 7, left));
}

/** Returns the date, or the end of the span that is nearest to it. */
export function dateWithin(date: IsoDate, { from, to }: { readonly from: IsoDate; readonly to: IsoDate }): IsoDate {
  if (date < from) return from;
  return date > to ? to : date;
}

/** Returns the days of a month `YYYY-MM` that lie in the plan; null where none does. */
export function monthOf(plan: Plan, month: string): PageSpan | null {
  const { year, month: number } = civilOf(epochDay(`${month}-01`));
  const first = Math.max(epochDayOf(year, number, 1), epochDay(plan.from));
  const next = number === 12 ? epochDayOf(year + 1, 1, 1) : epochDayOf(year, number + 1, 1);
  const last = Math.min(next - 1, epochDay(plan.to));
  return last < first ? null : pageSpan(isoDateOf(first), last - first + 1);
}

/** Whether a chore belongs on a page. */
export function isInScope({ enclosure }: Pick<Chore, 'enclosure'>, scope: PageScope): boolean {
  return enclosure === null ? scope.shelf : scope.enclosures.some(({ id }) => id === enclosure);
}
