/** How long it takes to gather a year of chores, with work on every day and with work on one day a week. */
import { gather } from '../../src/solve/chores/gather.ts';
import type { Chain, GatherProblem } from '../../src/solve/chores/gather-problem.ts';
import { defaultLeewayDays } from '../../src/solve/chores/leeway.ts';
import { feasibleChain } from '../../src/solve/chores/place-chain.ts';
import { gatheredWithin } from '../reference/chores/mixed-integer.ts';
import { leastMs, shown, type Table, times } from './figures.ts';

const DAYS = 365;
const GENERAL_SOLVER_SECONDS = 20;
const INTERVALS = [7, 7, 10, 14, 30, 30, 91, 182];

function chainOf(interval: number, start: number): Chain {
  const leeway = defaultLeewayDays(interval);
  const dues = Array.from({ length: Math.ceil((DAYS - start) / interval) }, (_, index) => start + index * interval);
  const chain = dues.map((due, index) => ({
    due,
    days: Array.from({ length: 2 * leeway + 1 }, (_, at) => due - leeway + at).filter((day) => day >= 0 && day < DAYS),
    gapAtMost: index === 0 ? null : interval + leeway,
  }));
  return feasibleChain(chain, null);
}

function problemOf(hasWork: (day: number) => boolean): GatherProblem {
  return {
    chains: INTERVALS.map((interval, index) => chainOf(interval, index)),
    hasWork,
    isPreferred: (day) => day % 7 === 5,
  };
}

/** A year of eight chores; the one with a day of work a week is given to a general solver too. */
export async function run(): Promise<readonly Table[]> {
  const weekly = problemOf((day) => day % 7 === 2);
  const cases: readonly (readonly [string, GatherProblem])[] = [
    ['year, work on every day', problemOf(() => true)],
    ['year, work on one day a week', weekly],
    ['year, no work anyway', problemOf(() => false)],
  ];
  const rows = cases.map(([label, problem]): [string, string, string] => {
    const from = performance.now();
    const { newDays, isProven } = gather(problem);
    return [
      `${label}: ${newDays.length} further days${isProven ? '' : ', not proven'}`,
      (performance.now() - from).toFixed(1),
      'ms',
    ];
  });
  const ours = leastMs(() => gather(weekly), 3);
  const days = gather(weekly).newDays.length;
  const start = performance.now();
  const general = gatheredWithin(weekly, GENERAL_SOLVER_SECONDS);
  const generalMs = performance.now() - start;
  if (general.newDays !== null && general.newDays !== days)
    throw new Error(`${days} further days here, ${general.newDays} in HiGHS`);
  const isMore = general.isProven ? '' : 'more than ';
  return [
    {
      name: 'Gathering of chores',
      rows: [...rows, ['HiGHS, work on one day a week', generalMs.toFixed(0), 'ms']],
      beside: [
        {
          work: `a year of eight chores gathered: fewest further days (${days}), then nearest to preferred and due days`,
          ours: `${shown(ours)} ms`,
          other: 'HiGHS, one program after the other',
          takes: `${isMore}${shown(generalMs)} ms${general.isProven ? '' : ', not proven by then'}`,
          ratio: `${isMore}${times(generalMs, ours)}`,
        },
      ],
    },
  ];
}
