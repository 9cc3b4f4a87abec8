/**
 * Folds dates into as few recurring events as possible. A rule stands for the days start, start + step, … or for one day of
 * every month; at most a quarter of its dates may be excepted; every date is covered exactly once.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { fewestParts } from './fewest-parts.ts';
import { longestPartsFirst } from './longest-parts.ts';
import { type Part, ruleDates, ruleText } from './rule-steps.ts';

/** Dates that one event stands for: both ends are wanted dates, `excepted` are the rule's dates between that are not. */
export interface DateRun {
  readonly from: EpochDay;
  readonly to: EpochDay;
  /** Null for a single date. */
  readonly rule: string | null;
  readonly excepted: readonly EpochDay[];
}

export interface Folding {
  readonly runs: readonly DateRun[];
  /** No folding has fewer runs than this; equal to their number where the folding is proven to be the smallest. */
  readonly atLeast: number;
}

/** Up to here the smallest number of runs is searched for; above, the longest run is taken again and again. */
const EXACT_DATES = 40;

/**
 * Returns the folding of distinct ascending dates, its runs by first date; empty for no dates.
 * Exact for up to 40 dates, else greedy by longest rule, with a lower bound.
 */
export function foldDates(dates: readonly EpochDay[]): Folding {
  const greedy = longestPartsFirst(dates);
  const best =
    dates.length <= EXACT_DATES && greedy.parts.length > greedy.atLeast ? fewestParts(dates, greedy) : greedy;
  const runs = best.parts.map(runOf).sort((a, b) => a.from - b.from);
  return { runs, atLeast: best.atLeast };
}

function runOf({ days, step }: Part): DateRun {
  const [from, to] = [days[0] ?? 0, days[days.length - 1] ?? 0];
  if (step === null) return { from, to, rule: null, excepted: [] };
  const wanted = new Set(days);
  const excepted = ruleDates(from, to, step).filter((day) => !wanted.has(day));
  return { from, to, rule: ruleText(from, step), excepted };
}
