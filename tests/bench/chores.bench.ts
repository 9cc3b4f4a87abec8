/** How long it takes to gather a year of chores, with work on every day and with work on one day a week. */
import { gather } from '../../src/solve/chores/gather.ts';
import type { Chain, GatherProblem } from '../../src/solve/chores/gather-problem.ts';
import { defaultLeewayDays } from '../../src/solve/chores/leeway.ts';
import { feasibleChain } from '../../src/solve/chores/place-chain.ts';

const DAYS = 365;
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

/** A year of eight chores. */
export async function run(): Promise<
  readonly { readonly name: string; readonly rows: readonly (readonly [string, string, string])[] }[]
> {
  const cases: readonly (readonly [string, GatherProblem])[] = [
    ['year, work on every day', problemOf(() => true)],
    ['year, work on one day a week', problemOf((day) => day % 7 === 2)],
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
  return [{ name: 'gathering of chores', rows }];
}
