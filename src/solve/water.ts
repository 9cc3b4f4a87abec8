/** The water stage: which mists an enclosure gets from which day, and what its air then does. */
import { type EpochDay, epochDay, weekdayOf } from '../basics/calendar-day.ts';
import type { UtcOffsets } from '../basics/utc-offsets.ts';
import type { Log } from '../diagnostics/log.ts';
import { Parts } from '../plan/parts.ts';
import type { Assumption, AutoPlaces, DialPlan, Feed, MistPlan, MistSet, Plan } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';
import { autoPumps, type PlacedPumps, type PumpTrial } from './mist/auto-pumps.ts';
import { dripperPlans } from './mist/drippers.ts';
import { memberWater } from './mist/member-water.ts';
import { mistEntries, planFrame } from './mist/mist-plan.ts';
import type { MistUnit, UnitMember, UnitSpan } from './mist/mist-unit.ts';
import { handUnit, isPump, mistUnits, type ShelfPower } from './mist/mist-units.ts';
import { reportAdvice } from './mist/notes/water-notes.ts';
import { chooseSets } from './mist/sets/mist-sets.ts';
import {
  asChosen,
  countOf,
  givenSolution,
  goingOn,
  isKeyedAlike,
  type PastSets,
  pastSets,
  spansBetween,
} from './mist/sets/past-sets.ts';
import { RepeatCycleSolver } from './mist/sets/repeat-cycle.ts';
import type { ChosenSets } from './mist/sets/set-solution.ts';
import { unitSpans } from './mist/sets/unit-days.ts';
import { distinctCases, type UnitSolution, UnitSolver } from './mist/sets/unit-solver.ts';
import { reportShared } from './mist/shared-checks.ts';
import { mistWindows, switchedPlan } from './mist/switched-water.ts';
import { solvePart } from './solve-part.ts';

export interface WaterInput extends ShelfPower {
  readonly lighting: readonly DialPlan[];
  readonly feeding: readonly Feed[];
  readonly offsets: UtcOffsets;
}

export interface WaterResult {
  /** One an enclosure, in the file's order. */
  readonly misting: readonly MistPlan[];
  readonly assumptions: readonly Assumption[];
  /** As it came in, with the settings of timers that switch a fogger or a dripper by pins or lines. */
  readonly lighting: readonly DialPlan[];
  /** How good the pumps found for enclosures on `auto` are; empty where there was no choice. */
  readonly auto: readonly AutoPlaces[];
  /** The household with the pump of each enclosure on `auto` named. */
  readonly care: Care;
}

/**
 * Plans the water of a household. With an earlier plan its sets before `today` are kept and marked past; without one the plan is solved
 * from its first day. Messages: those of the catalogue of water.
 *
 * @param shelf what the stages before have planned: lights, feeds (the dusted ones keep mists away), what hangs on which timer
 * @param parts where each enclosure notes what its mists were solved from (`misting.ENCLOSURE`); what stands is copied whole
 */
export function solveWater(
  care: Care,
  shelf: WaterInput,
  earlier: Plan | null,
  today: EpochDay,
  log: Log,
  parts: Parts = new Parts(earlier),
): WaterResult {
  const stage: Stage = { care, shelf, earlier, from: earlier ? Math.max(care.plan.from, today) : care.plan.from };
  const { pumpOf, auto } = placedPumps(stage, parts);
  if (auto && !auto.isProven) reportPumpGap(care, auto, log);
  const units = mistUnits(care, shelf, pumpOf, log);
  for (const unit of units) reportShared(care, unit, log);
  const plans = units.flatMap((unit) => unitPlans(stage, unit, parts, log));
  const members = care.enclosures.flatMap(({ id }) => plans.find(({ plan }) => plan.enclosure === id) ?? []);
  for (const { member, plan } of members) reportAdvice(care, member.enclosure, plan, log);
  const misting = members.map(({ plan }) => plan);
  const switched = [...foggerPlans(shelf, units, misting), ...dripperPlans(care, shelf, misting, log)];
  return {
    misting,
    auto: auto ? [auto] : [],
    care: { ...care, enclosures: care.enclosures.map((each) => ({ ...each, mist: pumpOf.get(each.id) ?? each.mist })) },
    lighting: [
      ...shelf.lighting.map((dial) => switched.find(({ device }) => device === dial.device) ?? dial),
      ...switched.filter(({ device }) => shelf.lighting.every((dial) => dial.device !== device)),
    ],
    assumptions: members.flatMap(({ member }, index) =>
      member.air.taken.map(({ field, value, source }) => ({
        path: `misting[${index}].model.${field}`,
        value: Number(value.toPrecision(ASSUMED_DIGITS)),
        source,
      })),
    ),
  };
}

/** An enclosure stays on its pump while nothing changes but what stands on the timers: that is no reason to move a nozzle. */
function placedPumps(stage: Stage, parts: Parts): PlacedPumps {
  const { care, shelf, earlier } = stage;
  const isAuto = care.enclosures.some(({ mist }) => mist === 'auto');
  if (isAuto && parts.stands('pumps', pumpsFrom(care)) && earlier) {
    const pumps = new Set(care.devices.filter(isPump).map(({ id }) => id));
    const standing = care.enclosures.flatMap(({ id, mist }) => {
      const pump = earlier.misting.find(({ enclosure }) => enclosure === id)?.pump ?? '';
      return mist === 'auto' && pumps.has(pump) ? [[id, pump] as const] : [];
    });
    return { pumpOf: new Map(standing), auto: earlier.auto?.find(({ kind }) => kind === 'pumps') ?? null };
  }
  return autoPumps(care, shelf, (unit) => trialOf(stage, unit));
}

/** Everything that the choice of pumps depends on, what stood before and the lights left out. */
function pumpsFrom({ plan, site, noise, devices, enclosures }: Care): unknown {
  return {
    plan: { from: plan.from, days: plan.days },
    site,
    noise,
    devices: devices.map((device) => ({ ...device, path: null, where: null })),
    enclosures: enclosures
      .filter(({ mist }) => mist !== 'none' && mist !== 'by-hand')
      .map((each) => ({ ...each, path: null, name: null, targetRecords: null, cautions: null })),
  };
}

function reportPumpGap(care: Care, { placed, levels }: AutoPlaces, log: Log): void {
  const level = levels.find(({ value, atLeast }) => value > atLeast);
  const pumps = care.devices.filter(isPump).length;
  if (level) log.report('pumps-not-proven', { enclosures: placed.length, pumps, level }, null);
}

/** How a unit does under all its days at once, with one set. */
function trialOf({ care, shelf }: Stage, unit: MistUnit): PumpTrial | null {
  const spans = unitSpans({ care, ...shelf }, unit, care.plan.from, care.plan.from + care.plan.days - 1);
  if (unit.timer?.kind === 'repeat-cycle-timer') {
    const solver = new RepeatCycleSolver(unit, unit.timer);
    if (!solver.canSolve(spans)) return null;
    const { exceeded, shortfall } = solver.solve(spans);
    return { exceeded: exceeded.length, shortfall, waterG: 0 };
  }
  const { exceeded, shortfall, waterG } = new UnitSolver(unit).solveCases(distinctCases(spans));
  return { exceeded: exceeded.length, shortfall, waterG };
}

/** An estimate is not better than that. */
const ASSUMED_DIGITS = 6;

/** The pins of pumps and foggers that hang on a dial alone. */
function foggerPlans(
  { drives, offsets }: WaterInput,
  units: readonly MistUnit[],
  misting: readonly MistPlan[],
): readonly DialPlan[] {
  return units.flatMap(({ means, timer, members }) => {
    const plan = misting.find(({ enclosure }) => enclosure === members[0]?.enclosure.id);
    if (means !== 'dial' || timer?.kind !== 'pin-dial' || !plan) return [];
    return [switchedPlan(timer, drives.get(timer.id) ?? [], mistWindows(plan), offsets)];
  });
}

interface Stage {
  readonly care: Care;
  readonly shelf: WaterInput;
  readonly earlier: Plan | null;
  /** The first day that is planned anew. */
  readonly from: EpochDay;
}

interface MemberPlan {
  readonly member: UnitMember;
  readonly plan: MistPlan;
}

function unitPlans(stage: Stage, unit: MistUnit, parts: Parts, log: Log): readonly MemberPlan[] {
  const { care, shelf, earlier } = stage;
  const last = care.plan.from + care.plan.days - 1;
  const all = unitSpans({ care, ...shelf }, unit, care.plan.from, last);
  const solvedFrom = inputsOf(stage, unit, all);
  const standing = unit.members.map(({ enclosure }) =>
    parts.stands(`misting.${enclosure.id}`, solvedFrom)
      ? earlier?.misting.find((plan) => plan.enclosure === enclosure.id)
      : undefined,
  );
  const copied = unit.members.flatMap((member, index) => {
    const plan = standing[index];
    return plan ? [{ member, plan }] : [];
  });
  const stands = copied.length === unit.members.length;
  const part = `misting.${unit.members[0]?.enclosure.id ?? ''}`;
  return solvePart({ care, parts, log }, part, stands ? copied : null, (placed, said) =>
    solvedPlans(stage, unit, all, placed, said),
  );
}

/** A pump whose timer has no pattern that can run is planned by hand. */
function solvedPlans(
  stage: Stage,
  unit: MistUnit,
  all: readonly UnitSpan[],
  { placeOf }: Care,
  log: Log,
): readonly MemberPlan[] {
  const { care, shelf } = stage;
  const canRun =
    unit.timer?.kind !== 'repeat-cycle-timer' || !unit.pump || new RepeatCycleSolver(unit, unit.timer).canSolve(all);
  if (canRun) return freshPlans(stage, unit, all);
  const values = { pump: unit.pump?.id ?? '', timer: unit.timer?.id ?? '' };
  log.report('repeat-cycle-no-fit', values, placeOf([...(unit.pump?.path ?? []), 'outlet']));
  return unit.members.flatMap(({ enclosure }) => {
    const hand = handUnit(care, enclosure);
    return freshPlans(
      stage,
      hand,
      unitSpans({ care, ...shelf }, hand, care.plan.from, care.plan.from + care.plan.days - 1),
    );
  });
}

/** Everything that the mists of a unit depend on, what stood before left out. */
function inputsOf({ care, shelf }: Stage, unit: MistUnit, spans: readonly UnitSpan[]): unknown {
  return {
    from: care.plan.from,
    days: care.plan.days,
    timezone: care.site.timezone,
    told: [care.language, care.units],
    sets: care.plan.mistSetsAtMost,
    changeOn: care.plan.changeOn,
    changes: dialChanges(shelf.lighting),
    means: unit.means,
    pump: unit.pump && { ...unit.pump, path: null, where: null },
    timer: unit.timer && { ...unit.timer, path: null, where: null },
    machine: unit.machine,
    waterAtMostG: unit.waterAtMostG,
    members: unit.members.map(({ enclosure, air }) => ({ id: enclosure.id, air, favour: enclosure.targets.misting })),
    spans,
  };
}

function dialChanges(lighting: readonly DialPlan[]): readonly string[] {
  return [...new Set(lighting.flatMap(({ settings }) => settings.slice(1).map(({ from }) => from)))].sort();
}

function freshPlans(stage: Stage, unit: MistUnit, all: readonly UnitSpan[]): readonly MemberPlan[] {
  const { care, earlier, from } = stage;
  const ids = unit.members.map(({ enclosure }) => enclosure.id);
  const past = pastSets(ids, earlier, care.plan, from);
  const spans = spansBetween(all, past.until, care.plan.from + care.plan.days - 1);
  if (spans.length === 0) return overPlans(stage, unit, all, past);
  const chosen = unit.machine ? machineSets(stage, unit, spans, past) : idleSets(spans);
  return unit.members.map((member, index) => {
    const { sets, advice } = memberWater(care, unit, member, chosen, spans, stage.shelf.offsets);
    const before = past.sets[index] ?? newcomersPast(stage, unit, member, all, past);
    return { member, plan: { ...planFrame(unit, member), sets: goingOn(before, sets), advice } };
  });
}

/** The plan is over: nothing is left to choose. */
function overPlans(stage: Stage, unit: MistUnit, all: readonly UnitSpan[], past: PastSets): readonly MemberPlan[] {
  return unit.members.map((member, index) => {
    const standing = stage.earlier?.misting.find(({ enclosure }) => enclosure === member.enclosure.id);
    const sets = past.sets[index] ?? newcomersPast(stage, unit, member, all, past);
    return { member, plan: { ...planFrame(unit, member), sets, advice: standing?.advice ?? [] } };
  });
}

/** An enclosure that has come to a pump is told what it would have met. */
function newcomersPast(
  { care, shelf }: Stage,
  unit: MistUnit,
  member: UnitMember,
  all: readonly UnitSpan[],
  { sets, until }: PastSets,
): readonly MistSet[] {
  const leading = sets.find((own) => own !== null) ?? [];
  const spans = spansBetween(all, care.plan.from, until - 1);
  if (spans.length === 0) return [];
  const water = memberWater(care, unit, member, asChosen(leading, all), spans, shelf.offsets);
  return water.sets.map((set) => ({ ...set, past: true as const }));
}

/** Nothing is misted; what the air does is still told. */
function idleSets(spans: readonly UnitSpan[]): ChosenSets<UnitSolution> {
  const set = { fromDay: spans[0]?.fromDay ?? 0, toDay: spans.at(-1)?.toDay ?? 0, spans, solution: givenSolution([]) };
  return { sets: [set], alone: null, worst: 0, reached: true };
}

/** What stands on the timer is no further set where it stays. */
function machineSets(
  { care, shelf }: Stage,
  unit: MistUnit,
  spans: readonly UnitSpan[],
  past: PastSets,
): ChosenSets<UnitSolution> {
  const changes = new Set(dialChanges(shelf.lighting).map(epochDay));
  const { changeOn, mistSetsAtMost } = care.plan;
  const mayBegin = (day: EpochDay) => changes.has(day) || (changeOn?.includes(weekdayOf(day)) ?? true);
  const solver =
    unit.timer?.kind === 'repeat-cycle-timer' ? new RepeatCycleSolver(unit, unit.timer) : new UnitSolver(unit);
  const choose = (most: number) => chooseSets(solver, spans, mayBegin, Math.max(1, most));
  const used = countOf(past);
  if (used === 0) return choose(mistSetsAtMost);
  const staying = choose(mistSetsAtMost - used + 1);
  const isWithin = staying.sets.length + used <= mistSetsAtMost || staying.sets.length === 1;
  return isWithin || stays(staying, past) ? staying : choose(mistSetsAtMost - used);
}

/** Returns whether the first set chosen is what stood on the timer last. */
function stays({ sets: [first] }: ChosenSets<UnitSolution>, past: PastSets): boolean {
  const [span] = first?.spans ?? [];
  const before = past.sets.find((own) => own !== null)?.at(-1);
  if (!first || !span || !before) return false;
  const { interval } = first.solution;
  if (before.interval || interval)
    return before.interval?.onSeconds === interval?.onSeconds && before.interval?.offSeconds === interval?.offSeconds;
  return isKeyedAlike(before, { entries: mistEntries(first.solution.entriesOf(span)) });
}
