/** How long a person's work takes, by day and by week, as the plan has it. */
import { type EpochDay, epochDay, isoDateOf, weekdayIndex } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import type { Chore, Feed } from './plan.ts';

/** Minutes that a feed takes; ours. */
export const FEED_MINUTES = 5;

export interface WorkDay {
  readonly person: string;
  readonly date: IsoDate;
  readonly minutes: number;
}

export interface WorkWeek {
  readonly person: string;
  /** The Monday. */
  readonly from: IsoDate;
  readonly minutes: number;
  readonly longest: WorkDay;
}

/** Returns the days on which anybody has work, by person and date. */
export function workDays(parts: {
  readonly chores: readonly Chore[];
  readonly feeding: readonly Feed[];
}): readonly WorkDay[] {
  const minutes = new Map<string, Map<IsoDate, number>>();
  const add = (person: string, date: IsoDate, more: number): void => {
    const days = minutes.get(person) ?? new Map<IsoDate, number>();
    minutes.set(person, days.set(date, (days.get(date) ?? 0) + more));
  };
  for (const { by, date } of parts.feeding) add(by, date, FEED_MINUTES);
  for (const chore of parts.chores) for (const date of chore.dates) add(chore.who, date, chore.minutes);
  return [...minutes]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([person, days]) =>
      [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([date, spent]) => ({ person, date, minutes: spent })),
    );
}

/** Returns the weeks from Monday on in which anybody has work, by person and week. */
export function workWeeks(days: readonly WorkDay[]): readonly WorkWeek[] {
  const weeks = new Map<string, WorkWeek>();
  for (const day of days) {
    const from = isoDateOf(mondayOf(epochDay(day.date)));
    const key = `${day.person} ${from}`;
    const week = weeks.get(key);
    const longest = week && week.longest.minutes >= day.minutes ? week.longest : day;
    weeks.set(key, { person: day.person, from, minutes: (week?.minutes ?? 0) + day.minutes, longest });
  }
  return [...weeks.values()];
}

function mondayOf(day: EpochDay): EpochDay {
  return day - weekdayIndex(day);
}
