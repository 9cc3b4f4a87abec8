/** Chosen sets as the plan keeps them: entries, conditions with what the air will do, shortfalls. One plan an enclosure. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, wrapMinute } from '../../basics/minute-of-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type {
  ClockKind,
  MistCondition,
  MistEntry,
  MistLimits,
  MistPlan,
  MistSet,
  MistTargets,
} from '../../plan/plan.ts';
import type { CareEnclosure } from '../../resolve/care.ts';
import { dayCurve, HumidityCurve } from '../../science/day-figures.ts';
import type { Run } from '../../science/enclosure-day.ts';
import { humidityReach } from '../../science/humidity-reach.ts';
import { saturationDensityGPerM3 } from '../../science/moist-air.ts';
import { PeriodicDay } from '../../science/wet-enclosure.ts';
import { caseFigures } from './day/day-judge.ts';
import type { CaseFigures, MistCase, TargetMiss } from './day/day-problem.ts';
import { tankWaterG } from './day/hard-limits.ts';
import { shortfallOf, targetMisses } from './day/humidity-shortfall.ts';
import type { EnclosureSpan, MistUnit, UnitMember } from './mist-unit.ts';
import { wallEntries } from './wall-entries.ts';

/** Spacing of the curves that the plan keeps; a chart wants no more. */
const CURVE_EVERY_MINUTES = 15;
const DEFAULT_DRY = { when: 'lit', below: 0.2 } as const;

/** What the air of one case does under entries. */
export interface CaseDay {
  readonly figures: CaseFigures;
  readonly misses: readonly TargetMiss[];
  readonly shortfall: number;
  readonly curve: MistCondition['curve'];
}

const curve = new HumidityCurve();

/** Simulates one case under entries that are sorted by start. */
export function caseDay(one: MistCase, entries: readonly Run[]): CaseDay {
  const day = new PeriodicDay(one.body, one.spray, one.air);
  day.simulate(entries);
  curve.read(day);
  const figures = caseFigures(one, one.targets, day, curve, entries);
  const misses = targetMisses(one.targets, figures);
  const { humidity, leafWetness, temperatureC } = dayCurve(curve, day, CURVE_EVERY_MINUTES);
  return {
    figures,
    misses,
    shortfall: shortfallOf(misses),
    curve: {
      everyMinutes: CURVE_EVERY_MINUTES,
      humidity: humidity.map((each) => digits(each, 3)),
      leafWetness: leafWetness.map((each) => digits(each, 3)),
      temperatureC: temperatureC.map((each) => digits(each, 1)),
    },
  };
}

function digits(value: number, count: number): number {
  const scale = 10 ** count;
  return Math.round(value * scale) / scale;
}

/** Returns one condition of the plan. */
export function mistCondition(
  unit: MistUnit,
  span: EnclosureSpan,
  entries: readonly Run[],
  day: CaseDay,
): MistCondition {
  const { one } = span;
  const { lit } = one.air;
  return {
    from: isoDateOf(span.fromDay),
    to: isoDateOf(span.toDay),
    dayOn: clockTimeOf(lit.onMinute),
    dayOff: clockTimeOf(lit.minutes >= 1440 ? 1440 : wrapMinute(lit.onMinute + lit.minutes)),
    roomTemperatureC: span.roomDayC,
    roomHumidity: digits(span.roomHumidity, 5),
    dayTemperatureC: digits(span.dayC, 2),
    nightTemperatureC: digits(span.nightC, 2),
    predicted: predictedOf(unit, span, entries, day.figures),
    curve: day.curve,
    shortfall: digits(day.shortfall, 4),
  };
}

function predictedOf(
  unit: MistUnit,
  span: EnclosureSpan,
  entries: readonly Run[],
  figures: CaseFigures,
): MistCondition['predicted'] {
  const { one } = span;
  const reach = humidityReach(
    one.body,
    one.air.roomVapourGPerM3,
    saturationDensityGPerM3(one.air.lit.minutes > 0 ? span.dayC : span.nightC),
    one.spray.landsShare > 0,
    one.spray.airborneShare * one.spray.flowGPerHour,
  );
  const { pump, machine } = unit;
  const drawn = machine ? tankWaterG(machine, entries) : 0;
  const usable = pump?.tank ? pump.tank.holdsG - pump.tank.reserveG : null;
  return {
    dayHumidity: orMean(figures.dayHumidity, figures),
    nightHumidity: orMean(figures.nightHumidity, figures),
    meanHumidity: figures.meanHumidity,
    lowHumidity: figures.lowHumidity,
    highHumidity: figures.highHumidity,
    wetLimit: digits(reach.wet, 5),
    dryLimit: digits(reach.dry, 5),
    peaks: figures.peaks,
    hoursSoaked: digits(figures.hoursSoaked, 3),
    dryOutHours: digits(figures.dryOutMinutes / 60, 3),
    waterMlPerDay: figures.waterG,
    runoffMlPerDay: figures.runOffG,
    tankDays: usable === null || drawn <= 0 ? null : Math.floor((usable / drawn) * 100) / 100,
  };
}

function orMean(humidity: number, { meanHumidity }: CaseFigures): number {
  return Number.isNaN(humidity) ? meanHumidity : humidity;
}

/** Returns entries as the timer shows them, by time of day. */
export function mistEntries(entries: readonly Run[]): readonly MistEntry[] {
  return [...entries]
    .sort((a, b) => a.startMinute - b.startMinute)
    .map(({ startMinute, seconds }) => ({ at: clockTimeOf(startMinute), seconds }));
}

/** Days with the same entries. */
export interface EntrySpan {
  readonly fromDay: number;
  readonly toDay: number;
  readonly runs: readonly Run[];
}

/** What stands in every set: its dates, the entries of its first days, and all of them in wall time. */
export function setFrame(
  spans: readonly EntrySpan[],
  clock: ClockKind,
  offsets: UtcOffsets,
): Pick<MistSet, 'from' | 'to' | 'entries' | 'wall'> {
  const [first, last] = [spans[0], spans.at(-1)];
  return {
    from: isoDateOf(first?.fromDay ?? 0),
    to: isoDateOf(last?.toDay ?? 0),
    entries: mistEntries(first?.runs ?? []),
    wall: spans.flatMap(({ fromDay, toDay, runs }) => wallEntries(mistEntries(runs), clock, offsets, fromDay, toDay)),
  };
}

/** Returns the targets in the plan's words. */
function mistTargets({ targets, activity }: CareEnclosure): MistTargets {
  const { humidity, water, misting } = targets;
  const cadence = misting && misting !== 'none' ? misting : null;
  return {
    dayHumidity: humidity.day,
    nightHumidity: humidity.night,
    meanHumidity: humidity.mean,
    peakHumidity: humidity.peak,
    peaksPerDay: humidity.peaksPerDay,
    floorHumidity: humidity.floor,
    ceilingHumidity: humidity.ceiling,
    soakedAtMostHours: humidity.soakedAtMostHours,
    dryOut: water.dryOut && {
      hours: digits(water.dryOut.atLeastMinutes / 60, 3),
      when: water.dryOut.when,
      below: water.dryOut.below ?? DEFAULT_DRY.below,
    },
    drink: water.drink && {
      when: water.drink.when,
      mists: water.drink.mists,
      seconds: water.drink.atLeastSeconds,
    },
    cadence: cadence && { perDay: cadence.perDay, seconds: cadence.seconds, gapMinutes: cadence.gapMinutes },
    favour: cadence?.favour ?? (activity === 'diurnal' ? 'dawn-and-dusk' : 'dusk'),
  };
}

/** Returns the limits of a unit for one of its enclosures; null where nothing is misted. */
function mistLimits({ machine, waterAtMostG }: MistUnit, { tray }: CareEnclosure): MistLimits | null {
  if (!machine) return null;
  return {
    entries: machine.entriesAtMost,
    startStepMinutes: machine.startStepMinutes,
    lengthStepSeconds: machine.lengthStepSeconds,
    shortestSeconds: machine.shortestSeconds,
    longestSeconds: machine.longestSeconds,
    restSeconds: machine.restSeconds,
    dutyFactor: machine.dutyFactor,
    waterMlPerDay: waterAtMostG === null ? null : digits(waterAtMostG, 1),
    runoffMlPerDay: tray ? digits(tray.holdsG / tray.emptyEveryDays, 1) : null,
  };
}

/** What a plan of an enclosure has besides its sets. */
export function planFrame(unit: MistUnit, { enclosure, air }: UnitMember): Omit<MistPlan, 'sets' | 'advice'> {
  return {
    enclosure: enclosure.id,
    pump: unit.means === 'by-hand' ? 'by-hand' : (unit.pump?.id ?? null),
    device: unit.timer?.id ?? null,
    clock: unit.clock,
    targets: mistTargets(enclosure),
    limits: mistLimits(unit, enclosure),
    model: air.model,
  };
}
