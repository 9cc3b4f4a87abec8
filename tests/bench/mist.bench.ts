/** Water: a simulated day, one condition, and how good the answers are against a long search from random beginnings. */
import { HumidityCurve } from '../../src/science/day-figures.ts';
import type { Run } from '../../src/science/enclosure-day.ts';
import { PeriodicDay } from '../../src/science/wet-enclosure.ts';
import { compareScores, DayJudge, type Score } from '../../src/solve/mist/day/day-judge.ts';
import { DayMoves } from '../../src/solve/mist/day/day-moves.ts';
import type { DayProblem } from '../../src/solve/mist/day/day-problem.ts';
import { solveMistDay } from '../../src/solve/mist/day/solve-day.ts';
import { shareSolvedDays } from '../../src/solve/mist/day/solved-days.ts';
import { compiledHousehold } from '../compiled-household.ts';
import { Choices } from '../generated/random.ts';
import { fineProblem } from '../reference/mist-solver/random-problems.ts';
import { randomEnclosure } from '../reference/wet-enclosure/random-enclosures.ts';
import { caseOf, problemOf } from '../unit/solve/mist/problem-of-tests.ts';
import { atMost, median, onceMs, type Row, shown, type Table, type Target } from './figures.ts';

const DAYS = 300;
const PROBLEMS = 60;
const HOPELESS = 6;
const RESTARTS = 16;
/** Runs of one condition; the least counts, since others on the machine can only add. */
const RUNS = 3;

interface Measured {
  readonly rows: readonly Row[];
  readonly targets: readonly Target[];
}

export async function run(): Promise<readonly Table[]> {
  const problems = problemsOf(PROBLEMS);
  return [
    { name: 'air: a simulated periodic day', ...dayFigures() },
    { name: 'mist: one condition solved', ...conditionFigures(problems) },
    { name: 'mist: the same question again', ...(await againFigures()) },
    { name: 'mist: a year of eight dial settings in one room', ...yearFigures() },
    { name: `mist: quality against ${RESTARTS} random beginnings`, ...qualityFigures(problems.slice(0, 12)) },
  ];
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

function dayFigures(): Measured {
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
  const least = Math.min(...times);
  return {
    rows: [
      ['mean', shown(average(times)), 'ms'],
      ['best round', shown(least), 'ms'],
      ['careful days until it closes', shown(passes / DAYS), 'passes'],
    ],
    targets: [atMost(`a simulated periodic day, mean of ${DAYS}`, least, 0.1, 'ms')],
  };
}

function conditionFigures(problems: readonly DayProblem[]): Measured {
  for (const problem of problems.slice(0, 10)) solveMistDay(problem);
  const times = sortedTimes(problems);
  const hopeless = sortedTimes(problems.slice(0, HOPELESS).map(outOfReach));
  const simulations = problems.reduce((sum, problem) => sum + solveMistDay(problem).simulations, 0);
  const slowest = times.at(-1) ?? 0;
  return {
    rows: [
      ['mean', shown(average(times)), 'ms'],
      ['median', shown(median(times)), 'ms'],
      ['slowest tenth', shown(times[Math.floor(times.length * 0.9)] ?? 0), 'ms'],
      ['slowest', shown(slowest), 'ms'],
      ['simulations', shown(simulations / problems.length), ''],
      ['targets out of reach, 12 lines, starts to the minute: mean', shown(average(hopeless)), 'ms'],
      ['  slowest', shown(hopeless.at(-1) ?? 0), 'ms'],
    ],
    targets: [atMost(`one mist condition solved, the slowest of ${PROBLEMS}`, slowest, 60, 'ms')],
  };
}

/** Returns the least time of each in ms, ascending. */
function sortedTimes(problems: readonly DayProblem[]): readonly number[] {
  return problems
    .map((problem) => Math.min(...Array.from({ length: RUNS }, () => milliseconds(() => solveMistDay(problem)))))
    .sort((a, b) => a - b);
}

/** The same condition with a wet day, a dry night and more peaks than can be, on a timer of 12 lines. */
function outOfReach(problem: DayProblem): DayProblem {
  const wish = { day: [0.85, 0.95], night: [0.2, 0.3], peak: [0.97, 1], peaksPerDay: [4, 6] } as const;
  return {
    ...problem,
    machine: { ...problem.machine, entriesAtMost: 12, startStepMinutes: 1 },
    cases: problem.cases.map((one) => ({
      ...one,
      targets: { ...wish, mean: null, floor: 0.6, ceiling: null, soakedAtMostHours: 1 },
      cadence: null,
    })),
  };
}

/** Enclosures that ask the same are answered once, in whatever households. */
async function againFigures(): Promise<Measured> {
  const [firstMs, first] = await solvedFor('fern');
  const [againMs, more] = await solvedFor('moss');
  return {
    rows: [
      ['questions of an enclosure, solved', first, ''],
      ['  compiled in', shown(firstMs), 'ms'],
      ['questions of its like in another household, solved', more, ''],
      ['  compiled in', shown(againMs), 'ms'],
    ],
    targets: [
      {
        what: 'the same mist problem is solved once',
        measured: `${first} solved for an enclosure, ${more} for its like in another household`,
        target: 'none again',
        share: null,
        isMet: first > 0 && more === 0,
      },
    ],
  };
}

async function solvedFor(id: string): Promise<readonly [ms: number, questions: number]> {
  const told = new Set<string>();
  shareSolvedDays({ tell: (key) => told.add(key), heard: () => [] });
  const ms = await onceMs(() => {
    if (!compiledHousehold(shelfOf(id)).plan) throw new Error('the shelf has no plan');
  });
  shareSolvedDays(null);
  return [ms, told.size];
}

function shelfOf(id: string): string {
  return `format: 1
name: Shelf of ${id}
site: { timezone: Europe/Madrid, latitude: 41, longitude: -1, room: { day: 22 °C, night: 19 °C, humidity: 38 % } }
plan: { from: 2027-01-01, days: 365 }
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W }
  - { id: timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: standard, rating: 1000 W }
  - { id: pump, kind: mist-pump, outlet: timer, power: 30 W, flow: 90 mL/min, nozzles: 1, lag: 3 s, longest_run: 5 min, rest: 10 min }
enclosures:
  - id: ${id}
    species: panther-chameleon
    stage: adult
    size: { width: 50 cm, depth: 50 cm, height: 90 cm }
    open: 33 %
    planting: medium
    lamps: [{ id: day, kind: led, for: [daylight], power: 20 W, warms: 3 °C, outlet: dial }]
    mist: pump
    nozzles: { count: 1, hits_lamp: false }
`;
}

/** Each condition alone, begun from the ones before and only until its targets are met, then one set for all. */
function yearFigures(): Measured {
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
  const least = Math.min(...times);
  return {
    rows: [
      ['mean', shown(average(times)), 'ms'],
      ['best round', shown(least), 'ms'],
      ['shortfall of the one set', shown(met), ''],
    ],
    targets: [atMost("an enclosure's year: eight dial settings in one room", least, 400, 'ms')],
  };
}

function warmth(on: number, off: number): { readonly fromMinute: number; readonly celsius: number }[] {
  return [
    { fromMinute: on, celsius: 25 },
    { fromMinute: off, celsius: 20 },
  ];
}

/** The gap of our answers to the best that a long search finds, ours included among its beginnings' rivals only. */
function qualityFigures(problems: readonly DayProblem[]): Measured {
  let [worse, better, shortfallGap, waterGap, alike, compared] = [0, 0, 0, 0, 0, 0];
  let worst = Number.NEGATIVE_INFINITY;
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
    if (gap !== 0) continue;
    alike++;
    waterGap += ((mine.levels[3] ?? 0) - (long.levels[3] ?? 0)) / 10_000;
  }
  const [meanGap, meanWater] = [shortfallGap / compared, waterGap / Math.max(1, alike)];
  return {
    rows: [
      ['compared', compared, 'days'],
      ['the long search is better', worse, 'days'],
      ['ours is better', better, 'days'],
      ['mean gap in shortfall', shown(meanGap), ''],
      ['worst gap in shortfall', shown(worst), ''],
      ['mean gap in water where the shortfall is the same', shown(meanWater), 'L/day'],
    ],
    targets: [
      {
        what: `a mist day against ${RESTARTS} searches from random beginnings: shortfall and water above theirs`,
        measured: `${shown(meanGap)} and ${shown(meanWater)} L a day on average, at worst ${shown(worst)}; better in ${better} of ${compared}, worse in ${worse}`,
        target: 'reported',
        share: null,
        isMet: null,
      },
    ],
  };
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
