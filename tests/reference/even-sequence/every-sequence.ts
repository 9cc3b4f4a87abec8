/** Every sequence of a small problem, judged by its definition in exact fractions: coded apart from the solver. */
import type { EvenProblem } from '../../../src/science/even-problem.ts';

export interface Judged {
  readonly items: readonly number[];
  /** Times the denominator. */
  readonly worst: bigint;
  readonly pairLevel: number;
  readonly squares: bigint;
}

/** Returns the best sequence by worst deviation, pair level, squares and order, or null where none keeps apart. */
export function bestOfAll(problem: EvenProblem): Judged | null {
  let best: Judged | null = null;
  for (const items of arrangements(problem.counts, [])) {
    if (!isApart(problem, items)) continue;
    const judged = judge(problem, items);
    if (best === null || isBetter(judged, best)) best = judged;
  }
  return best;
}

function* arrangements(left: readonly number[], placed: readonly number[]): Generator<readonly number[]> {
  if (left.every((count) => count === 0)) {
    yield placed;
    return;
  }
  for (const [item, count] of left.entries())
    if (count > 0) {
      const rest = left.map((each, i) => (i === item ? each - 1 : each));
      yield* arrangements(rest, [...placed, item]);
    }
}

function isApart({ spacing }: EvenProblem, items: readonly number[]): boolean {
  if (!spacing) return true;
  const turns = spacing.cycleDays === null ? [0] : [0, spacing.cycleDays];
  const given = turns.flatMap((turn) => items.map((item, i) => ({ item, day: (spacing.days[i] ?? 0) + turn })));
  if (items.some((item, i) => (spacing.days[i] ?? 0) < (spacing.notBefore[item] ?? 0))) return false;
  return given.every((a, i) =>
    given.every((b, j) => j <= i || Math.abs(b.day - a.day) >= (spacing.apart[a.item]?.[b.item] ?? 0)),
  );
}

function judge({ rates, denominator, carried, pairing }: EvenProblem, items: readonly number[]): Judged {
  let worst = 0n;
  let squares = 0n;
  let pairWorst = 0;
  rates.forEach((_, item) => {
    const start = BigInt(carried?.[item] ?? 0);
    if (abs(start) > worst) worst = abs(start);
  });
  items.forEach((_, place) => {
    const prefix = items.slice(0, place + 1);
    rates.forEach((rate, item) => {
      const stood = prefix.filter((each) => each === item).length;
      const off = BigInt(stood * denominator + (carried?.[item] ?? 0)) - BigInt(prefix.length) * BigInt(rate);
      if (abs(off) > worst) worst = abs(off);
      squares += off * off;
      pairing?.rates.forEach((share, group) => {
        const both = prefix.filter((each, i) => each === item && pairing.groups[i] === group).length;
        const due = (prefix.length * rate * share) / (denominator * pairing.denominator);
        pairWorst = Math.max(pairWorst, Math.abs(both - due));
      });
    });
  });
  return { items, worst, squares, pairLevel: Math.max(0, Math.ceil(pairWorst / 0.5 - 1e-6)) };
}

function abs(value: bigint): bigint {
  return value < 0n ? -value : value;
}

function isBetter(a: Judged, b: Judged): boolean {
  if (a.worst !== b.worst) return a.worst < b.worst;
  if (a.pairLevel !== b.pairLevel) return a.pairLevel < b.pairLevel;
  if (a.squares !== b.squares) return a.squares < b.squares;
  const at = a.items.findIndex((item, i) => item !== b.items[i]);
  return at >= 0 && (a.items[at] ?? 0) < (b.items[at] ?? 0);
}
