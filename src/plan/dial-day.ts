/** What a dial of the plan does on one date, on its own clock. */
import type { IsoDate } from '../basics/civil.ts';
import { DAY_MINUTES, minuteOf } from '../basics/minute-of-day.ts';
import type { DialPlan, DialSetting, Window } from './plan.ts';

/** Minutes of the clock that the context names, half-open; off may lie past 1440 where the light runs past midnight. */
export interface MinuteWindow {
  readonly onMinute: number;
  readonly offMinute: number;
}

/** Returns the setting in force on a date, or null where the dial has none. */
export function settingOn(dial: DialPlan, date: IsoDate): DialSetting | null {
  return dial.settings.find((setting) => setting.from <= date && date <= setting.to) ?? null;
}

export interface DialTask {
  readonly date: IsoDate;
  /** What it shows until then; null where it is set from scratch. */
  readonly before: DialSetting | null;
  readonly setting: DialSetting;
}

/** Returns when a person sets a dial, by date: for the first time, then wherever a setting differs from the one before. */
export function dialTasks({ settings, setOn }: Pick<DialPlan, 'settings' | 'setOn'>): readonly DialTask[] {
  const standing = setOn === undefined ? settings : settings.filter(({ to }) => to >= setOn);
  return standing.flatMap((setting, index) => {
    const before = standing[index - 1] ?? null;
    if (before?.slots.join() === setting.slots.join()) return [];
    return [{ date: before === null && setOn !== undefined ? setOn : setting.from, before, setting }];
  });
}

/** Returns a day's windows, those that meet at midnight joined into one that runs past 1440; a 7-day dial does the same every day. */
export function joinedWindows(windows: readonly Window[]): readonly MinuteWindow[] {
  const day = windows[0]?.day;
  const minutes = windows
    .filter((window) => window.day === day)
    .map(({ on, off }) => ({ onMinute: minuteOf(on), offMinute: minuteOf(off) }))
    .toSorted((a, b) => a.onMinute - b.onMinute);
  const [first] = minutes;
  const last = minutes.at(-1);
  if (!first || !last || first === last || first.onMinute !== 0 || last.offMinute !== DAY_MINUTES) return minutes;
  return [...minutes.slice(1, -1), { onMinute: last.onMinute, offMinute: DAY_MINUTES + first.offMinute }];
}

/** Writes windows as the plan keeps them: one that passes midnight as two, none where nothing is on, sorted. */
export function splitAtMidnight(windows: readonly MinuteWindow[]): readonly MinuteWindow[] {
  return windows
    .filter(({ onMinute, offMinute }) => offMinute > onMinute)
    .flatMap((window) => splitOne(window))
    .toSorted((a, b) => a.onMinute - b.onMinute);
}

function splitOne({ onMinute, offMinute }: MinuteWindow): readonly MinuteWindow[] {
  const shift = Math.floor(onMinute / DAY_MINUTES) * DAY_MINUTES;
  const [on, off] = [onMinute - shift, offMinute - shift];
  if (off - on >= DAY_MINUTES) return [{ onMinute: 0, offMinute: DAY_MINUTES }];
  if (off <= DAY_MINUTES) return [{ onMinute: on, offMinute: off }];
  return [
    { onMinute: 0, offMinute: off - DAY_MINUTES },
    { onMinute: on, offMinute: DAY_MINUTES },
  ];
}

/** Returns whether a minute of the day, folded into 0 to 1440, lies in one of the windows. */
export function isOnAt(windows: readonly MinuteWindow[], minute: number): boolean {
  const folded = ((minute % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
  return windows.some(({ onMinute, offMinute }) =>
    [folded, folded + DAY_MINUTES].some((each) => each >= onMinute && each < offMinute),
  );
}

/** Returns the minutes on in a day. */
export function minutesOn(windows: readonly MinuteWindow[]): number {
  return windows.reduce((sum, { onMinute, offMinute }) => sum + offMinute - onMinute, 0);
}
