/**
 * Which entries hold from when to when: the fewest sets whose worst shortfall is within 0.05 of the worst over conditions solved alone;
 * where the allowed number does not reach that, that many with the least worst. Among equals the least sum over days, then the latest
 * first boundary.
 */
import type { UnitSpan } from './mist-unit.ts';

/** So far may sets fall behind conditions solved alone. */
const WITHIN = 0.05;
/** A limit exceeded weighs more than any shortfall. */
const LIMIT_WEIGHT = 1000;

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
  /** Worst over conditions solved alone; null where one set did so well that nobody had to ask. */
  readonly alone: number | null;
  readonly worst: number;
  /** False where more sets would have been needed. */
  readonly reached: boolean;
}

/** A day on which a set may begin: the set before covers spans up to `before`, the set itself from `after` on. */
interface Cut {
  readonly day: number;
  readonly before: number;
  readonly after: number;
}

/** Returns how bad a solution is: exceeded limits first, then the shortfall. */
export function badness({ exceeded, shortfall }: SetSolution): number {
  return exceeded.length * LIMIT_WEIGHT + shortfall;
}

/**
 * Returns the sets over all spans.
 *
 * @param mayBegin whether a later set may begin on a day
 * @param most sets allowed, at least 1
 */
export function chooseSets<S extends SetSolution>(
  solver: SetSolver<S>,
  spans: readonly UnitSpan[],
  mayBegin: (day: number) => boolean,
  most: number,
): ChosenSets<S> {
  const whole = solver.solve(spans);
  const single = [setOf(spans, null, null, whole)];
  const worst = badness(whole);
  if (worst <= WITHIN + 1e-9 || spans.length < 2)
    return { sets: single, alone: spans.length < 2 ? worst : null, worst, reached: true };
  const alone = worstAlone(solver, spans, whole, worst - WITHIN);
  if (worst <= alone + WITHIN + 1e-9 || most < 2)
    return { sets: single, alone, worst, reached: worst <= alone + WITHIN + 1e-9 };
  const split = new SetSplit(solver, spans, cutsOf(spans, mayBegin));
  return split.choose(alone, most) ?? { sets: single, alone, worst, reached: false };
}

/**
 * Returns the worst over spans solved alone, the hardest first; stops where it has come to `enough`. A span that does better under the
 * common entries than another does alone need not be asked.
 */
function worstAlone<S extends SetSolution>(
  solver: SetSolver<S>,
  spans: readonly UnitSpan[],
  whole: S,
  enough: number,
): number {
  const ranked = spans.map((span) => ({ span, under: whole.shortfallOf(span) })).sort((a, b) => b.under - a.under);
  const limitsHold = whole.exceeded.length === 0;
  let worst = 0;
  for (const { span, under } of ranked) {
    if (worst >= enough - 1e-9 || (limitsHold && under <= worst)) break;
    worst = Math.max(worst, badness(solver.solve([span], { untilMet: true, near: whole })));
  }
  return worst;
}

/** The latest allowed day inside each span, and each span's first day where it is allowed. */
function cutsOf(spans: readonly UnitSpan[], mayBegin: (day: number) => boolean): readonly Cut[] {
  return spans.flatMap(({ fromDay, toDay }, index): Cut[] => {
    const cuts: Cut[] = [];
    if (index > 0 && mayBegin(fromDay)) cuts.push({ day: fromDay, before: index - 1, after: index });
    const next = spans[index + 1];
    if (next && mayBegin(next.fromDay)) return cuts;
    for (let day = toDay; day > fromDay; day--) {
      if (!mayBegin(day)) continue;
      if (next) cuts.push({ day, before: index, after: index });
      break;
    }
    return cuts;
  });
}

/** Days [from cut, to cut) under one set. */
class SetSplit<S extends SetSolution> {
  readonly #solver: SetSolver<S>;
  readonly #spans: readonly UnitSpan[];
  readonly #cuts: readonly Cut[];

  constructor(solver: SetSolver<S>, spans: readonly UnitSpan[], cuts: readonly Cut[]) {
    this.#solver = solver;
    this.#spans = spans;
    this.#cuts = cuts;
  }

  choose(alone: number, most: number): ChosenSets<S> | null {
    const limit = alone + WITHIN + 1e-9;
    for (let count = 2; count <= most; count++) {
      const path = this.#best(count, limit);
      if (path) return this.#chosen(path, alone, true);
    }
    const path = this.#leastWorst(most);
    return path && this.#chosen(path, alone, false);
  }

  /** Solution of the days from one cut (-1: the plan's beginning) to another (cuts.length: its end). */
  #solution(from: number, to: number): S | null {
    const first = this.#cuts[from]?.after ?? 0;
    const last = this.#cuts[to]?.before ?? this.#spans.length - 1;
    if (last < first) return null;
    return this.#solver.solve(this.#spans.slice(first, last + 1));
  }

  /** The best way into exactly so many sets, none worse than the limit: least sum over days, then the latest first boundary. */
  #best(count: number, limit: number): readonly number[] | null {
    const ends = this.#cuts.length;
    const reach = this.#farthest(count, limit);
    if (!reach) return null;
    let paths: { readonly cuts: readonly number[]; readonly sum: number }[] = [{ cuts: [], sum: 0 }];
    for (let set = 1; set <= count; set++) {
      const byEnd = new Map<number, { readonly cuts: readonly number[]; readonly sum: number }>();
      for (const path of paths) {
        const from = path.cuts.at(-1) ?? -1;
        const [least, farthest] = set === count ? [ends, ends] : [reach.least[set] ?? 0, reach.most[set] ?? ends - 1];
        for (let to = Math.max(from + 1, least); to <= farthest; to++) {
          const solution = this.#solution(from, to);
          if (!solution || badness(solution) > limit) continue;
          const next = { cuts: [...path.cuts, to], sum: path.sum + this.#sumOver(from, to, solution) };
          const known = byEnd.get(to);
          if (!known || this.#isBetter(next, known)) byEnd.set(to, next);
        }
      }
      paths = [...byEnd.values()];
    }
    return paths[0]?.cuts ?? null;
  }

  #isBetter(
    a: { readonly cuts: readonly number[]; readonly sum: number },
    b: { readonly cuts: readonly number[]; readonly sum: number },
  ): boolean {
    if (Math.abs(a.sum - b.sum) > 1e-9) return a.sum < b.sum;
    return (this.#cuts[a.cuts[0] ?? 0]?.day ?? 0) > (this.#cuts[b.cuts[0] ?? 0]?.day ?? 0);
  }

  /** How far each boundary can lie at most (greedily from the left) and at least (from the right); null where so many sets do not reach. */
  #farthest(
    count: number,
    limit: number,
  ): { readonly most: readonly number[]; readonly least: readonly number[] } | null {
    const ends = this.#cuts.length;
    const fits = (from: number, to: number): boolean => {
      const solution = this.#solution(from, to);
      return solution !== null && badness(solution) <= limit;
    };
    const most: number[] = [-1];
    for (let set = 1; set <= count; set++) {
      const from = most[set - 1] ?? -1;
      let to = from;
      while (to < ends && fits(from, to + 1)) to++;
      if (to === from) return null;
      most.push(to);
    }
    if ((most[count] ?? -1) < ends) return null;
    const least: number[] = [];
    least[count] = ends;
    for (let set = count - 1; set >= 1; set--) {
      const to = least[set + 1] ?? ends;
      let from = to;
      while (from > 0 && fits(from - 1, to)) from--;
      least[set] = from;
    }
    return { most: most.map((each) => Math.min(each, ends - 1)), least };
  }

  /** Cuts again and again where the worst set gains most. */
  #leastWorst(most: number): readonly number[] | null {
    let path: number[] = [];
    for (let count = 2; count <= most; count++) {
      const sets = [-1, ...path, this.#cuts.length];
      let best: { readonly cut: number; readonly worst: number } | null = null;
      for (let cut = 0; cut < this.#cuts.length; cut++) {
        if (path.includes(cut)) continue;
        const cuts = [...sets, cut].sort((a, b) => a - b);
        const worst = this.#worstOf(cuts);
        if (worst !== null && (!best || worst < best.worst - 1e-9)) best = { cut, worst };
      }
      const now = this.#worstOf(sets);
      if (!best || (now !== null && best.worst >= now - 1e-9)) break;
      path = [...path, best.cut].sort((a, b) => a - b);
    }
    return path.length > 0 ? path : null;
  }

  #worstOf(cuts: readonly number[]): number | null {
    let worst = 0;
    for (let i = 1; i < cuts.length; i++) {
      const solution = this.#solution(cuts[i - 1] ?? -1, cuts[i] ?? 0);
      if (!solution) return null;
      worst = Math.max(worst, badness(solution));
    }
    return worst;
  }

  /** Shortfalls over the days between two cuts. */
  #sumOver(from: number, to: number, solution: S): number {
    let sum = 0;
    for (const span of spansBetween(this.#spans, this.#dayOf(from), this.#dayOf(to)))
      sum += (span.toDay - span.fromDay + 1) * solution.shortfallOf(span);
    return sum;
  }

  #dayOf(cut: number): number | null {
    return this.#cuts[cut]?.day ?? null;
  }

  #chosen(path: readonly number[], alone: number, reached: boolean): ChosenSets<S> | null {
    const cuts = [-1, ...path, this.#cuts.length];
    const sets = cuts.slice(1).flatMap((to, index) => {
      const from = cuts[index] ?? -1;
      const solution = this.#solution(from, to);
      return solution ? [setOf(this.#spans, this.#dayOf(from), this.#dayOf(to), solution)] : [];
    });
    return { sets, alone, worst: Math.max(...sets.map(({ solution }) => badness(solution))), reached };
  }
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

function setOf<S>(
  spans: readonly UnitSpan[],
  fromDay: number | null,
  untilDay: number | null,
  solution: S,
): ChosenSet<S> {
  const own = spansBetween(spans, fromDay, untilDay);
  return { fromDay: own[0]?.fromDay ?? 0, toDay: own.at(-1)?.toDay ?? 0, spans: own, solution };
}
