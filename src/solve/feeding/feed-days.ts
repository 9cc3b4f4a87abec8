/** On which days a stream is fed: weekdays, every n days, so many a week; section 4 of the computation. */
import { type EpochDay, WEEKDAYS, weekdayIndex } from '../../basics/calendar-day.ts';
import type { FeedRule } from '../../resolve/care.ts';
import { add, type Fraction, fraction, ZERO } from '../../science/fraction.ts';

/** One feeding occasion of a stream. */
export interface FeedTime {
  readonly day: EpochDay;
  /** Position among the stream's feeds of that day, 0 first. */
  readonly ordinal: number;
  readonly rule: FeedRule;
}

/**
 * Returns the weekdays (0 Monday to 6 Sunday) of so many feeds a week, 0 to 7: those with the least largest gap around the
 * week, of these the first in the order Monday to Sunday.
 */
export function evenWeekdays(times: number): readonly number[] {
  return EVEN_WEEKDAYS[times] ?? [];
}

const EVEN_WEEKDAYS: readonly (readonly number[])[] = Array.from({ length: 8 }, (_, times) => mostEven(times));

function mostEven(times: number): readonly number[] {
  let best: readonly number[] = [];
  let leastGap = Number.POSITIVE_INFINITY;
  for (let chosen = 0; chosen < 128; chosen++) {
    const days = WEEKDAYS.map((_, day) => day).filter((day) => (chosen >> day) & 1);
    if (days.length !== times) continue;
    const gap = largestGap(days);
    if (gap < leastGap || (gap === leastGap && comesBefore(days, best))) [best, leastGap] = [days, gap];
  }
  return best;
}

function largestGap(days: readonly number[]): number {
  return days.reduce((most, day, i) => Math.max(most, (days[i + 1] ?? (days[0] ?? 0) + 7) - day), 0);
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((day, i) => day !== b[i]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

/** Returns how many feeds of a rule fall on each weekday, Monday first; null where it does not go by the week. */
export function feedsByWeekday(rule: FeedRule): readonly number[] | null {
  const { rhythm, timesADay } = rule;
  if (rhythm.kind === 'every') return null;
  if (rhythm.kind === 'days') return WEEKDAYS.map((day) => (rhythm.days.includes(day) ? timesADay : 0));
  const everyDay = Math.floor(rhythm.times / 7);
  const further = evenWeekdays(Math.round(rhythm.times) % 7);
  return WEEKDAYS.map((_, day) => (everyDay + (further.includes(day) ? 1 : 0)) * timesADay);
}

/** Returns the feeds a week of all rules of a stream. */
export function feedsPerWeek(rules: readonly FeedRule[]): Fraction {
  return rules.reduce((total, rule) => add(total, perWeek(rule)), ZERO);
}

function perWeek(rule: FeedRule): Fraction {
  if (rule.rhythm.kind === 'every') return fraction(7 * rule.timesADay, rule.rhythm.days);
  return fraction(
    (feedsByWeekday(rule) ?? []).reduce((all, feeds) => all + feeds, 0),
    1,
  );
}

/** Returns whether the feed days of all rules repeat after so many weeks. */
export function repeatsAfter(rules: readonly FeedRule[], weeks: number): boolean {
  return rules.every(({ rhythm }) => rhythm.kind !== 'every' || (7 * weeks) % rhythm.days === 0);
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
  const weeks = rules.map(feedsByWeekday);
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
  if (week) return week[weekdayIndex(day)] ?? 0;
  if (rule.rhythm.kind !== 'every' || day < first) return 0;
  return (day - first) % rule.rhythm.days === 0 ? rule.timesADay : 0;
}
