/**
 * A good arrangement of many lamps in little time, where an exact search would take too long: the first that fits, then single moves and
 * exchanges of two lamps while they help. Errors are bounded, not solved: half the spread of the targets on a timer, and how far a part-day
 * lamp lies from the day it would follow, on every fourteenth day.
 */
import { canFit, LEFT_OUT, type Seats } from './seats.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

const SAMPLE_DAYS = 14;
const MOST_PASSES = 12;
/** Moves and exchanges tried before what stands is good enough. */
const MOST_TRIES = 60_000;

/** Errors in tenths of a minute. */
interface RoughCost {
  readonly worst: number;
  readonly sum: number;
}

/** Returns a timer a lamp (or LEFT_OUT), or null where nothing that fits was found. */
export function goodArrangement(seats: Seats, order: readonly number[], leftOut: number): readonly number[] | null {
  const first = canFit(seats, byLength(seats, order), leftOut) ?? canFit(seats, order, leftOut);
  return first ? new Improvement(seats, first).run() : null;
}

/** Keeps the lamps that make the day first, each kind from the shortest target to the longest, so that neighbours fill a timer. */
function byLength(seats: Seats, order: readonly number[]): readonly number[] {
  const key = (lamp: number): number => {
    const { target, targetTenths } = seats.lamps[lamp] ?? { target: { kind: 'none' }, targetTenths: new Int32Array(0) };
    return (target.kind === 'day' ? 0 : 1e9) + targetTenths.reduce((sum, tenths) => sum + tenths, 0) / 1000;
  };
  const keys = new Map(order.map((lamp) => [lamp, key(lamp)]));
  return order.toSorted((a, b) => (keys.get(a) ?? 0) - (keys.get(b) ?? 0) || a - b);
}

class Improvement {
  readonly #place: number[];
  readonly #costs: RoughCost[];
  #tries = 0;

  constructor(
    readonly seats: Seats,
    first: readonly number[],
  ) {
    this.#place = [...first];
    this.#place.forEach((timer, lamp) => {
      if (timer !== LEFT_OUT) seats.put(lamp, timer);
      else seats.leave(lamp);
    });
    this.#costs = seats.timers.map((_, timer) => roughCost(seats.on(timer)));
  }

  /** Leaves the seats as empty as they were. */
  run(): readonly number[] {
    for (let pass = 0; pass < MOST_PASSES; pass++) if (!this.#pass()) break;
    const result = [...this.#place];
    for (const lamp of result.keys()) this.seats.takeBack(lamp);
    return result;
  }

  #pass(): boolean {
    let isBetter = false;
    for (const lamp of this.#place.keys()) {
      for (const timer of this.seats.timers.keys()) isBetter = this.#tryMove(lamp, timer) || isBetter;
      for (let other = 0; other < lamp; other++) isBetter = this.#trySwap(lamp, other) || isBetter;
    }
    return isBetter;
  }

  #tryMove(lamp: number, to: number): boolean {
    const from = this.#place[lamp] ?? LEFT_OUT;
    if (from === to || from === LEFT_OUT) return false;
    return this.#try(
      [from, to],
      () => this.#reseat([[lamp, to]]),
      () => this.#reseat([[lamp, from]]),
    );
  }

  #trySwap(one: number, other: number): boolean {
    const [a, b] = [this.#place[one] ?? LEFT_OUT, this.#place[other] ?? LEFT_OUT];
    if (a === b || a === LEFT_OUT || b === LEFT_OUT) return false;
    const swap = (): boolean =>
      this.#reseat([
        [one, b],
        [other, a],
      ]);
    return this.#try([a, b], swap, () =>
      this.#reseat([
        [one, a],
        [other, b],
      ]),
    );
  }

  #try(timers: readonly number[], act: () => boolean, undo: () => boolean): boolean {
    if (this.#tries++ >= MOST_TRIES) return false;
    const before = this.#total(timers);
    if (!act()) return false;
    const after = total(timers.map((timer) => roughCost(this.seats.on(timer))));
    if (compareRough(after, before) >= 0 || !this.#helpsAll(timers)) {
      undo();
      return false;
    }
    for (const timer of timers) this.#costs[timer] = roughCost(this.seats.on(timer));
    return true;
  }

  /** Every timer touched still holds lamps that may share it: a lamp that leaves may have been what made its day. */
  #helpsAll(timers: readonly number[]): boolean {
    return timers.every((timer) => this.seats.isAgreed(timer));
  }

  #total(timers: readonly number[]): RoughCost {
    return total(timers.map((timer) => this.#costs[timer] ?? { worst: 0, sum: 0 }));
  }

  /** Moves lamps all at once; false, and nothing moved, where one does not fit. */
  #reseat(moves: readonly (readonly [number, number])[]): boolean {
    const before = moves.map(([lamp]) => this.#place[lamp] ?? LEFT_OUT);
    for (const [lamp] of moves) this.seats.takeBack(lamp);
    for (const [at, [lamp, timer]] of moves.entries()) {
      if (this.seats.fits(lamp, timer)) {
        this.#put(lamp, timer);
        continue;
      }
      for (const [done] of moves.slice(0, at)) this.seats.takeBack(done);
      moves.forEach(([each], index) => {
        this.#put(each, before[index] ?? LEFT_OUT);
      });
      return false;
    }
    return true;
  }

  #put(lamp: number, timer: number): void {
    this.seats.put(lamp, timer);
    this.#place[lamp] = timer;
  }
}

function total(costs: readonly RoughCost[]): RoughCost {
  return { worst: Math.max(...costs.map(({ worst }) => worst)), sum: costs.reduce((sum, each) => sum + each.sum, 0) };
}

function compareRough(a: RoughCost, b: RoughCost): number {
  return a.worst - b.worst || a.sum - b.sum;
}

/** Half the spread of what leads, and how far each follower lies from its middle. */
function roughCost(lamps: readonly ShelfLamp[]): RoughCost {
  const day = lamps.filter(({ target }) => target.kind === 'day');
  const aiming = lamps.filter(({ target }) => target.kind !== 'none');
  const leading = day.length > 0 ? day : aiming;
  const following = day.length > 0 ? aiming.filter(({ target }) => target.kind !== 'day') : [];
  let [worst, sum] = [0, 0];
  for (let index = 0; index < (leading[0]?.targetTenths.length ?? 0); index += SAMPLE_DAYS) {
    let [high, low] = [0, Number.POSITIVE_INFINITY];
    for (const { targetTenths } of leading) {
      high = Math.max(high, targetTenths[index] ?? 0);
      low = Math.min(low, targetTenths[index] ?? 0);
    }
    let errors = (high - low) / 2;
    worst = Math.max(worst, errors);
    for (const { targetTenths } of following) {
      const error = Math.abs((high + low) / 2 - (targetTenths[index] ?? 0));
      worst = Math.max(worst, error);
      errors += error;
    }
    sum += errors;
  }
  return { worst, sum };
}
