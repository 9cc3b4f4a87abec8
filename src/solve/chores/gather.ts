/**
 * Gathers chores on few days, a person at a time: fewest further days with work; then most occurrences on the preferred weekday; then
 * least total shift; then earliest (the further days first, then chore by chore). Where the days with work are known each chore stands
 * by itself, so that the answer is exact as far as the set of further days is.
 */
import { type Gathered, type GatherProblem, placeCost } from './gather-problem.ts';
import { newDays } from './new-days.ts';
import { placeChain } from './place-chain.ts';

/** Returns the days of every chain; each chain by itself must have a solution (`feasibleChain`). */
export function gather(problem: GatherProblem): Gathered {
  const further = newDays(problem);
  const opened = new Set(further.days);
  const days = problem.chains.map(
    (chain) =>
      placeChain(chain, (movable, day) =>
        problem.hasWork(day) || opened.has(day) ? placeCost(problem, movable.due, day) : Number.POSITIVE_INFINITY,
      ) ?? [],
  );
  return { days, newDays: further.days, newDaysAtLeast: further.atLeast, isProven: further.isProven };
}
