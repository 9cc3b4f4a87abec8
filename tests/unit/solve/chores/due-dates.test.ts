import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { dueDates, monthsAfter } from '../../../../src/solve/chores/due-dates.ts';
import type { Rhythm } from '../../../../src/solve/chores/job.ts';
import { defaultLeewayDays, leewayOf } from '../../../../src/solve/chores/leeway.ts';
import { datesByHours } from '../../../../src/solve/chores/own-jobs.ts';

const due = (rhythm: Rhythm, from: string, to: string) => dueDates(rhythm, epochDay(from), epochDay(to)).map(isoDateOf);

describe('the grid of a chore', () => {
  it.each([
    ['days', { kind: 'days', every: 5 }, ['2027-01-01', '2027-01-06', '2027-01-11', '2027-01-16']],
    ['weekdays', { kind: 'weekdays', weekdays: [0, 3] }, ['2027-01-04', '2027-01-07', '2027-01-11', '2027-01-14']],
    [
      'dates',
      { kind: 'dates', dates: [epochDay('2027-01-09'), epochDay('2027-01-03'), epochDay('2027-02-01')] },
      ['2027-01-03', '2027-01-09'],
    ],
  ] as const)('goes by %s', (_, rhythm, expected) => {
    expect(due(rhythm, '2027-01-01', '2027-01-16')).toEqual(expected);
  });

  it('by months keeps the day of the month it began on, or the last of a shorter month', () => {
    expect(due({ kind: 'months', every: 1 }, '2027-12-31', '2028-05-31')).toEqual([
      '2027-12-31',
      '2028-01-31',
      '2028-02-29',
      '2028-03-31',
      '2028-04-30',
      '2028-05-31',
    ]);
    expect(isoDateOf(monthsAfter(epochDay('2027-08-30'), 6))).toBe('2028-02-29');
  });

  it('by hours of a lamp stands on the day by whose end they have run', () => {
    const minutes = [600, 600, 600, 600, 600, 600];
    expect(datesByHours(minutes, 20, 100)).toEqual([101, 103, 105]);
    expect(datesByHours(minutes, 25, 100)).toEqual([102, 104]);
    expect(datesByHours(minutes, 70, 100)).toEqual([]);
  });
});

describe('the leeway', () => {
  it.each([
    [1, 0],
    [3, 0],
    [4, 1],
    [6, 1],
    [7, 3],
    [14, 3],
    [28, 5],
    [30, 5],
    [84, 10],
    [180, 14],
    [365, 14],
  ])('of every %i days is %i days either way', (interval, leeway) => {
    expect(defaultLeewayDays(interval)).toBe(leeway);
  });

  it('lets a weekly chore reach every weekday, and no two of one chore cross', () => {
    for (let interval = 1; interval < 400; interval++)
      if (interval >= 7) expect(defaultLeewayDays(interval)).toBeGreaterThanOrEqual(3);
    for (let interval = 1; interval < 400; interval++) expect(2 * defaultLeewayDays(interval)).toBeLessThan(interval);
  });

  it('of what comes every three days or less is none, whatever the file says', () => {
    expect(leewayOf({ rhythm: { kind: 'days', every: 3 }, leewayDays: 2 })).toBe(0);
    expect(leewayOf({ rhythm: { kind: 'weekdays', weekdays: [0, 3] }, leewayDays: null })).toBe(0);
    expect(leewayOf({ rhythm: { kind: 'days', every: 4 }, leewayDays: 2 })).toBe(2);
    expect(leewayOf({ rhythm: { kind: 'dates', dates: [] }, leewayDays: null })).toBe(0);
    expect(leewayOf({ rhythm: { kind: 'months', every: 1 }, leewayDays: null })).toBe(5);
  });
});
