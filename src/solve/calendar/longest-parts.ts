/** The greedy folding and the bound that says how far from the smallest it may be. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { covered, isOpen, type Reach, reachesOf, reachFrom, type Strip, stripOf } from './rule-reach.ts';
import { nextDate, type Part, partOf, type Step, stepsWithin } from './rule-steps.ts';

export interface Parts {
  readonly parts: readonly Part[];
  readonly atLeast: number;
}

/** Takes the rule that covers most of what is left, with the least step and earliest where several do, until nothing is left. */
export function longestPartsFirst(dates: readonly EpochDay[]): Parts {
  if (dates.length === 0) return { parts: [], atLeast: 0 };
  const whole = partOf(dates);
  if (whole) return { parts: [whole], atLeast: 1 };
  const strip = stripOf(dates);
  const steps = stepsWithin(strip.last - strip.first);
  const reaches = reachesOf(strip, dates, steps);
  const largest = largestHolding(strip, reaches);
  const taken = takeLongest(strip, reaches, steps);
  const singles = dates.filter((day) => isOpen(strip, day)).map((day) => ({ days: [day], step: null }));
  const parts = [...taken, ...singles];
  return { parts, atLeast: Math.max(2, sharesBound(dates, strip.first, largest)) };
}

/**
 * Takes reaches by what they cover, emptying the strip. What a reach covers only ever shrinks, so one that still covers what it
 * did when it was counted is the longest; where a date is taken, new runs begin behind it.
 */
function takeLongest(strip: Strip, reaches: readonly Reach[], steps: readonly Step[]): readonly Part[] {
  const parts: Part[] = [];
  const waiting = new Waiting(reaches);
  for (let hits = waiting.most(); hits >= 2; hits -= 1) {
    for (const reach of waiting.take(hits)) {
      const now = isOpen(strip, reach.from) ? reachFrom(strip, reach.from, reach.step, reach.order) : null;
      if (now?.hits !== hits) {
        waiting.put(now);
        continue;
      }
      const days = takeFrom(strip, now);
      parts.push({ days, step: now.step });
      for (const behind of runsBehind(strip, days, steps)) waiting.put(behind);
    }
  }
  return parts;
}

/** Reaches by the number of dates that they cover. */
class Waiting {
  readonly #byHits: Reach[][] = [];

  constructor(reaches: readonly Reach[]) {
    for (const reach of reaches) this.put(reach);
  }

  put(reach: Reach | null): void {
    if (!reach) return;
    const bucket = this.#byHits[reach.hits];
    if (bucket) bucket.push(reach);
    else this.#byHits[reach.hits] = [reach];
  }

  most(): number {
    return this.#byHits.length - 1;
  }

  take(hits: number): readonly Reach[] {
    return (this.#byHits[hits] ?? []).sort((a, b) => a.order - b.order || a.from - b.from);
  }
}

/** Returns the runs that begin one step after dates just taken. */
function runsBehind(strip: Strip, taken: readonly EpochDay[], steps: readonly Step[]): readonly (Reach | null)[] {
  return steps.flatMap((step, order) =>
    taken
      .map((day) => nextDate(day, step, 1))
      .filter((next) => isOpen(strip, next))
      .map((next) => reachFrom(strip, next, step, order)),
  );
}

/**
 * Returns a lower bound on the number of parts: each date counts one over the size of the largest part that can hold it, so that
 * the dates of any one part count one together at most.
 */
function sharesBound(dates: readonly EpochDay[], first: EpochDay, largest: Uint16Array): number {
  const sum = dates.reduce((total, day) => total + 1 / (largest[day - first] ?? 1), 0);
  return Math.ceil(sum - 1e-9);
}

/** Returns for each open day the size of the largest reach that covers it, at least 1. */
function largestHolding(strip: Strip, reaches: readonly Reach[]): Uint16Array {
  const largest = new Uint16Array(strip.open.length).fill(1);
  for (const { from, to, step, hits } of reaches) {
    for (let day = from; day <= to; day = nextDate(day, step, 1)) {
      const at = day - strip.first;
      if ((largest[at] ?? 1) < hits) largest[at] = hits;
    }
  }
  return largest;
}

function takeFrom(strip: Strip, reach: Reach): readonly EpochDay[] {
  const days = covered(strip, reach);
  for (const day of days) strip.open[day - strip.first] = 0;
  return days;
}
