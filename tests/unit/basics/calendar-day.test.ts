import { describe, expect, it } from 'vitest';
import { civilOf, epochDay, epochDayOf, isoDateOf, parseIsoDate, weekdayOf } from '../../../src/basics/calendar-day.ts';

const DAY_MS = 86_400_000;

describe('dates as day numbers', () => {
  it('agree with the runtime on every date from 1600 to 2500', () => {
    let wrong = 0;
    const last = Date.UTC(2500, 11, 31) / DAY_MS;
    for (let day = Date.UTC(1600, 0, 1) / DAY_MS; day <= last; day++) {
      const date = new Date(day * DAY_MS);
      const { year, month, dayOfMonth } = civilOf(day);
      const same =
        year === date.getUTCFullYear() && month === date.getUTCMonth() + 1 && dayOfMonth === date.getUTCDate();
      if (!same || epochDayOf(year, month, dayOfMonth) !== day) wrong++;
    }
    expect(wrong).toBe(0);
  });

  it.each([
    ['1970-01-01', 0, 'thu'],
    ['2000-02-29', 11_016, 'tue'],
    ['2027-01-01', 20_819, 'fri'],
  ] as const)('%s is day %i, a %s', (text, day, weekday) => {
    expect(epochDay(text)).toBe(day);
    expect(isoDateOf(day)).toBe(text);
    expect(weekdayOf(day)).toBe(weekday);
  });

  it('runs on where a month or a day lies beyond its end', () => {
    expect(isoDateOf(epochDayOf(2026, 13, 1))).toBe('2027-01-01');
    expect(isoDateOf(epochDayOf(2027, 0, 1))).toBe('2026-12-01');
    expect(isoDateOf(epochDayOf(2027, 3, 0))).toBe('2027-02-28');
    expect(isoDateOf(epochDayOf(2027, 1, 366))).toBe('2028-01-01');
  });

  it.each(['2027-02-29', '2027-13-01', '2027-00-10', '27-01-01', '2027-1-1', ''])('knows no date %j', (text) => {
    expect(parseIsoDate(text)).toBeNull();
  });
});
