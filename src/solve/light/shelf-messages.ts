/** What a planned shelf has to say: clocks that differ, lamps that cannot restrike, insets that follow the day, targets that are extreme. */
import { epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import { isTimer } from '../../hardware/power-tree.ts';
import { joinedWindows, minutesOn } from '../../plan/dial-day.ts';
import type { ClockKind, DialPlan, LampUse } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { type DialGroup, followingLamps } from './dial-group.ts';
import { type DayTargets, insetTarget, insetWords, type ShelfLamp } from './shelf-lamp.ts';
import { lampError } from './solve-group.ts';

const RESTRIKE_MINUTES = 20;
/** From this Ferguson zone on an animal seeks the sun; zone 1 lives in shade, and what it needs of UV is not settled. */
const SUNLIT_ZONE = 2;
const SHORTEST_SOUND_TENTHS = 3600;
const LONGEST_SOUND_TENTHS = 10_800;

/** Warns where a target day is under 6 h or over 18 h outside a brumation, once an enclosure, with its most extreme day. */
export function reportExtremeDays(care: Care, days: DayTargets, log: Log): void {
  for (const enclosure of care.enclosures) {
    const target = days.get(enclosure.id) ?? new Int32Array(0);
    const extreme = [...target.keys()].filter(
      (day) => isExtreme(target[day] ?? 0) && !isBrumating(enclosure, care.plan.from + day),
    );
    const [first] = extreme;
    if (first === undefined) continue;
    const values = {
      enclosure: enclosure.id,
      date: isoDateOf(care.plan.from + first),
      target: spanWords((target[first] ?? 0) / 10),
      days: extreme.length,
    };
    log.report(
      'target-day-extreme',
      values,
      care.placeOfTarget(enclosure.id, 'photoperiod') ?? care.placeOf(enclosure.path),
    );
  }
}

/** Says what the profile asks for and no lamp of the enclosure gives: a basking place, UV. */
export function reportUnlitNeeds(care: Care, log: Log): void {
  for (const { id, path, lamps, targets } of care.enclosures) {
    const { basking, uvb, temperature } = targets;
    const gives = (use: LampUse) => lamps.some(({ uses }) => uses.includes(use));
    const isWarmedAllDay =
      basking?.form === 'edges' && basking.afterLightsOnMinutes + basking.beforeLightsOffMinutes === 0;
    const lacksBasking = basking !== null && !gives('basking') && !(isWarmedAllDay && gives('heat'));
    const values = {
      enclosure: id,
      baskingC: lacksBasking ? temperature.baskingC : null,
      isBasking: lacksBasking,
      isUv: uvb !== null && (uvb.fergusonZone ?? SUNLIT_ZONE) >= SUNLIT_ZONE && !gives('uvb'),
      zone: uvb?.fergusonZone ?? null,
    };
    if (values.isBasking || values.isUv) log.report('needs-without-lamp', values, care.placeOf([...path, 'lamps']));
  }
}

function isExtreme(tenths: number): boolean {
  return tenths < SHORTEST_SOUND_TENTHS || tenths > LONGEST_SOUND_TENTHS;
}

function isBrumating({ rest }: CareEnclosure, day: number): boolean {
  return rest?.kind === 'brumation' && day >= rest.from && day < rest.from + rest.weeks * 7;
}

/** Warns where two timers of one enclosure differ in clock; wall time is wall time, whoever sets it. */
export function reportClocks(care: Care, outletOf: (enclosure: CareEnclosure, lamp: string) => string, log: Log): void {
  for (const enclosure of care.enclosures) {
    const timers = timersOf(care, enclosure, outletOf);
    const [one] = timers;
    const other = timers.find(({ clock }) => one && isStandard(clock) !== isStandard(one.clock));
    if (!one || !other) continue;
    log.report(
      'clocks-differ',
      {
        enclosure: enclosure.id,
        one: one.id,
        oneClock: clockWord(one.clock),
        other: other.id,
        otherClock: clockWord(other.clock),
      },
      care.placeOf(enclosure.path),
    );
  }
}

function isStandard(clock: ClockKind): boolean {
  return clock === 'standard';
}

function clockWord(clock: ClockKind): string {
  return isStandard(clock) ? 'standard' : 'wall';
}

/** The timers with a clock that lamps, pump and dripper of an enclosure hang on, directly or behind another. */
function timersOf(care: Care, enclosure: CareEnclosure, outletOf: (enclosure: CareEnclosure, lamp: string) => string) {
  const plugs = [
    ...enclosure.lamps.map(({ id }) => outletOf(enclosure, id)),
    enclosure.mist,
    enclosure.dripper ?? 'none',
  ];
  const ids = new Set(plugs.flatMap((id) => chainOf(care, id)));
  return care.devices.flatMap((device) =>
    ids.has(device.id) && 'clock' in device ? [{ id: device.id, clock: device.clock }] : [],
  );
}

function chainOf(care: Care, id: string): readonly string[] {
  const chain: string[] = [];
  let device = care.devices.find((each) => each.id === id);
  while (device && !chain.includes(device.id)) {
    chain.push(device.id);
    const outlet = 'outlet' in device ? device.outlet : 'none';
    device = care.devices.find((each) => each.id === outlet && isTimer(each));
  }
  return chain;
}

/** Warns about arc lamps that would be switched on again before they have cooled. */
export function reportRestrikes(
  care: Care,
  lamps: readonly ShelfLamp[],
  lighting: readonly DialPlan[],
  log: Log,
): void {
  for (const { id, lamp, enclosure } of lamps) {
    if (lamp.kind !== 'mercury' && lamp.kind !== 'metal-halide') continue;
    const dial = lighting.find((each) =>
      each.lamps.some((one) => one.enclosure === enclosure.id && one.lamp === lamp.id),
    );
    const pauses = dial?.settings.flatMap((setting) => pausesOf(setting)) ?? [];
    const minutes = Math.min(...pauses);
    if (dial && minutes < RESTRIKE_MINUTES)
      log.report(
        'restrike-too-soon',
        { lamp: id, kind: lamp.kind, timer: dial.device, minutes },
        care.placeOf(lamp.path),
      );
  }
}

/** Minutes from each window of a day to the next, the first of the following day included. */
function pausesOf({ windows }: DialPlan['settings'][number]): readonly number[] {
  const joined = joinedWindows(windows);
  return joined.flatMap(({ offMinute }, index) => {
    const next = joined[index + 1]?.onMinute ?? (joined[0]?.onMinute ?? 0) + DAY_MINUTES;
    return next > offMinute ? [next - offMinute] : [];
  });
}

/** Says which lamps follow the day though they have hours of their own. */
export function reportInsets(care: Care, group: DialGroup, plan: DialPlan, days: DayTargets, log: Log): void {
  if (group.kind !== 'day') return;
  const lit = litOf(care, plan);
  const timer = group.timer.id;
  for (const lamp of followingLamps(group)) {
    const errorMinutes = lampError(lamp, lit).worstErrorTenths / 10;
    if (errorMinutes === 0 || hasNoHoursOfItsOwn(lamp)) continue;
    log.report(
      'inset-follows-day',
      { lamp: lamp.id, timer, wants: insetWords(lamp), errorMinutes },
      care.placeOf(lamp.lamp.path),
    );
  }
  for (const lamp of group.lamps) if (lamp.target.kind === 'day') reportCombined(care, lamp, lit, days, log);
}

/** Tenths of a minute that a planned dial is on, one a day of the plan. */
function litOf({ plan: { from, days } }: Care, { settings }: DialPlan): Int32Array {
  const lit = new Int32Array(days);
  for (const setting of settings)
    lit.fill(
      minutesOn(joinedWindows(setting.windows)) * 10,
      epochDay(setting.from) - from,
      epochDay(setting.to) - from + 1,
    );
  return lit;
}

/** An enclosure without a basking target leaves a lamp the whole day. */
function hasNoHoursOfItsOwn({ target }: ShelfLamp): boolean {
  return (
    target.kind === 'inset' && target.edgesMinutes !== null && target.edgesMinutes[0] + target.edgesMinutes[1] === 0
  );
}

function reportCombined(care: Care, shelf: ShelfLamp, lit: Int32Array, days: DayTargets, log: Log): void {
  const { uvb, basking } = shelf.enclosure.targets;
  const insets = [
    { use: 'uvb', inset: uvb && uvb.form !== 'unplaced' ? uvb : null },
    { use: 'basking', inset: basking },
  ] as const;
  for (const { use, inset } of insets) {
    if (!inset || !shelf.lamp.uses.includes(use)) continue;
    const { targetTenths } = insetTarget(inset, days.get(shelf.enclosure.id) ?? new Int32Array(0));
    const over = lampError({ ...shelf, targetTenths }, lit).worstErrorTenths / 10;
    if (over > 0)
      log.report('inset-in-combined-lamp', { lamp: shelf.id, use, errorMinutes: over }, care.placeOf(shelf.lamp.path));
  }
}
