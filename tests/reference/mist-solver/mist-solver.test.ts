/** The mist solver against every set of entries of coarse instances, and against its stated moves on fine ones. */
import { describe, expect, it } from 'vitest';
import type { Run } from '../../../src/science/enclosure-day.ts';
import type { DayProblem } from '../../../src/solve/mist/day/day-problem.ts';
import { solveMistDay } from '../../../src/solve/mist/day/solve-day.ts';
import { Choices } from '../../generated/random.ts';
import { tries } from '../../tries.ts';
import { compareKeys, exhaustive, SecondJudge } from './exhaustive.ts';
import { COARSE_LENGTHS, coarseProblem, fineProblem } from './random-problems.ts';

const COARSE = tries(5, 100);
const FINE = tries(8, 100);

describe(`${COARSE} coarse instances`, () => {
  const choices = new Choices(7);
  const problems = Array.from({ length: COARSE }, () => coarseProblem(choices));
  let limited = 0;

  it.each(problems.map((problem, i) => ({ i, problem })))(
    '$i: the answer is that of an exhaustive search',
    ({ problem }) => {
      const every = exhaustive(problem, COARSE_LENGTHS);
      const ours = solveMistDay(problem);
      expect(ours.entries).toEqual(every.runs);
      expect(ours.exceeded.length).toBe(every.broken.length);
      limited += every.broken.length > 0 ? 1 : 0;
    },
  );

  it('some have limits that cannot all hold, most have entries', () => {
    console.info(`coarse: ${limited} of ${COARSE} with limits that cannot all hold`);
    expect(limited).toBeGreaterThan(0);
    expect(limited).toBeLessThan(COARSE);
  });
});

/** The moves as the rules state them, from a solution's entries, whatever they lead to. */
function statedMoves(problem: DayProblem, judge: SecondJudge, entries: readonly Run[]): Run[][] {
  const { startStepMinutes, lengthStepSeconds } = problem.machine;
  const moved: Run[][] = [];
  const put = (change: (copy: Run[]) => void) => {
    const copy = entries.map((entry) => ({ ...entry }));
    change(copy);
    moved.push(copy);
  };
  entries.forEach((entry, i) => {
    for (const way of [-1, 1]) {
      const startMinute = (entry.startMinute + way * startStepMinutes + 1440) % 1440;
      put((copy) => copy.splice(i, 1, { ...entry, startMinute }));
      put((copy) => copy.splice(i, 1, { ...entry, seconds: entry.seconds + way * lengthStepSeconds }));
    }
    put((copy) => copy.splice(i, 1));
    entries.forEach((other, j) => {
      if (i === j) return;
      put((copy) => {
        copy.splice(i, 1, { ...entry, seconds: entry.seconds - lengthStepSeconds });
        copy.splice(j, 1, { ...other, seconds: other.seconds + lengthStepSeconds });
      });
    });
  });
  const shortest = Math.max(problem.machine.shortestSeconds, problem.cases[0]?.cadence?.seconds[0] ?? 15);
  for (const startMinute of judge.starts) put((copy) => copy.push({ startMinute, seconds: shortest }));
  return moved.map((runs) => runs.sort((a, b) => judge.at(a.startMinute) - judge.at(b.startMinute)));
}

/** Returns whether all starts are open, distinct and dry of any lamp, and all lengths above 0: what the second judge leaves to the grid. */
function standsOnGrid(problem: DayProblem, judge: SecondJudge, runs: readonly Run[]): boolean {
  const starts = runs.map(({ startMinute }) => startMinute);
  const dry = problem.cases.flatMap((one) => one.forbidden.runs);
  const wetIn = (run: Run) =>
    dry.some(({ fromMinute, toMinute }) => {
      const end = run.startMinute + run.seconds / 60;
      return [0, 1440].some((turn) => run.startMinute < toMinute + turn && end > fromMinute + turn);
    });
  return (
    new Set(starts).size === starts.length &&
    starts.every((start) => judge.starts.includes(start)) &&
    runs.every((run) => run.seconds > 0 && !wetIn(run))
  );
}

describe(`${FINE} fine instances`, () => {
  const choices = new Choices(11);
  const problems = Array.from({ length: FINE }, () => fineProblem(choices));
  let [compared, met] = [0, 0];

  it.each(problems.map((problem, i) => ({ i, problem })))('$i: no stated move improves the answer', ({ problem }) => {
    const ours = solveMistDay(problem);
    const judge = new SecondJudge(problem, ours.marginsHold);
    const here = judge.judge(ours.entries);
    if (!here) throw new Error('the answer itself cannot be run');
    met += ours.shortfall === 0 ? 1 : 0;
    for (const moved of statedMoves(problem, judge, ours.entries)) {
      if (!standsOnGrid(problem, judge, moved)) continue;
      const there = judge.judge(moved);
      if (!there) continue;
      compared++;
      const better = compareKeys(there.key, here.key) < 0;
      expect(
        better ? JSON.stringify({ from: ours.entries, to: moved, keys: [here.key, there.key] }) : 'no better',
      ).toBe('no better');
    }
  });

  it('has many moves to try, and days that meet all targets as well as days that do not', () => {
    console.info(`fine: ${compared} moves tried, ${met} of ${FINE} days meet all targets`);
    expect(compared).toBeGreaterThan(30 * FINE);
    expect(met).toBeGreaterThan(0);
    expect(met).toBeLessThan(FINE);
  });
});
