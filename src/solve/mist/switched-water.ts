/** What timers that switch water by themselves are set to: the windows of a fogger on a dial, and those of drippers. */
import { epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { PinDial, ProgrammableTimer } from '../../hardware/devices.ts';
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { DialPlan, DialSetting, MistPlan, MistSet } from '../../plan/plan.ts';
import { clockWindows, slotsOf, unsetDialPlan } from '../light/dial-plan.ts';
import { wallWindows } from '../light/wall-windows.ts';

/** Dates with the same windows, both inclusive. */
export interface SwitchedSpan {
  readonly from: string;
  readonly to: string;
  readonly windows: readonly MinuteWindow[];
  readonly past?: true;
}

/** Returns the plan of a timer that drives no lamp: windows for pins, or lines to key in. */
export function switchedPlan(
  timer: PinDial | ProgrammableTimer,
  drives: readonly string[],
  spans: readonly SwitchedSpan[],
  offsets: UtcOffsets,
): DialPlan {
  const frame = unsetDialPlan(timer, drives);
  return { ...frame, settings: spans.map((span) => settingOf(frame, span, offsets)) };
}

function settingOf(
  { stepMinutes, turnsInDays, clock }: DialPlan,
  span: SwitchedSpan,
  offsets: UtcOffsets,
): DialSetting {
  const windows = clockWindows(span.windows, turnsInDays);
  const [from, to] = [epochDay(span.from), epochDay(span.to)];
  return {
    from: isoDateOf(from),
    to: isoDateOf(to),
    windows,
    slots: slotsOf(span.windows, stepMinutes, turnsInDays),
    wall: wallWindows(windows, clock, offsets, from, to),
    worstErrorMinutes: 0,
    meanErrorMinutes: 0,
    ...(span.past ? { past: true as const } : {}),
  };
}

/** Returns the windows of mists that are whole pins. */
export function mistWindows({ sets }: MistPlan): readonly SwitchedSpan[] {
  return sets.map(({ from, to, entries, past }) => ({
    from,
    to,
    windows: entries.map(({ at, seconds }) => ({ onMinute: minuteOf(at), offMinute: minuteOf(at) + seconds / 60 })),
    ...(past ? { past } : {}),
  }));
}

/** Returns the windows that begin with each mist of a set and last so long, those that touch joined. */
export function windowsAfterMists({ entries }: Pick<MistSet, 'entries'>, minutes: number): readonly MinuteWindow[] {
  const windows: MinuteWindow[] = [];
  for (const { at } of entries) {
    const window = { onMinute: minuteOf(at), offMinute: minuteOf(at) + minutes };
    const before = windows.at(-1);
    if (before && before.offMinute >= window.onMinute)
      windows[windows.length - 1] = { ...before, offMinute: Math.max(before.offMinute, window.offMinute) };
    else windows.push(window);
  }
  return windows;
}
