/** Finds outlets for the lamps on `auto`, and says so where there are none. */
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { Log } from '../../diagnostics/log.ts';
import { powerTree, type TimerNode } from '../../hardware/power-tree.ts';
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { AutoPlaces, NotPlanned } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import type { Enclosing } from './arrangement-errors.ts';
import { type Assignment, assign } from './assignment.ts';
import { type DayWindows, dayWindows } from './day-windows.ts';
import { type DialGroup, dialGroup, type LampTimer } from './dial-group.ts';
import type { DialHistory } from './dial-history.ts';
import { clockShiftMinutes, shifted } from './enclosure-temperature.ts';
import { placingOrder } from './seat-search.ts';
import { leastLeftOut, Seats, type ShelfTimer } from './seats.ts';
import { ShelfBound } from './shelf-bound.ts';
import { ShelfCosts } from './shelf-costs.ts';
import type { ShelfLamp } from './shelf-lamp.ts';
import { dayWindowsOf, meanMinutes } from './solve-group.ts';

export interface PlacedLamps {
  /** The groups of all timers, lamps on `auto` included. */
  readonly groups: ReadonlyMap<string, DialGroup>;
  /** Outlet of every lamp on the shelf by `ENCLOSURE/LAMP`. */
  readonly outletOf: ReadonlyMap<string, string>;
  readonly notPlanned: readonly NotPlanned[];
  /** null where no lamp is on `auto`. */
  readonly auto: AutoPlaces | null;
}

/** What an earlier plan has. */
export interface StandingPlaces {
  /** The timer of each lamp by `ENCLOSURE/LAMP`; null: on no timer. */
  readonly placeOf: ReadonlyMap<string, string | null>;
  readonly auto: AutoPlaces | null;
}

/**
 * Places the lamps on `auto` among the timers that lamps may take. A lamp stays on its timer while nothing changes from which they were
 * placed: what stood on the dials meanwhile is no reason to move a plug.
 *
 * @param standingFrom what an earlier plan has where its lamps were placed from the same; else null, and they are placed anew
 */
export function placeAutoLamps(
  care: Care,
  lamps: readonly ShelfLamp[],
  groups: ReadonlyMap<string, DialGroup>,
  offsets: UtcOffsets,
  historyOf: (timer: LampTimer) => DialHistory,
  log: Log,
  standingFrom: (placedFrom: unknown) => StandingPlaces | null = () => null,
): PlacedLamps {
  const auto = lamps.filter(({ lamp }) => lamp.outlet === 'auto');
  const named = new Map(lamps.filter(({ lamp }) => lamp.outlet !== 'auto').map(({ id, lamp }) => [id, lamp.outlet]));
  if (auto.length === 0) return { groups, outletOf: named, notPlanned: [], auto: null };
  const seats = new Seats(candidates(care, lamps, groups), auto);
  const standing = standingFrom(placedFrom(care, lamps));
  const kept = keptPlaces(seats, auto, standing);
  const shelf = { care, groups, offsets, seats, costs: new ShelfCosts(care, historyOf) };
  const found = kept ? null : searched(shelf, auto, historyOf);
  const timerOf = kept ?? found?.timerOf ?? auto.map(() => null);
  const notPlanned = reportLeftOut(care, seats, timerOf, log);
  const places = kept ? (standing?.auto ?? null) : found && placesOf(care, seats, found);
  if (places && !places.isProven) reportGap(places, seats, log);
  return {
    groups: withAuto(groups, auto, timerOf),
    outletOf: new Map([...named, ...placedOutlets(auto, timerOf)]),
    notPlanned,
    auto: places,
  };
}

function placesOf({ plan }: Care, { lamps }: Seats, { timerOf, errors, atLeast, isProven }: Assignment): AutoPlaces {
  return {
    kind: 'lamps',
    placed: lamps.flatMap(({ id }, lamp) => (timerOf[lamp] ? [id] : [])),
    isProven,
    levels: [
      { name: 'worst-error', value: errors.worstErrorTenths / 10, atLeast: atLeast.worstErrorTenths / 10 },
      {
        name: 'errors-a-day',
        value: meanMinutes(errors.sumErrorTenths, plan.days),
        atLeast: meanMinutes(atLeast.sumErrorTenths, plan.days),
      },
    ],
  };
}

function reportGap({ placed, levels }: AutoPlaces, { timers }: Seats, log: Log): void {
  const [worst, day] = levels;
  if (!worst || !day) return;
  const counts = { lamps: placed.length, timers: timers.length };
  log.report('assignment-not-proven', { ...counts, worst, day }, null);
}

/** Everything that the places of lamps depend on, what stood before left out. */
function placedFrom(care: Care, lamps: readonly ShelfLamp[]): unknown {
  const { mistSetsAtMost: _, ...plan } = care.plan;
  return {
    plan,
    timezone: care.site.timezone,
    devices: care.devices.map((device) => ({ ...device, path: null, where: null })),
    lamps: lamps.map(({ id, lamp, enclosure, target, targetTenths }) => ({
      id,
      outlet: lamp.outlet,
      powerW: lamp.powerW,
      target,
      targetTenths,
      day: enclosure.targets.day,
    })),
  };
}

/** Returns the standing timer of each lamp, or null where one of them is no longer to be had. */
function keptPlaces(
  seats: Seats,
  auto: readonly ShelfLamp[],
  standing: StandingPlaces | null,
): readonly (LampTimer | null)[] | null {
  if (!standing) return null;
  const timers = new Map(seats.timers.map(({ timer }) => [timer.id, timer]));
  const kept = auto.map(({ id }) => {
    const place = standing.placeOf.get(id);
    return place === null ? null : timers.get(place ?? '');
  });
  return kept.every((timer) => timer !== undefined) ? kept : null;
}

function searched(
  shelf: Shelf,
  auto: readonly ShelfLamp[],
  historyOf: (timer: LampTimer) => DialHistory,
): Assignment | null {
  const { care, seats, costs } = shelf;
  const leftOut = leastLeftOut(seats, placingOrder(auto));
  return assign(
    seats,
    costs,
    () => enclosingOf(shelf),
    leftOut,
    (left) => new ShelfBound(care, seats, historyOf, left),
  );
}

function placedOutlets(
  auto: readonly ShelfLamp[],
  timerOf: readonly (LampTimer | null)[],
): readonly (readonly [string, string])[] {
  return auto.flatMap(({ id }, index) => {
    const timer = timerOf[index];
    return timer ? [[id, timer.id] as const] : [];
  });
}

function withAuto(
  groups: ReadonlyMap<string, DialGroup>,
  auto: readonly ShelfLamp[],
  timerOf: readonly (LampTimer | null)[],
): ReadonlyMap<string, DialGroup> {
  return new Map(
    [...groups].map(([id, { timer, lamps }]) => [
      id,
      dialGroup(timer, [...lamps, ...auto.filter((_, index) => timerOf[index]?.id === id)]),
    ]),
  );
}

/**
 * Timers on a live outlet that drive lamps alone, or lamps by name beside other hardware: where hardware hangs alone its windows are not
 * the light's.
 */
function candidates(
  care: Care,
  lamps: readonly ShelfLamp[],
  groups: ReadonlyMap<string, DialGroup>,
): readonly ShelfTimer[] {
  const tree = powerTree(
    care.devices,
    lamps.map(({ id, lamp }) => ({ id, powerW: lamp.powerW, outlet: lamp.outlet })),
  );
  return tree.timers.flatMap((node) => {
    const group = groups.get(node.timer.id);
    const drivesDevices = node.direct.some(({ kind }) => kind === 'device');
    if (!group || node.supply.length > 0 || (drivesDevices && group.kind === 'idle')) return [];
    return [shelfTimer(node, group)];
  });
}

function shelfTimer(node: TimerNode, group: DialGroup): ShelfTimer {
  const drawn = node.behind.reduce((sum, { powerW }) => sum + powerW, 0);
  return {
    timer: group.timer,
    fixed: group.lamps,
    freeOutlets: group.timer.outlets - node.direct.length,
    freeWatts: group.timer.ratingW === null ? null : group.timer.ratingW - drawn,
  };
}

interface Shelf {
  readonly care: Care;
  readonly groups: ReadonlyMap<string, DialGroup>;
  readonly offsets: UtcOffsets;
  readonly seats: Seats;
  readonly costs: ShelfCosts;
}

/** The day windows that the lamps as they are seated give each enclosure. */
function enclosingOf(shelf: Shelf): Enclosing {
  const days = new Map<string, { readonly key: string; readonly windows: DayWindows }>();
  const dayOf = (id: string) => {
    const known = days.get(id) ?? dayOfEnclosure(shelf, id);
    days.set(id, known);
    return known;
  };
  return {
    key: (id, timer) => `${id} ${dayOf(id).key} ${timer.clock}`,
    of: (id, timer) => onClockOf(shelf, dayOf(id).windows, timer),
  };
}

function onClockOf({ care, offsets }: Shelf, days: DayWindows, timer: LampTimer): readonly MinuteWindow[] {
  return days.windows.map((window, day) =>
    shifted(window, clockShiftMinutes(days.clock, timer.clock, offsets, care.plan.from + day)),
  );
}

function dayOfEnclosure(
  { care, groups, seats, costs }: Shelf,
  id: string,
): { readonly key: string; readonly windows: DayWindows } {
  const enclosure = care.enclosures.find((each) => each.id === id);
  for (const lamp of enclosure?.lamps ?? []) {
    if (!lamp.uses.includes('daylight')) continue;
    const seated = seatOf(seats, groups, `${id}/${lamp.id}`);
    if (!seated) continue;
    const dayLamps = seated.lamps.filter(({ target }) => target.kind === 'day');
    return {
      key: costs.setKey(seated.timer, dayLamps),
      windows: dayWindowsOf(costs.solvedDay(seated.timer, dayLamps)),
    };
  }
  return { key: 'no dial', windows: dayWindows(care, [], id) };
}

/** The timer of a lamp and all that hangs there: among the seats as they are filled, else by name. */
function seatOf(
  seats: Seats,
  groups: ReadonlyMap<string, DialGroup>,
  lampId: string,
): Pick<DialGroup, 'timer' | 'lamps'> | null {
  const index = seats.timers.findIndex((_, timer) => seats.on(timer).some(({ id }) => id === lampId));
  const seat = seats.timers[index];
  if (seat) return { timer: seat.timer, lamps: seats.on(index) };
  return [...groups.values()].find(({ lamps }) => lamps.some(({ id }) => id === lampId)) ?? null;
}

function reportLeftOut(
  care: Care,
  seats: Seats,
  timerOf: readonly (LampTimer | null)[],
  log: Log,
): readonly NotPlanned[] {
  const left = seats.lamps.filter((_, index) => timerOf[index] === null);
  const [first] = left;
  if (!first) return [];
  const why = whyLeftOut(seats, left);
  const placed = seats.lamps.flatMap(({ id }, index) => (timerOf[index] ? [`${id} on ${timerOf[index]?.id}`] : []));
  const remedy = remedyFor(left);
  const nearest = placed.length === 0 ? remedy : `nearest that works: ${placed.join(', ')}; for the rest ${remedy}`;
  log.report(
    'no-dial-for-lamp',
    { lamps: left.map(({ id }) => id).join(', '), why, nearest },
    care.placeOf([...first.lamp.path, 'outlet']),
  );
  return left.map(({ id }) => ({ lamp: id, device: null, why: `no timer: ${why}` }));
}

function whyLeftOut(seats: Seats, left: readonly ShelfLamp[]): string {
  if (seats.timers.length === 0) return 'no dial or timer may drive lamps';
  const outlets = seats.timers.reduce((sum, { freeOutlets }) => sum + Math.max(0, freeOutlets), 0);
  if (outlets < seats.lamps.length)
    return `${seats.lamps.length} lamps want an outlet and ${outlets} ${outlets === 1 ? 'is' : 'are'} free`;
  const strongest = Math.max(...seats.timers.map(({ freeWatts }) => freeWatts ?? Number.POSITIVE_INFINITY));
  const heavy = left.find(({ lamp }) => lamp.powerW > strongest);
  if (heavy) return `${heavy.id} draws ${heavy.lamp.powerW} W and no timer has more than ${strongest} W to spare`;
  const lonely = left.find((lamp) => !seats.timers.some((_, timer) => seats.agrees(lamp, timer)));
  if (lonely) return `no timer's enclosures share the day of ${lonely.enclosure.id}`;
  return 'outlets, watts and the days of the enclosures do not allow all of them at once';
}

function remedyFor(left: readonly ShelfLamp[]): string {
  const watts = left.reduce((sum, { lamp }) => sum + lamp.powerW, 0);
  const outlets = left.length;
  return `another dial with ${outlets} timed outlet${outlets === 1 ? '' : 's'}, rated ${watts} W or more`;
}
