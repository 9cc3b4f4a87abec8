/**
 * Makes an arrangement better by single changes: lamps that ask for the same move to another timer, a timer is emptied into another, two
 * timers exchange lamps. Errors are those of the settings themselves; a dial for parts of the day is taken as if any day held it.
 */
import { compareErrors, dayLampsOn } from './arrangement-errors.ts';
import { LEFT_OUT, type Seats } from './seats.ts';
import type { ShelfBound } from './shelf-bound.ts';
import { type Errors, NO_ERROR, type ShelfCosts, withErrors } from './shelf-costs.ts';

/** Sets of lamps solved before what stands is good enough. */
const MOST_WORKED = 2500;
const MOST_PASSES = 12;

type Moves = readonly (readonly [lamp: number, timer: number])[];

/** Returns the arrangement, or one that is better; the seats are left as empty as they were. */
export function polishedArrangement(
  seats: Seats,
  costs: ShelfCosts,
  bound: ShelfBound,
  arrangement: readonly number[],
): readonly number[] {
  return new Polish(seats, costs, bound, arrangement).run();
}

class Polish {
  readonly #errors: Errors[];
  readonly #mostWorked: number;

  constructor(
    readonly seats: Seats,
    readonly costs: ShelfCosts,
    readonly bound: ShelfBound,
    arrangement: readonly number[],
  ) {
    arrangement.forEach((timer, lamp) => {
      seats.put(lamp, timer);
    });
    this.#errors = seats.timers.map((_, timer) => this.#errorsOf(timer));
    this.#mostWorked = costs.worked + MOST_WORKED;
  }

  run(): readonly number[] {
    for (let pass = 0; pass < MOST_PASSES; pass++) if (!this.#pass()) break;
    const result = [...this.seats.placeOf];
    for (const lamp of result.keys()) this.seats.takeBack(lamp);
    return result;
  }

  /** The timers with the largest errors first. */
  #pass(): boolean {
    const timers = [...this.seats.timers.keys()].sort(
      (a, b) => compareErrors(this.#errors[b] ?? NO_ERROR, this.#errors[a] ?? NO_ERROR) || a - b,
    );
    let isBetter = false;
    for (const from of timers)
      for (const to of timers) if (from !== to) isBetter = this.#between(from, to, from === timers[0]) || isBetter;
    return isBetter;
  }

  #between(from: number, to: number, exchanges: boolean): boolean {
    const blocks = this.#blocksOn(from);
    let isBetter = this.#tryMoves(blocks.flat().map((lamp) => [lamp, to]));
    for (const block of blocks) {
      isBetter = this.#tryMoves(block.map((lamp) => [lamp, to])) || isBetter;
      if (block.length > 1) isBetter = this.#tryMoves(block.slice(0, 1).map((lamp) => [lamp, to])) || isBetter;
      if (!exchanges) continue;
      for (const other of this.#blocksOn(to)) isBetter = this.#tryExchange(from, to, block, other) || isBetter;
    }
    return isBetter;
  }

  /** Where whole blocks do not find room, as many of each as both have. */
  #tryExchange(from: number, to: number, block: readonly number[], other: readonly number[]): boolean {
    const exchange = (count: number): Moves => [
      ...block.slice(0, count).map((lamp) => [lamp, to] as const),
      ...other.slice(0, count).map((lamp) => [lamp, from] as const),
    ];
    return this.#tryMoves(exchange(Math.max(block.length, other.length))) || this.#tryMoves(exchange(1));
  }

  /** The lamps of a timer that may be moved, those that ask for the same together. */
  #blocksOn(timer: number): readonly (readonly number[])[] {
    const blocks = new Map<string, number[]>();
    this.seats.placeOf.forEach((at, lamp) => {
      const shelf = this.seats.lamps[lamp];
      if (at !== timer || !shelf) return;
      const key = this.costs.lampKey(shelf);
      blocks.set(key, [...(blocks.get(key) ?? []), lamp]);
    });
    return [...blocks.values()];
  }

  /** Moves lamps where they fit and all is better then; else nothing is moved. */
  #tryMoves(moves: Moves): boolean {
    if (this.costs.worked >= this.#mostWorked || moves.length === 0) return false;
    const before = moves.map(([lamp]) => [lamp, this.seats.placeOf[lamp] ?? LEFT_OUT] as const);
    const isStale = before.some(([, from], index) => from === LEFT_OUT || from === moves[index]?.[1]);
    if (isStale || new Set(moves.map(([lamp]) => lamp)).size < moves.length) return false;
    if (!this.#isNear(moves) || !this.#reseat(moves, before)) return false;
    const touched = [...new Set([...moves, ...before].map(([, timer]) => timer))];
    const now = new Map(touched.map((timer) => [timer, this.#errorsOf(timer)]));
    const isBetter =
      touched.every((timer) => this.seats.isAgreed(timer)) &&
      compareErrors(
        this.#total((timer) => now.get(timer) ?? this.#errors[timer]),
        this.#total((timer) => this.#errors[timer]),
      ) < 0;
    if (!isBetter) {
      this.#reseat(before, before);
      return false;
    }
    for (const [timer, errors] of now) this.#errors[timer] = errors;
    return true;
  }

  /** A look at two targets spares most of the settings: lamps that cannot share a timer within what stands now are not tried. */
  #isNear(moves: Moves): boolean {
    const { worstErrorTenths } = this.#total((timer) => this.#errors[timer]);
    const leaving = new Set(moves.map(([lamp]) => this.seats.lamps[lamp]));
    return moves.every(([lamp, to]) => {
      const shelf = this.seats.lamps[lamp];
      const aiming = this.seats.on(to).filter((each) => each.target.kind !== 'none' && !leaving.has(each));
      const ends = [aiming[0], aiming.at(-1)];
      return (
        !shelf ||
        shelf.target.kind === 'none' ||
        ends.every((each) => !each || this.bound.canShare(each, shelf, worstErrorTenths))
      );
    });
  }

  /** Takes lamps out and puts them where `moves` says, or, where one does not fit, back where they were. */
  #reseat(moves: Moves, before: Moves): boolean {
    for (const [lamp] of moves) this.seats.takeBack(lamp);
    const done: number[] = [];
    for (const [lamp, timer] of moves) {
      if (moves !== before && !this.seats.fits(lamp, timer)) break;
      this.seats.put(lamp, timer);
      done.push(lamp);
    }
    if (done.length === moves.length) return true;
    for (const lamp of done) this.seats.takeBack(lamp);
    for (const [lamp, timer] of before) this.seats.put(lamp, timer);
    return false;
  }

  #errorsOf(timer: number): Errors {
    const seat = this.seats.timers[timer];
    const lamps = this.seats.on(timer);
    if (!seat || lamps.length === 0) return NO_ERROR;
    const day = dayLampsOn(this.seats, timer);
    if (day.length === 0) return this.costs.partErrors(seat.timer, lamps, null, '');
    return lamps
      .filter(({ target }) => target.kind === 'inset' || target.kind === 'spans')
      .reduce(
        (sum, lamp) => withErrors(sum, this.costs.followError(seat.timer, day, lamp)),
        this.costs.dayErrors(seat.timer, day),
      );
  }

  #total(errorsOf: (timer: number) => Errors | undefined): Errors {
    return this.seats.timers.reduce((sum, _, timer) => withErrors(sum, errorsOf(timer) ?? NO_ERROR), NO_ERROR);
  }
}
