/** Who feeds on a day, and at what hour. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Care, Person } from '../../resolve/care.ts';
import { absenceOn } from './pauses.ts';

export interface Feeder {
  readonly person: string;
  /** Wall-clock minutes of the day's feeds, in order; empty where nobody says. */
  readonly minutes: readonly number[];
}

/** Between feeds of one day whose hours are not given; ours. */
const BETWEEN_FEEDS_MINUTES = 240;

/** Returns the person who feeds: the first with hours for it, the sitter in an absence, at the sitter's own hours where said. */
export function whoFeeds(care: Care, day: EpochDay): Feeder {
  const keeper = care.people.find(({ feedsAtMinutes }) => feedsAtMinutes.length > 0) ?? care.people[0] ?? null;
  const sitter = absenceOn(care, day)?.sitter ?? null;
  const minutes = keeper?.feedsAtMinutes ?? [];
  if (sitter === null) return { person: keeper?.id ?? 'keeper', minutes };
  const own = care.people.find(({ id }: Person) => id === sitter)?.feedsAtMinutes ?? [];
  return { person: sitter, minutes: own.length > 0 ? own : minutes };
}

/**
 * Returns the wall minute of one of a day's feeds. Of more hours than feeds those are taken that fit the animal best, as `daysInside` counts;
 * hours that are not given follow four hours apart after the last, before midnight, or after `otherwise` where there are none.
 */
export function feedMinute(
  minutes: readonly number[],
  ordinal: number,
  feedsThatDay: number,
  otherwise: number,
  daysInside: (minute: number) => number,
): number {
  const chosen = minutes
    .toSorted((a, b) => daysInside(b) - daysInside(a) || a - b)
    .slice(0, feedsThatDay)
    .toSorted((a, b) => a - b);
  const given = chosen[ordinal];
  if (given !== undefined) return given;
  const last = chosen.at(-1);
  const after = last === undefined ? ordinal : ordinal - chosen.length + 1;
  return Math.min(1425, (last ?? otherwise) + after * BETWEEN_FEEDS_MINUTES);
}
