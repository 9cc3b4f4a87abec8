/**
 * A dial's windows as the clock on the wall shows them. Between changes of the clocks all dates are alike; the date of a change stands
 * alone. A dial on standard time is left alone and moves against the wall; one on wall time, turned by a person or by itself, keeps its
 * times but for those that a change skips.
 */
import { type EpochDay, isoDateOf, weekdayIndex, weekdayOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES, minuteOf } from '../../basics/minute-of-day.ts';
import {
  clockChangesOf,
  offsetAt,
  type UtcMinute,
  type UtcOffsets,
  utcMinuteOfDateStart,
} from '../../basics/utc-offsets.ts';
import type { ClockKind, WallWindows, Window } from '../../plan/plan.ts';

/** Minutes [on, off), wall minutes of a date or instants. */
interface Stretch {
  readonly on: number;
  readonly off: number;
}

/**
 * Returns the windows in wall time over the dates [fromDay, toDay], both inclusive; spans follow one another without a gap, and every
 * date on which the clocks change has one of its own.
 *
 * Each edge is converted with the offset in force at its instant; one that a change skips falls on the change. On the date of a change
 * windows stand in the order of time: where the hour that comes twice would put off before on, the window is cut at the change. The
 * setting is taken to stand before and after its dates as well, so light past midnight of the date before is part of the first.
 *
 * @param windows on the dial's clock; those of a 7-day dial name their weekday
 * @param offsets of the site's zone, over at least these dates
 */
export function wallWindows(
  windows: readonly Window[],
  clock: ClockKind,
  offsets: UtcOffsets,
  fromDay: EpochDay,
  toDay: EpochDay,
): readonly WallWindows[] {
  const weekly = windows.some(({ day }) => day !== undefined);
  return spansByClock(offsets, fromDay, toDay).map(({ from, to }) => ({
    from: isoDateOf(from),
    to: isoDateOf(to),
    windows: weekly
      ? weekdaysIn(from, to).flatMap((day) => windowsOn(windows, clock, offsets, day, true))
      : windowsOn(windows, clock, offsets, from, false),
  }));
}

/** Returns the dates cut into spans of one offset, the dates of a change alone; empty where `toDay` lies before `fromDay`. */
export function spansByClock(
  offsets: UtcOffsets,
  fromDay: EpochDay,
  toDay: EpochDay,
): readonly { readonly from: EpochDay; readonly to: EpochDay }[] {
  const spans: { from: EpochDay; to: EpochDay }[] = [];
  let start = fromDay;
  for (const day of changeDates(offsets)) {
    if (day < start || day > toDay) continue;
    if (day > start) spans.push({ from: start, to: day - 1 });
    spans.push({ from: day, to: day });
    start = day + 1;
  }
  if (start <= toDay) spans.push({ from: start, to: toDay });
  return spans;
}

/** Returns the wall dates that are longer or shorter than 24 h: those on which the new time begins. */
export function changeDates(offsets: UtcOffsets): readonly EpochDay[] {
  return clockChangesOf(offsets).map(({ utcMinute, afterMinutes }) =>
    Math.floor((utcMinute + afterMinutes) / DAY_MINUTES),
  );
}

/** The first date of each weekday in the span, Monday first. */
function weekdaysIn(from: EpochDay, to: EpochDay): readonly EpochDay[] {
  const count = Math.min(7, to - from + 1);
  return Array.from({ length: count }, (_, index) => from + index).sort((a, b) => weekdayIndex(a) - weekdayIndex(b));
}

function windowsOn(
  windows: readonly Window[],
  clock: ClockKind,
  offsets: UtcOffsets,
  day: EpochDay,
  weekly: boolean,
): readonly Window[] {
  const wall =
    clock === 'standard'
      ? shiftedStretches(windows, offsets, day)
      : keptStretches(windows, skippedOn(offsets, day), day);
  return wall.map(({ on, off }) => ({
    ...(weekly ? { day: weekdayOf(day) } : {}),
    on: clockTimeOf(on),
    off: clockTimeOf(off),
  }));
}

/** The wall minutes that a change skips on a date, null where none. */
function skippedOn(offsets: UtcOffsets, day: EpochDay): Stretch | null {
  const skipped = clockChangesOf(offsets)
    .filter(({ beforeMinutes, afterMinutes }) => afterMinutes > beforeMinutes)
    .map(({ utcMinute, beforeMinutes, afterMinutes }) => ({
      on: utcMinute + beforeMinutes - day * DAY_MINUTES,
      off: utcMinute + afterMinutes - day * DAY_MINUTES,
    }));
  return skipped.find(({ on, off }) => off > 0 && on < DAY_MINUTES) ?? null;
}

/** Windows of a clock that shows wall time: as they stand, skipped edges moved to the end of the skip. */
function keptStretches(windows: readonly Window[], skipped: Stretch | null, day: EpochDay): readonly Stretch[] {
  const kept = windowsOfDialDay(windows, day).map(({ on, off }) => ({
    on: on - day * DAY_MINUTES,
    off: off - day * DAY_MINUTES,
  }));
  if (skipped === null) return kept;
  const past = (minute: number): number => (minute > skipped.on && minute < skipped.off ? skipped.off : minute);
  return kept
    .filter(({ on, off }) => on < skipped.on || off > skipped.off)
    .map(({ on, off }) => ({ on: past(on), off: past(off) }));
}

/** Windows of a clock left on standard time, in the order of time. */
function shiftedStretches(windows: readonly Window[], offsets: UtcOffsets, day: EpochDay): readonly Stretch[] {
  const start = utcMinuteOfDateStart(offsets, day);
  const end = utcMinuteOfDateStart(offsets, day + 1);
  return litInstants(windows, offsets, day)
    .filter(({ on, off }) => off > start && on < end)
    .flatMap(({ on, off }) => wallStretches(offsets, day, { on, off }, { on: start, off: end }));
}

/** What is lit around a wall date, in instants, stretches that touch joined. */
function litInstants(windows: readonly Window[], offsets: UtcOffsets, day: EpochDay): readonly Stretch[] {
  const lit: Stretch[] = [];
  for (const dialDay of [day - 1, day, day + 1]) {
    for (const { on, off } of windowsOfDialDay(windows, dialDay)) {
      const shifted = { on: on - offsets.standardOffsetMinutes, off: off - offsets.standardOffsetMinutes };
      const last = lit.at(-1);
      if (last?.off === shifted.on) lit[lit.length - 1] = { on: last.on, off: shifted.off };
      else lit.push(shifted);
    }
  }
  return lit;
}

/** The windows of one date of the dial, as minutes since 1970-01-01 00:00 of its clock. */
function windowsOfDialDay(windows: readonly Window[], dialDay: EpochDay): readonly Stretch[] {
  return windows
    .filter(({ day }) => day === undefined || day === weekdayOf(dialDay))
    .map(({ on, off }) => ({ on: dialDay * DAY_MINUTES + minuteOf(on), off: dialDay * DAY_MINUTES + minuteOf(off) }))
    .sort((a, b) => a.on - b.on);
}

/** A lit stretch as wall minutes of a date; cut at the change of the clocks where off would not come after on. */
function wallStretches(offsets: UtcOffsets, day: EpochDay, lit: Stretch, date: Stretch): readonly Stretch[] {
  const wallAt = (utcMinute: UtcMinute, offsetMinutes: number): number => utcMinute + offsetMinutes - day * DAY_MINUTES;
  const on = lit.on < date.on ? 0 : wallAt(lit.on, offsetAt(offsets, lit.on));
  const off = lit.off >= date.off ? DAY_MINUTES : wallAt(lit.off, offsetAt(offsets, lit.off));
  if (off > on) return [{ on, off }];
  const change = clockChangesOf(offsets).find(({ utcMinute }) => utcMinute > lit.on && utcMinute <= lit.off);
  if (change === undefined) return [];
  const cut = [
    { on, off: wallAt(change.utcMinute, change.beforeMinutes) },
    { on: wallAt(change.utcMinute, change.afterMinutes), off },
  ];
  return cut.filter((stretch) => stretch.off > stretch.on);
}
