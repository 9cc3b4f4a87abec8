/** The hours in which an animal may be fed, against the lights of each day, and the midday at which a person's hour would fit. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { DAY_MINUTES, wrapMinute } from '../../basics/minute-of-day.ts';
import type { Targets, TimeOrEdge } from '../../resolve/care.ts';

/** The lights of an enclosure on one date, minutes of wall time; off may lie past 1440. */
export interface EnclosureDay {
  readonly lightsOnWallMinute: number;
  readonly lightsOffWallMinute: number;
  /** When the basking lamp goes off; null where there is none of its own hours. */
  readonly baskingOffWallMinute: number | null;
  /** Wall time less the animal's clock, minutes. */
  readonly wallLessAnimalMinutes: number;
}

/** Returns the lights of an enclosure on a date; null where they are not known. */
export type LightsOfDay = (enclosure: string, day: EpochDay) => EnclosureDay | null;

/** Wall minutes, `to` included; `to` may lie past 1440. */
export interface FeedingHours {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** Returns the feeding hours of a date; a time of day is on the animal's clock, `to` before lights-off counts from the basking lamp's off. */
export function feedingHours(feeding: NonNullable<Targets['feeding']>, lights: EnclosureDay): FeedingHours {
  const fromMinute = wallMinute(feeding.from, lights, lights.lightsOffWallMinute);
  const toMinute = wallMinute(feeding.to, lights, lights.baskingOffWallMinute ?? lights.lightsOffWallMinute);
  const turn = Math.floor(fromMinute / DAY_MINUTES) * DAY_MINUTES;
  const to = toMinute < fromMinute && !('of' in feeding.to && 'of' in feeding.from) ? toMinute + DAY_MINUTES : toMinute;
  return { fromMinute: fromMinute - turn, toMinute: to - turn };
}

function wallMinute(time: TimeOrEdge, lights: EnclosureDay, dayEndsMinute: number): number {
  if ('minute' in time) return wrapMinute(time.minute + lights.wallLessAnimalMinutes);
  if (time.of === 'after_lights_on') return lights.lightsOnWallMinute + time.minutes;
  if (time.of === 'before_lights_on') return lights.lightsOnWallMinute - time.minutes;
  if (time.of === 'before_lights_off') return dayEndsMinute - time.minutes;
  return lights.lightsOffWallMinute + time.minutes;
}

/** Returns the minutes by which the lights would have to move later (above 0) or earlier for a feed to fit: [least, most]; 0 inside fits. */
export function shiftsThatFit(hours: FeedingHours, feedMinute: number): readonly [number, number] {
  const middle = (hours.fromMinute + hours.toMinute) / 2;
  const turns = [feedMinute - DAY_MINUTES, feedMinute, feedMinute + DAY_MINUTES];
  const feed = turns.reduce((best, minute) => (Math.abs(minute - middle) < Math.abs(best - middle) ? minute : best));
  return [feed - hours.toMinute, feed - hours.fromMinute];
}

/** Returns whether a wall minute lies in the hours. */
export function fitsIn(hours: FeedingHours, feedMinute: number): boolean {
  const [least, most] = shiftsThatFit(hours, feedMinute);
  return least <= 0 && most >= 0;
}

/** Returns the shift nearest to 0 inside all spans, on a step; the earlier of equals; null where they share none. */
export function nearestShift(spans: readonly (readonly [number, number])[], stepMinutes: number): number | null {
  const least = Math.ceil(Math.max(...spans.map(([from]) => from)) / stepMinutes) * stepMinutes;
  const most = Math.floor(Math.min(...spans.map(([, to]) => to)) / stepMinutes) * stepMinutes;
  if (least > most) return null;
  return least > 0 ? least : Math.min(most, 0);
}
