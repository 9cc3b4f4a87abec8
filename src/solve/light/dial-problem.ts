/**
 * One dial over one plan, as numbers alone: what its lamps want a day, what the dial and the household allow, and the settings chosen.
 * Errors and targets are whole tenths of a minute, so that ties are the same on every machine; days are indexes from the plan's first.
 */
import type { DialWindow } from '../../hardware/pins.ts';

/** Where a window of a given length lies: `midday` puts its middle there, the others fix one edge. */
export interface WindowPlacement {
  readonly kind: 'midday' | 'lights-on' | 'lights-off';
  /** Minute of the dial's clock; halves are allowed for a middle. */
  readonly minute: number;
}

/** What stood on the dial before the plan. */
export interface EarlierWindow {
  readonly window: DialWindow;
  /** Days from its last change to the plan's first day; null where that is not known and does not count. */
  readonly daysSinceChange: number | null;
}

/** Settings that already lie behind; the last one stands on the dial on day `untilDayIndex` (the day of the re-plan). */
export interface PastSettings {
  readonly settings: readonly { readonly fromDayIndex: number; readonly window: DialWindow }[];
  readonly untilDayIndex: number;
  /** Another timer has come in its place, with other steps: what stood on the last cannot stay. */
  readonly isReplaced?: true;
}

export interface DialProblem {
  readonly days: number;
  /** Weekday of day 0, 0 = Monday. */
  readonly firstWeekday: number;
  /** hi(d), tenths of a minute, one a day. */
  readonly highTenths: Int32Array;
  /** lo(d), tenths of a minute, one a day, never above hi(d). */
  readonly lowTenths: Int32Array;
  readonly stepMinutes: number;
  readonly placement: WindowPlacement;
  readonly noLightBeforeMinute: number | null;
  readonly noLightAfterMinute: number | null;
  /** Weekdays on which pins may change, 0 = Monday; null: any. */
  readonly changeOnWeekdays: readonly number[] | null;
  readonly settingsAtMost: number | null;
  readonly toleranceTenths: number | null;
  /** 1 or less: no limit. */
  readonly atLeastBetweenDays: number;
  readonly jumpAtMostMinutes: number | null;
  readonly earlier: EarlierWindow | null;
  /** Windows of the daylight dials, a list a day, inside each of which the window must lie; null for daylight dials. */
  readonly insideByDay: readonly (readonly DialWindow[])[] | null;
  readonly past: PastSettings | null;
}

/** A window held from one day to another, both inclusive. */
export interface ChosenSetting {
  readonly fromDayIndex: number;
  readonly toDayIndex: number;
  readonly window: DialWindow;
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
}

export interface TradeoffRow {
  /** Settings allowed; the plan may use fewer. */
  readonly settings: number;
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
  readonly largestJumpMinutes: number;
}

export interface DialSolution {
  readonly settings: readonly ChosenSetting[];
  /** Over all days of the plan, the past included. */
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
  /** Between neighbouring settings, the step from what stood before included. */
  readonly largestJumpMinutes: number;
  /** From each setting to the next, the step from what stood before included, pins of one day. */
  readonly pinsMoved: number;
  /** Always computed: 1, 2, 3 … settings until the least possible worst error is reached. */
  readonly tradeoff: readonly TradeoffRow[];
  /** The least worst error that any number of settings reaches under the same limits. */
  readonly leastPossibleWorstTenths: number;
  /** True where no tolerance was asked for. */
  readonly toleranceReached: boolean;
  /** False where nothing keeps `jumpAtMostMinutes`; then `largestJumpMinutes` is the least that is possible. */
  readonly jumpKept: boolean;
  /** Where the largest jump allowed makes the least worst error larger: the error without it, and the fewest settings that undo it. */
  readonly jumpCost: { readonly worstWithoutTenths: number; readonly settingsToUndo: number | null } | null;
  /** The dial could not be changed on the first day because its last change lies too few days back. */
  readonly heldForSpacing: boolean;
  /** The past had used up the settings allowed, and the window that stands is no longer allowed: one more was taken. */
  readonly beyondSettingsAtMost: boolean;
}
