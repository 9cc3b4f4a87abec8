import { describe, expect, it } from 'vitest';
import type { EvenProblem } from '../../../src/science/even-problem.ts';
import { evenSequence, pairLevelOf } from '../../../src/science/even-sequence.ts';
import { bestOfAll } from './every-sequence.ts';

/** Numbers from a seed, the same everywhere (Park and Miller's generator). */
function chooser(seed: number): (from: number, to: number) => number {
  let state = seed;
  return (from, to) => {
    state = (state * 48_271) % 2_147_483_647;
    return from + (state % (to - from + 1));
  };
}

interface Sides {
  readonly spacing: boolean;
  readonly around: boolean;
  readonly pairs: boolean;
  readonly carried: boolean;
}

function drawn(seed: number, sides: Sides): EvenProblem {
  const choose = chooser(seed + 1);
  for (let turn = 0; turn < 5; turn++) choose(0, 1);
  const items = choose(2, 4);
  const counts = Array.from({ length: items }, () => choose(1, items === 4 ? 2 : 3));
  const length = counts.reduce((all, count) => all + count, 0);
  const days: number[] = [];
  let day = 100;
  for (let place = 0; place < length; place++) {
    day += choose(0, 3);
    days.push(day);
  }
  const apart = counts.map(() => counts.map(() => 0));
  for (let a = 0; a < items - 1; a++)
    for (let b = a; b < items - 1; b++) {
      const apartDays = choose(0, 5);
      for (const [one, other] of [
        [a, b],
        [b, a],
      ] as const) {
        const row = apart[one];
        if (row) row[other] = apartDays;
      }
    }
  const notBefore = counts.map(() => 100 + choose(0, 2) * choose(0, 2));
  const cycleDays = sides.around ? (days.at(-1) ?? 0) - (days[0] ?? 0) + choose(1, 4) : null;
  const groups = choose(2, 3);
  const shares = Array.from({ length: groups }, () => choose(1, 3));
  const ahead = counts.map(() => choose(-length, length));
  const over = ahead.slice(1).reduce((all, value) => all + value, 0);
  return {
    rates: counts,
    denominator: length,
    counts,
    ...(sides.carried ? { carried: [-over, ...ahead.slice(1)] } : {}),
    ...(sides.spacing ? { spacing: { days, apart, notBefore, cycleDays } } : {}),
    ...(sides.pairs
      ? {
          pairing: {
            groups: counts.flatMap((count) => Array.from({ length: count }, () => choose(0, groups - 1))),
            rates: shares,
            denominator: shares.reduce((all, share) => all + share, 0),
          },
        }
      : {}),
  };
}

const FAMILIES: readonly (readonly [string, Sides])[] = [
  ['without sides', { spacing: false, around: false, pairs: false, carried: false }],
  ['going on from deviations', { spacing: false, around: false, pairs: false, carried: true }],
  ['with days apart', { spacing: true, around: false, pairs: false, carried: false }],
  ['with days apart around a cycle', { spacing: true, around: true, pairs: false, carried: false }],
  ['with pairs', { spacing: false, around: false, pairs: true, carried: false }],
  ['with all of them', { spacing: true, around: true, pairs: true, carried: true }],
];

describe('the solver against every sequence there is', () => {
  it.each(FAMILIES)('%s', (name, sides) => {
    let without = 0;
    let compared = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const problem = drawn(seed * 7919, sides);
      const best = bestOfAll(problem);
      const found = evenSequence(problem);
      if (!best) without++;
      expect(found === null, `seed ${seed}: one finds none`).toBe(best === null);
      if (!best || !found) continue;
      compared++;
      const said = `seed ${seed}: ${JSON.stringify(problem)}`;
      expect(BigInt(found.worst), said).toBe(best.worst);
      expect(found.pairLevel, said).toBe(best.pairLevel);
      expect(BigInt(found.sumOfSquares), said).toBe(best.squares);
      expect(found.items, said).toEqual(best.items);
      expect(found.gap).toBeNull();
      expect(pairLevelOf(problem, found.items)).toBe(best.pairLevel);
    }
    console.info(`${name}: ${compared} problems alike, ${without} without a sequence`);
    expect(compared).toBeGreaterThan(15);
  });

  it('reports a gap, and still keeps apart, where its limit of states is reached', () => {
    let cut = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const problem = drawn(seed * 7919, { spacing: true, around: false, pairs: true, carried: false });
      const best = bestOfAll(problem);
      const found = evenSequence(problem, 3);
      if (!best || !found) continue;
      expect(found.worst).toBeGreaterThanOrEqual(Number(best.worst));
      const { days = [], apart = [] } = problem.spacing ?? {};
      const isKept = found.items.every((a, i) =>
        found.items.every((b, j) => j <= i || (days[j] ?? 0) - (days[i] ?? 0) >= (apart[a]?.[b] ?? 0)),
      );
      expect(isKept).toBe(true);
      if (found.gap === null) continue;
      expect(found.gap.worstAtLeast).toBeLessThanOrEqual(Number(best.worst));
      cut++;
    }
    expect(cut).toBeGreaterThan(10);
  });
});
