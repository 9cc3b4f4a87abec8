/** The target day length P(d) of every enclosure; held still while an animal is in quarantine or ill. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { AnimalState, Care, CareEnclosure } from '../../resolve/care.ts';
import type { DayTargets, TenthsByDay } from './shelf-lamp.ts';
import { targetDayLengthTenths } from './target-day-length.ts';

/** Returns the targets by enclosure id, tenths of a minute; reports `season-held`. */
export function dayTargetsOf(care: Care, log: Log): DayTargets {
  return new Map(care.enclosures.map((enclosure) => [enclosure.id, heldStill(care, enclosure, log)]));
}

function targets(
  care: Care,
  { targets: { photoperiod, rangeLatitude }, rest }: CareEnclosure,
  from: EpochDay,
  days: number,
): TenthsByDay {
  return targetDayLengthTenths(photoperiod, rest, care.site, rangeLatitude, from, days);
}

/** Each span keeps the day of its first date, also where that lies before the plan; of spans that overlap the earlier. */
function heldStill(care: Care, enclosure: CareEnclosure, log: Log): TenthsByDay {
  const { from, days } = care.plan;
  const held = targets(care, enclosure, from, days);
  const spans = enclosure.states.filter(holdsTheSeason).toSorted((a, b) => b.from - a.from);
  for (const span of spans) {
    const [first, end] = [Math.max(0, span.from - from), Math.min(days, span.to - from + 1)];
    const value = targets(care, enclosure, span.from, 1)[0] ?? 0;
    if (end <= first || held.subarray(first, end).every((tenths) => tenths === value)) continue;
    held.fill(value, first, end);
    reportHeld(care, enclosure, span, value, log);
  }
  return held;
}

function holdsTheSeason({ is }: AnimalState): boolean {
  return is === 'quarantine' || is === 'ill';
}

function reportHeld(care: Care, enclosure: CareEnclosure, span: AnimalState, tenths: number, log: Log): void {
  const values = {
    enclosure: enclosure.id,
    state: span.is === 'ill' ? 'ill' : 'in quarantine',
    from: isoDateOf(span.from),
    to: isoDateOf(span.to),
    target: spanWords(tenths / 10),
  };
  log.report('season-held', values, care.placeOf(span.path));
}
