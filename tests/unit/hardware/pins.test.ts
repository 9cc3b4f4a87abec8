import { expect, test } from 'vitest';
import {
  type DialWindow,
  pinsMoved,
  sharedMinutes,
  slotsOfDay,
  slotsOfWindow,
  spansOfWindow,
} from '../../../src/hardware/pins.ts';
import { slotRuns } from '../../../src/plan/slots.ts';

function everyWindow(step: number): readonly DialWindow[] {
  const windows: DialWindow[] = [
    { onMinute: 0, lengthMinutes: 0 },
    { onMinute: 0, lengthMinutes: 1440 },
  ];
  for (let onMinute = 0; onMinute < 1440; onMinute += step) {
    for (let lengthMinutes = step; lengthMinutes < 1440; lengthMinutes += step)
      windows.push({ onMinute, lengthMinutes });
  }
  return windows;
}

/** The window whose slots these are; null where they are not one unbroken span. */
function windowOfSlots(slots: readonly number[], step: number): DialWindow | null {
  const [run, ...more] = slotRuns(slots, 1440 / step);
  if (!run) return { onMinute: 0, lengthMinutes: 0 };
  return more.length > 0 ? null : { onMinute: run.first * step, lengthMinutes: run.count * step };
}

test.each([15, 30])('every window of a dial with %i min pins comes back from its slots', (step) => {
  const windows = everyWindow(step);
  const pins = 1440 / step;
  expect(windows).toHaveLength(pins * (pins - 1) + 2);
  const changed = windows.filter((window) => {
    const back = windowOfSlots(slotsOfWindow(window, step), step);
    return back?.onMinute !== window.onMinute || back.lengthMinutes !== window.lengthMinutes;
  });
  expect(changed).toEqual([]);
});

test.each([15, 30])('every window with %i min pins is lit in the minutes of its spans, and in no other', (step) => {
  for (const window of everyWindow(step)) {
    const fromSpans = spansOfWindow(window).flatMap(({ onMinute, offMinute }) =>
      Array.from({ length: (offMinute - onMinute) / step }, (_, at) => onMinute / step + at),
    );
    if (fromSpans.join() !== slotsOfWindow(window, step).join()) expect(window).toBe('lit as its spans say');
  }
});

test('the pins that two windows differ in are counted as by comparing their slots, for every pair of hourly windows', () => {
  const windows = everyWindow(120);
  for (const from of windows) {
    const before = new Set(slotsOfWindow(from, 120));
    for (const to of windows) {
      const after = new Set(slotsOfWindow(to, 120));
      const moved =
        [...before].filter((slot) => !after.has(slot)).length + [...after].filter((s) => !before.has(s)).length;
      if (pinsMoved(from, to, 120) !== moved) expect([from, to, pinsMoved(from, to, 120)]).toBe(moved);
    }
  }
});

test('a window off the grid, as a dial with other pins had it, is compared by the slots that begin in it', () => {
  expect(slotsOfWindow({ onMinute: 455, lengthMinutes: 60 }, 30)).toEqual([16, 17]);
  expect(pinsMoved({ onMinute: 455, lengthMinutes: 60 }, { onMinute: 480, lengthMinutes: 90 }, 30)).toBe(1);
});

test('windows that pass midnight share what both have lit', () => {
  expect(sharedMinutes({ onMinute: 1200, lengthMinutes: 600 }, { onMinute: 300, lengthMinutes: 120 })).toBe(60);
  expect(sharedMinutes({ onMinute: 1200, lengthMinutes: 600 }, { onMinute: 1380, lengthMinutes: 1380 })).toBe(540);
});

test('a step that does not divide the day is refused', () => {
  expect(() => slotsOfDay(50)).toThrow('does not divide 24 h');
});
