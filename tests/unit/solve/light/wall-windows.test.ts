import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { clockTimeOf, minuteOf } from '../../../../src/basics/minute-of-day.ts';
import type { UtcOffsets } from '../../../../src/basics/utc-offsets.ts';
import type { Window } from '../../../../src/plan/plan.ts';
import { changeDates, spansByClock, wallWindows } from '../../../../src/solve/light/wall-windows.ts';
import { autumn, MADRID, spring, WINTER_TIME } from '../../../generated/offsets-of-2027.ts';

const DAY = 1440;
const from = epochDay('2027-01-01');
const to = epochDay('2027-12-31');

/** Havana's way: from 00:00 straight to 01:00. */
const MIDNIGHT: UtcOffsets = {
  zone: 'Test/Midnight',
  standardOffsetMinutes: 0,
  spans: [
    { fromUtcMinute: 0, offsetMinutes: 0 },
    { fromUtcMinute: spring * DAY, offsetMinutes: 60 },
  ],
};
function onDate(windows: readonly Window[], offsets: UtcOffsets, day: number, clock: 'standard' | 'wall' = 'standard') {
  return wallWindows(windows, clock, offsets, day, day)[0]?.windows.map(({ on, off }) => `${on}-${off}`);
}

const DAYLIGHT: readonly Window[] = [{ on: '07:30', off: '18:45' }];

describe('spans of dates', () => {
  it('give each date of a change its own and leave no gap', () => {
    const spans = wallWindows(DAYLIGHT, 'standard', MADRID, from, to).map((span) => [span.from, span.to]);
    expect(spans).toEqual([
      ['2027-01-01', '2027-03-27'],
      ['2027-03-28', '2027-03-28'],
      ['2027-03-29', '2027-10-30'],
      ['2027-10-31', '2027-10-31'],
      ['2027-11-01', '2027-12-31'],
    ]);
  });

  it('are one where no change falls in, or the setting begins or ends at one', () => {
    expect(spansByClock(MADRID, from, from + 30)).toEqual([{ from, to: from + 30 }]);
    expect(spansByClock(MADRID, spring, spring + 1)).toEqual([
      { from: spring, to: spring },
      { from: spring + 1, to: spring + 1 },
    ]);
    expect(spansByClock(MADRID, spring - 1, spring)).toHaveLength(2);
    expect(spansByClock(MADRID, spring, spring)).toEqual([{ from: spring, to: spring }]);
    expect(spansByClock(MADRID, spring, spring - 1)).toEqual([]);
  });

  it('cover every date once, wherever they begin and end', () => {
    for (let first = spring - 3; first <= spring + 3; first++) {
      for (let last = first; last <= autumn + 3; last += 13) {
        const days = spansByClock(MADRID, first, last).flatMap((span) =>
          Array.from({ length: span.to - span.from + 1 }, (_, index) => span.from + index),
        );
        expect(days).toEqual(Array.from({ length: last - first + 1 }, (_, index) => first + index));
      }
    }
  });

  it('put a change at midnight on the date that loses the hour', () => {
    expect(changeDates(MIDNIGHT).map(isoDateOf)).toEqual(['2027-03-28']);
  });
});

describe('a dial on standard time', () => {
  it('shows its own times in winter and an hour later in summer', () => {
    expect(onDate(DAYLIGHT, MADRID, from)).toEqual(['07:30-18:45']);
    expect(onDate(DAYLIGHT, MADRID, spring + 1)).toEqual(['08:30-19:45']);
    expect(onDate(DAYLIGHT, MADRID, autumn + 1)).toEqual(['07:30-18:45']);
  });

  it('shows an hour earlier where winter time lies below standard', () => {
    expect(onDate(DAYLIGHT, WINTER_TIME, spring + 1)).toEqual(['06:30-17:45']);
    expect(onDate([{ on: '00:30', off: '12:00' }], WINTER_TIME, spring + 1)).toEqual(['00:00-11:00', '23:30-24:00']);
  });

  it('converts each edge with the offset at its instant on the date of a change', () => {
    expect(onDate(DAYLIGHT, MADRID, spring)).toEqual(['08:30-19:45']);
    expect(onDate([{ on: '01:30', off: '05:00' }], MADRID, spring)).toEqual(['01:30-06:00']);
    expect(onDate([{ on: '02:00', off: '05:00' }], MADRID, spring)).toEqual(['03:00-06:00']);
    expect(onDate([{ on: '01:30', off: '05:00' }], MADRID, autumn)).toEqual(['02:30-05:00']);
    expect(onDate([{ on: '02:15', off: '05:00' }], MADRID, autumn)).toEqual(['02:15-05:00']);
  });

  it('is cut at the change where the doubled hour would put off before on', () => {
    expect(onDate([{ on: '01:30', off: '02:15' }], MADRID, autumn)).toEqual(['02:30-03:00', '02:00-02:15']);
    expect(onDate([{ on: '01:15', off: '02:15' }], MADRID, autumn)).toEqual(['02:15-03:00', '02:00-02:15']);
    expect(onDate([{ on: '01:30', off: '02:00' }], MADRID, autumn)).toEqual(['02:30-03:00']);
  });

  it('writes a window that passes midnight on the wall as two', () => {
    expect(onDate([{ on: '12:00', off: '23:30' }], MADRID, spring + 1)).toEqual(['00:00-00:30', '13:00-24:00']);
    const night: readonly Window[] = [
      { on: '00:00', off: '02:00' },
      { on: '20:00', off: '24:00' },
    ];
    expect(onDate(night, MADRID, from)).toEqual(['00:00-02:00', '20:00-24:00']);
    expect(onDate(night, MADRID, spring + 1)).toEqual(['00:00-03:00', '21:00-24:00']);
    expect(onDate(night, WINTER_TIME, spring + 1)).toEqual(['00:00-01:00', '19:00-24:00']);
  });

  it('shows two ends of the night on the 25-hour date', () => {
    expect(onDate([{ on: '23:15', off: '23:45' }], MADRID, autumn)).toEqual(['00:15-00:45', '23:15-23:45']);
  });

  it('is on or off all day on every date, of 23 and 25 hours too', () => {
    for (const day of [from, spring, spring + 1, autumn]) {
      expect(onDate([{ on: '00:00', off: '24:00' }], MADRID, day)).toEqual(['00:00-24:00']);
      expect(onDate([], MADRID, day)).toEqual([]);
    }
    expect(onDate([{ on: '00:00', off: '24:00' }], MIDNIGHT, spring)).toEqual(['00:00-24:00']);
  });

  it('that goes on in the very minute of a midnight change does so at 01:00', () => {
    expect(onDate([{ on: '00:00', off: '06:00' }], MIDNIGHT, spring)).toEqual(['01:00-07:00']);
  });
});

describe('every window of a 96-pin dial', () => {
  it('moves by the hour in summer and not at all in winter', () => {
    const marks = (windows: readonly Window[] | undefined): string => {
      const lit = new Array<number>(96).fill(0);
      for (const { on, off } of windows ?? []) lit.fill(1, minuteOf(on) / 15, minuteOf(off) / 15);
      return lit.join('');
    };
    for (let on = 0; on < 96; on++) {
      for (let length = 0; length <= 96; length++) {
        const windows = pinWindows(on, length);
        const set = marks(windows);
        const [winter] = wallWindows(windows, 'standard', MADRID, from, from);
        const [summer] = wallWindows(windows, 'standard', MADRID, spring + 40, spring + 40);
        expect(winter?.windows).toEqual(windows);
        expect(marks(summer?.windows)).toBe(set.slice(-4) + set.slice(0, -4));
        for (const window of summer?.windows ?? []) expect(minuteOf(window.off)).toBeGreaterThan(minuteOf(window.on));
      }
    }
  });
});

function pinWindows(on: number, length: number): readonly Window[] {
  const time = (pin: number): string => clockTimeOf(pin * 15);
  if (length === 0) return [];
  if (length === 96) return [{ on: '00:00', off: '24:00' }];
  if (on + length <= 96) return [{ on: time(on), off: time(on + length) }];
  return [
    { on: '00:00', off: time(on + length - 96) },
    { on: time(on), off: '24:00' },
  ];
}

describe('a dial on wall time', () => {
  it('keeps its times on every date, in spans of their own all the same', () => {
    const spans = wallWindows(DAYLIGHT, 'wall', MADRID, from, to);
    expect(spans).toHaveLength(5);
    for (const { windows } of spans) expect(windows).toEqual(DAYLIGHT);
    expect(wallWindows(DAYLIGHT, 'automatic', MADRID, from, to)).toEqual(spans);
  });

  it('has an edge that is skipped at the end of the skip, and no window inside it', () => {
    expect(onDate([{ on: '02:30', off: '10:00' }], MADRID, spring, 'wall')).toEqual(['03:00-10:00']);
    expect(onDate([{ on: '01:00', off: '02:30' }], MADRID, spring, 'wall')).toEqual(['01:00-03:00']);
    expect(onDate([{ on: '02:15', off: '02:45' }], MADRID, spring, 'wall')).toEqual([]);
    expect(onDate([{ on: '02:00', off: '03:00' }], MADRID, spring, 'wall')).toEqual([]);
    expect(onDate([{ on: '02:30', off: '10:00' }], MADRID, spring + 1, 'wall')).toEqual(['02:30-10:00']);
  });
});

describe('a 7-day dial', () => {
  const week: readonly Window[] = [
    { day: 'mon', on: '08:00', off: '20:00' },
    { day: 'sat', on: '22:00', off: '24:00' },
    { day: 'sun', on: '00:00', off: '02:00' },
  ];

  it('names the weekdays of the wall, Monday first', () => {
    const [span] = wallWindows(week, 'standard', MADRID, spring + 1, spring + 14);
    expect(span?.windows).toEqual([
      { day: 'mon', on: '09:00', off: '21:00' },
      { day: 'sat', on: '23:00', off: '24:00' },
      { day: 'sun', on: '00:00', off: '03:00' },
    ]);
  });

  it('has the weekday of the change alone on its date', () => {
    const spans = wallWindows(week, 'standard', MADRID, from, to);
    expect(spans[1]).toEqual({
      from: '2027-03-28',
      to: '2027-03-28',
      windows: [{ day: 'sun', on: '00:00', off: '03:00' }],
    });
    expect(spans[0]?.windows).toEqual(week);
  });

  it('carries light past midnight into the weekday after', () => {
    const [span] = wallWindows([{ day: 'mon', on: '12:00', off: '24:00' }], 'standard', MADRID, spring + 1, spring + 7);
    expect(span?.windows).toEqual([
      { day: 'mon', on: '13:00', off: '24:00' },
      { day: 'tue', on: '00:00', off: '01:00' },
    ]);
  });
});
