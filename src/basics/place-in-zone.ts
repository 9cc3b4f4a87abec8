/** Whether a place can keep the clocks of a time zone: a lost sign or two numbers changed about put the sun on the other side of the earth. */
import type { Coordinates } from './coordinates.ts';
import { zoneSeasons } from './zone.ts';

/** Clocks stand at most some 3 h from the sun: in the west of China, at 74° east on UTC+8. Source: arithmetic on longitudes; ours. */
const MOST_HOURS_FROM_SUN = 4;
/** Nearer to the equator than this the seasons say nothing, degrees. */
const SEASONLESS_DEGREES = 10;

export type Misplacement =
  | { readonly kind: 'east-west'; readonly hours: number }
  /** The zone has its summer time in the winter of the place. */
  | { readonly kind: 'north-south'; readonly summer: 'January' | 'July' };

/** Returns what speaks against a place in a zone, null where nothing does. */
export function misplacement(zone: string, year: number, { latitude, longitude }: Coordinates): Misplacement | null {
  const { januaryMinutes, julyMinutes } = zoneSeasons(zone, year);
  const standardHours = Math.min(januaryMinutes, julyMinutes) / 60;
  const hours = Math.abs(longitude / 15 - standardHours);
  const apart = Math.min(hours, 24 - hours);
  if (apart > MOST_HOURS_FROM_SUN) return { kind: 'east-west', hours: Math.round(apart) };
  if (januaryMinutes === julyMinutes || Math.abs(latitude) < SEASONLESS_DEGREES) return null;
  const isSouthern = januaryMinutes > julyMinutes;
  return isSouthern === latitude < 0 ? null : { kind: 'north-south', summer: isSouthern ? 'January' : 'July' };
}
