/** One person's chores that may be moved, and the days that cost nothing: what gathering is asked. */
import type { EpochDay } from '../../basics/calendar-day.ts';

/** One occurrence that is to be placed. */
export interface Movable {
  readonly due: EpochDay;
  /** Days on which it may stand, ascending, never empty. */
  readonly days: readonly EpochDay[];
  /** The most days since the occurrence before; null where nothing bounds it. */
  readonly gapAtMost: number | null;
}

/** One chore's occurrences in order: each is placed after the one before. */
export type Chain = readonly Movable[];

export interface GatherProblem {
  readonly chains: readonly Chain[];
  /** Whether there is work on a day anyway. */
  readonly hasWork: (day: EpochDay) => boolean;
  readonly isPreferred: (day: EpochDay) => boolean;
}

export interface Gathered {
  /** One list a chain, one day an occurrence. */
  readonly days: readonly (readonly EpochDay[])[];
  /** Days with work only because of these chores, ascending. */
  readonly newDays: readonly EpochDay[];
  /** The fewest further days that are shown to be needed; as many as `newDays` where the answer is proven. */
  readonly newDaysAtLeast: number;
  readonly isProven: boolean;
}

/** An occurrence off the preferred weekday counts before every shift: more than all shifts of a plan come to. */
const OFF_PREFERRED = 2 ** 24;

/** Returns what a place costs on the second and third level, as one whole number: off the preferred weekday, then the shift in days. */
export function placeCost({ isPreferred }: Pick<GatherProblem, 'isPreferred'>, due: EpochDay, day: EpochDay): number {
  return (isPreferred(day) ? 0 : OFF_PREFERRED) + Math.abs(day - due);
}
