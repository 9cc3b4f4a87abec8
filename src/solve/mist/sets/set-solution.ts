/** What sets of entries are made of, and how they are compared. */
import type { UnitSpan } from '../mist-unit.ts';

/** So far may sets fall behind conditions solved alone. */
export const WITHIN = 0.05;
/** A limit exceeded weighs more than any shortfall. */
export const LIMIT_WEIGHT = 1000;

/** What a set of entries, however it is switched, must tell to be compared. */
export interface SetSolution {
  readonly exceeded: readonly unknown[];
  /** The worst over all spans that it was solved for. */
  readonly shortfall: number;
  /** Of one of those spans. */
  readonly shortfallOf: (span: UnitSpan) => number;
}

export interface SetSolver<S extends SetSolution> {
  /** Returns the best entries for all these spans at once; `untilMet` stops where all targets are met. `near` is worth a look. */
  solve(spans: readonly UnitSpan[], options?: { readonly untilMet?: boolean; readonly near?: S }): S;
  /** Returns how entries that were found for some spans do under others; null where they cannot run there. */
  judge(spans: readonly UnitSpan[], like: S): S | null;
}

export interface ChosenSet<S> {
  readonly fromDay: number;
  readonly toDay: number;
  /** Those that fall into its days, cut to them. */
  readonly spans: readonly UnitSpan[];
  readonly solution: S;
}

export interface ChosenSets<S> {
  readonly sets: readonly ChosenSet<S>[];
  /** Badness of the worst condition solved alone; null where one set did so well that nobody had to ask. */
  readonly alone: number | null;
  /** Badness of the worst set. */
  readonly worst: number;
  /** False where more sets would have been needed. */
  readonly reached: boolean;
}

/** Returns how bad a solution is: exceeded limits first, then the shortfall. */
export function badness({ exceeded, shortfall }: SetSolution): number {
  return exceeded.length * LIMIT_WEIGHT + shortfall;
}

/** Returns whether a set falls no farther behind than it may. */
export function fits(cost: number): boolean {
  return cost <= WITHIN + 1e-9;
}

/** Returns spans cut to [fromDay, untilDay); null is the end of all. */
export function spansBetween(
  spans: readonly UnitSpan[],
  fromDay: number | null,
  untilDay: number | null,
): readonly UnitSpan[] {
  const from = fromDay ?? Number.NEGATIVE_INFINITY;
  const last = untilDay === null ? Number.POSITIVE_INFINITY : untilDay - 1;
  return spans
    .filter((span) => span.toDay >= from && span.fromDay <= last)
    .map((span) => ({ ...span, fromDay: Math.max(from, span.fromDay), toDay: Math.min(last, span.toDay) }));
}

/** Returns a set over the spans between two days; null: from the first, to the last. */
export function setOf<S>(
  spans: readonly UnitSpan[],
  fromDay: number | null,
  untilDay: number | null,
  solution: S,
): ChosenSet<S> {
  const own = spansBetween(spans, fromDay, untilDay);
  return { fromDay: own[0]?.fromDay ?? 0, toDay: own.at(-1)?.toDay ?? 0, spans: own, solution };
}
