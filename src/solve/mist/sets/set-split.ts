/** Cuts a plan's days into sets of mists: entries are shared by days that they serve, and solved anew where none do. */
import type { UnitSpan } from '../mist-unit.ts';
import {
  badness,
  type ChosenSets,
  fits,
  LIMIT_WEIGHT,
  type SetSolution,
  type SetSolver,
  setOf,
  spansBetween,
} from './set-solution.ts';

/** A day on which a set may begin: the set before covers spans up to `before`, the set itself from `after` on. */
export interface Cut {
  readonly day: number;
  readonly before: number;
  readonly after: number;
}

/** How spans do by themselves, in their order. */
export interface Alone {
  /** What each is held against. */
  readonly shortfalls: readonly number[];
  /** Limits that each must exceed. */
  readonly exceeded: readonly number[];
  /** The worst of them, exceeded limits first. */
  readonly worst: number;
}

interface Probe<S> {
  readonly solution: S;
  readonly cost: number;
}

/** A way into sets: the cut that each of them ends at. */
interface Path {
  readonly cuts: readonly number[];
  readonly worst: number;
  readonly sum: number;
}

/** How entries do under one span. */
interface UnderSpan {
  readonly exceeded: number;
  readonly shortfall: number;
}

function isLess(a: Path, b: Path): boolean {
  if (Math.abs(a.worst - b.worst) > 1e-9) return a.worst < b.worst;
  return a.sum < b.sum - 1e-9;
}

/** Days [from cut, to cut) under one set. */
export class SetSplit<S extends SetSolution> {
  readonly #solver: SetSolver<S>;
  readonly #spans: readonly UnitSpan[];
  readonly #cuts: readonly Cut[];
  readonly #alone: Alone;
  readonly #found: readonly S[];
  /** Entries found so far, each with how it does under every span by itself (null where it cannot run). */
  readonly #pool: { readonly like: S; readonly under: readonly (UnderSpan | null)[] }[] = [];
  readonly #probes = new Map<string, Probe<S>>();
  readonly #hopeless: (readonly [number, number])[] = [];

  constructor(
    solver: SetSolver<S>,
    spans: readonly UnitSpan[],
    cuts: readonly Cut[],
    alone: Alone,
    found: readonly S[],
  ) {
    this.#solver = solver;
    this.#spans = spans;
    this.#cuts = cuts;
    this.#alone = alone;
    this.#found = found;
  }

  /** Returns how far one solution falls behind spans solved alone: limits exceeded, then the shortfall; the worst of them. */
  cost(solution: S, first: number, last: number): number {
    let worst = 0;
    for (let i = first; i <= last; i++) {
      const span = this.#spans[i];
      if (span) worst = Math.max(worst, this.#behind(i, solution.exceeded.length, solution.shortfallOf(span)));
    }
    return worst;
  }

  #behind(span: number, exceeded: number, shortfall: number): number {
    const limits = Math.max(0, exceeded - (this.#alone.exceeded[span] ?? 0));
    return limits * LIMIT_WEIGHT + Math.max(0, shortfall - (this.#alone.shortfalls[span] ?? 0));
  }

  choose(most: number): ChosenSets<S> | null {
    for (const like of this.#found) this.#keep(like);
    for (let count = 2; count <= most; count++) {
      const path = this.#best(count);
      if (path) return this.#chosen(path.slice(0, -1), true);
    }
    const path = this.#leastWorst(most);
    return path && this.#chosen(path.slice(0, -1), false);
  }

  #keep(like: S): void {
    const under = this.#spans.map((span): UnderSpan | null => {
      const solution = this.#solver.judge([span], like);
      return solution && { exceeded: solution.exceeded.length, shortfall: solution.shortfall };
    });
    this.#pool.push({ like, under });
  }

  /** Returns the best of the entries found so far for some spans, by how they do under each by itself; null where none can run. */
  #rough(first: number, last: number): Probe<S> | null {
    let best: Probe<S> | null = null;
    for (const { like, under } of this.#pool) {
      const own = under.slice(first, last + 1);
      if (own.includes(null)) continue;
      const exceeded = Math.max(...own.map((each) => each?.exceeded ?? 0));
      const cost = Math.max(...own.map((each, i) => this.#behind(first + i, exceeded, each?.shortfall ?? 0)));
      if (!best || cost < best.cost) best = { solution: like, cost };
    }
    return best;
  }

  /**
   * What is known of the days from one cut (-1: the plan's beginning) to another (cuts.length: its end): entries found for other days are
   * tried first, and days that hold some for which nothing fits are not tried at all.
   */
  #probe(from: number, to: number): Probe<S> | null {
    const [first, last] = this.#range(from, to);
    if (last < first || this.#hopeless.some(([a, b]) => a >= first && b <= last)) return null;
    const key = `${first} ${last}`;
    const known = this.#probes.get(key);
    if (known) return known;
    let best = this.#rough(first, last);
    if (!best || !fits(best.cost)) {
      const solution = this.#solver.solve(this.#spans.slice(first, last + 1), best ? { near: best.solution } : {});
      best = { solution, cost: this.cost(solution, first, last) };
      this.#keep(solution);
    }
    if (!fits(best.cost)) this.#hopeless.push([first, last]);
    this.#probes.set(key, best);
    return best;
  }

  #range(from: number, to: number): readonly [number, number] {
    return [this.#cuts[from]?.after ?? 0, this.#cuts[to]?.before ?? this.#spans.length - 1];
  }

  /** The best entries for the days from one cut to another. */
  #solution(from: number, to: number): S | null {
    const [first, last] = this.#range(from, to);
    if (last < first) return null;
    const near = this.#probes.get(`${first} ${last}`) ?? this.#rough(first, last);
    return this.#solver.solve(this.#spans.slice(first, last + 1), near ? { near: near.solution } : {});
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

  /** The least worst into at most so many sets, then the least sum over days, by the entries found so far. */
  #leastWorst(most: number): readonly number[] | null {
    const ends = this.#cuts.length;
    let paths = new Map<number, Path>([[-1, { cuts: [], worst: 0, sum: 0 }]]);
    let best: Path | null = null;
    for (let set = 1; set <= most; set++) {
      const next = new Map<number, Path>();
      for (const [from, path] of paths)
        for (let to = from + 1; to <= ends; to++) {
          const longer = this.#longer(path, from, to);
          const known = next.get(to);
          if (longer && (!known || isLess(longer, known))) next.set(to, longer);
        }
      const whole = next.get(ends);
      if (whole && (!best || isLess(whole, best))) best = whole;
      paths = next;
    }
    return best && best.cuts.length > 1 ? best.cuts : null;
  }

  #longer(path: Path, from: number, to: number): Path | null {
    const [first, last] = this.#range(from, to);
    const found = last < first ? null : this.#rough(first, last);
    if (!found) return null;
    const begins = this.#dayOf(from) ?? this.#spans[0]?.fromDay ?? 0;
    const until = this.#dayOf(to) ?? (this.#spans.at(-1)?.toDay ?? 0) + 1;
    return {
      cuts: [...path.cuts, to],
      worst: Math.max(path.worst, found.cost),
      sum: path.sum + found.cost * (until - begins),
    };
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
      const solution = this.#solution(from, to);
      if (!solution) return [];
      worst = Math.max(worst, badness(solution));
      return [setOf(this.#spans, this.#dayOf(from), this.#dayOf(to), solution)];
    });
    return { sets, alone: this.#alone.worst, worst, reached };
  }
}
