/** What the mists of an enclosure leave undone: targets missed, limits exceeded, what is out of reach, and what would do instead. */
import { civilOf } from '../../basics/calendar-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { LimitName } from '../../diagnostics/catalogue/water.ts';
import type { MistAdvice, MistSet, UnitSystem } from '../../plan/plan.ts';
import type { Care, CareEnclosure, Targets } from '../../resolve/care.ts';
import { monthWords } from '../light/temperature-check.ts';
import type { CaseFigures, ExceededLimit, MistCase, TargetMiss, TargetName } from './day-problem.ts';
import { type Lever, Levers, troubleOf } from './levers.ts';
import type { SetDay } from './member-sets.ts';
import type { MistUnit } from './mist-unit.ts';
import { type OutOfReach, reachOfCase } from './target-reach.ts';
import { warned } from './water-notes.ts';
import { bandWords, percentWords, pointsWords, waterWords } from './water-quantities.ts';

/** Below it a shortfall is rounding. */
const NOTHING = 5e-4;
/** Sets may fall behind conditions solved alone by so much; what is less is told, not warned of. */
const NEAR = 0.05;

/** One missed target over the days of a set. */
interface MissedTarget {
  readonly target: TargetName;
  readonly by: number;
  readonly unit: TargetMiss['unit'];
  readonly is: number;
  readonly isHigh: boolean;
  readonly months: readonly number[];
}

/** Levers for the days that are too dry (or lack peaks, or exceed a limit) and for those that are too humid: a year may have both. */
export interface LeversByWay {
  readonly dry: readonly Lever[];
  readonly humid: readonly Lever[];
}

/** Returns the levers with which the missed targets of some days would be met; empty where nothing is missed or nothing helps. */
export function leversFor(unit: MistUnit, days: readonly SetDay[], exceeded: readonly ExceededLimit[]): LeversByWay {
  const short = days.filter(({ day }) => day.shortfall > NOTHING).toSorted((a, b) => b.day.shortfall - a.day.shortfall);
  if (exceeded.length === 0 && isNear(short)) return { dry: [], humid: [] };
  const isHumid = (day: SetDay) => missesOf(day).some((miss) => miss.isHigh && miss.target !== 'peaks_per_day');
  const isDry = (day: SetDay) => missesOf(day).some((miss) => !miss.isHigh);
  const dry = short.filter((day) => isDry(day) && !isHumid(day));
  const alike = dry.length > 0 ? dry : short.filter(isDry);
  return {
    dry: leversOn(unit, exceeded.length > 0 ? days : alike, exceeded),
    humid: leversOn(unit, short.filter(isHumid), []),
  };
}

function leversOn(unit: MistUnit, days: readonly SetDay[], exceeded: readonly ExceededLimit[]): readonly Lever[] {
  const [first] = days;
  if (!first) return [];
  const cases = [...new Set(days.map(({ span }) => span.one))];
  return new Levers(unit, cases, first.runs).thatDo(troubleOf(days.flatMap(missesOf), exceeded));
}

/** Returns the misses of a day, each with its direction. */
export function missesOf({ span, day }: SetDay): readonly (TargetMiss & { readonly isHigh: boolean })[] {
  return day.misses.map((miss) => ({ ...miss, isHigh: isHigh(span.one.targets, miss.target, day.figures) }));
}

/** So little is what one set for all its days costs. */
function isNear(days: readonly SetDay[]): boolean {
  return days.every(({ day }) => day.shortfall <= NEAR + 1e-9);
}

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

const NEAR_REMEDY = 'too little to change the plan for: plans are compared in steps of half a point';

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
        by: limitAmount(by, of, care.units),
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
          by: byWords(miss.by, miss.unit),
          months: monthWords(miss.months),
          remedy: near ? NEAR_REMEDY : remedyWords(care, unit, enclosure, levers, miss.isHigh),
        },
        `targets.${pathOf(miss.target)}`,
      ),
    );
  return [...reach, ...limits, ...missed];
}

function missedTargets(days: readonly SetDay[]): readonly MissedTarget[] {
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

/** Less is rounding: a tenth of a point of RH, 3 min. */
const LEAST_BY: Readonly<Record<TargetMiss['unit'], number>> = { '1': 5e-4, h: 0.05, peaks: 0 };

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

function bandOf(targets: Targets['humidity'], target: TargetName) {
  if (target === 'day' || target === 'night' || target === 'mean') return targets[target];
  return target === 'peaks_per_day' ? targets.peaksPerDay : null;
}

function isHigh(targets: Targets['humidity'], target: TargetName, figures: CaseFigures): boolean {
  if (target === 'ceiling' || target === 'soaked_at_most') return true;
  const band = bandOf(targets, target);
  return band !== null && figureOf(target, figures) > band[1];
}

function pathOf(target: TargetName): string {
  return `humidity.${target}`;
}

function amountWords(value: number, unit: TargetMiss['unit']): string {
  if (unit === '1') return percentWords(value);
  return unit === 'h' ? spanWords(value * 60) : `${value}`;
}

function byWords(by: number, unit: TargetMiss['unit']): string {
  if (unit === '1') return pointsWords(by);
  return unit === 'h' ? spanWords(by * 60) : `${by} peak${by === 1 ? '' : 's'}`;
}

function wantsWords(targets: Targets['humidity'], target: TargetName): string {
  if (target === 'floor') return `${percentWords(targets.floor ?? 0)} at least`;
  if (target === 'ceiling') return `${percentWords(targets.ceiling ?? 1)} at most`;
  if (target === 'soaked_at_most') return `${spanWords((targets.soakedAtMostHours ?? 0) * 60)} at most`;
  const band = bandOf(targets, target);
  if (target === 'peaks_per_day') return band ? `${band[0]} to ${band[1]}` : '';
  return band ? bandWords(band) : '';
}

/** Returns targets that no mists can meet in this room, each once with its months. */
function reachNotes(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  days: readonly SetDay[],
  levers: LeversByWay,
): readonly MistAdvice[] {
  const found = new Map<
    string,
    { readonly miss: OutOfReach; readonly one: MistCase; readonly months: number[]; room: number }
  >();
  for (const { span, day } of days) {
    if (day.shortfall <= NOTHING) continue;
    for (const miss of reachOfCase(span.one, span.dayC, span.nightC).outOfReach) {
      const isDry = miss.settles < miss.edge;
      if (isDry && !unit.machine) continue;
      const key = isDry ? miss.target : 'humid';
      const known = found.get(key) ?? { miss, one: span.one, months: [], room: span.roomHumidity };
      known.months.push(...monthsOf(span.fromDay, span.toDay));
      found.set(key, known);
    }
  }
  return [...found].map(([key, { miss, months, room }]) => {
    const named = monthWords([...new Set(months)]);
    if (key === 'humid')
      return warned(
        'too-humid-unmisted',
        {
          enclosure: enclosure.id,
          settles: percentWords(miss.settles),
          room: percentWords(room),
          months: named,
          remedy: remedyWords(care, unit, enclosure, levers, true),
        },
        'room',
      );
    return warned(
      'out-of-reach',
      {
        enclosure: enclosure.id,
        target: pathOf(miss.target as TargetName),
        edge: percentWords(miss.edge),
        settles: percentWords(miss.settles),
        wet: miss.target === 'floor' ? 'dry' : 'wet',
        months: named,
        remedy: `${reachWords(miss)}${remedyWords(care, unit, enclosure, levers, false)}`,
      },
      `targets.${pathOf(miss.target as TargetName)}`,
    );
  });
}

function reachWords({ openShare, remedy }: OutOfReach): string {
  return remedy === 'cover' && openShare !== null
    ? `it comes into reach with ${percentWords(Math.floor(openShare * 100) / 100)} of the mesh open or less; `
    : '';
}

/** Returns the levers that do, in words. */
export function remedyWords(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  levers: LeversByWay,
  isTooHumid: boolean,
): string {
  const say = levers[isTooHumid ? 'humid' : 'dry'].map((lever) => leverWords(care, unit, enclosure, lever));
  const never = isTooHumid ? ['never mist more'] : [];
  if (say.length > 0) return [say.join('; or '), ...never].join('; ');
  if (isTooHumid) return 'open more of the mesh, ventilate with a fan on a timer, dehumidify the room; never mist more';
  if (!unit.machine) return 'cover more of the mesh, keep a deep substrate damp underneath, or moisten the room';
  return 'no covering, nozzle, timer or room that was tried does it: ask less, or think of another enclosure';
}

function leverWords(care: Care, unit: MistUnit, enclosure: CareEnclosure, lever: Lever): string {
  const { besides } = lever;
  return `${besides === null ? '' : `${BESIDES[besides]}, and `}${singleWords(care, unit, enclosure, lever)}`;
}

const BESIDES = {
  shield: 'a guard between spray and hot lamp (hits_lamp: false)',
  'dry-floor': 'a dry substrate (floor: dry)',
} as const;

function singleWords(care: Care, unit: MistUnit, enclosure: CareEnclosure, { kind, value, waterG }: Lever): string {
  const aWeek = unit.machine ? ` (${waterWords(waterG * 7, care.units)} a week)` : '';
  const { pump } = unit;
  switch (kind) {
    case 'cover':
      return `cover the mesh until ${percentWords(value)} is open${aWeek}`;
    case 'open':
      return `open the mesh to ${percentWords(value)}${aWeek}`;
    case 'nozzle':
      return `${value} nozzles instead of ${value - 1}${aWeek}`;
    case 'timer':
      if (unit.means === 'repeat-cycle') return 'a programmable timer instead: it knows the time of day';
      return 'a timer that counts single seconds and starts at any minute, with start_step: 5 min and length_step: 5 s';
    case 'entries':
      return `a timer with ${value} lines`;
    case 'tank': {
      const days = pump?.tank ? Math.min(7, pump.tank.refillEveryDays) : 7;
      const holds = Math.ceil((value * days + (pump?.tank?.reserveG ?? 0)) / 500) * 500;
      return `a tank of ${waterWords(holds, care.units)}, or a refill every ${refillDays(unit, value)}`;
    }
    case 'tray': {
      const holds = Math.ceil((value * (enclosure.tray?.emptyEveryDays ?? 1)) / 500) * 500;
      return `a tray of ${waterWords(holds, care.units)}`;
    }
    case 'damp-floor':
      return 'a deep substrate kept damp underneath (floor: damp-below)';
    case 'dry-floor':
      return 'a dry substrate (floor: dry)';
    case 'shield':
      return 'a guard between spray and hot lamp, then hits_lamp: false, so that mists may run while it is on';
    case 'wetter-room':
      return `the room moistened to ${roomWords(care, value)}`;
    case 'drier-room':
      return `the room dehumidified or aired to ${roomWords(care, value)}`;
  }
}

function refillDays({ pump }: MistUnit, waterG: number): string {
  const usable = pump?.tank ? pump.tank.holdsG - pump.tank.reserveG : 0;
  const days = Math.max(1, Math.floor(usable / Math.max(1, waterG)));
  return days === 1 ? 'day' : `${days} days`;
}

/** The lever is a factor of the room's vapour; told for its extreme month. */
function roomWords(care: Care, factor: number): string {
  const all = care.site.roomByMonth.map(({ humidity }) => humidity);
  const from = factor > 1 ? Math.min(...all) : Math.max(...all);
  return percentWords(Math.min(1, Math.round(from * factor * 100) / 100));
}

function limitRemedy(
  care: Care,
  unit: MistUnit,
  enclosure: CareEnclosure,
  limit: ExceededLimit['limit'],
  levers: LeversByWay,
): string {
  const said = levers.dry.map((lever) => leverWords(care, unit, enclosure, lever));
  if (said.length > 0) return said.join('; or ');
  switch (limit) {
    case 'tank':
      return 'refill more often';
    case 'tray':
      return 'empty the tray more often';
    case 'dry-out':
      return 'open more of the mesh, or ask for a shorter dry-out';
    case 'noise':
      return 'allow the pump in part of those hours';
    case 'no-mist':
      return 'let no_mist leave a start open';
    case 'drink':
      return 'a dripper, or hours in which a mist may run';
    case 'gap':
    case 'count':
    case 'length':
      return 'widen misting to what pump and timer can do';
  }
}

function limitAmount(by: number, unit: ExceededLimit['unit'], units: UnitSystem): string {
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
