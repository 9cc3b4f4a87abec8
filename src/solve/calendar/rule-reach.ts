/** How far a rule reaches from a date, on a strip of days of which some are still to cover. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { mayExcept, mayStartMonthly, nextDate, type Step } from './rule-steps.ts';

const SHORTEST_MONTH = 28;

export interface Strip {
  readonly first: EpochDay;
  readonly last: EpochDay;
  /** 1 for each day from the first on that is still to cover. */
  readonly open: Uint8Array;
}

export interface Reach {
  readonly from: EpochDay;
  readonly to: EpochDay;
  readonly step: Step;
  /** Position of the step among those tried. */
  readonly order: number;
  readonly hits: number;
}

/** Returns the dates as a strip of days from the first to the last; dates ascending, at least one. */
export function stripOf(dates: readonly EpochDay[]): Strip {
  const [first, last] = [dates[0] ?? 0, dates[dates.length - 1] ?? 0];
  const open = new Uint8Array(last - first + 1);
  for (const day of dates) open[day - first] = 1;
  return { first, last, open };
}

/**
 * Returns, for every step, the longest runs that cover two dates or more. A run whose rule has an open date just before its first
 * is left out: the same run from that date covers one more.
 */
export function reachesOf(strip: Strip, dates: readonly EpochDay[], steps: readonly Step[]): readonly Reach[] {
  const reaches: Reach[] = [];
  for (const [order, step] of steps.entries()) {
    for (const from of dates) {
      const reach = isOpen(strip, nextDate(from, step, -1)) ? null : reachFrom(strip, from, step, order);
      if (reach) reaches.push(reach);
    }
  }
  return reaches;
}

/** Tells whether a day is one of the strip's dates. */
export function isOpen(strip: Strip, day: EpochDay): boolean {
  return strip.open[day - strip.first] === 1;
}

/** Returns the rule from a date to the last date that its exceptions allow, or null where it covers no second one. */
export function reachFrom(strip: Strip, from: EpochDay, step: Step, order: number): Reach | null {
  if (step === 'month' && !mayStartMonthly(from)) return null;
  const most = Math.floor((strip.last - from) / (step === 'month' ? SHORTEST_MONTH : step)) + 1;
  let [count, hits, bestHits, bestTo] = [0, 0, 1, from];
  for (let day = from; day <= strip.last; day = step === 'month' ? nextDate(day, step, 1) : day + step) {
    count += 1;
    if (strip.open[day - strip.first] === 1) {
      hits += 1;
      if (hits > bestHits && mayExcept(count - hits, count)) [bestHits, bestTo] = [hits, day];
    } else if (!mayExcept(count - hits, most)) break;
  }
  return bestHits === 1 ? null : { from, to: bestTo, step, order, hits: bestHits };
}

/** Returns the open dates that a rule covers. */
export function covered(strip: Strip, { from, to, step }: Reach): readonly EpochDay[] {
  const days: EpochDay[] = [];
  for (let day = from; day <= to; day = nextDate(day, step, 1)) if (strip.open[day - strip.first] === 1) days.push(day);
  return days;
}
