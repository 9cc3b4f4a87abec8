/** Windows that hang on the edges of the day as it is set: two a day, say, moving with the lights. */
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { Edge } from '../../resolve/care.ts';
import type { Spans } from './shelf-lamp.ts';

/**
 * Returns the windows of spans within one day window, each on whole steps and inside the day: a start goes to the nearest step (half up),
 * a length to the nearest number of steps (one at least); what sticks out is moved in, what is too long is cut. Sorted; those that touch
 * are one. The minutes are those of the day window and may lie past 1440.
 */
export function spanWindows(spans: Spans, day: MinuteWindow, stepMinutes: number): readonly MinuteWindow[] {
  const first = Math.ceil(day.onMinute / stepMinutes) * stepMinutes;
  const last = Math.floor(day.offMinute / stepMinutes) * stepMinutes;
  const windows = spans.flatMap((span) => {
    const length = Math.min(last - first, Math.max(1, Math.floor(span.forMinutes / stepMinutes + 0.5)) * stepMinutes);
    if (length <= 0) return [];
    const wanted = Math.floor(edgeMinute(span.at, day) / stepMinutes + 0.5) * stepMinutes;
    const onMinute = Math.min(last - length, Math.max(first, wanted));
    return [{ onMinute, offMinute: onMinute + length }];
  });
  return merged(windows);
}

/** Returns the minute that an edge names on a day. */
export function edgeMinute(edge: Edge, { onMinute, offMinute }: MinuteWindow): number {
  switch (edge.of) {
    case 'after_lights_on':
      return onMinute + edge.minutes;
    case 'before_lights_on':
      return onMinute - edge.minutes;
    case 'before_lights_off':
      return offMinute - edge.minutes;
    case 'after_lights_off':
      return offMinute + edge.minutes;
  }
}

function merged(windows: readonly MinuteWindow[]): readonly MinuteWindow[] {
  const result: MinuteWindow[] = [];
  for (const window of windows.toSorted((a, b) => a.onMinute - b.onMinute)) {
    const before = result.at(-1);
    if (before && window.onMinute <= before.offMinute)
      result[result.length - 1] = {
        onMinute: before.onMinute,
        offMinute: Math.max(before.offMinute, window.offMinute),
      };
    else result.push(window);
  }
  return result;
}

/** Returns the part of the day that all windows share, in the minutes of the first; off equal to on where there is none. */
export function sharedWindow(windows: readonly MinuteWindow[]): MinuteWindow {
  const [first] = windows;
  if (!first) return { onMinute: 0, offMinute: 0 };
  return windows.slice(1).reduce((shared, window) => {
    const turns = [-DAY_MINUTES, 0, DAY_MINUTES].map((turn) => ({
      onMinute: Math.max(shared.onMinute, window.onMinute + turn),
      offMinute: Math.min(shared.offMinute, window.offMinute + turn),
    }));
    const best = turns.toSorted((a, b) => b.offMinute - b.onMinute - (a.offMinute - a.onMinute))[0] ?? shared;
    return best.offMinute > best.onMinute ? best : { onMinute: shared.onMinute, offMinute: shared.onMinute };
  }, first);
}
