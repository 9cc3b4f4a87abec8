/**
 * A second table of time zones, newer than the runtime's and independent of it (the one home of timezones-ical-library): its VTIMEZONE
 * blocks, the offsets they stand for, and where they part from the runtime's over a plan.
 *
 * It knows the rule in force now and writes every change as the nth weekday of a month, so it says nothing of the past, and differs by
 * up to a week where a rule is written otherwise (such spans are marked `brief`).
 */
import { tzlib_get_ical_block, tzlib_get_timezones } from 'timezones-ical-library';
import { civilOf, type EpochDay, epochDayOf, weekdayIndex } from './calendar-day.ts';
import { DAY_MINUTES } from './minute-of-day.ts';
import { type OffsetSpan, offsetAt, type UtcMinute, type UtcOffsets, utcMinuteOfDateStart } from './utc-offsets.ts';

/** A span [from, to) of instants in which the two tables name different offsets for a zone. */
export interface ZoneDisagreement {
  readonly fromUtcMinute: UtcMinute;
  readonly toUtcMinute: UtcMinute;
  readonly runtimeMinutes: number;
  readonly secondMinutes: number;
  /** Eight days or less: the second table may have simplified the rule. */
  readonly brief: boolean;
}

interface Observance {
  readonly fromMinutes: number;
  readonly toMinutes: number;
  /** Wall minute of the change, on the clock before it. */
  readonly minute: number;
  /** null: one offset all year. `nth` counts from the month's end where negative. */
  readonly rule: { readonly month: number; readonly nth: number; readonly weekday: number } | null;
}

const BRIEF_MINUTES = 8 * DAY_MINUTES;
const RULE_WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

/** Returns the VTIMEZONE block of a zone, lines parted by CRLF, under the name the table files it as; null where it has none. */
export function vtimezoneBlock(zone: string): string | null {
  if (!tzlib_get_timezones().includes(zone)) return null;
  const block = tzlib_get_ical_block(zone);
  const text = typeof block === 'string' ? block : (block[0] ?? '');
  return text.includes('BEGIN:VTIMEZONE') ? text : null;
}

/** Returns the second table's offsets over the same span as `runtime`; null where it does not have the zone or cannot be read. */
export function secondOffsets(runtime: UtcOffsets, fromDay: EpochDay, days: number): UtcOffsets | null {
  const block = vtimezoneBlock(runtime.zone);
  const observances = block === null ? [] : observancesIn(block);
  if (observances.length === 0) return null;
  const years = yearsAround(fromDay, days);
  const changes = observances
    .flatMap((observance) => years.map((year) => changeIn(observance, year)))
    .sort((a, b) => a.fromUtcMinute - b.fromUtcMinute)
    .filter((change, index, all) => index === 0 || change.offsetMinutes !== all[index - 1]?.offsetMinutes);
  return { zone: runtime.zone, standardOffsetMinutes: runtime.standardOffsetMinutes, spans: changes };
}

/**
 * Returns where the runtime's table and the second one part over the dates [fromDay, fromDay + days), in order; empty where they agree or the
 * second does not have the zone.
 */
export function zoneDisagreements(runtime: UtcOffsets, fromDay: EpochDay, days: number): readonly ZoneDisagreement[] {
  const second = secondOffsets(runtime, fromDay, days);
  if (second === null) return [];
  const from = utcMinuteOfDateStart(runtime, fromDay);
  const to = utcMinuteOfDateStart(runtime, fromDay + days);
  const cuts = [runtime, second].flatMap(({ spans }) => spans.map((span) => span.fromUtcMinute));
  const edges = [...new Set([from, ...cuts.filter((cut) => cut > from && cut < to), to])].sort((a, b) => a - b);
  const found: ZoneDisagreement[] = [];
  edges.slice(0, -1).forEach((start, index) => {
    const end = edges[index + 1] ?? to;
    const [runtimeMinutes, secondMinutes] = [offsetAt(runtime, start), offsetAt(second, start)];
    if (runtimeMinutes === secondMinutes) return;
    const brief = end - start <= BRIEF_MINUTES;
    found.push({ fromUtcMinute: start, toUtcMinute: end, runtimeMinutes, secondMinutes, brief });
  });
  return found;
}

function yearsAround(fromDay: EpochDay, days: number): readonly number[] {
  const first = civilOf(fromDay).year - 1;
  const last = civilOf(fromDay + days).year + 1;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/** Returns the observances of a block; empty where one of them is not of the form this table has. */
function observancesIn(block: string): readonly Observance[] {
  const read = block
    .split(/BEGIN:(?:STANDARD|DAYLIGHT)\r?\n/)
    .slice(1)
    .map(observanceOf);
  return read.every((observance) => observance !== null) ? read : [];
}

function observanceOf(text: string): Observance | null {
  const from = /TZOFFSETFROM:([+-]\d{4})/.exec(text)?.[1];
  const to = /TZOFFSETTO:([+-]\d{4})/.exec(text)?.[1];
  const time = /DTSTART:\d{8}T(\d{2})(\d{2})/.exec(text);
  const rule = ruleOf(text);
  if (from === undefined || to === undefined || time === null || rule === 'unknown') return null;
  return {
    fromMinutes: offsetMinutesOf(from),
    toMinutes: offsetMinutesOf(to),
    minute: Number(time[1]) * 60 + Number(time[2]),
    rule,
  };
}

function ruleOf(text: string): Observance['rule'] | 'unknown' {
  if (!text.includes('RRULE:')) return null;
  const match = /RRULE:FREQ=YEARLY;BYMONTH=(\d+);BYDAY=(-?\d)([A-Z]{2})\r?\n/.exec(text);
  if (match === null) return 'unknown';
  return { month: Number(match[1]), nth: Number(match[2]), weekday: RULE_WEEKDAYS.indexOf(match[3] ?? '') };
}

function offsetMinutesOf(text: string): number {
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(3, 5));
  return text.startsWith('-') ? -minutes : minutes;
}

function changeIn(observance: Observance, year: number): OffsetSpan {
  const { rule, minute, fromMinutes, toMinutes } = observance;
  const day = rule === null ? epochDayOf(year, 1, 1) : nthWeekday(year, rule.month, rule.nth, rule.weekday);
  return { fromUtcMinute: day * DAY_MINUTES + minute - fromMinutes, offsetMinutes: toMinutes };
}

function nthWeekday(year: number, month: number, nth: number, weekday: number): EpochDay {
  if (nth > 0) {
    const first = epochDayOf(year, month, 1);
    return first + ((weekday - weekdayIndex(first) + 7) % 7) + (nth - 1) * 7;
  }
  const last = epochDayOf(year, month + 1, 1) - 1;
  return last - ((weekdayIndex(last) - weekday + 7) % 7) + (nth + 1) * 7;
}
