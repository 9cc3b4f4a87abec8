/**
 * The UTC offsets of one zone over a span of dates, as data, and the arithmetic between UTC, standard time and wall time on them.
 * Instants are whole minutes since 1970-01-01 00:00 UTC; offsets are minutes east of Greenwich.
 */
import type { EpochDay } from './calendar-day.ts';
import { isoDateOf } from './calendar-day.ts';
import { clockTimeOf, DAY_MINUTES } from './minute-of-day.ts';

export type UtcMinute = number;

export interface OffsetSpan {
  readonly fromUtcMinute: UtcMinute;
  readonly offsetMinutes: number;
}

export interface UtcOffsets {
  readonly zone: string;
  /** The zone's standard offset in the sense of the plan: the lesser of 1 January's and 1 July's in the first year. */
  readonly standardOffsetMinutes: number;
  /** Ascending, never empty, neighbours differ; the first stands before the span of dates begins. */
  readonly spans: readonly OffsetSpan[];
}

/** A moment when the clocks of a zone change: at `utcMinute` the wall goes from one local time to another. */
export interface ClockChange {
  readonly utcMinute: UtcMinute;
  readonly beforeMinutes: number;
  readonly afterMinutes: number;
}

/** A time of day on a date: [0, 1440) minutes after the date's 00:00 on the clock in question. */
export interface LocalTime {
  readonly day: EpochDay;
  readonly minute: number;
}

/** What a wall time names: one instant, none (the clocks jump over it), or two (the hour that comes twice). */
export type LocalMeaning =
  | { readonly kind: 'once'; readonly utcMinute: UtcMinute }
  | { readonly kind: 'skipped'; readonly change: ClockChange }
  | { readonly kind: 'twice'; readonly first: UtcMinute; readonly second: UtcMinute; readonly change: ClockChange };

/** Returns the offset in force at an instant; before the first span, the first's. */
export function offsetAt(offsets: UtcOffsets, utcMinute: UtcMinute): number {
  let found = offsets.spans[0]?.offsetMinutes ?? offsets.standardOffsetMinutes;
  for (const span of offsets.spans) {
    if (span.fromUtcMinute > utcMinute) break;
    found = span.offsetMinutes;
  }
  return found;
}

/** Returns every change of the clocks that the spans hold, in order. */
export function clockChangesOf(offsets: UtcOffsets): readonly ClockChange[] {
  return offsets.spans.slice(1).map((span, index) => ({
    utcMinute: span.fromUtcMinute,
    beforeMinutes: offsets.spans[index]?.offsetMinutes ?? offsets.standardOffsetMinutes,
    afterMinutes: span.offsetMinutes,
  }));
}

/** Returns which instants a wall time stands for; `minute` may lie outside [0, 1440) and then means a neighbouring date. */
export function meaningOfWall(offsets: UtcOffsets, day: EpochDay, minute: number): LocalMeaning {
  const local = day * DAY_MINUTES + minute;
  const found = instantsShowing(offsets, local);
  const [first, second] = found;
  if (first === undefined) return { kind: 'skipped', change: changeAround(offsets, local) };
  if (second === undefined) return { kind: 'once', utcMinute: first };
  return { kind: 'twice', first, second, change: changeAround(offsets, local) };
}

function instantsShowing(offsets: UtcOffsets, local: number): readonly UtcMinute[] {
  const { spans } = offsets;
  return spans
    .filter((span, index) => {
      const utc = local - span.offsetMinutes;
      const end = spans[index + 1]?.fromUtcMinute ?? Number.POSITIVE_INFINITY;
      return (index === 0 || utc >= span.fromUtcMinute) && utc < end;
    })
    .map((span) => local - span.offsetMinutes);
}

function changeAround(offsets: UtcOffsets, local: number): ClockChange {
  const change = clockChangesOf(offsets).find((one) => {
    const low = Math.min(one.beforeMinutes, one.afterMinutes);
    const high = Math.max(one.beforeMinutes, one.afterMinutes);
    return local >= one.utcMinute + low && local < one.utcMinute + high;
  });
  if (change === undefined) throw new Error(`no clock change around local minute ${local} in ${offsets.zone}`);
  return change;
}

/**
 * Returns the instant of a wall time: of a time that comes twice the first, of a skipped one the instant that a clock left alone
 * across the change would show it.
 */
export function utcMinuteOfWall(offsets: UtcOffsets, day: EpochDay, minute: number): UtcMinute {
  const meaning = meaningOfWall(offsets, day, minute);
  if (meaning.kind === 'once') return meaning.utcMinute;
  if (meaning.kind === 'twice') return meaning.first;
  return day * DAY_MINUTES + minute - meaning.change.beforeMinutes;
}

/** Returns what the wall clock shows at an instant. */
export function wallTimeAt(offsets: UtcOffsets, utcMinute: UtcMinute): LocalTime {
  return localTimeOf(utcMinute + offsetAt(offsets, utcMinute));
}

/** Returns the instant at which a clock kept on standard time shows a minute of a date; 1440 is the next date's 00:00. */
export function utcMinuteOfStandard(offsets: UtcOffsets, day: EpochDay, minute: number): UtcMinute {
  return day * DAY_MINUTES + minute - offsets.standardOffsetMinutes;
}

/** Returns the offset in force at 12:00 standard time of a date minus the standard offset; negative where a zone has winter time. */
export function dstMinutesOn(offsets: UtcOffsets, day: EpochDay): number {
  return offsetAt(offsets, utcMinuteOfStandard(offsets, day, 720)) - offsets.standardOffsetMinutes;
}

/** Returns the instant at which a wall date begins: its 00:00, or where that is skipped the moment of the change. */
export function utcMinuteOfDateStart(offsets: UtcOffsets, day: EpochDay): UtcMinute {
  const meaning = meaningOfWall(offsets, day, 0);
  if (meaning.kind === 'once') return meaning.utcMinute;
  return meaning.kind === 'twice' ? meaning.first : meaning.change.utcMinute;
}

/** Returns `YYYY-MM-DDTHH:MMZ`. */
export function isoUtcMinuteOf(utcMinute: UtcMinute): string {
  const { day, minute } = localTimeOf(utcMinute);
  return `${isoDateOf(day)}T${clockTimeOf(minute)}Z`;
}

function localTimeOf(localMinute: number): LocalTime {
  const day = Math.floor(localMinute / DAY_MINUTES);
  return { day, minute: localMinute - day * DAY_MINUTES };
}
