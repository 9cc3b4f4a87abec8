/** A chore before its dates are chosen: what, whose, how often, and how far it may be moved. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { CareChore } from '../../resolve/care.ts';

/** Days in [from, to], both inclusive. */
export interface DaySpan {
  readonly from: EpochDay;
  readonly to: EpochDay;
}

export type Rhythm =
  | { readonly kind: 'days'; readonly every: number }
  | { readonly kind: 'months'; readonly every: number }
  /** 0 Monday to 6 Sunday. */
  | { readonly kind: 'weekdays'; readonly weekdays: readonly number[] }
  | { readonly kind: 'dates'; readonly dates: readonly EpochDay[] };

export type WhenAway = CareChore['whenAway'];

export interface Job {
  /** `ENCLOSURE/NAME`, `DEVICE/NAME` or `NAME`; stays the same for good. */
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly enclosure: string | null;
  readonly who: string;
  readonly minutes: number;
  readonly rhythm: Rhythm;
  /** Days from the plan's first day to the start of its grid, 0 for most. */
  readonly startAfterDays: number;
  /** Spans of days outside which there is nothing to do; null: the whole plan. */
  readonly during: readonly DaySpan[] | null;
  /** null: the default of its interval. */
  readonly leewayDays: number | null;
  /** A harder bound than interval and leeway on the days between two; null: none. */
  readonly gapAtMostDays: number | null;
  readonly whenAway: WhenAway;
  /** Water: that nobody does it is a warning. */
  readonly isVital: boolean;
  /** Who says so: `household`, `practice` (common practice, no source), `ours`, or a citation. */
  readonly source: string;
}
