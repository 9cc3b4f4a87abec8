/** Small gathering problems of our own making, drawn from a seed. */
import type { Chain, GatherProblem } from '../../../src/solve/chores/gather-problem.ts';
import { feasibleChain } from '../../../src/solve/chores/place-chain.ts';
import { Draw } from '../../property/household-generator.ts';

export interface Instance extends GatherProblem {
  readonly days: number;
  readonly work: readonly boolean[];
}

/** Returns chains of one to four chores over some weeks, with work on few days. */
export function drawInstance(seed: number, days: number, mostChains: number): Instance {
  const draw = new Draw(seed);
  const share = draw.one([0, 0.1, 0.2, 0.4]);
  const work = Array.from({ length: days }, () => draw.chance(share));
  const preferred = draw.whole(0, 6);
  const chains = Array.from({ length: draw.whole(1, mostChains) }, () => drawChain(draw, days));
  return { days, work, chains, hasWork: (day) => work[day] ?? false, isPreferred: (day) => day % 7 === preferred };
}

function drawChain(draw: Draw, days: number): Chain {
  const interval = draw.whole(4, 14);
  const leeway = draw.whole(0, Math.min(5, interval));
  const first = draw.whole(0, interval);
  const dues: number[] = [];
  for (let due = first; due < days; due += interval) dues.push(due);
  const chain = dues.map((due, index) => {
    const open = [];
    for (let day = due - leeway; day <= due + leeway; day++)
      if (day >= 0 && day < days && (day === due || draw.chance(0.9))) open.push(day);
    return { due, days: open, gapAtMost: index === 0 ? null : interval + leeway };
  });
  return feasibleChain(chain, null);
}
