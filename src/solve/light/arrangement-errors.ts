/** The exact errors of lamps as they are seated: of the day dials and what follows them, then of the dials for parts of the day. */
import type { LampTimer } from './dial-group.ts';
import type { Seats } from './seats.ts';
import { type EnclosingOf, type Errors, NO_ERROR, type ShelfCosts, withErrors } from './shelf-costs.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

/** The day windows around a part-day lamp, as the lamps placed so far give them, and a name for them. */
export interface Enclosing {
  readonly of: EnclosingOf;
  readonly key: (enclosureId: string, timer: LampTimer) => string;
}

type IsHopeless = (errors: Errors) => boolean;

/** Compares the worst error first, then the sum. */
export function compareErrors(a: Errors, b: Errors): number {
  return a.worstErrorTenths - b.worstErrorTenths || a.sumErrorTenths - b.sumErrorTenths;
}

/** Returns the errors of an arrangement, a timer a lamp; the seats are left as empty as they were. */
export function errorsOf(
  seats: Seats,
  costs: ShelfCosts,
  enclosingOf: () => Enclosing,
  arrangement: readonly number[],
): Errors {
  arrangement.forEach((timer, lamp) => {
    seats.put(lamp, timer);
  });
  const day = dayDialErrors(seats, costs, never) ?? NO_ERROR;
  const following = arrangement.reduce(
    (sum, timer, lamp) => withErrors(sum, followErrors(seats, costs, lamp, timer)),
    day,
  );
  const errors = partDialErrors(seats, costs, enclosingOf(), following, never);
  for (const lamp of arrangement.keys()) seats.takeBack(lamp);
  return errors;
}

const never: IsHopeless = () => false;

/** Returns the errors of every day dial and of the lamps by name that follow it; null as soon as they are hopeless. */
export function dayDialErrors(seats: Seats, costs: ShelfCosts, isHopeless: IsHopeless): Errors | null {
  let errors = NO_ERROR;
  for (const [index, { timer, fixed }] of seats.timers.entries()) {
    const day = dayLampsOn(seats, index);
    if (day.length === 0) continue;
    errors = withErrors(errors, costs.dayErrors(timer, day));
    if (isHopeless(errors)) return null;
    for (const lamp of fixed)
      if (lamp.target.kind === 'inset' || lamp.target.kind === 'spans')
        errors = withErrors(errors, costs.followError(timer, day, lamp));
  }
  return errors;
}

/** Returns what a part-day lamp misses on a day dial; on a dial of its own that is known only once all lamps are placed. */
export function followErrors(seats: Seats, costs: ShelfCosts, lamp: number, timer: number): Errors {
  const shelf = seats.lamps[lamp];
  const seat = seats.timers[timer];
  if (!shelf || !seat || shelf.target.kind === 'day' || shelf.target.kind === 'none') return NO_ERROR;
  const day = dayLampsOn(seats, timer);
  return day.length > 0 ? costs.followError(seat.timer, day, shelf) : NO_ERROR;
}

/** Returns `known` with the errors of the dials that give parts of the day; not all of them once it is hopeless. */
export function partDialErrors(
  seats: Seats,
  costs: ShelfCosts,
  enclosing: Enclosing,
  known: Errors,
  isHopeless: IsHopeless,
): Errors {
  return seats.timers.reduce((sum, { timer }, index) => {
    if (seats.isDay(index) || !seats.isUsed(index) || isHopeless(sum)) return sum;
    const lamps = seats.on(index);
    const ids = [...new Set(lamps.map(({ enclosure }) => enclosure.id))];
    const key = ids.map((id) => enclosing.key(id, timer)).join(' ');
    return withErrors(sum, costs.partErrors(timer, lamps, enclosing.of, key));
  }, known);
}

/** Returns the lamps on a timer that make its day. */
export function dayLampsOn(seats: Seats, timer: number): readonly ShelfLamp[] {
  return seats.on(timer).filter(({ target }) => target.kind === 'day');
}
