/** The yearly rules of a VTIMEZONE, read and held against a table of offsets. */
import { civilOf, type EpochDay, epochDayOf, weekdayIndex } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { offsetAt, type UtcOffsets } from '../../basics/utc-offsets.ts';

export interface Observance {
  readonly fromOffsetMinutes: number;
  readonly toOffsetMinutes: number;
  /** Minute of the local day at which it begins, on the clock before. */
  readonly minute: number;
  /** Null where it holds for good. */
  readonly yearly: { readonly month: number; readonly nth: number; readonly weekday: number } | null;
}

const BYDAY = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** Returns the observances of a block whose rules all have the form `FREQ=YEARLY;BYMONTH=m;BYDAY=nXX`; null for any other. */
export function readObservances(block: string): readonly Observance[] | null {
  const sections = [...block.matchAll(/BEGIN:(STANDARD|DAYLIGHT)\r?\n([\s\S]*?)END:\1/g)].map(
    (match) => match[2] ?? '',
  );
  const observances = sections.map(readObservance);
  return observances.length > 0 && observances.every((one) => one !== null) ? observances : null;
}

function readObservance(section: string): Observance | null {
  const field = (name: string): string => new RegExp(`^${name}:(.*?)\\r?$`, 'm').exec(section)?.[1] ?? '';
  const rule = field('RRULE');
  const yearly = /^FREQ=YEARLY;BYMONTH=(\d+);BYDAY=(-?\d)([A-Z]{2})$/.exec(rule);
  const start = /T(\d{2})(\d{2})\d{2}$/.exec(field('DTSTART'));
  if (!start || (rule !== '' && !yearly)) return null;
  return {
    fromOffsetMinutes: offsetMinutes(field('TZOFFSETFROM')),
    toOffsetMinutes: offsetMinutes(field('TZOFFSETTO')),
    minute: Number(start[1]) * 60 + Number(start[2]),
    yearly: yearly
      ? { month: Number(yearly[1]), nth: Number(yearly[2]), weekday: BYDAY.indexOf(yearly[3] ?? '') }
      : null,
  };
}

function offsetMinutes(text: string): number {
  const match = /^([+-])(\d{2})(\d{2})$/.exec(text);
  if (!match) return Number.NaN;
  return (match[1] === '-' ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3]));
}

/** Returns whether the observances and the offsets say the same at every moment of the dates between, both inclusive. */
export function agreesWith(
  observances: readonly Observance[] | null,
  offsets: UtcOffsets,
  firstDay: EpochDay,
  lastDay: EpochDay,
): boolean {
  if (observances === null) return false;
  const [from, to] = [firstDay * DAY_MINUTES, (lastDay + 1) * DAY_MINUTES];
  const changes = observances
    .flatMap((one) => onsets(one, firstDay, lastDay))
    .sort((a, b) => a.utcMinute - b.utcMinute);
  const moments = [
    from,
    to,
    ...changes.map(({ utcMinute }) => utcMinute),
    ...offsets.spans.map(({ fromUtcMinute }) => fromUtcMinute),
  ];
  const ruled = (utcMinute: number): number =>
    (changes.findLast((change) => change.utcMinute <= utcMinute) ?? changes[0])?.toOffsetMinutes ?? Number.NaN;
  return moments
    .flatMap((moment) => [moment - 1, moment])
    .filter((moment) => moment >= from && moment <= to)
    .every((moment) => ruled(moment) === offsetAt(offsets, moment));
}

function onsets(
  one: Observance,
  firstDay: EpochDay,
  lastDay: EpochDay,
): readonly { readonly utcMinute: number; readonly toOffsetMinutes: number }[] {
  const { toOffsetMinutes, fromOffsetMinutes, minute, yearly } = one;
  if (!yearly) return [{ utcMinute: Number.NEGATIVE_INFINITY, toOffsetMinutes }];
  const [first, last] = [civilOf(firstDay).year - 2, civilOf(lastDay).year + 1];
  return Array.from({ length: last - first + 1 }, (_, index) => ({
    utcMinute: nthWeekday(first + index, yearly) * DAY_MINUTES + minute - fromOffsetMinutes,
    toOffsetMinutes,
  }));
}

function nthWeekday(year: number, { month, nth, weekday }: NonNullable<Observance['yearly']>): EpochDay {
  if (nth > 0) {
    const first = epochDayOf(year, month, 1);
    return first + ((weekday - weekdayIndex(first) + 7) % 7) + (nth - 1) * 7;
  }
  const last = epochDayOf(year, month + 1, 1) - 1;
  return last - ((weekdayIndex(last) - weekday + 7) % 7) + (nth + 1) * 7;
}
