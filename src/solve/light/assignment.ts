/**
 * Which lamp on which timer: the arrangement of the lamps on `auto` with the least worst error, then the least sum of errors, then the
 * fewest timers, then the file's order. Branch and bound: first the lamps that make the day; then, for each complete day that is not
 * surely worse than the best, those that have a part of it.
 */
import type { LampTimer } from './dial-group.ts';
import { goodArrangement } from './good-arrangement.ts';
import { compareArrangements, firstOfAlike, type Likeness, likenessOf } from './seat-order.ts';
import { LEFT_OUT, type Seats } from './seats.ts';
import { type EnclosingOf, type Errors, NO_ERROR, type ShelfCosts, withErrors } from './shelf-costs.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

export interface Assignment {
  /** One a lamp, in the order given; null where it is left out. */
  readonly timerOf: readonly (LampTimer | null)[];
  /** False where the search was cut short. */
  readonly isProven: boolean;
  /** Partial and complete arrangements looked at. */
  readonly lookedAt: number;
}

/** The day windows around a part-day lamp, as the lamps placed so far give them, and a name for them. */
export interface Enclosing {
  readonly of: EnclosingOf;
  readonly key: (enclosureId: string, timer: LampTimer) => string;
}

interface Best {
  readonly arrangement: readonly number[];
  readonly errors: Errors;
  readonly timers: number;
}

/** Arrangements looked at, and sets of lamps solved, before the search is cut short. */
const MOST_NODES = 50_000;
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
 * Returns the best arrangement that leaves out at most `leftOut` lamps, or null where none fits.
 *
 * @param enclosingOf the day windows under the seats as they are filled when it is called
 */
export function assign(
  seats: Seats,
  costs: ShelfCosts,
  enclosingOf: () => Enclosing,
  leftOut: number,
): Assignment | null {
  const search = new Search(seats, costs, enclosingOf);
  search.run(leftOut);
  const isProven = !search.isSpent();
  const good = isProven ? null : goodArrangement(seats, placingOrder(seats.lamps), leftOut);
  const arrangement = search.best?.arrangement ?? good;
  if (!arrangement) return null;
  return { timerOf: arrangement.map((at) => seats.timers[at]?.timer ?? null), isProven, lookedAt: search.nodes };
}

class Search {
  best: Best | null = null;
  nodes = 0;
  #limitTenths = 0;
  readonly #order: readonly number[];
  readonly #dayCount: number;
  readonly #alike: Likeness;

  constructor(
    readonly seats: Seats,
    readonly costs: ShelfCosts,
    readonly enclosingOf: () => Enclosing,
  ) {
    this.#order = placingOrder(seats.lamps);
    this.#dayCount = seats.lamps.filter(({ target }) => target.kind === 'day').length;
    this.#alike = likenessOf(seats, costs, this.#order);
  }

  /** Searches under a limit on the worst error that is raised until something is found below it. */
  run(leftOut: number): void {
    for (const most of LIMITS_TENTHS) {
      this.#limitTenths = most;
      this.#placeDay(0, leftOut);
      if (this.best || this.isSpent()) return;
    }
  }

  isSpent(): boolean {
    return this.nodes >= MOST_NODES || this.costs.worked >= MOST_WORKED;
  }

  #placeDay(at: number, leftOut: number): void {
    if (this.isSpent()) return;
    const lamp = this.#order[at];
    if (lamp === undefined || at === this.#dayCount) {
      const day = this.#dayErrors();
      if (day && !this.#isHopeless(day)) this.#placePart(at, leftOut, day);
      return;
    }
    const options = this.#options(lamp).map((timer) => ({ timer, bound: this.#boundWith(lamp, timer) }));
    for (const { timer, bound } of options.toSorted((a, b) => compareErrors(a.bound, b.bound))) {
      this.nodes++;
      if (this.#isHopeless(bound)) continue;
      this.#with(lamp, timer, () => this.#placeDay(at + 1, leftOut));
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
      this.nodes++;
      if (this.#isHopeless(withErrors(known, bound))) continue;
      const errors = withErrors(known, this.#followErrors(lamp, timer));
      if (!this.#isHopeless(errors)) this.#with(lamp, timer, () => this.#placePart(at + 1, leftOut, errors));
    }
    if (leftOut > 0) this.#with(lamp, LEFT_OUT, () => this.#placePart(at + 1, leftOut - 1, known));
  }

  /** A bound from below on what one more part-day lamp costs on a timer; the sum only where it follows a day. */
  #partBound(lamp: number, timer: number): Errors {
    const shelf = this.seats.lamps[lamp];
    const seat = this.seats.timers[timer];
    if (!shelf || !seat) return NO_ERROR;
    const day = this.#dayLampsOn(timer);
    if (day.length > 0) return this.costs.followBound(day, this.costs.dayErrors(seat.timer, day), shelf);
    const others = this.seats.on(timer).filter(({ target }) => target.kind !== 'none');
    const pairs = others.length === 0 ? [[shelf]] : others.map((other) => [other, shelf]);
    const worst = pairs.map((pair) => this.costs.partErrors(seat.timer, pair, null, '').worstErrorTenths);
    return { worstErrorTenths: Math.max(...worst), sumErrorTenths: 0 };
  }

  /** What a part-day lamp misses on a day dial; on a dial of its own that is known only once all lamps are placed. */
  #followErrors(lamp: number, timer: number): Errors {
    const shelf = this.seats.lamps[lamp];
    const seat = this.seats.timers[timer];
    const day = this.#dayLampsOn(timer);
    return shelf && seat && day.length > 0 ? this.costs.followError(seat.timer, day, shelf) : NO_ERROR;
  }

  #complete(known: Errors): void {
    const enclosing = this.enclosingOf();
    const errors = this.seats.timers.reduce((sum, { timer }, index) => {
      if (this.seats.isDay(index) || !this.seats.isUsed(index) || this.#isHopeless(sum)) return sum;
      return withErrors(sum, this.#partErrors(timer, this.seats.on(index), enclosing));
    }, known);
    if (this.#isHopeless(errors)) return;
    const arrangement = firstOfAlike(this.seats.placeOf, this.#alike);
    const found: Best = { arrangement, errors, timers: this.seats.usedTimers() };
    if (!this.best || compareBest(found, this.best) < 0) this.best = found;
  }

  #partErrors(timer: LampTimer, lamps: readonly ShelfLamp[], enclosing: Enclosing): Errors {
    const ids = [...new Set(lamps.map(({ enclosure }) => enclosure.id))];
    return this.costs.partErrors(timer, lamps, enclosing.of, ids.map((id) => enclosing.key(id, timer)).join(' '));
  }

  /** Exact errors of every day dial and of the named lamps that follow it; null as soon as they are surely worse than the best. */
  #dayErrors(): Errors | null {
    let errors = NO_ERROR;
    for (const [index, { timer, fixed }] of this.seats.timers.entries()) {
      const day = this.#dayLampsOn(index);
      if (day.length === 0) continue;
      errors = withErrors(errors, this.costs.dayErrors(timer, day));
      if (this.#isHopeless(errors)) return null;
      for (const lamp of fixed)
        if (lamp.target.kind === 'inset' || lamp.target.kind === 'spans')
          errors = withErrors(errors, this.costs.followError(timer, day, lamp));
    }
    return errors;
  }

  /** A bound from below with one more day lamp: pairs on one timer, and half the spread of its targets. */
  #boundWith(lamp: number, timer: number): Errors {
    const shelf = this.seats.lamps[lamp];
    const seat = this.seats.timers[timer];
    if (!shelf || !seat) return NO_ERROR;
    const others = this.#dayLampsOn(timer);
    const pairs = others.length === 0 ? [[shelf]] : others.map((other) => [other, shelf]);
    const worst = pairs.map((pair) => this.costs.dayErrors(seat.timer, pair).worstErrorTenths);
    return { worstErrorTenths: Math.max(...worst), sumErrorTenths: this.costs.spreadSum([...others, shelf]) };
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

  #dayLampsOn(timer: number): readonly ShelfLamp[] {
    return this.seats.on(timer).filter(({ target }) => target.kind === 'day');
  }

  #with(lamp: number, timer: number, work: () => void): void {
    this.seats.put(lamp, timer);
    work();
    this.seats.takeBack(lamp);
  }

  #isHopeless(errors: Errors): boolean {
    if (this.isSpent()) return true;
    if (errors.worstErrorTenths > this.#limitTenths) return true;
    return this.best !== null && compareErrors(errors, this.best.errors) > 0;
  }
}

function compareErrors(a: Errors, b: Errors): number {
  return a.worstErrorTenths - b.worstErrorTenths || a.sumErrorTenths - b.sumErrorTenths;
}

function compareBest(a: Best, b: Best): number {
  return compareErrors(a.errors, b.errors) || a.timers - b.timers || compareArrangements(a.arrangement, b.arrangement);
}
