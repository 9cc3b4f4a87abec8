/**
 * The ways on that one chore has after each day, as numbered states: which occurrence stands last, by when the next must stand, at what
 * cost. What a day does to a state does not depend on other chores, so that it is worked out once.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Chain } from './gather-problem.ts';
import { costsToGo } from './place-chain.ts';

const NEVER = Number.POSITIVE_INFINITY;

/** A way on: the last occurrence that stands, and the last day for the next one. */
interface Way {
  readonly placed: number;
  readonly until: EpochDay;
  readonly cost: number;
}

/** What a day comes to for a state. */
export interface Move {
  readonly state: number;
  /** What all ways cost more by now. */
  readonly cost: number;
  /** New days that the chore takes after this one at least; infinite where it has no way on. */
  readonly needs: number;
  /** What it costs from here to the end at least, with every day open. */
  readonly toGo: number;
}

/** The states that the occurrences of one chore may be in, day by day, and what leads from one to the next at which cost. */
export class ChainStates {
  readonly #chain: Chain;
  readonly #costOf: (due: EpochDay, day: EpochDay) => number;
  readonly #needs: readonly (readonly number[])[];
  readonly #costs: readonly (readonly number[])[];
  readonly #ways: (readonly Way[])[] = [];
  readonly #numbers = new Map<string, number>();
  #day = Number.NEGATIVE_INFINITY;
  readonly #moves = new Map<number, Move>();

  /**
   * @param costOf what an occurrence costs on a day
   * @param isNew whether a day has no work anyway
   */
  constructor(chain: Chain, costOf: (due: EpochDay, day: EpochDay) => number, isNew: (day: EpochDay) => boolean) {
    this.#chain = chain;
    this.#costOf = costOf;
    this.#needs = costsToGo(chain, (_, day) => (isNew(day) ? 1 : 0));
    this.#costs = costsToGo(chain, ({ due }, day) => costOf(due, day));
    this.#numberOf([{ placed: -1, until: this.#lastDay(0, null), cost: 0 }]);
  }

  /** The state before the first day, as a move into it. */
  start(): Move {
    return this.#moveTo(0, 0, NEVER * -1);
  }

  /** Returns what a day does to a state; days are asked in ascending order. */
  after(state: number, day: EpochDay, isOpen: boolean): Move {
    if (day !== this.#day) {
      this.#day = day;
      this.#moves.clear();
    }
    const key = state * 2 + (isOpen ? 1 : 0);
    const known = this.#moves.get(key);
    if (known) return known;
    const ways = this.#waysAfter(this.#ways[state] ?? [], day, isOpen);
    const least = ways.reduce((cost, way) => Math.min(cost, way.cost), NEVER);
    const next = ways.map((way) => ({ ...way, cost: way.cost - least }));
    const move = this.#moveTo(this.#numberOf(next), ways.length > 0 ? least : 0, day);
    this.#moves.set(key, move);
    return move;
  }

  #moveTo(state: number, cost: number, day: EpochDay): Move {
    const ways = this.#ways[state] ?? [];
    let [needs, toGo] = [NEVER, NEVER];
    for (const way of ways) {
      needs = Math.min(needs, this.#onward(this.#needs, way, day));
      toGo = Math.min(toGo, way.cost + this.#onward(this.#costs, way, day));
    }
    return { state, cost, needs, toGo };
  }

  #onward(toGo: readonly (readonly number[])[], way: Way, day: EpochDay): number {
    const next = this.#chain[way.placed + 1];
    if (!next) return 0;
    let least = NEVER;
    for (const [at, each] of next.days.entries())
      if (each > day && each <= way.until) least = Math.min(least, toGo[way.placed + 1]?.[at] ?? NEVER);
    return least;
  }

  #waysAfter(ways: readonly Way[], day: EpochDay, isOpen: boolean): readonly Way[] {
    const all = ways.flatMap((way) => {
      const next = this.#chain[way.placed + 1];
      if (!isOpen || !next || day > way.until || !next.days.includes(day)) return [way];
      const cost = way.cost + this.#costOf(next.due, day);
      return [way, { placed: way.placed + 1, until: this.#lastDay(way.placed + 2, day), cost }];
    });
    return all
      .filter(({ until }) => until > day)
      .filter((way, index, alive) => !alive.some((other, at) => at !== index && isNeedless(way, other, at < index)))
      .sort((a, b) => a.placed - b.placed || a.until - b.until);
  }

  /** The last day on which an occurrence may stand; without end where there is none left. */
  #lastDay(index: number, before: EpochDay | null): EpochDay {
    const movable = this.#chain[index];
    if (!movable) return NEVER;
    const last = movable.days.at(-1) ?? -NEVER;
    return before === null || movable.gapAtMost === null ? last : Math.min(last, before + movable.gapAtMost);
  }

  #numberOf(ways: readonly Way[]): number {
    const key = ways.map((way) => `${way.placed},${way.until},${way.cost}`).join(';');
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#numbers.set(key, this.#ways.length);
    this.#ways.push(ways);
    return this.#ways.length - 1;
  }
}

/** Of two ways after the same occurrence one is needless that ends no later and costs no less. */
function isNeedless(way: Way, other: Way, isFirst: boolean): boolean {
  if (other.placed !== way.placed || other.until < way.until || other.cost > way.cost) return false;
  return isFirst || other.until > way.until || other.cost < way.cost;
}
