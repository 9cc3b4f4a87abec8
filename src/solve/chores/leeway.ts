/** How far a chore may be moved where nobody says: ours, so that a weekly chore reaches any weekday and a short one stays where it is. */
import type { Rhythm } from './job.ts';

/** Chores of so many days or less are not moved. */
const UNMOVED_DAYS = 3;

const STEPS: readonly (readonly [fromDays: number, leewayDays: number])[] = [
  [180, 14],
  [84, 10],
  [28, 5],
  [7, 3],
  [4, 1],
];

/** Returns the leeway of an interval, days either way: 0 up to 3 days, 1 up to 6, 3 from a week, 5 from four, 10 from twelve, 14 from half a year. */
export function defaultLeewayDays(intervalDays: number): number {
  return STEPS.find(([from]) => intervalDays >= from)?.[1] ?? 0;
}

/** Returns the leeway of a job; what stands on dates or weekdays, or every 3 days or less, is not moved. */
export function leewayOf({
  rhythm,
  leewayDays,
}: {
  readonly rhythm: Rhythm;
  readonly leewayDays: number | null;
}): number {
  if (rhythm.kind === 'dates') return leewayDays ?? 0;
  const interval = shortestIntervalDays(rhythm);
  if (interval <= UNMOVED_DAYS) return 0;
  return leewayDays ?? defaultLeewayDays(interval);
}

const SHORTEST_MONTH = 28;

function shortestIntervalDays(rhythm: Exclude<Rhythm, { readonly kind: 'dates' }>): number {
  if (rhythm.kind === 'days') return rhythm.every;
  if (rhythm.kind === 'months') return rhythm.every * SHORTEST_MONTH;
  const days = rhythm.weekdays;
  return days.reduce((least, day, at) => Math.min(least, (days[at + 1] ?? (days[0] ?? 0) + 7) - day), 7);
}
