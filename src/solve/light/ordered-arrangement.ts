/** An arrangement of many lamps that begins at the bound: lamps from the shortest target to the longest, each to the first timer that may. */
import { LEFT_OUT, type Seats } from './seats.ts';
import type { ShelfBound } from './shelf-bound.ts';
import type { ShelfLamp } from './shelf-lamp.ts';

/** The error allowed to two lamps on one timer grows by a twentieth, and by a minute, until all lamps find a place. */
const GROWTH = 1.05;
const LEAST_GROWTH_TENTHS = 10;
const MOST_ERROR_TENTHS = 14_400;

/**
 * Returns a timer a lamp (or LEFT_OUT), or null where no error lets all but `leftOut` lamps find one.
 *
 * @param mixes whether lamps that have a part of the day may follow one that makes it
 */
export function orderedArrangement(
  seats: Seats,
  bound: ShelfBound,
  leastWorstTenths: number,
  leftOut: number,
  mixes: boolean,
): readonly number[] | null {
  const order = byTarget(seats);
  for (
    let most = leastWorstTenths;
    most <= MOST_ERROR_TENTHS;
    most = Math.max(Math.ceil(most * GROWTH), most + LEAST_GROWTH_TENTHS)
  ) {
    const mayShare = (one: ShelfLamp, other: ShelfLamp): boolean =>
      (mixes || one.target.kind === other.target.kind) && bound.canShare(one, other, most);
    const found = firstFit(seats, order, mayShare, leftOut);
    if (found) return found;
  }
  return null;
}

/** Lamps without hours of their own take what is left. */
function byTarget({ lamps }: Seats): readonly number[] {
  const mean = lamps.map(({ targetTenths }) => targetTenths.reduce((sum, tenths) => sum + tenths, 0));
  const rank = lamps.map(({ target }) => (target.kind === 'none' ? 1 : 0));
  return [...lamps.keys()].sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0) || (mean[a] ?? 0) - (mean[b] ?? 0) || a - b);
}

/** Leaves the seats as empty as they were. */
function firstFit(
  seats: Seats,
  order: readonly number[],
  mayShare: (one: ShelfLamp, other: ShelfLamp) => boolean,
  leftOut: number,
): readonly number[] | null {
  let left = leftOut;
  const placed: number[] = [];
  for (const lamp of order) {
    const timer = firstTimer(seats, lamp, mayShare);
    if (timer === undefined && left-- <= 0) break;
    seats.put(lamp, timer ?? LEFT_OUT);
    placed.push(lamp);
  }
  const isWhole = placed.length === order.length && seats.timers.every((_, timer) => seats.isAgreed(timer));
  const arrangement = [...seats.placeOf];
  for (const lamp of placed) seats.takeBack(lamp);
  return isWhole ? arrangement : null;
}

/** A timer in use before an empty one: among those the first whose first and last lamp may share with this one. */
function firstTimer(
  seats: Seats,
  lamp: number,
  mayShare: (one: ShelfLamp, other: ShelfLamp) => boolean,
): number | undefined {
  const shelf = seats.lamps[lamp];
  if (!shelf) return undefined;
  const fits = (timer: number): boolean => {
    const aiming = seats.on(timer).filter(({ target }) => target.kind !== 'none');
    const ends = [aiming[0], aiming.at(-1)].flatMap((each) => each ?? []);
    const isNear = shelf.target.kind === 'none' || ends.every((each) => mayShare(each, shelf));
    return isNear && seats.fits(lamp, timer);
  };
  const timers = [...seats.timers.keys()];
  return (
    timers.find((timer) => seats.isUsed(timer) && fits(timer)) ??
    timers.find((timer) => !seats.isUsed(timer) && fits(timer))
  );
}
