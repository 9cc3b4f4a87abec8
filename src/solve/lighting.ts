/**
 * The lighting stage: which lamp hangs on which timer, and what stands on each timer from which day. What cannot be planned safely is
 * left out and named; the rest is planned.
 */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { UtcOffsets } from '../basics/utc-offsets.ts';
import { zoneOffsets } from '../basics/zone.ts';
import type { Log } from '../diagnostics/log.ts';
import { drivenNames, type PluggedLamp, powerTree, type TimerNode } from '../hardware/power-tree.ts';
import { Parts } from '../plan/parts.ts';
import type { Assumption, AutoPlaces, DialPlan, Load, NotPlanned, Plan } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';
import { placeAutoLamps, type StandingPlaces } from './light/auto-lamps.ts';
import { dayTargetsOf } from './light/day-targets.ts';
import { dayWindows } from './light/day-windows.ts';
import type { DialGroup } from './light/dial-group.ts';
import { historyOf } from './light/dial-history.ts';
import { reportDial } from './light/dial-messages.ts';
import { dialPlan, unsetDialPlan } from './light/dial-plan.ts';
import { clockShiftMinutes, shifted } from './light/enclosure-temperature.ts';
import { agreeingGroups, reportLonelyHeaters } from './light/group-checks.ts';
import { checkLamps } from './light/lamp-safety.ts';
import { timerLoads } from './light/loads.ts';
import { type DayTargets, reportLongInsets, type ShelfLamp, shelfLamps } from './light/shelf-lamp.ts';
import {
  reportClocks,
  reportExtremeDays,
  reportInsets,
  reportRestrikes,
  reportUnlitNeeds,
} from './light/shelf-messages.ts';
import { type EnclosingDays, problemOf, solveGroup } from './light/solve-group.ts';
import { checkTemperatures } from './light/temperature-check.ts';
import { checkTimers } from './light/timer-checks.ts';
import { solvePart } from './solve-part.ts';

export interface LightingResult {
  /** Every pin dial, and every programmable timer that drives a lamp, in the file's order. */
  readonly lighting: readonly DialPlan[];
  readonly loads: readonly Load[];
  readonly notPlanned: readonly NotPlanned[];
  /** How good the places of the lamps on `auto` are; empty where there are none. */
  readonly auto: readonly AutoPlaces[];
  readonly assumptions: readonly Assumption[];
  /** What hangs on each timer, as `lamp:ENCLOSURE/LAMP` and `device:ID`, by timer id. */
  readonly drives: ReadonlyMap<string, readonly string[]>;
  /** Target day lengths P(d) by enclosure id, tenths of a minute. */
  readonly dayTargets: DayTargets;
  readonly offsets: UtcOffsets;
}

/**
 * Plans the light of a household.
 *
 * @param earlier the plan that stands in the folder: its settings before `today` are kept, its last one is what stands on the dial
 * @param parts where each dial (`lighting.DIAL`) and the places of lamps on `auto` (`outlets`) note what they were solved from; what stands
 *   is copied from `earlier` whole
 */
export function solveLighting(
  care: Care,
  earlier: Plan | null,
  today: EpochDay,
  log: Log,
  parts: Parts = new Parts(earlier),
): LightingResult {
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  const dayTargets = dayTargetsOf(care, log);
  const lamps = shelfLamps(care, dayTargets);
  reportExtremeDays(care, dayTargets, log);
  reportUnlitNeeds(care, log);
  reportLongInsets(care, lamps, dayTargets, log);

  const refused = checkLamps(care, lamps, powerTree(care.devices, []).timers, log);
  const sound = without(lamps, refused);
  const named = checkTimers(care, powerTree(care.devices, plugged(sound)), log);
  const fitting = without(sound, named.notPlanned);
  const groups = agreeingGroups(care, fitting, named.timers, log);
  const agreeing = without(fitting, groups.notPlanned);
  const placed = placeAutoLamps(
    care,
    agreeing,
    groups.groups,
    offsets,
    (timer) => historyOf(timer, earlier, care.plan, Math.min(today, care.plan.from + care.plan.days - 1)),
    log,
    (solvedFrom) => (parts.stands('outlets', solvedFrom) && earlier ? standingPlaces(earlier) : null),
  );
  const lonely = reportLonelyHeaters(care, placed.groups, log);
  const onShelf = without(agreeing, [...placed.notPlanned, ...lonely]);

  const tree = powerTree(care.devices, plugged(onShelf, placed.outletOf));
  const lighting = solveShelf({ care, earlier, today, offsets, parts, dayTargets, log }, tree.timers, placed.groups);
  reportClocks(care, (enclosure, lamp) => placed.outletOf.get(`${enclosure.id}/${lamp}`) ?? 'none', log);
  reportRestrikes(care, onShelf, lighting, log);
  const allNamed = powerTree(care.devices, plugged(sound, placed.outletOf));
  return {
    lighting,
    loads: timerLoads(care, allNamed, lighting, log),
    notPlanned: [...refused, ...named.notPlanned, ...groups.notPlanned, ...placed.notPlanned, ...lonely],
    auto: placed.auto ? [placed.auto] : [],
    assumptions: checkTemperatures(care, lighting, offsets, log),
    drives: new Map(tree.timers.map((node) => [node.timer.id, drivenNames(node)])),
    dayTargets,
    offsets,
  };
}

function standingPlaces(earlier: Plan): StandingPlaces {
  return { placeOf: placesIn(earlier), auto: earlier.auto?.find(({ kind }) => kind === 'lamps') ?? null };
}

/** Returns the timer of each lamp of a plan by `ENCLOSURE/LAMP`; null for one that no timer took. */
function placesIn({ hardware, notPlanned }: Plan): ReadonlyMap<string, string | null> {
  const driven = hardware.flatMap(({ id, drives }) =>
    drives.filter((name) => name.startsWith('lamp:')).map((name) => [name.slice('lamp:'.length), id] as const),
  );
  return new Map([...notPlanned.map(({ lamp }) => [lamp, null] as const), ...driven]);
}

function without(lamps: readonly ShelfLamp[], left: readonly NotPlanned[]): readonly ShelfLamp[] {
  const ids = new Set(left.map(({ lamp }) => lamp));
  return lamps.filter(({ id }) => !ids.has(id));
}

function plugged(
  lamps: readonly ShelfLamp[],
  outletOf: ReadonlyMap<string, string> = new Map(),
): readonly PluggedLamp[] {
  return lamps.map(({ id, lamp }) => ({ id, powerW: lamp.powerW, outlet: outletOf.get(id) ?? lamp.outlet }));
}

interface Shelf {
  readonly care: Care;
  readonly earlier: Plan | null;
  readonly today: EpochDay;
  readonly offsets: UtcOffsets;
  readonly parts: Parts;
  readonly dayTargets: DayTargets;
  readonly log: Log;
}

/** Solves the day dials first, then those that lie inside their days. */
function solveShelf(
  shelf: Shelf,
  timers: readonly TimerNode[],
  groups: ReadonlyMap<string, DialGroup>,
): readonly DialPlan[] {
  const plans = new Map<string, DialPlan>();
  const solve = (node: TimerNode, group: DialGroup): void => {
    plans.set(node.timer.id, planned(shelf, node, group, [...plans.values()]));
  };
  const inOrder = timers.flatMap((node) => {
    const group = groups.get(node.timer.id);
    return group && group.kind !== 'idle' ? [{ node, group }] : [];
  });
  for (const { node, group } of inOrder) if (group.kind === 'day') solve(node, group);
  for (const { node, group } of inOrder) if (group.kind !== 'day') solve(node, group);
  return timers.flatMap((node) => {
    const plan = plans.get(node.timer.id);
    if (plan) return [plan];
    return node.timer.kind === 'pin-dial' ? [unsetDialPlan(node.timer, drivenNames(node))] : [];
  });
}

function planned(shelf: Shelf, node: TimerNode, group: DialGroup, dayPlans: readonly DialPlan[]): DialPlan {
  const { care, earlier, parts, offsets, log } = shelf;
  const history = historyOf(group.timer, earlier, care.plan, shelf.today);
  const enclosing = group.kind === 'day' ? [] : enclosingDays(shelf, group, dayPlans);
  const drives = drivenNames(node);
  const fresh = problemOf(care, group, { earlier: null, past: null, written: [], setOn: null }, enclosing);
  const part = `lighting.${node.timer.id}`;
  const stands = parts.stands(part, solvedFrom(group, fresh, enclosing, drives, care));
  const before = earlier?.lighting.find(({ device }) => device === node.timer.id);
  const plan = solvePart(shelf, part, stands && before ? before : null, (placed, said) => {
    const solved = solveGroup(placed, group, history, enclosing);
    reportDial(placed, solved, said);
    return dialPlan(placed, solved, drives, offsets, history.setOn);
  });
  reportInsets(care, group, plan, shelf.dayTargets, log);
  return plan;
}

/** Everything that the plan of a dial depends on, what stood before left out. */
function solvedFrom(
  group: DialGroup,
  problem: unknown,
  enclosing: EnclosingDays,
  drives: readonly string[],
  care: Care,
): unknown {
  const lamps = group.lamps.map(({ id, lamp, target, targetTenths }) => ({
    id,
    uses: lamp.uses,
    powerW: lamp.powerW,
    replace: [lamp.fitted, lamp.replaceAfter, lamp.replaceAfterHours],
    target,
    targetTenths,
  }));
  const { from, days } = care.plan;
  return {
    from,
    days,
    timezone: care.site.timezone,
    timer: group.timer,
    kind: group.kind,
    drives,
    lamps,
    problem,
    enclosing,
  };
}

/** The daylight windows of the group's enclosures on the timer's own clock. */
function enclosingDays({ care, offsets }: Shelf, group: DialGroup, dayPlans: readonly DialPlan[]): EnclosingDays {
  const ids = [
    ...new Set(group.lamps.filter(({ target }) => target.kind !== 'none').map(({ enclosure }) => enclosure.id)),
  ];
  return ids.map((id) => {
    const days = dayWindows(care, dayPlans, id);
    return days.windows.map((window, day) =>
      shifted(window, clockShiftMinutes(days.clock, group.timer.clock, offsets, care.plan.from + day)),
    );
  });
}
