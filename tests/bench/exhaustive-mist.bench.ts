/** Larger coarse instances against every set of entries there is. */

import type { DayProblem } from '../../src/solve/mist/day/day-problem.ts';
import { solveMistDay } from '../../src/solve/mist/day/solve-day.ts';
import { Choices } from '../generated/random.ts';
import { exhaustive } from '../reference/mist-solver/exhaustive.ts';
import { LARGER_LENGTHS, largerProblem } from '../reference/mist-solver/random-problems.ts';
import type { Row, Table } from './figures.ts';

const LARGER = 5;

export async function run(): Promise<readonly Table[]> {
  return [{ name: 'mist: larger coarse instances against every set of entries', rows: exhaustiveRows() }];
}

function exhaustiveRows(): Row[] {
  const choices = new Choices(31);
  const problems: DayProblem[] = [];
  while (problems.length < LARGER) {
    const problem = largerProblem(choices);
    if (problem.cases.length === 1) problems.push(problem);
  }
  let [equal, sameShortfall, gap] = [0, 0, 0];
  for (const problem of problems) {
    const every = exhaustive(problem, LARGER_LENGTHS);
    const ours = solveMistDay(problem);
    // The second judge's key: count, nine limits, nine amounts, then the levels.
    const levels = every.key.slice(19);
    equal += JSON.stringify(every.runs) === JSON.stringify(ours.entries) ? 1 : 0;
    sameShortfall += levels[0] === ours.levels[0] ? 1 : 0;
    gap += 0.05 * ((ours.levels[0] ?? 0) - (levels[0] ?? 0));
  }
  return [
    ['instances', LARGER, ''],
    ['the very best answer found', equal, ''],
    ['its shortfall found', sameShortfall, ''],
    ['mean gap in shortfall', gap / LARGER, ''],
  ];
}
