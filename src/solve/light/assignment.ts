/**
 * Which lamp on which timer: the arrangement of the lamps on `auto` with the least worst error, then the least sum of errors, then the
 * fewest timers, then the file's order. A small shelf is searched through; a larger one is filled well, held against a bound, and searched
 * below what that has found.
 */
import { compareErrors, type Enclosing, errorsOf } from './arrangement-errors.ts';
import type { LampTimer } from './dial-group.ts';
import { goodArrangement } from './good-arrangement.ts';
import { orderedArrangement } from './ordered-arrangement.ts';
import { polishedArrangement } from './polished-arrangement.ts';
import { type Best, compareBest, placingOrder, SeatSearch } from './seat-search.ts';
import { LEFT_OUT, type Seats } from './seats.ts';
import type { ShelfBound } from './shelf-bound.ts';
import type { Errors, ShelfCosts } from './shelf-costs.ts';

/** Where each lamp hangs, and how good that is. */
export interface Assignment {
  /** One a lamp, in the order given; null where it is left out. */
  readonly timerOf: readonly (LampTimer | null)[];
  readonly errors: Errors;
  /** What no arrangement is under; the errors themselves where the arrangement is proven to be the best. */
  readonly atLeast: Errors;
  readonly isProven: boolean;
}

/** So many lamps are searched at once; more of them only below what a quick look finds, and very many not at all. */
const SEARCHED_FIRST = 12;
const MOST_SEARCHED = 40;

/**
 * Returns the best arrangement that leaves out at most `leftOut` lamps, or null where none fits. Where the search is cut short it is a good
 * one, proven all the same where no arrangement can be better.
 *
 * @param enclosingOf the day windows under the seats as they are filled when it is called
 */
export function assign(
  seats: Seats,
  costs: ShelfCosts,
  enclosingOf: () => Enclosing,
  leftOut: number,
  boundOf: (leftOut: number) => ShelfBound,
): Assignment | null {
  const count = seats.lamps.length;
  if (count <= SEARCHED_FIRST) {
    const search = new SeatSearch(seats, costs, enclosingOf);
    search.run(leftOut, 0);
    if (!search.isSpent()) return search.best && proven(seats, search.best);
  }
  const bound = boundOf(leftOut);
  const leastWorst = bound.leastWorst();
  const good = bestOfGood(seats, costs, enclosingOf, leftOut, bound, leastWorst);
  if (!good) return null;
  const atLeast = { worstErrorTenths: leastWorst, sumErrorTenths: bound.leastSum(good.errors.worstErrorTenths) };
  if (compareErrors(good.errors, atLeast) <= 0 && good.timers <= bound.leastTimers(good.errors.worstErrorTenths))
    return proven(seats, good);
  const search = new SeatSearch(seats, costs, enclosingOf, good);
  if (count <= MOST_SEARCHED) search.run(leftOut, leastWorst);
  const best = search.best ?? good;
  if (count <= MOST_SEARCHED && !search.isSpent()) return proven(seats, best);
  return { timerOf: timersOf(seats, best), errors: best.errors, atLeast, isProven: false };
}

function proven(seats: Seats, best: Best): Assignment {
  return { timerOf: timersOf(seats, best), errors: best.errors, atLeast: best.errors, isProven: true };
}

function timersOf(seats: Seats, { arrangement }: Best): Assignment['timerOf'] {
  return arrangement.map((at) => seats.timers[at]?.timer ?? null);
}

/** The best of a few ways to begin, the two most promising made better by single changes. */
function bestOfGood(
  seats: Seats,
  costs: ShelfCosts,
  enclosingOf: () => Enclosing,
  leftOut: number,
  bound: ShelfBound,
  leastWorst: number,
): Best | null {
  const begun = [
    goodArrangement(seats, placingOrder(seats.lamps), leftOut),
    orderedArrangement(seats, bound, leastWorst, leftOut, false),
    orderedArrangement(seats, bound, leastWorst, leftOut, true),
  ].flatMap((arrangement) => (arrangement ? [measured(seats, costs, enclosingOf, arrangement)] : []));
  const polished = begun
    .toSorted(compareBest)
    .slice(0, 2)
    .map(({ arrangement }) => polishedArrangement(seats, costs, bound, arrangement))
    .map((arrangement) => measured(seats, costs, enclosingOf, arrangement));
  return [...begun, ...polished].sort(compareBest)[0] ?? null;
}

function measured(seats: Seats, costs: ShelfCosts, enclosingOf: () => Enclosing, arrangement: readonly number[]): Best {
  const errors = errorsOf(seats, costs, enclosingOf, arrangement);
  const used = new Set([
    ...arrangement,
    ...seats.timers.flatMap(({ fixed }, timer) => (fixed.length > 0 ? [timer] : [])),
  ]);
  used.delete(LEFT_OUT);
  return { arrangement, errors, timers: used.size };
}
