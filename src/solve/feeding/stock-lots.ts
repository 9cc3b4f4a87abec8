/** Feeders at hand, in lots that age: the oldest are fed first, some die, what is past its shelf life is not fed. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Demand, StockFeeder } from './feeder-stock.ts';

export interface Lot {
  readonly bought: EpochDay;
  /** Pieces alive if none had died since, so that losses act on what is left. */
  readonly pieces: number;
  /** At hand from the start: may be fed at once. */
  readonly atHand: boolean;
}

export interface Keeping {
  readonly survivesADay: number;
  readonly shelfLifeDays: number;
}

/** Returns the share that is left after so many days, 0 to 1. */
export function survivors(keeping: Keeping, days: number): number {
  return keeping.survivesADay ** Math.max(0, days);
}

/** Feeds from the lots, the oldest first; returns what is missing and the lots that are left. */
export function feedFrom(
  lots: readonly Lot[],
  keeping: Keeping,
  demand: Demand,
): { readonly missing: number; readonly lots: readonly Lot[] } {
  let missing = demand.pieces;
  const left = lots.map((lot) => {
    const good = demand.day <= lot.bought + keeping.shelfLifeDays && (lot.atHand || lot.bought <= demand.buyBy);
    if (!good || missing <= 0) return lot;
    const alive = survivors(keeping, demand.day - lot.bought);
    const taken = Math.min(missing, lot.pieces * alive);
    missing -= taken;
    return { ...lot, pieces: lot.pieces - taken / alive };
  });
  return { missing: missing < 1e-6 ? 0 : missing, lots: left.filter(({ pieces }) => pieces > 1e-9) };
}

/** Returns the pieces that are alive and in their shelf life on a day. */
export function goodOn(lots: readonly Lot[], keeping: Keeping, day: EpochDay): number {
  return lots
    .filter(({ bought }) => day <= bought + keeping.shelfLifeDays)
    .reduce((all, lot) => all + lot.pieces * survivors(keeping, day - lot.bought), 0);
}

/** Returns how a feeder keeps, for so many days at most. */
export function keepingOf(feeder: StockFeeder, shelfLifeDays: number): Keeping {
  return { survivesADay: feeder.survivesADay, shelfLifeDays };
}
