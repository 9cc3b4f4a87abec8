/** What a plan says of light: timers, what they are set to day by day, how far that is from what the lamps are to do. */
import type { ClockTime, IsoDate, Weekday } from '../basics/civil.ts';

/** What a timer's clock shows: standard time all year, the wall's by a person's hand, or the wall's by itself. */
export type ClockKind = 'standard' | 'wall' | 'automatic';
/** What a pin that is pressed down does. */
export type PinSense = 'down-is-on' | 'up-is-on';

/** A timer that switches lamps, and every pin dial, with lamps or not. */
export interface DialPlan {
  readonly device: string;
  readonly clock: ClockKind;
  /** From one pin to the next, or to what a timer without pins is set. */
  readonly stepMinutes: number;
  readonly turnsInDays: 1 | 7;
  /** null: it has no pins. */
  readonly pins: PinSense | null;
  /** What hangs on it, as `lamp:ENCLOSURE/LAMP` and `device:ID`. */
  readonly drives: readonly string[];
  readonly lamps: readonly DialLamp[];
  /** In order, without a gap from the plan's first day to its last; empty where it is not planned. */
  readonly settings: readonly DialSetting[];
  /** The day on which a person sets it for the first time, where it came into a plan that had begun; absent where it stood there already. */
  readonly setOn?: IsoDate;
  /** The longest and the shortest day that its daylight lamps want, and the mean of the two: one a day of the plan, empty without any. */
  readonly targetHighMinutes: readonly number[];
  readonly targetLowMinutes: readonly number[];
  readonly targetMinutes: readonly number[];
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  /** What so many settings can reach, fewest first. */
  readonly tradeoff: readonly Tradeoff[];
}

export interface DialLamp {
  readonly enclosure: string;
  readonly lamp: string;
  readonly uses: readonly LampUse[];
  readonly powerW: number;
  /** What it is to be lit, one a day of the plan; empty where it runs as its timer does. */
  readonly targetMinutes: readonly number[];
  readonly worstErrorMinutes: number;
  readonly replaceOn: readonly IsoDate[];
}

export type LampUse = 'daylight' | 'basking' | 'uvb' | 'plants' | 'heat';

/** Half-open [on, off) on one day: past midnight are two, all day is 00:00 to 24:00. */
export interface Window {
  /** On a 7-day dial the weekday; else absent. */
  readonly day?: Weekday;
  readonly on: ClockTime;
  readonly off: ClockTime;
}

export interface DialSetting {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** By the timer's own clock; empty where it is off all day. */
  readonly windows: readonly Window[];
  /** Steps that are on, ascending; 0 begins at 00:00 (Monday 00:00 on a 7-day dial). */
  readonly slots: readonly number[];
  /** The same by the clock on the wall, a span for each offset in force. */
  readonly wall: readonly WallWindows[];
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  /** Copied from an earlier revision: it lies before the day this one was made. */
  readonly past?: true;
}

export interface WallWindows {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly windows: readonly Window[];
}

/** What the best plan with so many settings comes to. */
export interface Tradeoff {
  readonly settings: number;
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  /** The most that on or off moves from one setting to the next. */
  readonly largestJumpMinutes: number;
}
