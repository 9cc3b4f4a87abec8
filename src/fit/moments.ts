/** Dates and times as loggers write them. What a date means may hang on the order of day and month, which one row alone seldom tells. */
import { civilOf, type EpochDay, epochDayOf } from '../basics/calendar-day.ts';

export type DateOrder = 'ymd' | 'dmy' | 'mdy';
export const DATE_ORDERS: readonly DateOrder[] = ['ymd', 'dmy', 'mdy'];

/** A date in the order in which it was written, and a time. */
export interface WrittenMoment {
  readonly parts: readonly [number, number, number];
  /** The only order that its form allows; null where its numbers must tell. */
  readonly order: DateOrder | null;
  /** Whether a year of four digits stands last. */
  readonly isYearLast: boolean;
  /** Minutes after 00:00, with fractions; null where no time stands. */
  readonly minute: number | null;
  /** Minutes east of Greenwich where the text says so itself. */
  readonly utcOffset: number | null;
}

const NUMBERS = /^(\d{1,4})\s?[-/.]\s?(\d{1,2})\s?[-/.]\s?(\d{1,4})(?:[T,\s]\s*(.*))?$/u;
const DAY_NAME_YEAR = /^(\d{1,2})[\s./-]+(?:de\s+)?(\p{L}{3,12})\.?[\s,./-]+(?:de\s+)?(\d{4})(?:[T,\s]\s*(.*))?$/u;
const NAME_DAY_YEAR = /^(\p{L}{3,12})\.?\s+(\d{1,2}),?\s+(\d{4})(?:[T,\s]\s*(.*))?$/u;
const COMPACT = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})?(Z)?$/u;
const SECONDS_SINCE_1970 = /^\d{10}(\d{3})?$/u;
const CLOCK =
  /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*(am|pm|a\.?\s?m\.?|p\.?\s?m\.?)?\s*(z|utc|gmt|[+-]\d{2}:?\d{2})?$/u;

/** First letters of the months in English and Spanish. */
const MONTHS: readonly (readonly string[])[] = [
  ['jan', 'ene'],
  ['feb'],
  ['mar'],
  ['apr', 'abr'],
  ['may'],
  ['jun'],
  ['jul'],
  ['aug', 'ago'],
  ['sep', 'set'],
  ['oct'],
  ['nov'],
  ['dec', 'dic'],
];

/** Returns a date, with a time or without; null where the text is neither. */
export function writtenMoment(text: string): WrittenMoment | null {
  const lower = text.trim().toLowerCase();
  const numbers = NUMBERS.exec(lower.replace(/^(\d{4}-\d{2}-\d{2})t/u, '$1 '));
  if (numbers) return fromNumbers(numbers);
  const named = DAY_NAME_YEAR.exec(lower);
  if (named) return moment(Number(named[3]), monthOf(named[2] ?? ''), Number(named[1]), named[4]);
  const american = NAME_DAY_YEAR.exec(lower);
  if (american) return moment(Number(american[3]), monthOf(american[1] ?? ''), Number(american[2]), american[4]);
  const compact = COMPACT.exec(text.trim());
  if (compact) {
    const [, year, month, day, hour, minute, second = '0', zone] = compact;
    const at = Number(hour) * 60 + Number(minute) + Number(second) / 60;
    return {
      parts: [Number(year), Number(month), Number(day)],
      order: 'ymd',
      isYearLast: false,
      minute: at,
      utcOffset: zone === undefined ? null : 0,
    };
  }
  return SECONDS_SINCE_1970.test(lower) ? fromSeconds(Number(lower.slice(0, 10))) : null;
}

function fromNumbers([, a = '', b = '', c = '', rest]: RegExpExecArray): WrittenMoment | null {
  const isYearFirst = a.length >= 3;
  if (isYearFirst === c.length >= 3 && a.length > 2) return null;
  const clock = rest === undefined || rest.trim() === '' ? NO_CLOCK : clockOf(rest.trim());
  if (!clock) return null;
  const order = isYearFirst ? 'ymd' : null;
  const last = c.length <= 2 && !isYearFirst ? 2000 + Number(c) : Number(c);
  return { parts: [Number(a), Number(b), last], order, isYearLast: c.length > 2, ...clock };
}

const NO_CLOCK = { minute: null, utcOffset: null };

function moment(year: number, month: number, day: number, rest: string | undefined): WrittenMoment | null {
  const clock = rest === undefined || rest.trim() === '' ? NO_CLOCK : clockOf(rest.trim());
  return clock && month > 0 ? { parts: [year, month, day], order: 'ymd', isYearLast: false, ...clock } : null;
}

function monthOf(name: string): number {
  return MONTHS.findIndex((names) => names.some((each) => name.startsWith(each))) + 1;
}

function fromSeconds(seconds: number): WrittenMoment {
  const day = Math.floor(seconds / 86_400);
  const { year, month, dayOfMonth } = civilOf(day);
  return {
    parts: [year, month, dayOfMonth],
    order: 'ymd',
    isYearLast: false,
    minute: (seconds - day * 86_400) / 60,
    utcOffset: 0,
  };
}

/** Returns the minutes after 00:00 of a time of day; null where the text is none. */
export function clockOf(text: string): { readonly minute: number; readonly utcOffset: number | null } | null {
  const found = CLOCK.exec(text.toLowerCase());
  if (!found) return null;
  const [, hour = '', minute = '', second = '0', half, zone] = found;
  const hours = hourOf(Number(hour), half);
  if (hours === null || Number(minute) > 59 || Number(second) > 60) return null;
  return { minute: hours * 60 + Number(minute) + Number(second) / 60, utcOffset: offsetOf(zone) };
}

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 24 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.startsWith('p') ? 12 : 0);
}

function offsetOf(zone: string | undefined): number | null {
  if (zone === undefined) return null;
  if (!/^[+-]/u.test(zone)) return 0;
  const size = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(-2));
  return zone.startsWith('-') ? -size : size;
}

/** Returns the date of written parts in an order, or null where there is no such date. */
export function dayIn({ parts: [a, b, c], order: only }: WrittenMoment, order: DateOrder): EpochDay | null {
  const as = only ?? order;
  const [year, month, day] =
    as === 'ymd' ? [a < 100 ? 2000 + a : a, b, c % 2000 || c] : as === 'dmy' ? [c, b, a] : [c, a, b];
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1990 || year > 2100) return null;
  const found = epochDayOf(year, month, day);
  return civilOf(found).dayOfMonth === day ? found : null;
}

/**
 * Returns the orders that all dates of a log allow, fewest days run through first; one only where the others are impossible, lie
 * beyond `lastDay`, or run through many times as many days.
 */
export function ordersOf(moments: readonly WrittenMoment[], lastDay: EpochDay): readonly DateOrder[] {
  if (moments.every(({ order }) => order !== null)) return ['ymd'];
  const yearLast = moments.some(({ isYearLast }) => isYearLast);
  const possible = DATE_ORDERS.filter((order) => !(order === 'ymd' && yearLast)).flatMap((order) => {
    const days = moments.map((each) => dayIn(each, order));
    const known = days.filter((day) => day !== null);
    const isPossible = known.length >= 0.95 * days.length && known.every((day) => day <= lastDay);
    return isPossible ? [{ order, run: daysRun(known) }] : [];
  });
  possible.sort((a, b) => a.run - b.run);
  const [first] = possible;
  return possible.filter(({ run }) => first !== undefined && run <= 4 * first.run + 3).map(({ order }) => order);
}

function daysRun(days: readonly EpochDay[]): number {
  return days.reduce((sum, day, index) => sum + Math.abs(day - (days[index - 1] ?? day)), 0);
}
