/**
 * UV index ranges of the four Ferguson zones: what a species of the zone is exposed to over its day (mean) and at most while it basks (max).
 *
 * Source: Ferguson GW et al. (2010) Zoo Biology 29:317-334 (the zones, from field exposures; its abstract was read: zone medians from 0.35 to 3.1);
 * Baines F et al. (2016) J Zoo Aquar Res 4(1):42-63, Table 1 (the ranges; recalled, and agreeing with a secondary copy that was read).
 */
export interface FergusonZone {
  readonly fergusonZone: 1 | 2 | 3 | 4;
  /** What the animals of the zone do in the sun. */
  readonly behaviour: string;
  /** UV index averaged over the day, least and most. */
  readonly mean: readonly [number, number];
  /** UV index at the basking place, least and most. */
  readonly max: readonly [number, number];
}

export const FERGUSON_ZONES: readonly FergusonZone[] = [
  { fergusonZone: 1, behaviour: 'crepuscular or shade dweller', mean: [0, 0.7], max: [0.6, 1.4] },
  { fergusonZone: 2, behaviour: 'partial sun, occasional basker', mean: [0.7, 1.0], max: [1.1, 3.0] },
  { fergusonZone: 3, behaviour: 'open or partial sun basker', mean: [1.0, 2.6], max: [2.9, 7.4] },
  { fergusonZone: 4, behaviour: 'mid-day sun basker', mean: [2.6, 3.5], max: [4.5, 9.5] },
];

export const FERGUSON_ZONES_SOURCE =
  'Ferguson GW et al. (2010) Zoo Biology 29:317-334; Baines F et al. (2016) J Zoo Aquar Res 4(1):42-63, ranges recalled and checked against a secondary copy';

/** Returns the UV index ranges of a zone 1 to 4, or null for any other number. */
export function fergusonZone(zone: number): {
  readonly fergusonZone: number;
  readonly mean: readonly [number, number];
  readonly max: readonly [number, number];
} | null {
  const found = FERGUSON_ZONES.find((entry) => entry.fergusonZone === zone);
  return found ? { fergusonZone: found.fergusonZone, mean: found.mean, max: found.max } : null;
}
