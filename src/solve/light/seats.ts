/** The timers that lamps on `auto` may take, and whether one more lamp fits: outlets, watts, agreement of the days, entries. */
import { dialGroup, disagreementOf, type LampTimer } from './dial-group.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

/** A timer with what the file plugs into it already. */
export interface ShelfTimer {
  readonly timer: LampTimer;
  readonly fixed: readonly ShelfLamp[];
  readonly freeOutlets: number;
  /** null: no rating to keep. */
  readonly freeWatts: number | null;
}

/** Place of a lamp that no timer takes. */
export const LEFT_OUT = -1;
const UNDECIDED = -2;

/** A partly filled shelf; lamps are put and taken back in a search. */
export class Seats {
  readonly timers: readonly ShelfTimer[];
  readonly lamps: readonly ShelfLamp[];
  /** Timer of each lamp by place, LEFT_OUT or undecided. */
  readonly placeOf: number[];
  readonly #outlets: number[];
  readonly #watts: (number | null)[];
  readonly #on: ShelfLamp[][];

  constructor(timers: readonly ShelfTimer[], lamps: readonly ShelfLamp[]) {
    this.timers = timers;
    this.lamps = lamps;
    this.placeOf = lamps.map(() => UNDECIDED);
    this.#outlets = timers.map(({ freeOutlets }) => freeOutlets);
    this.#watts = timers.map(({ freeWatts }) => freeWatts);
    this.#on = timers.map(({ fixed }) => [...fixed]);
  }

  /** Returns the lamps on a timer, fixed ones first. */
  on(timer: number): readonly ShelfLamp[] {
    return this.#on[timer] ?? [];
  }

  /** Returns whether a timer drives a lamp now. */
  isUsed(timer: number): boolean {
    return this.on(timer).length > 0;
  }

  isDay(timer: number): boolean {
    return this.on(timer).some(({ target }) => target.kind === 'day');
  }

  hasOutlet(timer: number): boolean {
    return (this.#outlets[timer] ?? 0) > 0;
  }

  fits(lamp: number, timer: number): boolean {
    const shelf = this.lamps[lamp];
    const watts = this.#watts[timer] ?? null;
    if (!shelf || !this.hasOutlet(timer)) return false;
    if (watts !== null && shelf.lamp.powerW > watts) return false;
    return this.agrees(shelf, timer);
  }

  /** Returns whether a lamp may share the timer's windows with what hangs there. */
  agrees(shelf: ShelfLamp, timer: number): boolean {
    const seat = this.timers[timer];
    if (!seat) return false;
    const group = dialGroup(seat.timer, [...this.on(timer), shelf]);
    if (group.kind === 'spans' && shelf.target.kind === 'spans' && !hasEntries(seat.timer, shelf.target.spans.length))
      return false;
    return disagreementOf(group) === null;
  }

  put(lamp: number, timer: number): void {
    this.placeOf[lamp] = timer;
    this.#move(lamp, timer, 1);
  }

  /** Decides that no timer takes a lamp. */
  leave(lamp: number): void {
    this.placeOf[lamp] = LEFT_OUT;
  }

  /** Returns whether everything on a timer may share its windows. */
  isAgreed(timer: number): boolean {
    const seat = this.timers[timer];
    return !seat || disagreementOf(dialGroup(seat.timer, this.on(timer))) === null;
  }

  takeBack(lamp: number): void {
    this.#move(lamp, this.placeOf[lamp] ?? UNDECIDED, -1);
    this.placeOf[lamp] = UNDECIDED;
  }

  #move(lamp: number, timer: number, count: 1 | -1): void {
    const shelf = this.lamps[lamp];
    const on = this.#on[timer];
    if (!shelf || !on) return;
    if (count === 1) on.push(shelf);
    else on.splice(on.lastIndexOf(shelf), 1);
    this.#outlets[timer] = (this.#outlets[timer] ?? 0) - count;
    const watts = this.#watts[timer] ?? null;
    if (watts !== null) this.#watts[timer] = watts - count * shelf.lamp.powerW;
  }

  /** Returns the number of timers that drive a lamp. */
  usedTimers(): number {
    return this.timers.filter((_, timer) => this.isUsed(timer)).length;
  }
}

function hasEntries(timer: LampTimer, windows: number): boolean {
  return timer.kind === 'pin-dial' || timer.entries >= windows;
}

/**
 * Returns the least number of lamps that must be left out for the rest to fit, by outlets, watts and agreement alone. Days are not
 * weighed: a lamp that makes the day goes first, as in the search.
 */
export function leastLeftOut(seats: Seats, order: readonly number[]): number {
  for (let leftOut = Math.max(0, order.length - outletsIn(seats)); leftOut < order.length; leftOut++)
    if (canFit(seats, order, leftOut)) return leftOut;
  return order.length;
}

const MOST_TRIES = 50_000;

function outletsIn(seats: Seats): number {
  return seats.timers.reduce((sum, { freeOutlets }) => sum + Math.max(0, freeOutlets), 0);
}

/** Returns the first arrangement found that fits with at most `leftOut` lamps left out, a timer a lamp; null where none was found. */
export function canFit(seats: Seats, order: readonly number[], leftOut: number): readonly number[] | null {
  return seatNext(seats, order, 0, leftOut, { left: MOST_TRIES });
}

function seatNext(
  seats: Seats,
  order: readonly number[],
  at: number,
  leftOut: number,
  tries: { left: number },
): readonly number[] | null {
  const lamp = order[at];
  if (lamp === undefined) return [...seats.placeOf];
  if (tries.left-- <= 0) return null;
  for (let timer = 0; timer < seats.timers.length; timer++) {
    if (!seats.fits(lamp, timer)) continue;
    seats.put(lamp, timer);
    const found = seatNext(seats, order, at + 1, leftOut, tries);
    seats.takeBack(lamp);
    if (found) return found;
  }
  if (leftOut === 0) return null;
  seats.leave(lamp);
  const found = seatNext(seats, order, at + 1, leftOut - 1, tries);
  seats.takeBack(lamp);
  return found;
}
