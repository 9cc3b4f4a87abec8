/** Short words for dials and their windows, as summary and day share them. */
import type { DialPlan, Window } from '../../plan/plan.ts';

/** Returns a device with the clock its times are read on, for instance `wall-dial (standard time)`. */
export function deviceName({ device, clock }: Pick<DialPlan, 'device' | 'clock'>): string {
  return `${device} (${clock === 'standard' ? 'standard time' : 'wall time'})`;
}

/** Returns windows in words: `on 07:30 to 18:45`, `off all day`, `on all day`; those of a 7-day dial once, as they are the same every day. */
export function windowListWords(windows: readonly Window[]): string {
  const day = windows[0]?.day;
  const ofDay = windows.filter((window) => window.day === day);
  if (ofDay.length === 0) return 'off all day';
  if (ofDay.some(({ on, off }) => on === '00:00' && off === '24:00')) return 'on all day';
  return `on ${overMidnight(ofDay).join(' and ')}`;
}

/** A window that the plan splits at midnight reads as one. */
function overMidnight(windows: readonly Window[]): readonly string[] {
  const early = windows.find(({ on }) => on === '00:00');
  const late = windows.find(({ off }) => off === '24:00');
  if (!early || !late) return windows.map(({ on, off }) => `${on} to ${off}`);
  const rest = windows.filter((window) => window !== early && window !== late);
  return [...rest.map(({ on, off }) => `${on} to ${off}`), `${late.on} to ${early.off}`];
}

/** Returns what a timer drives without the plan's prefixes, for instance `fern/sun, pulse`. */
export function drivenWords(drives: readonly string[]): string {
  return drives.map((name) => name.slice(name.indexOf(':') + 1)).join(', ');
}
