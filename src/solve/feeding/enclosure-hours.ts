/** The feeding hours of one enclosure over the plan, and which of a person's hours suit it. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { type EnclosureDay, type FeedingHours, feedingHours, fitsIn, type LightsOfDay } from './feeding-hours.ts';

export interface EnclosureHours {
  /** null where the profile gives no hours, or the lights of the date are not known. */
  readonly on: (day: EpochDay) => FeedingHours | null;
  readonly lights: (day: EpochDay) => EnclosureDay | null;
  /** The first quarter hour at which the animal may be fed. */
  readonly firstOn: (day: EpochDay) => number;
  /** The dates of the plan on which a wall minute lies inside the hours. */
  readonly daysInside: (minute: number) => number;
}

/** When an animal is fed of which neither its hours nor a person's are known; ours. */
const UNKNOWN_HOUR = 9 * 60;
const LAST_QUARTER = 1425;

/** Returns the feeding hours of an enclosure on every date of the plan. */
export function enclosureHours(care: Care, enclosure: CareEnclosure, lightsOf: LightsOfDay): EnclosureHours {
  const { from, days } = care.plan;
  const feeding = enclosure.targets.feeding;
  const lights = Array.from({ length: feeding ? days : 0 }, (_, i) => lightsOf(enclosure.id, from + i));
  const byDay = lights.map((lit) => (feeding && lit ? feedingHours(feeding, lit) : null));
  const fits = new Map<number, number>();
  return {
    on: (day) => byDay[day - from] ?? null,
    lights: (day) => lights[day - from] ?? null,
    firstOn: (day) => firstQuarter(byDay[day - from]?.fromMinute ?? UNKNOWN_HOUR),
    daysInside: (minute) => {
      const known = fits.get(minute) ?? byDay.filter((hours) => hours !== null && fitsIn(hours, minute)).length;
      fits.set(minute, known);
      return known;
    },
  };
}

function firstQuarter(minute: number): number {
  return Math.min(LAST_QUARTER, Math.ceil(minute / 15) * 15);
}
