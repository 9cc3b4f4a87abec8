/** Sets of entries over made-up kinds of days: each kind has a number, entries are a number, and the shortfall is how far they are apart. */
import { describe, expect, it } from 'vitest';
import type { UnitSpan } from '../../../../../src/solve/mist/mist-unit.ts';
import { chooseSets } from '../../../../../src/solve/mist/sets/mist-sets.ts';
import type { SetSolution, SetSolver } from '../../../../../src/solve/mist/sets/set-solution.ts';

const DAYS = 10;

interface NumberSolution extends SetSolution {
  readonly value: number;
}

class Numbers implements SetSolver<NumberSolution> {
  readonly #exceeded: readonly unknown[];
  readonly #of: ReadonlyMap<UnitSpan['spans'], number>;
  constructor(of: ReadonlyMap<UnitSpan['spans'], number>, exceeded: readonly unknown[]) {
    this.#exceeded = exceeded;
    this.#of = of;
  }
  solve(spans: readonly UnitSpan[]) {
    const wanted = spans.map((span) => this.#of.get(span.spans) ?? 0);
    return this.#with((Math.min(...wanted) + Math.max(...wanted)) / 2, spans);
  }
  judge(spans: readonly UnitSpan[], like: NumberSolution) {
    return this.#with(like.value, spans);
  }
  #with(value: number, spans: readonly UnitSpan[]) {
    const shortfallOf = (span: UnitSpan) => Math.abs(value - (this.#of.get(span.spans) ?? 0));
    return { value, exceeded: this.#exceeded, shortfall: Math.max(...spans.map(shortfallOf)), shortfallOf };
  }
}

function chosen(
  wanted: readonly number[],
  most: number,
  mayBegin: (day: number) => boolean = () => true,
  exceeded: readonly unknown[] = [],
) {
  const spans = wanted.map(
    (_, i): UnitSpan => ({ fromDay: i * DAYS, toDay: (i + 1) * DAYS - 1, spans: [], powered: null }),
  );
  const own = spans.map((span) => ({ ...span, spans: [] as UnitSpan['spans'] }));
  const solver = new Numbers(new Map(own.map((span, i) => [span.spans, wanted[i] ?? 0])), exceeded);
  const result = chooseSets<NumberSolution>(solver, own, mayBegin, most);
  return {
    begins: result.sets.map(({ fromDay }) => fromDay),
    ends: result.sets.map(({ toDay }) => toDay),
    worst: Math.max(...result.sets.map(({ solution }) => solution.shortfall)),
    reached: result.reached,
    weighed: [result.worst, result.alone],
  };
}

/** The fewest runs of neighbours whose half-width is within 0.05, tried one by one. */
function fewest(wanted: readonly number[]): number {
  const fits = (from: number, to: number) => {
    const own = wanted.slice(from, to);
    return (Math.max(...own) - Math.min(...own)) / 2 <= 0.05 + 1e-9;
  };
  const best = [0];
  for (let to = 1; to <= wanted.length; to++) {
    best[to] = Math.min(
      ...Array.from({ length: to }, (_, from) => (fits(from, to) ? (best[from] ?? 0) + 1 : Number.POSITIVE_INFINITY)),
    );
  }
  return best[wanted.length] ?? 0;
}

describe('sets of mists', () => {
  it('are one where one serves all days', () => {
    expect(chosen([1, 1.05, 1.1, 1], 4).begins).toEqual([0]);
  });

  it('are as few as will do, on every run of numbers tried', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const wanted = Array.from({ length: 7 }, (_, i) => ((seed * (i + 3) * 7919) % 17) * 0.04);
      const { begins, worst, reached } = chosen(wanted, 7);
      expect(reached).toBe(true);
      expect(worst).toBeLessThanOrEqual(0.05 + 1e-9);
      expect(begins.length).toBe(fewest(wanted));
    }
  });

  it('cover every day once', () => {
    const { begins, ends } = chosen([1, 1, 2, 2, 3, 1], 6);
    expect(begins[0]).toBe(0);
    expect(ends.at(-1)).toBe(59);
    for (const [i, end] of ends.slice(0, -1).entries()) expect(begins[i + 1]).toBe(end + 1);
  });

  it('say so where more would be needed, and never exceed what is allowed', () => {
    const { begins, reached } = chosen([1, 2, 3, 4, 5, 6], 3);
    expect(reached).toBe(false);
    expect(begins.length).toBeLessThanOrEqual(3);
  });

  it('weigh a limit that every day exceeds the same in sets and alone', () => {
    expect(chosen([1, 1.5, 9], 2, () => true, ['gap']).weighed).toEqual([1000.25, 1000]);
    expect(chosen([1, 2, 3, 4], 1, () => true, ['gap']).weighed).toEqual([1001.5, 1000]);
  });

  it('begin only on allowed days, and then serve the days on both sides', () => {
    const { begins, reached } = chosen([1, 1, 2, 2], 4, (day) => day === 15);
    expect(begins.every((day) => day === 0 || day === 15)).toBe(true);
    expect(reached).toBe(false);
    expect(chosen([1, 1, 2, 2], 4, (day) => day === 20).begins).toEqual([0, 20]);
  });
});
