/** On which days a stream is fed: weekdays, every n days, so many a week; section 4 of the computation. */
import { type EpochDay, WEEKDAYS } from '../../basics/calendar-day.ts';
import type { FeedRule } from '../../resolve/care.ts';
import { add, type Fraction, fraction, fractionOf, multiply, ZERO } from '../../science/fraction.ts';

/** One feeding occasion of a stream. */
export interface FeedTime {
  readonly day: EpochDay;
  /** Position among the stream's feeds of that day, 0 first. */
  readonly ordinal: number;
  readonly rule: FeedRule;
}

/**
 * Returns the days of a period, counted from 0, of so many feeds in it (no more than its days): those with the least largest gap around
 * the period, of these the most even (least sum of squared gaps), of these the first in order: the short gaps first, then the long ones.
 */
function evenDays(feeds: number, periodDays: number): readonly number[] {
  const short = Math.floor(periodDays / Math.max(1, feeds));
  const shortGaps = feeds - (periodDays % Math.max(1, feeds));
  return Array.from({ length: feeds }, (_, i) => i * short + Math.max(0, i - shortGaps));
}

/** Returns the weekdays (0 Monday to 6 Sunday) of so many feeds a week, 0 to 7. */
export function evenWeekdays(times: number): readonly number[] {
  return evenDays(times, 7);
}

/**
 * Returns how many feeds of a rule fall on each day of its period, whole weeks from a Monday: a week, or the least weeks that hold a
 * whole number of feeds; null where the rule does not go by the week. More feeds than days: every day once, the rest as second feeds.
 */
function feedsInPeriod({ rhythm, timesADay }: FeedRule): readonly number[] | null {
  if (rhythm.kind === 'every') return null;
  if (rhythm.kind === 'days') return WEEKDAYS.map((day) => (rhythm.days.includes(day) ? timesADay : 0));
  const { n: feeds, d: weeks } = fractionOf(rhythm.times);
  const everyDay = Math.floor(feeds / (7 * weeks));
  const further = new Set(evenDays(feeds - everyDay * 7 * weeks, 7 * weeks));
  return Array.from({ length: 7 * weeks }, (_, day) => (everyDay + (further.has(day) ? 1 : 0)) * timesADay);
}

/** Returns the feeds a week of all rules of a stream. */
export function feedsPerWeek(rules: readonly FeedRule[]): Fraction {
  return rules.reduce((total, rule) => add(total, perWeek(rule)), ZERO);
}

function perWeek(rule: FeedRule): Fraction {
  if (rule.rhythm.kind === 'every') return fraction(7 * rule.timesADay, rule.rhythm.days);
  if (rule.rhythm.kind === 'days') return fraction(rule.rhythm.days.length * rule.timesADay, 1);
  return multiply(fractionOf(rule.rhythm.times), fraction(rule.timesADay, 1));
}

/** Returns whether the feed days of all rules repeat after so many weeks. */
export function repeatsAfter(rules: readonly FeedRule[], weeks: number): boolean {
  return rules.every(({ rhythm }) => {
    if (rhythm.kind === 'every') return (7 * weeks) % rhythm.days === 0;
    return rhythm.kind === 'days' || weeks % fractionOf(rhythm.times).d === 0;
  });
}

/**
 * Returns the feeds of a stream over [from, to], by day. A rhythm of every n days goes on from the last feed before `from`,
 * where there is one, and starts on `from` where that one is overdue or unknown.
 */
export function feedTimes(
  rules: readonly FeedRule[],
  from: EpochDay,
  to: EpochDay,
  lastFeed: EpochDay | null,
): readonly FeedTime[] {
  const weeks = rules.map(feedsInPeriod);
  const firsts = rules.map(({ rhythm }) =>
    rhythm.kind === 'every' && lastFeed !== null ? Math.max(from, lastFeed + rhythm.days) : from,
  );
  const times: FeedTime[] = [];
  for (let day = from; day <= to; day++) {
    let ordinal = 0;
    rules.forEach((rule, i) => {
      const feeds = feedsOn(rule, weeks[i] ?? null, firsts[i] ?? from, day);
      for (let n = 0; n < feeds; n++) times.push({ day, ordinal: ordinal++, rule });
    });
  }
  return times;
}

function feedsOn(rule: FeedRule, week: readonly number[] | null, first: EpochDay, day: EpochDay): number {
  if (week) return week[daysSinceMonday(day) % week.length] ?? 0;
  if (rule.rhythm.kind !== 'every' || day < first) return 0;
  return (day - first) % rule.rhythm.days === 0 ? rule.timesADay : 0;
}

/** Days since a Monday long ago, so that periods of several weeks lie alike in every plan. */
function daysSinceMonday(day: EpochDay): number {
  return day + 3;
}
