import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import {
  clockChangesOf,
  dstMinutesOn,
  isoUtcMinuteOf,
  meaningOfWall,
  offsetAt,
  type UtcOffsets,
  utcMinuteOfDateStart,
  utcMinuteOfStandard,
  utcMinuteOfWall,
  wallTimeAt,
} from '../../../src/basics/utc-offsets.ts';
import { autumn, MADRID, spring, WINTER_TIME } from '../../generated/offsets-of-2027.ts';

const DAY = 1440;
const HAVANA: UtcOffsets = {
  zone: 'America/Havana',
  standardOffsetMinutes: -300,
  spans: [
    { fromUtcMinute: epochDay('2026-11-01') * DAY + 300, offsetMinutes: -300 },
    { fromUtcMinute: epochDay('2027-03-14') * DAY + 300, offsetMinutes: -240 },
    { fromUtcMinute: epochDay('2027-11-07') * DAY + 300, offsetMinutes: -300 },
  ],
};
describe('the offset in force', () => {
  it('changes at the very minute of the change', () => {
    expect(offsetAt(MADRID, spring * DAY + 59)).toBe(60);
    expect(offsetAt(MADRID, spring * DAY + 60)).toBe(120);
    expect(offsetAt(MADRID, autumn * DAY + 59)).toBe(120);
    expect(offsetAt(MADRID, autumn * DAY + 60)).toBe(60);
  });

  it('is the first known one before that', () => {
    expect(offsetAt(MADRID, 0)).toBe(60);
  });
});

describe('what a wall time means', () => {
  it('is one instant on an ordinary date', () => {
    expect(meaningOfWall(MADRID, spring + 10, 0)).toEqual({ kind: 'once', utcMinute: (spring + 10) * DAY - 120 });
  });

  it('is nothing in the hour that is skipped', () => {
    expect(meaningOfWall(MADRID, spring, 119).kind).toBe('once');
    expect(meaningOfWall(MADRID, spring, 120).kind).toBe('skipped');
    expect(meaningOfWall(MADRID, spring, 179).kind).toBe('skipped');
    expect(meaningOfWall(MADRID, spring, 180).kind).toBe('once');
  });

  it('is two instants in the hour that comes twice', () => {
    expect(meaningOfWall(MADRID, autumn, 119).kind).toBe('once');
    expect(meaningOfWall(MADRID, autumn, 150)).toMatchObject({
      kind: 'twice',
      first: autumn * DAY + 30,
      second: autumn * DAY + 90,
    });
    expect(meaningOfWall(MADRID, autumn, 180).kind).toBe('once');
  });

  it('takes the first of two, and past a skip what a clock left alone would mean', () => {
    expect(utcMinuteOfWall(MADRID, autumn, 150)).toBe(autumn * DAY + 30);
    expect(utcMinuteOfWall(MADRID, spring, 150)).toBe(spring * DAY + 90);
  });
});

describe('standard time on the wall', () => {
  const wallTimeOfStandard = (offsets: UtcOffsets, day: number, minute: number) =>
    wallTimeAt(offsets, utcMinuteOfStandard(offsets, day, minute));

  it('is itself in winter and an hour later in summer', () => {
    expect(wallTimeOfStandard(MADRID, spring - 1, 450)).toEqual({ day: spring - 1, minute: 450 });
    expect(wallTimeOfStandard(MADRID, spring + 1, 450)).toEqual({ day: spring + 1, minute: 510 });
  });

  it('may fall on the next date', () => {
    expect(wallTimeOfStandard(MADRID, spring + 1, 1410)).toEqual({ day: spring + 2, minute: 30 });
    expect(wallTimeOfStandard(MADRID, spring + 1, 1440)).toEqual({ day: spring + 2, minute: 60 });
  });

  it('may fall on the date before, where winter time lies below standard', () => {
    expect(wallTimeOfStandard(WINTER_TIME, spring + 1, 30)).toEqual({ day: spring, minute: 1410 });
    expect(dstMinutesOn(WINTER_TIME, spring + 1)).toBe(-60);
    expect(dstMinutesOn(WINTER_TIME, spring + 40)).toBe(0);
  });

  it('goes there and back on every minute that is not skipped or doubled', () => {
    for (let minute = 0; minute < 1440; minute++) {
      const wall = wallTimeOfStandard(MADRID, spring, minute);
      expect(utcMinuteOfWall(MADRID, wall.day, wall.minute)).toBe(utcMinuteOfStandard(MADRID, spring, minute));
    }
  });
});

describe('dates', () => {
  it('last 23, 24 or 25 hours', () => {
    const hours = (offsets: UtcOffsets, day: number) =>
      (utcMinuteOfDateStart(offsets, day + 1) - utcMinuteOfDateStart(offsets, day)) / 60;
    expect([spring - 1, spring, autumn, autumn + 1].map((day) => hours(MADRID, day))).toEqual([24, 23, 25, 24]);
    const [on, off] = [epochDay('2027-03-14'), epochDay('2027-11-07')];
    expect([on - 1, on, on + 1, off - 1, off].map((day) => hours(HAVANA, day))).toEqual([24, 23, 24, 24, 25]);
  });

  it('begin at the change where their 00:00 is skipped', () => {
    const day = epochDay('2027-03-14');
    expect(isoUtcMinuteOf(utcMinuteOfDateStart(HAVANA, day))).toBe('2027-03-14T05:00Z');
    expect(meaningOfWall(HAVANA, day, 0).kind).toBe('skipped');
  });
});

it('lists the changes in order', () => {
  expect(clockChangesOf(MADRID).map(({ utcMinute }) => isoUtcMinuteOf(utcMinute))).toEqual([
    '2027-03-28T01:00Z',
    '2027-10-31T01:00Z',
  ]);
  expect(clockChangesOf({ ...MADRID, spans: MADRID.spans.slice(0, 1) })).toEqual([]);
});
