/**
 * Every minute of both clock-change days of 2027 in eight zones: the runtime's own Intl formatter and a second table of zones against the
 * offsets the program works with, and against the wall windows of all windows of a dial with 30 min pins.
 */
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { clockTimeOf, minuteOf } from '../../../src/basics/minute-of-day.ts';
import { secondOffsets } from '../../../src/basics/second-zone-table.ts';
import { offsetAt } from '../../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import { wallChanges } from '../../../src/plan/clock-changes.ts';
import type { Window } from '../../../src/plan/plan.ts';
import { wallWindows } from '../../../src/solve/light/wall-windows.ts';

const DAY = 1440;
const from = epochDay('2027-01-01');
const to = epochDay('2027-12-31');

/** Northern, southern, half an hour, at midnight, back past midnight, negative in the tz data, on a weekday, beside the date line. */
const ZONES = [
  'Europe/Madrid',
  'Australia/Sydney',
  'Australia/Lord_Howe',
  'America/Havana',
  'America/Santiago',
  'Europe/Dublin',
  'Africa/Cairo',
  'Pacific/Auckland',
];

/** What Intl shows at each UTC minute around a date, kept where its local date is that one. */
function minutesOfDate(zone: string, date: string): readonly { readonly utc: number; readonly wall: number }[] {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const start = (epochDay(date) - 1) * DAY;
  return Array.from({ length: 3 * DAY }, (_, index) => start + index).flatMap((utc) => {
    const text = format.format(utc * 60_000);
    return text.startsWith(date) ? [{ utc, wall: minuteOf(text.slice(-5)) }] : [];
  });
}

/** Windows [on, off) of a day for every pair of steps, off before on passing midnight; nothing and all day included. */
function* dialWindows(step: number): Generator<readonly Window[]> {
  yield [];
  yield [{ on: '00:00', off: '24:00' }];
  for (let on = 0; on < DAY; on += step) {
    for (let off = step; off <= DAY; off += step) {
      if (off > on) yield [{ on: clockTimeOf(on), off: clockTimeOf(off) }];
      else if (off < on)
        yield [
          { on: '00:00', off: clockTimeOf(off) },
          { on: clockTimeOf(on), off: '24:00' },
        ];
    }
  }
}

function marks(windows: readonly Window[]): Uint8Array {
  const lit = new Uint8Array(DAY);
  for (const { on, off } of windows) lit.fill(1, minuteOf(on), minuteOf(off));
  return lit;
}

const days = ZONES.flatMap((zone) =>
  wallChanges(zoneOffsets(zone, from, 365), from, to).map((change) => ({ zone, ...change })),
);

it('has two such days in each of eight zones', () => {
  expect(days).toHaveLength(16);
});

describe.each(days)('$zone on $date, $direction by $minutes min', ({ zone, date, direction, minutes }) => {
  const offsets = zoneOffsets(zone, from, 365);
  const shown = minutesOfDate(zone, date);
  const day = epochDay(date);

  it('is shorter or longer by the minutes of the change', () => {
    expect(shown).toHaveLength(direction === 'forward' ? DAY - minutes : DAY + minutes);
  });

  it('has the offsets of Intl and of the second table at every minute', () => {
    const second = secondOffsets(offsets, from, 365);
    for (const { utc, wall } of shown) {
      expect((((utc + offsetAt(offsets, utc)) % DAY) + DAY) % DAY).toBe(wall);
      expect(second && offsetAt(second, utc)).toBe(offsetAt(offsets, utc));
    }
  });

  it('stands alone among the spans', () => {
    const spans = wallWindows([{ on: '08:00', off: '20:00' }], 'standard', offsets, from, to);
    expect(spans.filter((span) => span.from === date && span.to === date)).toHaveLength(1);
  });

  it('shows a standard-time dial on the wall, minute by minute, for every window', () => {
    let wrong = 0;
    for (const windows of dialWindows(30)) {
      const dial = marks(windows);
      const wall = marks(wallWindows(windows, 'standard', offsets, day, day)[0]?.windows ?? []);
      const on = new Uint8Array(DAY);
      const off = new Uint8Array(DAY);
      for (const minute of shown) {
        const dialMinute = (((minute.utc + offsets.standardOffsetMinutes) % DAY) + DAY) % DAY;
        if (dial[dialMinute] === 1) on[minute.wall] = 1;
        else off[minute.wall] = 1;
      }
      for (const { wall: minute } of shown) {
        const told = wall[minute] === 1;
        if (told ? on[minute] !== 1 : off[minute] !== 1) wrong++;
      }
    }
    expect(wrong).toBe(0);
  });

  it('shows a wall-time dial as it is set', () => {
    let wrong = 0;
    for (const windows of dialWindows(30)) {
      const dial = marks(windows);
      const wall = marks(wallWindows(windows, 'wall', offsets, day, day)[0]?.windows ?? []);
      for (const minute of shown) if (dial[minute.wall] !== wall[minute.wall]) wrong++;
    }
    expect(wrong).toBe(0);
  });

  it('has every edge at the wall time that Intl shows at its instant', () => {
    const wallAt = new Map(shown.map(({ utc, wall }) => [utc, wall]));
    for (let edge = 30; edge < DAY; edge += 15) {
      const utc = day * DAY + edge - offsets.standardOffsetMinutes;
      const wall = wallAt.get(utc);
      if (wall === undefined) continue;
      const untilNoon = { on: clockTimeOf(edge), off: clockTimeOf(Math.max(edge + 15, 720)) };
      const windows = wallWindows([untilNoon], 'standard', offsets, day, day)[0]?.windows ?? [];
      expect(
        windows.map(({ on }) => on),
        `${date} ${clockTimeOf(edge)}`,
      ).toContain(clockTimeOf(wall));
    }
  });
});
