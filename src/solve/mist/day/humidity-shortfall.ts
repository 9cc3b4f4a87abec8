/** How far the air of a day falls short of its humidity targets. */
import type { Range } from '../../../plan/plan.ts';
import type { CaseFigures, HumidityTargets, TargetMiss, TargetName } from './day-problem.ts';

/** Points of RH that count as one unit of shortfall, and what a peak too few or too many counts. */
const HUMIDITY_UNIT = 0.1;
const PEAK_WEIGHT = 0.3;
const EDGE_MARGIN = 0.005;
const REARM_BELOW_PEAK = 0.05;

/** Targets with every RH edge half a point inside; 0 % and 100 % stay. */
export function withMargins(targets: HumidityTargets): HumidityTargets {
  return {
    ...targets,
    day: inside(targets.day),
    night: inside(targets.night),
    mean: inside(targets.mean),
    peak: inside(targets.peak),
    floor: targets.floor === null ? null : raised(targets.floor),
    ceiling: targets.ceiling === null ? null : lowered(targets.ceiling),
  };
}

/** A band narrower than both margins becomes its middle. */
function inside(band: Range | null): Range | null {
  if (!band) return null;
  const low = raised(band[0]);
  const high = lowered(band[1]);
  return low <= high ? [low, high] : [(band[0] + band[1]) / 2, (band[0] + band[1]) / 2];
}

function raised(edge: number): number {
  return edge <= 0 ? edge : edge + EDGE_MARGIN;
}

function lowered(edge: number): number {
  return edge >= 1 ? edge : edge - EDGE_MARGIN;
}

/** The humidity that a peak must reach, and the one it must have been below before. */
export interface PeakLevels {
  readonly reaches: number;
  readonly rearm: number;
}

/** Returns the levels of a peak, or null where the targets have no peak band. */
export function peakLevels(targets: HumidityTargets): PeakLevels | null {
  if (!targets.peak) return null;
  const reaches = targets.peak[0];
  const band = targets.day ?? targets.mean;
  return { reaches, rearm: Math.min(band?.[1] ?? 1, reaches - REARM_BELOW_PEAK) };
}

/** Returns the band whose middle the mean humidity should be near, or null. */
export function centredBand(targets: HumidityTargets): { readonly band: Range; readonly of: 'day' | 'mean' } | null {
  if (targets.day) return { band: targets.day, of: 'day' };
  return targets.mean ? { band: targets.mean, of: 'mean' } : null;
}

/** Returns what each missed target adds; empty where all are met. A target that is not given adds nothing. */
export function targetMisses(targets: HumidityTargets, figures: CaseFigures): readonly TargetMiss[] {
  const misses: TargetMiss[] = [];
  const add = (target: TargetName, by: number, unit: TargetMiss['unit'], weight: number) => {
    if (by > 1e-9) misses.push({ target, by, unit, adds: by * weight });
  };
  add('day', outside(targets.day, figures.dayHumidity), '1', 1 / HUMIDITY_UNIT);
  add('night', outside(targets.night, figures.nightHumidity), '1', 1 / HUMIDITY_UNIT);
  add('mean', outside(targets.mean, figures.meanHumidity), '1', 1 / HUMIDITY_UNIT);
  add('floor', (targets.floor ?? 0) - figures.lowHumidity, '1', 1 / HUMIDITY_UNIT);
  add('ceiling', figures.highHumidity - (targets.ceiling ?? 1), '1', 1 / HUMIDITY_UNIT);
  if (targets.peak && targets.soakedAtMostHours !== null) {
    add('soaked_at_most', figures.hoursSoaked - targets.soakedAtMostHours, 'h', 1);
  }
  if (targets.peak) add('peaks_per_day', outside(targets.peaksPerDay, figures.peaks), 'peaks', PEAK_WEIGHT);
  return misses;
}

/** Returns the sum of what the missed targets add. */
export function shortfallOf(misses: readonly TargetMiss[]): number {
  let sum = 0;
  for (const miss of misses) sum += miss.adds;
  return sum;
}

/** Returns the distance outside a band, 0 inside, without a band or without such hours. */
function outside(band: Range | null, value: number): number {
  if (!band || Number.isNaN(value)) return 0;
  return Math.max(0, band[0] - value, value - band[1]);
}
