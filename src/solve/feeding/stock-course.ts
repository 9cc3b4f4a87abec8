/** What becomes of one feeder over the plan: its orders, and the feeds that it does not suffice for. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { StockOrder } from '../../plan/plan.ts';
import type { Demand, StockFeeder } from './feeder-stock.ts';
import type { Keeping } from './stock-lots.ts';

/** What one feeder's stock comes to. */
export interface StockCourse {
  readonly feeder: StockFeeder;
  readonly keeping: Keeping;
  readonly orders: readonly StockOrder[];
  readonly shoppingDays: readonly EpochDay[];
  /** Feeds for which nothing good is at hand. */
  readonly missing: readonly { readonly demand: Demand; readonly pieces: number }[];
  /** The first day on which what is at hand today does not suffice; null where it lasts, or was not counted. */
  readonly runsOut: EpochDay | null;
}
