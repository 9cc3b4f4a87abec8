/** The greedy folding and the bound that says how far from the smallest it may be. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { mayExcept, mayStartMonthly, nextDate, type Part, type Step, stepsWithin } from './rule-steps.ts';

const SHORTEST_MONTH = 28;

export interface Parts {
  readonly parts: readonly Part[];
  readonly atLeast: number;
}

/** Days still to cover, as a strip from the first date on. */
interface Strip {
  readonly first: EpochDay;
  readonly last: EpochDay;
  readonly open: Uint8Array;
}

interface Reach {
  readonly from: EpochDay;
  readonly to: EpochDay;
  readonly step: Step;
  readonly hits: number;
}

/** Takes the rule that covers most of what is left, the earliest of the finest where several do, until nothing is left. */
export function longestPartsFirst(dates: readonly EpochDay[]): Parts {
  const strip = stripOf(dates);
  const steps = stepsWithin(strip.last - strip.first);
  const parts: Part[] = [];
  let left = dates;
  while (left.length > 0) {
    const reach = longestReach(strip, left, steps);
    if (!reach) return finished([...parts, ...left.map((day) => ({ days: [day], step: null }))], dates, steps);
    parts.push({ days: takeFrom(strip, reach), step: reach.step });
    left = left.filter((day) => strip.open[day - strip.first] === 1);
  }
  return finished(parts, dates, steps);
}

function finished(parts: readonly Part[], dates: readonly EpochDay[], steps: readonly Step[]): Parts {
  return { parts, atLeast: parts.length <= 1 ? parts.length : sharesBound(dates, steps) };
}

/**
 * Returns a lower bound on the number of parts: each date counts one over the size of the largest part that can hold it, so that
 * the dates of any one part count one together at most.
 */
function sharesBound(dates: readonly EpochDay[], steps: readonly Step[]): number {
  const strip = stripOf(dates);
  const largest = new Float64Array(strip.open.length).fill(1);
  for (const step of steps) {
    for (const from of dates) {
      const reach = reachFrom(strip, from, step, 1);
      if (reach) for (const day of covered(strip, reach)) raise(largest, day - strip.first, reach.hits);
    }
  }
  const sum = dates.reduce((total, day) => total + 1 / (largest[day - strip.first] ?? 1), 0);
  return Math.ceil(sum - 1e-9);
}

function raise(largest: Float64Array, index: number, hits: number): void {
  if ((largest[index] ?? 1) < hits) largest[index] = hits;
}

function longestReach(strip: Strip, left: readonly EpochDay[], steps: readonly Step[]): Reach | null {
  let best: Reach | null = null;
  let beaten = 1;
  for (const step of steps) {
    const days = step === 'month' ? SHORTEST_MONTH : step;
    for (const from of left) {
      if (Math.floor((strip.last - from) / days) + 1 <= beaten) break;
      const reach = reachFrom(strip, from, step, beaten);
      if (!reach) continue;
      best = reach;
      beaten = reach.hits;
    }
  }
  return best;
}

/** Returns the rule from a date as far as its exceptions allow, or null where it covers no more than `beaten` dates. */
export function reachFrom(strip: Strip, from: EpochDay, step: Step, beaten: number): Reach | null {
  if (step === 'month' && !mayStartMonthly(from)) return null;
  const most = Math.floor((strip.last - from) / (step === 'month' ? SHORTEST_MONTH : step)) + 1;
  let [count, hits, bestHits, bestTo] = [0, 0, beaten, from];
  for (let day = from; day <= strip.last; day = step === 'month' ? nextDate(day, step) : day + step) {
    count += 1;
    if (strip.open[day - strip.first] === 1) {
      hits += 1;
      if (hits > bestHits && mayExcept(count - hits, count)) [bestHits, bestTo] = [hits, day];
    } else if (!mayExcept(count - hits, most)) break;
  }
  return bestHits === beaten ? null : { from, to: bestTo, step, hits: bestHits };
}

export function stripOf(dates: readonly EpochDay[]): Strip {
  const [first, last] = [dates[0] ?? 0, dates[dates.length - 1] ?? 0];
  const open = new Uint8Array(last - first + 1);
  for (const day of dates) open[day - first] = 1;
  return { first, last, open };
}

/** Returns the wanted dates that a rule covers. */
export function covered(strip: Strip, { from, to, step }: Reach): readonly EpochDay[] {
  const days: EpochDay[] = [];
  for (let day = from; day <= to; day = nextDate(day, step)) if (strip.open[day - strip.first] === 1) days.push(day);
  return days;
}

function takeFrom(strip: Strip, reach: Reach): readonly EpochDay[] {
  const days = covered(strip, reach);
  for (const day of days) strip.open[day - strip.first] = 0;
  return days;
}
