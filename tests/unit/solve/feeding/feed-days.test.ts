import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf, WEEKDAYS, weekdayOf } from '../../../../src/basics/calendar-day.ts';
import type { FeedRule } from '../../../../src/resolve/care.ts';
import { evenWeekdays, feedsPerWeek, feedTimes, repeatsAfter } from '../../../../src/solve/feeding/feed-days.ts';

const MONDAY = epochDay('2027-01-04');

function rule(rhythm: FeedRule['rhythm'], timesADay = 1): FeedRule {
  return { food: 'insects', rhythm, timesADay, pieces: 5, portion: '5', asEatenMinutes: null, removeAfterHours: null };
}

function weekdaysOf(fed: FeedRule): readonly string[] {
  return feedTimes([fed], MONDAY, MONDAY + 6, null).map(({ day }) => weekdayOf(day));
}

describe('feed days', () => {
  it('every choice of weekdays has the least largest gap, is the most even of these, and of these the first in order', () => {
    for (let times = 1; times <= 7; times++) {
      const sets = subsets(times);
      const least = Math.min(...sets.map((days) => Math.max(...gaps(days))));
      const widest = sets.filter((days) => Math.max(...gaps(days)) === least);
      const evenest = Math.min(...widest.map(squares));
      const first = widest.filter((days) => squares(days) === evenest).toSorted(compareLists)[0];
      expect(evenWeekdays(times), `${times} a week`).toEqual(first);
    }
  });

  it.each([
    [1, ['mon']],
    [2, ['mon', 'thu']],
    [3, ['mon', 'wed', 'fri']],
    [4, ['mon', 'tue', 'thu', 'sat']],
    [6, ['mon', 'tue', 'wed', 'thu', 'fri', 'sat']],
    [7, [...WEEKDAYS]],
  ])('%i a week', (times, days) => expect(weekdaysOf(rule({ kind: 'per-week', times }))).toEqual(days));

  it('more than seven a week: every day once, the rest as second feeds on the most even weekdays', () => {
    const times = feedTimes([rule({ kind: 'per-week', times: 9 })], MONDAY, MONDAY + 6, null);
    expect(times).toHaveLength(9);
    expect(times.filter(({ ordinal }) => ordinal === 1).map(({ day }) => weekdayOf(day))).toEqual(['mon', 'thu']);
  });

  it.each([
    [0.5, 2, [0]],
    [1.5, 2, [0, 4, 9]],
    [2.5, 2, [0, 2, 5, 8, 11]],
  ])('%d a week: whole feeds in %i weeks', (times, weeks, expected) => {
    const fed = feedTimes([rule({ kind: 'per-week', times })], MONDAY, MONDAY + 7 * weeks * 2 - 1, null);
    const first = fed.map(({ day }) => day - MONDAY);
    const phase = (MONDAY + 3) % (7 * weeks) === 0 ? 0 : 7;
    const days = [...expected, ...expected.map((day) => day + 7 * weeks), ...expected.map((day) => day - 7 * weeks)];
    const shown = days.map((day) => day + phase).filter((day) => day >= 0 && day < 14 * weeks);
    expect(first).toEqual(shown.toSorted((a, b) => a - b));
    expect(feedsPerWeek([rule({ kind: 'per-week', times })])).toEqual({ n: times * 2, d: 2 });
    expect(repeatsAfter([rule({ kind: 'per-week', times })], 3)).toBe(false);
  });

  it('named weekdays, twice a day', () => {
    const times = feedTimes([rule({ kind: 'days', days: ['tue', 'sun'] }, 2)], MONDAY, MONDAY + 13, null);
    expect(times.map(({ day, ordinal }) => `${weekdayOf(day)}${ordinal}`)).toEqual([
      'tue0',
      'tue1',
      'sun0',
      'sun1',
      'tue0',
      'tue1',
      'sun0',
      'sun1',
    ]);
  });

  it.each([
    ['goes on from the last feed', '2027-01-02', '2027-01-08'],
    ['starts at once where the last feed is overdue', '2026-12-20', '2027-01-04'],
  ])('every 6 days %s', (_, last, first) => {
    const times = feedTimes([rule({ kind: 'every', days: 6 })], MONDAY, MONDAY + 30, epochDay(last));
    expect(isoDateOf(times[0]?.day ?? 0)).toBe(first);
    expect(times.every(({ day }, i) => i === 0 || day - (times[i - 1]?.day ?? 0) === 6)).toBe(true);
  });

  it('counts the feeds of a week as a fraction, and knows when the days repeat', () => {
    expect(feedsPerWeek([rule({ kind: 'every', days: 3 }, 2)])).toEqual({ n: 14, d: 3 });
    expect(repeatsAfter([rule({ kind: 'every', days: 3 })], 2)).toBe(false);
    expect(repeatsAfter([rule({ kind: 'every', days: 3 })], 3)).toBe(true);
    expect(repeatsAfter([rule({ kind: 'every', days: 14 }, 2)], 1)).toBe(false);
  });
});

function subsets(size: number, from = 0): readonly (readonly number[])[] {
  if (size === 0) return [[]];
  const all: (readonly number[])[] = [];
  for (let day = from; day < 7; day++) for (const rest of subsets(size - 1, day + 1)) all.push([day, ...rest]);
  return all;
}

/** The days from each feed to the next, around the week. */
function gaps(days: readonly number[]): readonly number[] {
  return days.map((day, i) => (days[i + 1] ?? (days[0] ?? 0) + 7) - day);
}

function squares(days: readonly number[]): number {
  return gaps(days).reduce((sum, gap) => sum + gap * gap, 0);
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((day, i) => day !== b[i]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}
