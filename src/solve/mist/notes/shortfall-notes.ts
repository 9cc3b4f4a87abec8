/** What the mists of an enclosure leave undone, for the plan and as warnings: targets missed and limits exceeded, each with its remedy. */
import { spanWords } from '../../../basics/span-words.ts';
import type { LimitName } from '../../../diagnostics/catalogue/water.ts';
import type { MistAdvice, MistSet, UnitSystem } from '../../../plan/plan.ts';
import type { Care, CareEnclosure, Targets } from '../../../resolve/care.ts';
import { monthWords } from '../../light/temperature-check.ts';
import type { ExceededLimit, TargetMiss, TargetName } from '../day/day-problem.ts';
import type { MistUnit } from '../mist-unit.ts';
import { type CadenceOff, countOff, lengthOff } from '../sets/cadence-off.ts';
import type { SetDay } from '../sets/member-sets.ts';
import { isNear, type LeversByWay } from './levers-by-way.ts';
import { bandOf, type MissedTarget, missedTargets } from './missed-targets.ts';
import { reachNotes } from './reach-notes.ts';
import { limitRemedy, NEAR_REMEDY, remedyWords } from './remedy-words.ts';
import { warned } from './water-notes.ts';
import { bandWords, percentWords, pointsWords, waterWords } from './water-quantities.ts';

/** Returns what a set falls short of, each with its remedy in words. */
export function shortfallsOf(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  days: readonly SetDay[],
  exceeded: readonly ExceededLimit[],
  levers: LeversByWay,
): MistSet['shortfalls'] {
  const missed = missedTargets(days).map(({ target, by, unit: of, isHigh: high }) => ({
    target: pathOf(target),
    by: Math.round(by * 1e5) / 1e5,
    unit: of,
    remedy: isNear(days) && unit.machine ? NEAR_REMEDY : remedyWords(care, unit, enclosure, levers, high),
  }));
  const limits = exceeded.map(({ limit, by, unit: of }) => ({
    target: limit.replaceAll('-', '_'),
    by,
    unit: of,
    remedy: limitRemedy(care, unit, enclosure, limit, levers),
  }));
  return [...limits, ...missed];
}

/** Returns the warnings of one enclosure over its sets. */
export function shortfallNotes(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  days: readonly SetDay[],
  exceeded: readonly ExceededLimit[],
  levers: LeversByWay,
  datesOf: (limit: ExceededLimit['limit']) => string,
): readonly MistAdvice[] {
  const near = isNear(days) && exceeded.length === 0 && unit.machine !== null;
  const reach = near ? [] : reachNotes(care, unit, enclosure, days, levers);
  const told = new Set(reach.map(({ values }) => values?.target));
  const isHumidSaid = reach.some(({ code }) => code === 'too-humid-unmisted');
  const limits = exceeded.map(({ limit, by, unit: of }) =>
    warned(
      'mist-limit',
      {
        enclosure: enclosure.id,
        limit: limit as LimitName,
        by: limitAmount(limit, by, of, days, care.units),
        dates: datesOf(limit),
        remedy: limitRemedy(care, unit, enclosure, limit, levers),
      },
      subjectOf(limit),
    ),
  );
  const missed = missedTargets(days)
    .filter(({ isHigh: high }) => !(high && isHumidSaid))
    .filter(({ target }) => !told.has(pathOf(target)) && !(target === 'peaks_per_day' && told.has('humidity.peak')))
    .map((miss) =>
      warned(
        near ? 'humidity-near' : 'humidity-short',
        {
          enclosure: enclosure.id,
          target: pathOf(miss.target),
          is: amountWords(miss.is, miss.unit),
          wants: wantsWords(enclosure.targets.humidity, miss.target),
          by: byWords(miss),
          months: monthWords(miss.months),
          remedy: near ? NEAR_REMEDY : remedyWords(care, unit, enclosure, levers, miss.isHigh),
        },
        `targets.${pathOf(miss.target)}`,
      ),
    );
  return [...reach, ...limits, ...missed];
}

function pathOf(target: TargetName): string {
  return `humidity.${target}`;
}

function amountWords(value: number, unit: TargetMiss['unit']): string {
  if (unit === '1') return percentWords(value);
  return unit === 'h' ? spanWords(value * 60) : `${value}`;
}

/** By how much, and to which side. */
function byWords({ by, unit, isHigh }: MissedTarget): string {
  if (unit === '1') return `${pointsWords(by)} too ${isHigh ? 'high' : 'low'}`;
  if (unit === 'h') return `${spanWords(by * 60)} too long`;
  return `${by === 1 ? '1 peak' : `${by} peaks`} too ${isHigh ? 'many' : 'few'}`;
}

function wantsWords(targets: Targets['humidity'], target: TargetName): string {
  if (target === 'floor') return `${percentWords(targets.floor ?? 0)} at least`;
  if (target === 'ceiling') return `${percentWords(targets.ceiling ?? 1)} at most`;
  if (target === 'soaked_at_most') return `${spanWords((targets.soakedAtMostHours ?? 0) * 60)} at most`;
  const band = bandOf(targets, target);
  if (target === 'peaks_per_day') return band ? `${band[0]} to ${band[1]}` : '';
  return band ? bandWords(band) : '';
}

function limitAmount(
  limit: ExceededLimit['limit'],
  by: number,
  unit: ExceededLimit['unit'],
  days: readonly SetDay[],
  units: UnitSystem,
): string {
  const amount = (value: number) => amountOf(value, unit, units);
  if (limit === 'count') return sidesWords(days.map(countOff), amount, ['fewer', 'more']);
  if (limit === 'length') return sidesWords(days.map(lengthOff), amount, ['shorter', 'longer']);
  return amount(by);
}

/** Which side of its range a cadence is missed on, and how far: `1 mist fewer`, or both where days differ. */
function sidesWords(
  days: readonly CadenceOff[],
  amount: (value: number) => string,
  [less, more]: readonly [string, string],
): string {
  const [under, over] = [Math.max(0, ...days.map((day) => day.under)), Math.max(0, ...days.map((day) => day.over))];
  return [...(under > 0 ? [`${amount(under)} ${less}`] : []), ...(over > 0 ? [`${amount(over)} ${more}`] : [])].join(
    ' or ',
  );
}

function amountOf(by: number, unit: ExceededLimit['unit'], units: UnitSystem): string {
  if (unit === 'min') return spanWords(by);
  if (unit === 's') return `${by} s`;
  if (unit === 'mists') return by === 1 ? '1 mist' : `${by} mists`;
  return waterWords(by, units);
}

function subjectOf(limit: ExceededLimit['limit']): MistAdvice['about'] & string {
  switch (limit) {
    case 'gap':
      return 'targets.misting.gap';
    case 'count':
      return 'targets.misting.per_day';
    case 'length':
      return 'targets.misting.seconds';
    case 'dry-out':
      return 'targets.water.dry_out';
    case 'no-mist':
      return 'targets.water.no_mist';
    case 'drink':
      return 'targets.water.drink';
    default:
      return limit;
  }
}
