import { readFileSync } from 'node:fs';
import { Log } from '../../src/diagnostics/log.ts';
import { readHousehold } from '../../src/read/household.ts';
import { type ReadProfile, readProfile } from '../../src/read/profile.ts';
import type { Care } from '../../src/resolve/care.ts';
import { profilesNeeded, resolve } from '../../src/resolve/resolve.ts';
import type { EvenProblem } from '../../src/science/even-problem.ts';
import { evenSequence } from '../../src/science/even-sequence.ts';
import { solveFeeding } from '../../src/solve/feeding/feeding.ts';
import { lightsOfDay } from '../../src/solve/feeding/lights-of-day.ts';
import { solveLighting } from '../../src/solve/lighting.ts';
import { leastWorstDeviation } from '../reference/even-sequence/mixed-integer.ts';
import { type Beside, leastMs, median, type Row, shown, type Table, times } from './figures.ts';

const ROUNDS = 25;
const GENERAL_SOLVER_SECONDS = 10;
const EXAMPLE = 'examples/reading-room.yaml';

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Reads the example from the folder of the project, in which benchmarks run. */
function exampleCare(): Care {
  const log = new Log();
  const household = readHousehold(EXAMPLE, readFileSync(EXAMPLE, 'utf8'), log);
  if (!household) throw new Error('the example cannot be read');
  const profiles = new Map<string, ReadProfile>();
  for (const { idOrPath } of profilesNeeded(household)) {
    const file = `profiles/${idOrPath}.yaml`;
    const profile = readProfile(file, readFileSync(file, 'utf8'), log);
    if (profile) profiles.set(idOrPath, profile);
  }
  const care = resolve(household, profiles, log);
  if (!care) throw new Error('the example does not resolve');
  return care;
}

/** A year of feeds, orders and hours for the three enclosures of the example, and the rotation of one of them alone. */
export async function run(): Promise<readonly Table[]> {
  const care = exampleCare();
  const light = solveLighting(care, null, care.plan.from, new Log());
  const year = () =>
    solveFeeding(care, lightsOfDay(care, light.lighting, light.offsets), null, care.plan.from, new Log());
  const first = timed(year);
  const rounds = Array.from({ length: ROUNDS }, () => timed(year));
  const orders = ORDERS.map(([name, problem]) => {
    const states = evenSequence(problem)?.states ?? 0;
    return [name, median(Array.from({ length: ROUNDS }, () => timed(() => evenSequence(problem)))), states] as const;
  });
  return [
    {
      name: 'A year of feeding for three enclosures',
      rows: [
        ['first run in a process', first.toFixed(1), 'ms'],
        ['median of the next', median(rounds).toFixed(1), 'ms'],
        ['feeds', String(year().feeding.length), 'feeds'],
        ...orders.map(([name, ms, states]): Row => [`${name} (${states} states)`, ms.toFixed(2), 'ms']),
      ],
      beside: ORDERS.map(([name, problem]) => besideHighs(name, problem)),
    },
  ];
}

/** All levels here, the worst deviation alone there. */
function besideHighs(name: string, problem: EvenProblem): Beside {
  const ours = leastMs(() => evenSequence(problem), ROUNDS);
  const worst = evenSequence(problem)?.worst;
  const start = performance.now();
  const general = leastWorstDeviation(problem, GENERAL_SOLVER_SECONDS);
  const generalMs = performance.now() - start;
  if (general.isProven && general.worst !== worst) throw new Error(`${worst} here, ${general.worst} in HiGHS`);
  const isMore = general.isProven ? '' : 'more than ';
  return {
    work: `${name}, least worst deviation (here with pairs and squares too)`,
    ours: `${shown(ours)} ms`,
    other: 'HiGHS',
    takes: `${isMore}${shown(generalMs)} ms${general.isProven ? '' : ', not proven by then'}`,
    ratio: `${isMore}${times(generalMs, ours)}`,
  };
}

/** Dustings of a feed every day over two feeders, with days apart: an order of four weeks, and one that runs once over a year. */
const ORDERS: readonly (readonly [string, EvenProblem])[] = [
  ['dustings of 28 feeds that repeat', dustings(28, 28)],
  ['dustings of 365 feeds that run once', dustings(365, null)],
];

function dustings(length: number, cycleDays: number | null): EvenProblem {
  const vitamins = Math.round(length / 14);
  const counts = [vitamins, vitamins, length - 2 * vitamins];
  return {
    rates: counts,
    denominator: length,
    counts,
    spacing: {
      days: Array.from({ length }, (_, day) => day),
      apart: [
        [3, 3, 0],
        [3, 7, 0],
        [0, 0, 0],
      ],
      notBefore: [0, 0, 0],
      cycleDays,
    },
    pairing: { groups: Array.from({ length }, (_, day) => (day % 4 === 2 ? 1 : 0)), rates: [3, 1], denominator: 4 },
  };
}
