/** How wet and how dry the air of an enclosure can get in its room, before anything is searched. */
import type { WetEnclosure } from './enclosure-day.ts';

/** Relative humidities at which the air settles: everything wet, and without film. */
export interface HumidityReach {
  readonly wet: number;
  readonly dry: number;
}

/**
 * Returns where the air settles fully wet and without film, as fractions.
 * `saturationGPerM3` is that of the air inside; `wets`: whether anything puts water onto the leaves; `airborneGPerHour` is what a
 * fogger adds to the air without pause.
 */
export function humidityReach(
  enclosure: WetEnclosure,
  roomVapourGPerM3: number,
  saturationGPerM3: number,
  wets = true,
  airborneGPerHour = 0,
): HumidityReach {
  const { volumeM3, airChangesPerHour, baseEvaporationGPerHour } = enclosure;
  const exchange = airChangesPerHour * volumeM3;
  const film = wets ? enclosure.transferMPerHour * enclosure.wettableAreaM2 : 0;
  const drySupply = exchange * roomVapourGPerM3 + baseEvaporationGPerHour;
  const dryLoss = exchange * saturationGPerM3 + baseEvaporationGPerHour;
  const extra = film * saturationGPerM3;
  const dry = dryLoss > 0 ? drySupply / dryLoss : roomVapourGPerM3 / saturationGPerM3;
  const wetLoss = dryLoss + extra;
  const wet = wetLoss > 0 ? (drySupply + extra + airborneGPerHour) / wetLoss : dry;
  return { wet: Math.min(1, wet), dry: Math.min(1, dry) };
}

/**
 * Returns the most air changes an hour with which the fully wet air still reaches a humidity (a fraction under 1);
 * Infinity where the room alone is that humid.
 */
export function airChangesToReach(
  enclosure: WetEnclosure,
  roomVapourGPerM3: number,
  saturationGPerM3: number,
  humidity: number,
): number {
  const film = enclosure.transferMPerHour * enclosure.wettableAreaM2 * saturationGPerM3;
  return changesWith(film + enclosure.baseEvaporationGPerHour, enclosure, roomVapourGPerM3, saturationGPerM3, humidity);
}

/** Returns the most air changes an hour with which the air without film still holds a humidity; Infinity where the room alone is that humid. */
export function airChangesToHoldDry(
  enclosure: WetEnclosure,
  roomVapourGPerM3: number,
  saturationGPerM3: number,
  humidity: number,
): number {
  return changesWith(enclosure.baseEvaporationGPerHour, enclosure, roomVapourGPerM3, saturationGPerM3, humidity);
}

function changesWith(
  wetSupply: number,
  enclosure: WetEnclosure,
  roomVapour: number,
  saturation: number,
  humidity: number,
): number {
  const lack = humidity * saturation - roomVapour;
  if (lack <= 0) return Number.POSITIVE_INFINITY;
  return (wetSupply * (1 - humidity)) / (enclosure.volumeM3 * lack);
}
