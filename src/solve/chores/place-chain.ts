/** One chore by itself: the best days for its occurrences, by dynamic programming over pairs of neighbours. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Chain, Movable } from './gather-problem.ts';

const NEVER = Number.POSITIVE_INFINITY;

/** Returns whether one occurrence may follow another. */
export function mayFollow(before: EpochDay, next: Movable, day: EpochDay): boolean {
  return day > before && (next.gapAtMost === null || day - before <= next.gapAtMost);
}

/**
 * Returns the days that cost least, of equals the lexicographically earliest; null where no days keep the order and the gaps.
 *
 * @param cost of an occurrence on a day; infinite where it may not stand there
 */
export function placeChain(
  chain: Chain,
  cost: (movable: Movable, day: EpochDay) => number,
): readonly EpochDay[] | null {
  const costs = costsToGo(chain, cost);
  const placed: EpochDay[] = [];
  for (const [index, movable] of chain.entries()) {
    const before = placed.at(-1);
    let [best, least] = [-1, NEVER];
    for (const [at, day] of movable.days.entries()) {
      const total = costs[index]?.[at] ?? NEVER;
      if (total < least && (before === undefined || mayFollow(before, movable, day))) [best, least] = [at, total];
    }
    const day = movable.days[best];
    if (day === undefined) return null;
    placed.push(day);
  }
  return placed;
}

/** Returns, for each occurrence and each of its days, the least cost from there to the end; infinite where there is no way on. */
export function costsToGo(
  chain: Chain,
  cost: (movable: Movable, day: EpochDay) => number,
): readonly (readonly number[])[] {
  const costs: (readonly number[])[] = new Array(chain.length);
  for (let index = chain.length - 1; index >= 0; index--) {
    const [movable, next] = [chain[index], chain[index + 1]];
    if (!movable) continue;
    costs[index] = movable.days.map((day) => cost(movable, day) + onward(day, next, costs[index + 1]));
  }
  return costs;
}

function onward(day: EpochDay, next: Movable | undefined, costs: readonly number[] | undefined): number {
  if (!next || !costs) return 0;
  let least = NEVER;
  for (const [at, other] of next.days.entries())
    if (mayFollow(day, next, other)) least = Math.min(least, costs[at] ?? NEVER);
  return least;
}

/**
 * Returns the chain with every gap lifted that cannot be kept, and every occurrence left out that cannot stand after the one before:
 * some days always keep what is returned.
 */
export function feasibleChain(chain: Chain, after: EpochDay | null): Chain {
  const kept: Movable[] = [];
  let reached: readonly EpochDay[] | null = after === null ? null : [after];
  for (const movable of chain) {
    const within = reached;
    if (within === null) {
      kept.push({ ...movable, gapAtMost: null });
      reached = movable.days;
      continue;
    }
    const inTime = movable.days.filter((day) => within.some((before) => mayFollow(before, movable, day)));
    const later = movable.days.filter((day) => day > Math.min(...within));
    if (later.length === 0) continue;
    reached = inTime.length > 0 ? inTime : later;
    kept.push(
      kept.length > 0
        ? { ...movable, gapAtMost: inTime.length > 0 ? movable.gapAtMost : null }
        : { ...movable, days: reached, gapAtMost: null },
    );
  }
  return kept;
}
