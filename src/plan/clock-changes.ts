/**
 * What a change of the clocks or a power cut asks of a person at the shelf, as data; worded elsewhere. How far a dial is turned is told
 * in its own running direction: a mechanical dial must not be forced backwards (common practice, no source).
 */
import { type EpochDay, isoDateOf } from '../basics/calendar-day.ts';
import type { ClockTime, IsoDate } from '../basics/civil.ts';
import { clockTimeOf, DAY_MINUTES } from '../basics/minute-of-day.ts';
import { clockChangesOf, type UtcOffsets } from '../basics/utc-offsets.ts';
import type { ClockKind } from './plan.ts';

export interface WallChange {
  /** The date on which the new time begins; it is longer or shorter than 24 h. */
  readonly date: IsoDate;
  readonly direction: 'forward' | 'back';
  /** How far the wall clock moves, more than 0. */
  readonly minutes: number;
  /** What the wall shows at the moment of the change on the old time, `24:00` where that ends the date, and on the new. */
  readonly from: ClockTime;
  readonly to: ClockTime;
  /** The old time reaches 00:00 just then, so that the night before is as good a moment for it as the day itself. */
  readonly atMidnight: boolean;
  /** Minutes the wall clock is ahead of the zone's standard time from then on; negative where a zone has winter time. */
  readonly aheadOfStandardMinutes: number;
}

/** Returns the changes of the wall clock on the dates [fromDay, toDay], both inclusive, in order; empty where there is none. */
export function wallChanges(offsets: UtcOffsets, fromDay: EpochDay, toDay: EpochDay): readonly WallChange[] {
  return clockChangesOf(offsets)
    .map((change) => ({ ...change, day: Math.floor((change.utcMinute + change.afterMinutes) / DAY_MINUTES) }))
    .filter(({ day }) => day >= fromDay && day <= toDay)
    .map(({ day, utcMinute, beforeMinutes, afterMinutes }) => {
      const old = utcMinute + beforeMinutes - day * DAY_MINUTES;
      return {
        date: isoDateOf(day),
        direction: afterMinutes > beforeMinutes ? 'forward' : 'back',
        minutes: Math.abs(afterMinutes - beforeMinutes),
        from: clockTimeOf(old),
        to: clockTimeOf(utcMinute + afterMinutes - day * DAY_MINUTES),
        atMidnight: old % DAY_MINUTES === 0,
        aheadOfStandardMinutes: afterMinutes - offsets.standardOffsetMinutes,
      };
    });
}

export interface Timekeeping {
  readonly kind: 'pin-dial' | 'programmable-timer' | 'repeat-cycle-timer';
  readonly clock: ClockKind | null;
  readonly turnsInDays: 1 | 7;
  /** null where it has no clock to lose. */
  readonly keepsTime: boolean | null;
}

/** What is done to a timer: nothing, its ring turned on by so many minutes, its clock set, or plugged in again at its hour. */
export type TimerJob =
  | { readonly do: 'nothing' }
  | { readonly do: 'turn-on'; readonly minutes: number }
  | { readonly do: 'set-clock' }
  | { readonly do: 'plug-in-again' };

/**
 * Returns what a change of the clocks asks for: nothing on standard time or where the timer changes itself; else a dial is turned on by
 * the minutes of the change, back by all but those of a whole turn, and a programmable timer's clock is set.
 */
export function jobAtClockChange(timer: Timekeeping, change: Pick<WallChange, 'direction' | 'minutes'>): TimerJob {
  if (timer.kind === 'repeat-cycle-timer' || timer.clock !== 'wall') return { do: 'nothing' };
  if (timer.kind === 'programmable-timer') return { do: 'set-clock' };
  const turn = timer.turnsInDays * DAY_MINUTES;
  return { do: 'turn-on', minutes: change.direction === 'forward' ? change.minutes : turn - change.minutes };
}

/**
 * Returns what a power cut asks for: a dial stood still and is so many minutes slow until it is turned on by them (a cut of a whole turn
 * leaves it right); a programmable timer that does not keep time needs its clock set; a repeat-cycle timer starts anew with ON.
 *
 * @param minutes how long the power was off, at least 0
 */
export function jobAfterPowerCut(timer: Timekeeping, minutes: number): TimerJob {
  if (minutes <= 0) return { do: 'nothing' };
  if (timer.kind === 'repeat-cycle-timer') return { do: 'plug-in-again' };
  if (timer.kind === 'programmable-timer') return timer.keepsTime === true ? { do: 'nothing' } : { do: 'set-clock' };
  const slow = minutes % (timer.turnsInDays * DAY_MINUTES);
  return slow === 0 ? { do: 'nothing' } : { do: 'turn-on', minutes: slow };
}
