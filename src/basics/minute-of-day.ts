/** Times of day as minutes after 00:00, 0 to 1440; seconds only where a timer takes them. */
import type { ClockTime } from './civil.ts';

export const DAY_MINUTES = 1440;

/** Returns the minute of `H:MM` or `HH:MM` (`24:00` included), or null. */
export function parseClockTime(text: string): number | null {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (!match) return null;
  const minute = Number(match[1]) * 60 + Number(match[2]);
  return Number(match[2]) < 60 && minute <= DAY_MINUTES ? minute : null;
}

/** Returns the minute of a time that is known to be one; throws on any other text. */
export function minuteOf(text: ClockTime): number {
  const minute = parseClockTime(text);
  if (minute === null) throw new Error(`not a time of day: ${text}`);
  return minute;
}

/** Returns `HH:MM`; 1440 is `24:00`. */
export function clockTimeOf(minute: number): ClockTime {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(Math.round(minute % 60)).padStart(2, '0')}`;
}

/** Returns the minute folded into [0, 1440). */
export function wrapMinute(minute: number): number {
  return ((minute % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
}
