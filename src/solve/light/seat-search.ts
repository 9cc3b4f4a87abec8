/**
 * Branch and bound over the arrangements of lamps on timers: first the lamps that make the day; then, for each complete day that is not
 * surely worse than the best, those that have a part of it.
 */
import {
  compareErrors,
  dayDialErrors,
  dayLampsOn,
  type Enclosing,
  followErrors,
  partDialErrors,
} from './arrangement-errors.ts';
import type { LampTimer } from './dial-group.ts';
import { compareArrangements, firstOfAlike, type Likeness, likenessOf } from './seat-order.ts';
import { LEFT_OUT, type Seats } from './seats.ts';
import { type Errors, NO_ERROR, type ShelfCosts, withErrors } from './shelf-costs.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

/** An arrangement, a timer a lamp, with all that it is weighed by. */
export interface Best {
  readonly arrangement: readonly number[];
  readonly errors: Errors;
  readonly timers: number;
}

/** Arrangements looked at, and sets of lamps solved, before the search is cut short. */
const MOST_NODES = 120_000;
const MOST_WORKED = 800;
/** 10 min, half as much again, … up to a whole day. */
const LIMITS_TENTHS = [100, 150, 225, 340, 500, 750, 1125, 1700, 2500, 3750, 5600, 8400, 14_400];

/** Returns the order in which lamps are placed: those that make the day first, each kind in the file's order. */
export function placingOrder(lamps: readonly ShelfLamp[]): readonly number[] {
  const all = lamps.map((_, index) => index);
  const isDay = (index: number): boolean => lamps[index]?.target.kind === 'day';
  return [...all.filter(isDay), ...all.filter((index) => !isDay(index))];
}

/**
 * Returns the order in which the search places lamps: day lamps first, each kind so that the next is the one least like any before. What
 * cannot share a timer is parted early, and most that follows is settled by it.
 */
function searchOrder(lamps: readonly ShelfLamp[]): readonly number[] {
  const order = placingOrder(lamps);
  const days = order.filter((lamp) => lamps[lamp]?.target.kind === 'day');
  return [...leastLikeFirst(lamps, days), ...leastLikeFirst(lamps, order.slice(days.length))];
}

function leastLikeFirst(lamps: readonly ShelfLamp[], members: readonly number[]): readonly number[] {
  const nearest = new Map(members.map((lamp) => [lamp, Number.POSITIVE_INFINITY]));
  const order: number[] = [];
  while (nearest.size > 0) {
    const [next] = [...nearest].reduce((far, each) => (each[1] > far[1] ? each : far));
    nearest.delete(next);
    order.push(next);
    for (const [lamp, distance] of nearest)
      nearest.set(lamp, Math.min(distance, furthestApart(lamps[lamp], lamps[next])));
  }
  return order;
}

function furthestApart(one: ShelfLamp | undefined, other: ShelfLamp | undefined): number {
  const targets = other?.targetTenths ?? new Int32Array(0);
  return (one?.targetTenths ?? targets).reduce(
    (most, tenths, day) => Math.max(most, Math.abs(tenths - (targets[day] ?? tenths))),
    0,
  );
}

/** Searches the seats of a shelf; `best` is the best known before, then the best found. */
export class SeatSearch {
  best: Best | null;
  #nodes = 0;
  readonly #mostWorked: number;
  #limitTenths = 0;
  /** What the day lamps on each timer cost at least in sum, and all of them together. */
  readonly #leastSums: number[];
  #leastSum: number;
  readonly #order: readonly number[];
  readonly #dayCount: number;
  readonly #alike: Likeness;

  constructor(
    readonly seats: Seats,
    readonly costs: ShelfCosts,
    readonly enclosingOf: () => Enclosing,
    best: Best | null = null,
  ) {
    this.best = best;
    this.#mostWorked = costs.worked + MOST_WORKED;
    this.#leastSums = seats.timers.map(({ timer, fixed }) =>
      this.#sumAtLeast(
        timer,
        fixed.filter(({ target }) => target.kind === 'day'),
      ),
    );
    this.#leastSum = this.#leastSums.reduce((sum, each) => sum + each, 0);
    this.#order = searchOrder(seats.lamps);
    this.#dayCount = seats.lamps.filter(({ target }) => target.kind === 'day').length;
    this.#alike = likenessOf(seats, costs, this.#order);
  }

  /** Searches under a limit on the worst error that is raised until something is found within it. */
  run(leftOut: number, leastWorst: number): void {
    for (const most of LIMITS_TENTHS) {
      if (most < leastWorst) continue;
      this.#limitTenths = most;
      this.#placeDay(0, leftOut);
      if (this.isSpent() || (this.best && this.best.errors.worstErrorTenths <= most)) return;
    }
  }

  isSpent(): boolean {
    return this.#nodes >= MOST_NODES || this.costs.worked >= this.#mostWorked;
  }

  #placeDay(at: number, leftOut: number): void {
    if (this.isSpent()) return;
    const lamp = this.#order[at];
    if (lamp === undefined || at === this.#dayCount) {
      const day = dayDialErrors(this.seats, this.costs, this.#isHopeless);
      if (day && !this.#isHopeless(day)) this.#placePart(at, leftOut, day);
      return;
    }
    const options = this.#options(lamp).map((timer) => ({ timer, bound: this.#boundWith(lamp, timer) }));
    for (const { timer, bound } of options.toSorted((a, b) => compareErrors(a.bound, b.bound))) {
      this.#nodes++;
      const before = this.#leastSums[timer] ?? 0;
      const sumErrorTenths = this.#leastSum - before + bound.sumErrorTenths;
      if (this.#isHopeless({ ...bound, sumErrorTenths })) continue;
      this.#leastSums[timer] = bound.sumErrorTenths;
      this.#leastSum = sumErrorTenths;
      this.#with(lamp, timer, () => this.#placeDay(at + 1, leftOut));
      this.#leastSum += before - bound.sumErrorTenths;
      this.#leastSums[timer] = before;
    }
    if (leftOut > 0) this.#with(lamp, LEFT_OUT, () => this.#placeDay(at + 1, leftOut - 1));
  }

  /** `known`: errors of the day lamps and of the part-day lamps that follow a day dial already. */
  #placePart(at: number, leftOut: number, known: Errors): void {
    const lamp = this.#order[at];
    if (lamp === undefined) {
      this.#complete(known);
      return;
    }
    const options = this.#options(lamp).map((timer) => ({ timer, bound: this.#partBound(lamp, timer) }));
    for (const { timer, bound } of options.toSorted((a, b) => compareErrors(a.bound, b.bound))) {
      this.#nodes++;
      if (this.#isHopeless(withErrors(known, bound))) continue;
      const errors = withErrors(known, followErrors(this.seats, this.costs, lamp, timer));
      if (!this.#isHopeless(errors)) this.#with(lamp, timer, () => this.#placePart(at + 1, leftOut, errors));
    }
    if (leftOut > 0) this.#with(lamp, LEFT_OUT, () => this.#placePart(at + 1, leftOut - 1, known));
  }

  /** A bound from below on what one more part-day lamp costs on a timer; the sum only where it follows a day. */
  #partBound(lamp: number, timer: number): Errors {
    const shelf = this.seats.lamps[lamp];
    const seat = this.seats.timers[timer];
    if (!shelf || !seat) return NO_ERROR;
    const day = dayLampsOn(this.seats, timer);
    if (day.length > 0) return this.costs.followBound(day, this.costs.dayErrors(seat.timer, day), shelf);
    const others = this.seats.on(timer).filter(({ target }) => target.kind !== 'none');
    const pairs = others.length === 0 ? [[shelf]] : others.map((other) => [other, shelf]);
    const worst = pairs.map((pair) => this.costs.partBound(seat.timer, pair));
    return { worstErrorTenths: Math.max(...worst), sumErrorTenths: 0 };
  }

  #complete(known: Errors): void {
    const errors = partDialErrors(this.seats, this.costs, this.enclosingOf(), known, this.#isHopeless);
    if (this.#isHopeless(errors)) return;
    const arrangement = firstOfAlike(this.seats.placeOf, this.#alike);
    const found: Best = { arrangement, errors, timers: this.seats.usedTimers() };
    if (!this.best || compareBest(found, this.best) < 0) this.best = found;
  }

  /** A bound from below on a timer with one more day lamp: two of its lamps together, and in sum half of what lies between them all. */
  #boundWith(lamp: number, timer: number): Errors {
    const shelf = this.seats.lamps[lamp];
    const seat = this.seats.timers[timer];
    if (!shelf || !seat) return NO_ERROR;
    const others = dayLampsOn(this.seats, timer);
    const pairs = others.length === 0 ? [[shelf]] : others.map((other) => [other, shelf]);
    const worst = pairs.map((pair) => this.costs.dayBound(seat.timer, pair));
    return { worstErrorTenths: Math.max(...worst), sumErrorTenths: this.#sumAtLeast(seat.timer, [...others, shelf]) };
  }

  #sumAtLeast(timer: LampTimer, lamps: readonly ShelfLamp[]): number {
    const alone = lamps.map((lamp) => this.costs.aloneSum(timer, lamp));
    return lamps.length === 0 ? 0 : Math.max(this.costs.spreadSum(lamps), ...alone);
  }

  #options(lamp: number): readonly number[] {
    const { timerBefore, lampBefore } = this.#alike;
    const before = lampBefore[lamp] ?? -1;
    const least = before < 0 ? 0 : (this.seats.placeOf[before] ?? 0);
    if (least === LEFT_OUT) return [];
    return this.seats.timers.flatMap((_, timer) => {
      const twin = timerBefore[timer] ?? -1;
      if (timer < least || (twin >= 0 && !this.seats.isUsed(twin))) return [];
      return this.seats.fits(lamp, timer) ? [timer] : [];
    });
  }

  #with(lamp: number, timer: number, work: () => void): void {
    this.seats.put(lamp, timer);
    work();
    this.seats.takeBack(lamp);
  }

  readonly #isHopeless = (errors: Errors): boolean => {
    if (this.isSpent()) return true;
    if (errors.worstErrorTenths > this.#limitTenths) return true;
    return this.best !== null && compareErrors(errors, this.best.errors) > 0;
  };
}

/** Compares errors, then timers in use, then the file's order. */
export function compareBest(a: Best, b: Best): number {
  return compareErrors(a.errors, b.errors) || a.timers - b.timers || compareArrangements(a.arrangement, b.arrangement);
}
