import { describe, expect, it } from 'vitest';
import { gather } from '../../../src/solve/chores/gather.ts';
import type { Chain } from '../../../src/solve/chores/gather-problem.ts';
import { drawInstance, type Instance } from './chore-instances.ts';

/** Every way to place a chain, by plain recursion. */
function everyPlacing(chain: Chain): readonly (readonly number[])[] {
  let placings: readonly (readonly number[])[] = [[]];
  for (const { days, gapAtMost } of chain)
    placings = placings.flatMap((before) =>
      days
        .filter((day) => {
          const last = before.at(-1);
          return last === undefined || (day > last && (gapAtMost === null || day - last <= gapAtMost));
        })
        .map((day) => [...before, day]),
    );
  return placings;
}

type Value = readonly [
  newDays: number,
  offPreferred: number,
  shift: number,
  newSet: readonly number[],
  dates: readonly number[],
];

function valueAsked(instance: Instance, placing: readonly (readonly number[])[]): Value {
  const all = placing.flat();
  const fresh = [...new Set(all.filter((day) => !instance.hasWork(day)))].sort((a, b) => a - b);
  const off = all.filter((day) => !instance.isPreferred(day)).length;
  const dues = instance.chains.flatMap((chain) => chain.map(({ due }) => due));
  const shift = all.reduce((sum, day, index) => sum + Math.abs(day - (dues[index] ?? 0)), 0);
  return [fresh.length, off, shift, fresh, all];
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((day, index) => day !== b[index]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

function compareValues(a: Value, b: Value): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || compareLists(a[3], b[3]) || compareLists(a[4], b[4]);
}

function bestOfAll(instance: Instance): Value {
  const perChain = instance.chains.map(everyPlacing);
  let best: Value | null = null;
  const walk = (chosen: readonly (readonly number[])[]): void => {
    const next = perChain[chosen.length];
    if (!next) {
      const value = valueAsked(instance, chosen);
      if (!best || compareValues(value, best) < 0) best = value;
      return;
    }
    for (const placing of next) walk([...chosen, placing]);
  };
  walk([]);
  if (!best) throw new Error('no way at all');
  return best;
}

function ways(instance: Instance): number {
  return instance.chains.reduce((product, chain) => product * chain.reduce((all, { days }) => all * days.length, 1), 1);
}

describe('gathering against every way there is', () => {
  const seeds = Array.from({ length: 420 }, (_, index) => 1000 + index);
  const instances = seeds.map((seed) => drawInstance(seed, 24, 3)).filter((each) => ways(each) < 20_000);

  it('finds the best of all ways, ties included, on every small instance', () => {
    let withNewDays = 0;
    for (const instance of instances) {
      const gathered = gather(instance);
      expect(gathered.isProven).toBe(true);
      const found = valueAsked(instance, gathered.days);
      expect(found).toEqual(bestOfAll(instance));
      expect(gathered.newDays).toEqual(found[3]);
      if (found[0] > 1) withNewDays++;
    }
    console.info(
      `gathering: ${instances.length} instances equal exhaustion, ${withNewDays} of them with several new days`,
    );
    expect(instances.length).toBeGreaterThan(200);
    expect(withNewDays).toBeGreaterThan(120);
  });
});
