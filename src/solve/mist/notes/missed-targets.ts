/** Which humidity targets the days of an enclosure miss, by how much, in which direction and in which months. */
import { civilOf } from '../../../basics/calendar-day.ts';
import type { Range } from '../../../plan/plan.ts';
import type { Targets } from '../../../resolve/care.ts';
import type { CaseFigures, TargetMiss, TargetName } from '../day/day-problem.ts';
import type { SetDay } from '../sets/member-sets.ts';

/** A shortfall up to this is rounding. */
export const ROUNDING_SHORTFALL = 5e-4;

/** Misses up to this are rounding: a twentieth of a point of RH, 3 min. */
const LEAST_BY: Readonly<Record<TargetMiss['unit'], number>> = { '1': 5e-4, h: 0.05, peaks: 0 };

/** One missed target over the days of a set. */
export interface MissedTarget {
  readonly target: TargetName;
  /** The most it is missed by on any of the days, in `unit`. */
  readonly by: number;
  readonly unit: TargetMiss['unit'];
  /** What the air comes to on that day, in `unit`. */
  readonly is: number;
  /** Whether the air lies above the target. */
  readonly isHigh: boolean;
  /** 1 to 12. */
  readonly months: readonly number[];
}

/** Returns the misses of a day, each with its direction. */
export function missesOf({ span, day }: SetDay): readonly (TargetMiss & { readonly isHigh: boolean })[] {
  return day.misses.map((miss) => ({ ...miss, isHigh: isHigh(span.one.targets, miss.target, day.figures) }));
}

/** Returns the targets missed by more than rounding, each once with its worst day and all its months; empty where none is. */
export function missedTargets(days: readonly SetDay[]): readonly MissedTarget[] {
  const found = new Map<TargetName, MissedTarget>();
  for (const { span, day } of days) {
    for (const { target, by, unit } of day.misses) {
      if (by <= LEAST_BY[unit]) continue;
      const known = found.get(target);
      const months = [...new Set([...(known?.months ?? []), ...monthsOf(span.fromDay, span.toDay)])];
      if (known && known.by >= by) found.set(target, { ...known, months });
      else {
        const is = figureOf(target, day.figures);
        found.set(target, { target, by, unit, is, isHigh: isHigh(span.one.targets, target, day.figures), months });
      }
    }
  }
  return [...found.values()];
}

/** Returns the months that the days from the first to the last lie in, 1 to 12, each once. */
export function monthsOf(fromDay: number, toDay: number): readonly number[] {
  const months = new Set<number>();
  for (let day = fromDay; day <= toDay; day += 27) months.add(civilOf(day).month);
  months.add(civilOf(toDay).month);
  return [...months];
}

function figureOf(target: TargetName, figures: CaseFigures): number {
  switch (target) {
    case 'day':
      return figures.dayHumidity;
    case 'night':
      return figures.nightHumidity;
    case 'mean':
      return figures.meanHumidity;
    case 'floor':
      return figures.lowHumidity;
    case 'ceiling':
      return figures.highHumidity;
    case 'soaked_at_most':
      return figures.hoursSoaked;
    case 'peaks_per_day':
      return figures.peaks;
  }
}

/** Returns the band of a target that has one; null for a single edge and where nothing is wanted. */
export function bandOf(targets: Targets['humidity'], target: TargetName): Range | null {
  if (target === 'day' || target === 'night' || target === 'mean') return targets[target];
  return target === 'peaks_per_day' ? targets.peaksPerDay : null;
}

function isHigh(targets: Targets['humidity'], target: TargetName, figures: CaseFigures): boolean {
  if (target === 'ceiling' || target === 'soaked_at_most') return true;
  const band = bandOf(targets, target);
  return band !== null && figureOf(target, figures) > band[1];
}
