import { describe, expect, it } from 'vitest';
import type { Edge } from '../../../../src/resolve/care.ts';
import { edgeMinute, sharedWindow, spanWindows } from '../../../../src/solve/light/span-windows.ts';

const day = { onMinute: 450, offMinute: 1125 };

function span(of: Edge['of'], minutes: number, forMinutes: number) {
  return { at: { of, minutes }, forMinutes };
}

describe('windows that hang on the edges of the day', () => {
  it.each([
    ['after lights on', [span('after_lights_on', 0, 60)], [[450, 510]]],
    ['before lights off', [span('before_lights_off', 60, 60)], [[1065, 1125]]],
    [
      'two a day, in the order of the clock',
      [span('before_lights_off', 60, 60), span('after_lights_on', 0, 60)],
      [
        [450, 510],
        [1065, 1125],
      ],
    ],
    ['a start between two steps goes to the nearest, half up', [span('after_lights_on', 8, 60)], [[465, 525]]],
    ['a length is a whole number of steps, one at least', [span('after_lights_on', 30, 5)], [[480, 495]]],
    ['what sticks out in the evening is moved in', [span('before_lights_off', 30, 60)], [[1065, 1125]]],
    ['what would begin before the lights is moved in', [span('before_lights_on', 30, 60)], [[450, 510]]],
    ['what is longer than the day is cut to it', [span('after_lights_on', 0, 900)], [[450, 1125]]],
    ['windows that touch are one', [span('after_lights_on', 0, 60), span('after_lights_on', 60, 60)], [[450, 570]]],
  ] as const)('%s', (_, spans, expected) => {
    expect(spanWindows(spans, day, 15).map(({ onMinute, offMinute }) => [onMinute, offMinute])).toEqual(expected);
  });

  it('stay inside a day that is set on a finer grid', () => {
    const spans = [span('after_lights_on', 0, 60), span('before_lights_off', 60, 60)];
    const windows = spanWindows(spans, { onMinute: 455, offMinute: 1117 }, 30);
    expect(windows).toEqual([
      { onMinute: 480, offMinute: 540 },
      { onMinute: 1050, offMinute: 1110 },
    ]);
  });

  it('are none where the day is none', () => {
    expect(spanWindows([span('after_lights_on', 0, 60)], { onMinute: 720, offMinute: 720 }, 15)).toEqual([]);
  });

  it('count on where the light runs past midnight', () => {
    const windows = spanWindows([span('before_lights_off', 60, 60)], { onMinute: 1200, offMinute: 1800 }, 15);
    expect(windows).toEqual([{ onMinute: 1740, offMinute: 1800 }]);
  });
});

describe('an edge', () => {
  it.each([
    ['after_lights_on', 470],
    ['before_lights_on', 430],
    ['before_lights_off', 1105],
    ['after_lights_off', 1145],
  ] as const)('%s', (of, expected) => {
    expect(edgeMinute({ of, minutes: 20 }, day)).toBe(expected);
  });
});

describe('the shared window', () => {
  it('is what all days have in common', () => {
    expect(sharedWindow([day, { onMinute: 480, offMinute: 1200 }])).toEqual({ onMinute: 480, offMinute: 1125 });
  });

  it('is found across midnight', () => {
    const nights = [
      { onMinute: 1200, offMinute: 1740 },
      { onMinute: 1380, offMinute: 1800 },
      { onMinute: 0, offMinute: 240 },
    ];
    expect(sharedWindow(nights)).toEqual({ onMinute: 1440, offMinute: 1680 });
  });

  it('is empty where the days do not meet', () => {
    const { onMinute, offMinute } = sharedWindow([day, { onMinute: 1200, offMinute: 1260 }]);
    expect(offMinute).toBe(onMinute);
  });
});
