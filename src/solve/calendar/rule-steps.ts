/**
 * The rules that a run of dates may have: every n days to 60, every n weeks on one day, or one day of every month to the 28th.
 * A step of whole weeks is written as a weekly rule, which phones show best.
 */
import { civilOf, type EpochDay, epochDayOf, weekdayIndex } from '../../basics/calendar-day.ts';

/** Days from one date of a rule to its next, or the same day of every month. */
export type Step = number | 'month';

export interface Part {
  /** The dates covered, ascending. */
  readonly days: readonly EpochDay[];
  /** Null for a single date. */
  readonly step: Step | null;
}

const LONGEST_DAILY_STEP = 60;
const LAST_MONTH_DAY = 28;
const BYDAY = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** Returns whether `excepted` of a rule's `count` dates may be left out: a quarter at most. */
export function mayExcept(excepted: number, count: number): boolean {
  return excepted * 4 <= count;
}

function isStep(days: number): boolean {
  return days <= LONGEST_DAILY_STEP || days % 7 === 0;
}

/** Returns the steps that can join two dates at most `span` days apart, ascending, monthly last. */
export function stepsWithin(span: number): readonly Step[] {
  const steps: Step[] = [];
  for (let days = 1; days <= span; days += 1) if (isStep(days)) steps.push(days);
  return span >= LAST_MONTH_DAY ? [...steps, 'month'] : steps;
}

/** Tells whether every month has the day of the month. */
export function mayStartMonthly(day: EpochDay): boolean {
  return civilOf(day).dayOfMonth <= LAST_MONTH_DAY;
}

/** Returns the date `times` steps on; back where that is negative. */
export function nextDate(day: EpochDay, step: Step, times: number): EpochDay {
  if (step !== 'month') return day + step * times;
  const { year, month, dayOfMonth } = civilOf(day);
  return epochDayOf(year, month + times, dayOfMonth);
}

/** Returns all dates of a rule from `from` to `to`, both inclusive. */
export function ruleDates(from: EpochDay, to: EpochDay, step: Step): readonly EpochDay[] {
  const dates: EpochDay[] = [];
  for (let day = from; day <= to; day = nextDate(day, step, 1)) dates.push(day);
  return dates;
}

/** Returns the part with the fewest exceptions that covers just these ascending dates, or null where no rule may. */
export function partOf(days: readonly EpochDay[]): Part | null {
  const [from, to] = [days[0], days[days.length - 1]];
  if (from === undefined || to === undefined) return null;
  if (days.length === 1) return { days, step: null };
  const candidates: Step[] = [widestStep(days.reduce((gcd, day) => greatestDivisor(gcd, day - from), 0))];
  if (sharesMonthDay(days)) candidates.push('month');
  const counted = candidates.map((step) => ({ step, count: countDates(from, to, step) }));
  const best = counted.reduce((a, b) => (b.count < a.count ? b : a));
  return mayExcept(best.count - days.length, best.count) ? { days, step: best.step } : null;
}

/** Returns the rule without its end, for instance `FREQ=WEEKLY;BYDAY=FR`. */
export function ruleText(from: EpochDay, step: Step): string {
  if (step === 'month') return `FREQ=MONTHLY;BYMONTHDAY=${civilOf(from).dayOfMonth}`;
  if (step % 7 !== 0) return `FREQ=DAILY${interval(step)}`;
  return `FREQ=WEEKLY${interval(step / 7)};BYDAY=${BYDAY[weekdayIndex(from)] ?? 'MO'}`;
}

function interval(n: number): string {
  return n === 1 ? '' : `;INTERVAL=${n}`;
}

/** The greatest divisor of a distance that may be a step. */
function widestStep(distance: number): number {
  if (isStep(distance)) return distance;
  let step = LONGEST_DAILY_STEP;
  while (distance % step !== 0) step -= 1;
  return step;
}

function sharesMonthDay(days: readonly EpochDay[]): boolean {
  const dayOfMonth = civilOf(days[0] ?? 0).dayOfMonth;
  return dayOfMonth <= LAST_MONTH_DAY && days.every((day) => civilOf(day).dayOfMonth === dayOfMonth);
}

function countDates(from: EpochDay, to: EpochDay, step: Step): number {
  if (step !== 'month') return Math.floor((to - from) / step) + 1;
  const [a, b] = [civilOf(from), civilOf(to)];
  return (b.year - a.year) * 12 + b.month - a.month + 1;
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
