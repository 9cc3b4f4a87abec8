/** Water: a simulated day, one condition, and how good the answers are against a long search from random beginnings. */
import { HumidityCurve } from '../../src/science/day-figures.ts';
import { PeriodicDay, type Run } from '../../src/science/wet-enclosure.ts';
import { compareScores, DayJudge, type Score } from '../../src/solve/mist/day-judge.ts';
import { DayMoves } from '../../src/solve/mist/day-moves.ts';
import type { DayProblem } from '../../src/solve/mist/day-problem.ts';
import { solveMistDay } from '../../src/solve/mist/solve-day.ts';
import { Choices } from '../generated/random.ts';
import { exhaustive } from '../reference/mist-solver/exhaustive.ts';
import { fineProblem, LARGER_LENGTHS, largerProblem } from '../reference/mist-solver/random-problems.ts';
import { randomEnclosure } from '../reference/wet-enclosure/random-enclosures.ts';
import { caseOf, problemOf } from '../unit/solve/mist/problem-of-tests.ts';

type Row = readonly [label: string, value: number | string, unit: string];

const DAYS = 300;
const PROBLEMS = 60;
const RESTARTS = 16;
const LARGER = 5;

export async function run(): Promise<{ name: string; rows: Row[] }[]> {
  const problems = problemsOf(PROBLEMS);
  const tables = [
    { name: 'air: a simulated periodic day', rows: dayRows() },
    { name: 'mist: one condition solved', rows: conditionRows(problems) },
    { name: 'mist: a year of eight dial settings in one room', rows: yearRows() },
    { name: 'mist: larger coarse instances against every set of entries', rows: exhaustiveRows() },
    { name: `mist: quality against ${RESTARTS} random beginnings`, rows: qualityRows(problems.slice(0, 12)) },
  ];
  return tables.map(({ name, rows }) => ({
    name,
    rows: rows.map(([label, value, unit]) => [
      label,
      typeof value === 'number' ? Number(value.toPrecision(3)) : value,
      unit,
    ]),
  }));
}

function problemsOf(count: number): DayProblem[] {
  const choices = new Choices(2027);
  const problems: DayProblem[] = [];
  while (problems.length < count) {
    const problem = fineProblem(choices);
    if (problem.cases.length === 1) problems.push(problem);
  }
  return problems;
}

function dayRows(): Row[] {
  const choices = new Choices(5);
  const days = Array.from({ length: DAYS }, () => {
    const one = randomEnclosure(() => choices.share());
    return { day: new PeriodicDay(one.body, one.spray, one.air), runs: one.runs };
  });
  const curve = new HumidityCurve();
  let passes = 0;
  const once = () => {
    passes = 0;
    for (const { day, runs } of days) {
      day.simulate(runs);
      curve.read(day);
      passes += day.passes;
    }
  };
  once();
  const times = Array.from({ length: 7 }, () => milliseconds(once) / DAYS);
  return [
    ['mean', average(times), 'ms'],
    ['best round', Math.min(...times), 'ms'],
    ['careful days until it closes', passes / DAYS, 'passes'],
  ];
}

function conditionRows(problems: readonly DayProblem[]): Row[] {
  for (const problem of problems.slice(0, 10)) solveMistDay(problem);
  let simulations = 0;
  const times = problems.map((problem) =>
    milliseconds(() => {
      simulations += solveMistDay(problem).simulations;
    }),
  );
  times.sort((a, b) => a - b);
  return [
    ['mean', average(times), 'ms'],
    ['median', times[times.length >> 1] ?? 0, 'ms'],
    ['slowest tenth', times[Math.floor(times.length * 0.9)] ?? 0, 'ms'],
    ['slowest', times.at(-1) ?? 0, 'ms'],
    ['simulations', simulations / problems.length, ''],
  ];
}

/** Each condition alone, begun from the ones before and only until its targets are met, then one set for all. */
function yearRows(): Row[] {
  const cases = Array.from({ length: 8 }, (_, i) => {
    const minutes = 660 + 15 * (i < 5 ? i : 8 - i) * 2;
    const onMinute = 780 - minutes / 2;
    const shift = { lit: { onMinute, minutes }, temperatureSteps: warmth(onMinute, onMinute + minutes) };
    return caseOf({ air: { ...caseOf().air, ...shift } });
  });
  let met = 0;
  const once = () => {
    const seeds: (readonly Run[])[] = [];
    for (const one of cases)
      seeds.unshift(solveMistDay(problemOf({ cases: [one] }), { seeds, untilMet: true }).entries);
    met = solveMistDay(problemOf({ cases }), { seeds }).shortfall;
  };
  once();
  const times = Array.from({ length: 5 }, () => milliseconds(once));
  return [
    ['mean', average(times), 'ms'],
    ['best round', Math.min(...times), 'ms'],
    ['shortfall of the one set', met, ''],
  ];
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

function warmth(on: number, off: number): { readonly fromMinute: number; readonly celsius: number }[] {
  return [
    { fromMinute: on, celsius: 25 },
    { fromMinute: off, celsius: 20 },
  ];
}

/** The gap of our answers to the best that a long search finds, ours included among its beginnings' rivals only. */
function qualityRows(problems: readonly DayProblem[]): Row[] {
  let [worse, better, shortfallGap, waterGap, compared] = [0, 0, 0, 0, 0];
  let worst = 0;
  for (const problem of problems) {
    const ours = solveMistDay(problem);
    const judge = new DayJudge(problem, ours.marginsHold);
    const mine = judge.score(ours.entries);
    const long = longSearch(judge, new Choices(99));
    if (!mine || !long) continue;
    compared++;
    const order = compareScores(long, mine, judge.grid);
    worse += order < 0 ? 1 : 0;
    better += order > 0 ? 1 : 0;
    const gap = 0.05 * ((mine.levels[0] ?? 0) - (long.levels[0] ?? 0));
    shortfallGap += gap;
    worst = Math.max(worst, gap);
    if (gap === 0) waterGap += ((mine.levels[3] ?? 0) - (long.levels[3] ?? 0)) / 10_000;
  }
  return [
    ['compared', compared, 'days'],
    ['the long search is better', worse, 'days'],
    ['ours is better', better, 'days'],
    ['mean gap in shortfall', shortfallGap / compared, ''],
    ['worst gap in shortfall', worst, ''],
    ['mean gap in water where the shortfall is the same', waterGap / compared, 'L/day'],
  ];
}

function longSearch(judge: DayJudge, choices: Choices): Score | null {
  const moves = new DayMoves(judge.problem, judge.grid);
  let best: Score | null = null;
  for (let restart = 0; restart < RESTARTS; restart++) {
    let here = judge.score(randomEntries(judge, moves, choices));
    for (let better: Score | null = here; better; ) {
      here = better;
      better = improved(judge, moves, here, (a, b) => a.broken.length - b.broken.length || a.shortfall - b.shortfall);
    }
    for (let better: Score | null = here; better; ) {
      here = better;
      better = improved(judge, moves, here, (a, b) => compareScores(a, b, judge.grid));
    }
    if (here && (!best || compareScores(here, best, judge.grid) < 0)) best = here;
  }
  return best;
}

function improved(
  judge: DayJudge,
  moves: DayMoves,
  here: Score,
  compare: (a: Score, b: Score) => number,
): Score | null {
  for (const candidate of moves.stated().flatMap((family) => [...family(here.entries)])) {
    const score = judge.score(candidate);
    if (score && compare(score, here) < -0.01) return score;
  }
  return null;
}

function randomEntries(judge: DayJudge, moves: DayMoves, choices: Choices): readonly Run[] {
  const count = choices.between(0, Math.min(6, judge.problem.machine.entriesAtMost));
  const entries = new Map<number, Run>();
  for (let k = 0; k < count && judge.grid.allowed.length > 0; k++) {
    const { minute } = choices.oneOf(judge.grid.allowed);
    entries.set(minute, { startMinute: minute, seconds: choices.oneOf(moves.lengths.wished) });
  }
  return judge.ordered([...entries.values()]);
}

function milliseconds(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
