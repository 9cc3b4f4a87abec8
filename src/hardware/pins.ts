/** What a pin dial can express: windows of whole steps, and the slots that are on in them. */
import { DAY_MINUTES, wrapMinute } from '../basics/minute-of-day.ts';

/**
 * One span of light a day: from `onMinute`, 0 to 1439, for `lengthMinutes`, 0 to 1440. It passes midnight where on + length is above
 * 1440. No window is length 0 at 00:00, all day is length 1440 at 00:00.
 */
export interface DialWindow {
  readonly onMinute: number;
  readonly lengthMinutes: number;
}

/** Returns the number of pins of one day; throws where the step does not divide 24 h. */
export function slotsOfDay(stepMinutes: number): number {
  const slots = DAY_MINUTES / stepMinutes;
  if (!Number.isInteger(slots)) throw new Error(`a step of ${stepMinutes} min does not divide 24 h`);
  return slots;
}

/** Returns the ON slots of the day, ascending; a slot is on where its first minute lies in the window. */
export function slotsOfWindow(window: DialWindow, stepMinutes: number): readonly number[] {
  const slots: number[] = [];
  for (let slot = 0; slot < slotsOfDay(stepMinutes); slot++) {
    if (wrapMinute(slot * stepMinutes - window.onMinute) < window.lengthMinutes) slots.push(slot);
  }
  return slots;
}

/** Returns the spans [on, off) of the window within one civil day, in order of the clock: none, one, or two where it passes midnight. */
export function spansOfWindow(
  window: DialWindow,
): readonly { readonly onMinute: number; readonly offMinute: number }[] {
  const off = window.onMinute + window.lengthMinutes;
  if (window.lengthMinutes === 0) return [];
  if (off <= DAY_MINUTES) return [{ onMinute: window.onMinute, offMinute: off }];
  return [
    { onMinute: 0, offMinute: off - DAY_MINUTES },
    { onMinute: window.onMinute, offMinute: DAY_MINUTES },
  ];
}

/** Returns how many pins of one day stand differently in the two windows. */
export function pinsMoved(from: DialWindow, to: DialWindow, stepMinutes: number): number {
  if (from.onMinute % stepMinutes !== 0 || from.lengthMinutes % stepMinutes !== 0) {
    const before = new Set(slotsOfWindow(from, stepMinutes));
    const after = slotsOfWindow(to, stepMinutes);
    const kept = after.filter((slot) => before.has(slot)).length;
    return before.size + after.length - 2 * kept;
  }
  return (from.lengthMinutes + to.lengthMinutes - 2 * sharedMinutes(from, to)) / stepMinutes;
}

/** Returns the minutes of the day that lie in both windows. */
export function sharedMinutes(one: DialWindow, other: DialWindow): number {
  let shared = 0;
  for (const turn of [-DAY_MINUTES, 0, DAY_MINUTES]) {
    const from = Math.max(one.onMinute, other.onMinute + turn);
    const to = Math.min(one.onMinute + one.lengthMinutes, other.onMinute + turn + other.lengthMinutes);
    shared += Math.max(0, to - from);
  }
  return shared;
}
