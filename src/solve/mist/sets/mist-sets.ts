/**
 * Which entries hold from when to when: the fewest sets whose worst shortfall is within 0.05 of the worst over conditions solved alone,
 * and none of which exceeds a limit for a condition that holds it alone; where the allowed number does not reach that, that many with the
 * least worst. Among equals the least sum over days, then the latest first boundary. Where some condition cannot meet its targets even
 * alone, each is held against itself alone: a hopeless summer is no reason to leave the winter dry.
 */
import type { UnitSpan } from '../mist-unit.ts';
import { badness, type ChosenSets, fits, type SetSolution, type SetSolver, setOf, WITHIN } from './set-solution.ts';
import { type Alone, type Cut, SetSplit } from './set-split.ts';

/**
 * Returns the sets over all spans.
 *
 * @param mayBegin whether a later set may begin on a day
 * @param most sets allowed, at least 1
 */
export function chooseSets<S extends SetSolution>(
  solver: SetSolver<S>,
  spans: readonly UnitSpan[],
  mayBegin: (day: number) => boolean,
  most: number,
): ChosenSets<S> {
  const whole = solver.solve(spans);
  const single = [setOf(spans, null, null, whole)];
  if (spans.length < 2) return { sets: single, alone: whole.shortfall, worst: whole.shortfall, reached: true };
  if (whole.exceeded.length === 0 && fits(whole.shortfall))
    return { sets: single, alone: null, worst: whole.shortfall, reached: true };
  const { alone, found } = aloneOf(solver, spans, whole);
  const split = new SetSplit(solver, spans, cutsOf(spans, mayBegin), alone, [whole, ...found]);
  const worst = split.cost(whole, 0, spans.length - 1);
  if (fits(worst) || most < 2) return { sets: single, alone: alone.worst, worst: badness(whole), reached: fits(worst) };
  return split.choose(most) ?? { sets: single, alone: alone.worst, worst: badness(whole), reached: false };
}

/** Returns how spans do alone; under the common entries most of them are met at once. */
function aloneOf<S extends SetSolution>(
  solver: SetSolver<S>,
  spans: readonly UnitSpan[],
  whole: S,
): { readonly alone: Alone; readonly found: readonly S[] } {
  const found: S[] = [];
  const solved = spans.map((span) => {
    const solution = solver.solve([span], { untilMet: true, near: whole });
    found.push(solution);
    return { shortfall: solution.shortfall, exceeded: solution.exceeded.length, badness: badness(solution) };
  });
  const worst = Math.max(...solved.map(({ shortfall }) => shortfall));
  const allMeet = worst <= WITHIN + 1e-9;
  const alone = {
    shortfalls: solved.map(({ shortfall }) => (allMeet ? worst : shortfall)),
    exceeded: solved.map(({ exceeded }) => exceeded),
    worst: Math.max(...solved.map((each) => each.badness)),
  };
  return { alone, found };
}

/** The latest allowed day inside each span, and each span's first day where it is allowed. */
function cutsOf(spans: readonly UnitSpan[], mayBegin: (day: number) => boolean): readonly Cut[] {
  return spans.flatMap(({ fromDay, toDay }, index): Cut[] => {
    const cuts: Cut[] = [];
    if (index > 0 && mayBegin(fromDay)) cuts.push({ day: fromDay, before: index - 1, after: index });
    const next = spans[index + 1];
    if (next && mayBegin(next.fromDay)) return cuts;
    for (let day = toDay; day > fromDay; day--) {
      if (!mayBegin(day)) continue;
      if (next) cuts.push({ day, before: index, after: index });
      break;
    }
    return cuts;
  });
}
