/**
 * Which entries hold from when to when: the fewest sets whose worst shortfall is within 0.05 of the worst over conditions solved alone,
 * and none of which exceeds a limit for a condition that holds it alone; where the allowed number does not reach that, that many with the
 * least worst. Among equals the least sum over days, then the latest first boundary. Where some condition cannot meet its targets even
 * alone, each is held against itself alone: a hopeless summer is no reason to leave the winter dry.
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

/** Returns how bad a solution is: exceeded limits first, then the shortfall. */
function badness({ exceeded, shortfall }: SetSolution): number {
  return exceeded.length * LIMIT_WEIGHT + shortfall;
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

/** How spans do by themselves, in their order. */
interface Alone {
  /** What each is held against. */
  readonly shortfalls: readonly number[];
  /** Limits that each must exceed. */
  readonly exceeded: readonly number[];
  readonly worst: number;
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
  if (spans.length < 2) return { sets: single, alone: whole.shortfall, worst: whole.shortfall, reached: true };
  if (whole.exceeded.length === 0 && fits(whole.shortfall))
    return { sets: single, alone: null, worst: whole.shortfall, reached: true };
  const alone = aloneOf(solver, spans, whole);
  const split = new SetSplit(solver, spans, cutsOf(spans, mayBegin), alone, whole);
  const worst = split.cost(whole, 0, spans.length - 1);
  if (fits(worst) || most < 2)
    return { sets: single, alone: alone.worst, worst: whole.shortfall, reached: fits(worst) };
  return split.choose(most) ?? { sets: single, alone: alone.worst, worst: whole.shortfall, reached: false };
}

/** Returns how spans do alone; one that is near enough under the common entries need not be asked. */
function aloneOf<S extends SetSolution>(solver: SetSolver<S>, spans: readonly UnitSpan[], whole: S): Alone {
  const holds = whole.exceeded.length === 0;
  const solved = spans.map((span) => {
    const under = whole.shortfallOf(span);
    if (holds && under <= WITHIN) return { shortfall: under, exceeded: 0 };
    const { shortfall, exceeded } = solver.solve([span], { untilMet: true, near: whole });
    return { shortfall, exceeded: exceeded.length };
  });
  const worst = Math.max(...solved.map(({ shortfall }) => shortfall));
  const allMeet = worst <= WITHIN + 1e-9;
  return {
    shortfalls: solved.map(({ shortfall }) => (allMeet ? worst : shortfall)),
    exceeded: solved.map(({ exceeded }) => exceeded),
    worst,
  };
}

function fits(cost: number): boolean {
  return cost <= WITHIN + 1e-9;
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

interface Probe<S> {
  readonly solution: S;
  readonly cost: number;
  readonly isSolved: boolean;
}

interface Measure {
  readonly worst: number;
  readonly sum: number;
}

function isLess(a: Measure, b: Measure): boolean {
  if (Math.abs(a.worst - b.worst) > 1e-9) return a.worst < b.worst;
  return a.sum < b.sum - 1e-9;
}

/** Days [from cut, to cut) under one set. */
class SetSplit<S extends SetSolution> {
  readonly #solver: SetSolver<S>;
  readonly #spans: readonly UnitSpan[];
  readonly #cuts: readonly Cut[];
  readonly #alone: Alone;
  readonly #pool: S[];
  readonly #probes = new Map<string, Probe<S>>();
  readonly #hopeless: (readonly [number, number])[] = [];

  constructor(solver: SetSolver<S>, spans: readonly UnitSpan[], cuts: readonly Cut[], alone: Alone, whole: S) {
    this.#pool = [whole];
    this.#solver = solver;
    this.#spans = spans;
    this.#cuts = cuts;
    this.#alone = alone;
  }

  /** Returns how far one solution falls behind spans solved alone: limits exceeded, then the shortfall; the worst of them. */
  cost(solution: S, first: number, last: number): number {
    let worst = 0;
    for (let i = first; i <= last; i++) {
      const span = this.#spans[i];
      if (!span) continue;
      const limits = Math.max(0, solution.exceeded.length - (this.#alone.exceeded[i] ?? 0));
      const behind = solution.shortfallOf(span) - (this.#alone.shortfalls[i] ?? 0);
      worst = Math.max(worst, limits * LIMIT_WEIGHT + Math.max(0, behind));
    }
    return worst;
  }

  choose(most: number): ChosenSets<S> | null {
    for (let count = 2; count <= most; count++) {
      const path = this.#best(count);
      if (path) return this.#chosen(path.slice(0, -1), true);
    }
    const path = this.#leastWorst(most);
    return path && this.#chosen(path, false);
  }

  /**
   * What is known of the days from one cut (-1: the plan's beginning) to another (cuts.length: its end): entries found for other days are
   * tried first, and days that hold some for which nothing fits are not tried at all.
   */
  #probe(from: number, to: number): Probe<S> | null {
    const [first, last] = this.#range(from, to);
    if (last < first) return null;
    const key = `${first} ${last}`;
    const known = this.#probes.get(key);
    if (known) return known;
    const hopeless = this.#hopeless.find(([a, b]) => a >= first && b <= last);
    if (hopeless) return null;
    const spans = this.#spans.slice(first, last + 1);
    let best: Probe<S> | null = null;
    for (const like of this.#pool) {
      const solution = this.#solver.judge(spans, like);
      if (!solution) continue;
      const cost = this.cost(solution, first, last);
      if (!best || cost < best.cost) best = { solution, cost, isSolved: false };
      if (best.cost <= 1e-9) break;
    }
    if (!best || !fits(best.cost)) {
      const solution = this.#solver.solve(spans, best ? { near: best.solution } : {});
      best = { solution, cost: this.cost(solution, first, last), isSolved: true };
      this.#pool.unshift(solution);
    }
    if (!fits(best.cost)) this.#hopeless.push([first, last]);
    this.#probes.set(key, best);
    return best;
  }

  #range(from: number, to: number): readonly [number, number] {
    return [this.#cuts[from]?.after ?? 0, this.#cuts[to]?.before ?? this.#spans.length - 1];
  }

  /** The best entries for the days from one cut to another. */
  #solution(from: number, to: number): { readonly solution: S; readonly cost: number } | null {
    const [first, last] = this.#range(from, to);
    if (last < first) return null;
    const near = this.#probes.get(`${first} ${last}`);
    if (near?.isSolved) return near;
    const solution = this.#solver.solve(this.#spans.slice(first, last + 1), near ? { near: near.solution } : {});
    return { solution, cost: this.cost(solution, first, last) };
  }

  /** The best way into exactly so many sets, none worse than the limit: least sum over days, then the latest first boundary. */
  #best(count: number): readonly number[] | null {
    const ends = this.#cuts.length;
    const reach = this.#farthest(count);
    if (!reach) return null;
    let paths: { readonly cuts: readonly number[]; readonly sum: number }[] = [{ cuts: [], sum: 0 }];
    for (let set = 1; set <= count; set++) {
      const byEnd = new Map<number, { readonly cuts: readonly number[]; readonly sum: number }>();
      for (const path of paths) {
        const from = path.cuts.at(-1) ?? -1;
        const [least, farthest] = set === count ? [ends, ends] : [reach.least[set] ?? 0, reach.most[set] ?? ends - 1];
        for (let to = Math.max(from + 1, least); to <= farthest; to++) {
          const found = this.#probe(from, to);
          if (!found || !fits(found.cost)) continue;
          const next = { cuts: [...path.cuts, to], sum: path.sum + this.#sumOver(from, to, found.solution) };
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
  #farthest(count: number): { readonly most: readonly number[]; readonly least: readonly number[] } | null {
    const ends = this.#cuts.length;
    const serves = (from: number, to: number): boolean => {
      const found = this.#probe(from, to);
      return found !== null && fits(found.cost);
    };
    const most: number[] = [-1];
    for (let set = 1; set <= count; set++) {
      const from = most[set - 1] ?? -1;
      let to = from;
      while (to < ends && serves(from, to + 1)) to++;
      if (to === from) return null;
      most.push(to);
    }
    if ((most[count] ?? -1) < ends) return null;
    const least: number[] = [];
    least[count] = ends;
    for (let set = count - 1; set >= 1; set--) {
      const to = least[set + 1] ?? ends;
      let from = to;
      while (from > 0 && serves(from - 1, to)) from--;
      least[set] = from;
    }
    return { most: most.map((each) => Math.min(each, ends - 1)), least };
  }

  /** Cuts again and again where the worst set gains most, then the sum over days. */
  #leastWorst(most: number): readonly number[] | null {
    let path: number[] = [];
    let now = this.#measure([-1, this.#cuts.length]);
    for (let count = 2; count <= most; count++) {
      let best: { readonly path: number[]; readonly measure: Measure } | null = null;
      for (let cut = 0; cut < this.#cuts.length; cut++) {
        if (path.includes(cut)) continue;
        const longer = [...path, cut].sort((a, b) => a - b);
        const measure = this.#measure([-1, ...longer, this.#cuts.length]);
        if (measure && (!best || isLess(measure, best.measure))) best = { path: longer, measure };
      }
      if (!best || (now && !isLess(best.measure, now))) break;
      path = best.path;
      now = best.measure;
    }
    return path.length > 0 ? path : null;
  }

  /** The worst set, and how bad the sets are over all days. */
  #measure(cuts: readonly number[]): Measure | null {
    let worst = 0;
    let sum = 0;
    for (let i = 1; i < cuts.length; i++) {
      const [from, to] = [cuts[i - 1] ?? -1, cuts[i] ?? 0];
      const found = this.#solution(from, to);
      if (!found) return null;
      const first = this.#dayOf(from) ?? this.#spans[0]?.fromDay ?? 0;
      const until = this.#dayOf(to) ?? (this.#spans.at(-1)?.toDay ?? 0) + 1;
      worst = Math.max(worst, found.cost);
      sum += found.cost * (until - first);
    }
    return { worst, sum };
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

  #chosen(path: readonly number[], reached: boolean): ChosenSets<S> | null {
    const cuts = [-1, ...path, this.#cuts.length];
    let worst = 0;
    const sets = cuts.slice(1).flatMap((to, index) => {
      const from = cuts[index] ?? -1;
      const found = this.#solution(from, to);
      if (!found) return [];
      worst = Math.max(worst, badness(found.solution));
      return [setOf(this.#spans, this.#dayOf(from), this.#dayOf(to), found.solution)];
    });
    return { sets, alone: this.#alone.worst, worst, reached };
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
