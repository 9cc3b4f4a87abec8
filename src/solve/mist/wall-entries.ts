/** A mist timer's entries as the clock on the wall shows them; the dates of a change of the clocks stand alone, as for dials. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES, minuteOf } from '../../basics/minute-of-day.ts';
import { meaningOfWall, type UtcOffsets, utcMinuteOfStandard, wallTimeAt } from '../../basics/utc-offsets.ts';
import type { ClockKind, MistEntry, MistSet } from '../../plan/plan.ts';
import { spansByClock } from '../light/wall-windows.ts';

/**
 * Returns the entries in wall time over the dates [fromDay, toDay], both inclusive, in the order of time. Each start is converted with
 * the offset in force at its instant; on wall time an entry that a change skips does not run that day. The set is taken to stand before
 * and after its dates as well.
 */
export function wallEntries(
  entries: readonly MistEntry[],
  clock: ClockKind,
  offsets: UtcOffsets,
  fromDay: EpochDay,
  toDay: EpochDay,
): MistSet['wall'] {
  return spansByClock(offsets, fromDay, toDay).map(({ from, to }) => ({
    from: isoDateOf(from),
    to: isoDateOf(to),
    entries: clock === 'standard' ? shifted(entries, offsets, from) : kept(entries, offsets, from),
  }));
}

function kept(entries: readonly MistEntry[], offsets: UtcOffsets, day: EpochDay): readonly MistEntry[] {
  return entries.filter(({ at }) => meaningOfWall(offsets, day, minuteOf(at)).kind !== 'skipped');
}

function shifted(entries: readonly MistEntry[], offsets: UtcOffsets, day: EpochDay): readonly MistEntry[] {
  return [day - 1, day, day + 1]
    .flatMap((timerDay) => entries.map((entry) => ({ ...entry, utc: startOf(entry, offsets, timerDay) })))
    .sort((a, b) => a.utc - b.utc)
    .map(({ seconds, utc }) => ({ seconds, wall: wallTimeAt(offsets, utc) }))
    .filter(({ wall }) => wall.day === day)
    .map(({ seconds, wall }) => ({ at: clockTimeOf(wall.minute), seconds }));
}

function startOf({ at }: MistEntry, offsets: UtcOffsets, timerDay: EpochDay): number {
  return utcMinuteOfStandard(offsets, timerDay, minuteOf(at) % DAY_MINUTES);
}
