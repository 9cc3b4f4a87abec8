/** Who is misted by what: a unit a pump, one a person with an enclosure, one an enclosure that is not misted. Refuses what cannot run safely. */
import type { Log } from '../../diagnostics/log.ts';
import type { HandSprayer, MistPump, Timer } from '../../hardware/devices.ts';
import { isTimer } from '../../hardware/power-tree.ts';
import type { Load } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { airOfHand, airOfPumped, airUnmisted, HAND_FLOW_G_PER_HOUR } from './enclosure-air.ts';
import { dialMachine, handMachine, repeatCycleMachine, timedMachine } from './mist-machine.ts';
import type { MistMeans, MistUnit } from './mist-unit.ts';
import { refusalOf, runsBesideLamps } from './pump-refusals.ts';

export interface ShelfPower {
  readonly drives: ReadonlyMap<string, readonly string[]>;
  readonly loads: readonly Load[];
}

/** Days that a tank's water may stand. */
const STANDING_DAYS = 7;

/**
 * Returns the units in the order of their first enclosure. An enclosure whose pump is refused is misted by hand, so that none that needs
 * water goes without.
 *
 * @param pumpOf the pump of each enclosure on `auto`, by id
 */
export function mistUnits(
  care: Care,
  power: ShelfPower,
  pumpOf: ReadonlyMap<string, string>,
  log: Log,
): readonly MistUnit[] {
  const pumps = care.devices.filter(isPump);
  const byPump = new Map(
    pumps.map((pump) => [pump.id, care.enclosures.filter((each) => mistedBy(each, pumpOf) === pump.id)]),
  );
  const pumped = new Map<string, MistUnit>();
  for (const pump of pumps) {
    const members = byPump.get(pump.id) ?? [];
    const unit = members.length > 0 ? pumpUnit(care, power, pump, members, log) : idle(care, power, pump, log);
    if (unit) pumped.set(pump.id, unit);
  }
  const seen = new Set<MistUnit>();
  return care.enclosures.flatMap((enclosure) => {
    const how = mistedBy(enclosure, pumpOf);
    const unit = pumped.get(how) ?? (how === 'none' ? unmisted(enclosure) : byHand(care, enclosure, how));
    if (seen.has(unit)) return [];
    seen.add(unit);
    return [unit];
  });
}

/** Tells whether a device sprays or fogs. */
export function isPump(device: { readonly kind: string }): device is MistPump {
  return device.kind === 'mist-pump' || device.kind === 'fogger';
}

/** Returns the pump's id, `by-hand` or `none`; `misting: none` is never misted. */
function mistedBy(enclosure: CareEnclosure, pumpOf: ReadonlyMap<string, string>): string {
  if (enclosure.targets.misting === 'none') return 'none';
  return enclosure.mist === 'auto' ? (pumpOf.get(enclosure.id) ?? 'by-hand') : enclosure.mist;
}

/** A pump that mists nothing is still plugged in: beside lamps it would run with them. */
function idle(care: Care, power: ShelfPower, pump: MistPump, log: Log): null {
  const timer = timerOf(care, pump);
  if (timer) runsBesideLamps(care, power, pump, timer, log);
  return null;
}

function timerOf(care: Care, { outlet }: MistPump): Timer | null {
  return care.devices.find((device): device is Timer => device.id === outlet && isTimer(device)) ?? null;
}

/** Returns the unit of a pump, or null where it is refused. */
function pumpUnit(
  care: Care,
  power: ShelfPower,
  pump: MistPump,
  members: readonly CareEnclosure[],
  log: Log,
): MistUnit | null {
  const timer = timerOf(care, pump);
  const nozzles = members.reduce((sum, each) => sum + each.nozzles.count, 0);
  const found = timer && machineOf(pump, timer, nozzles);
  if (refusalOf(care, power, pump, timer, found?.machine ?? null, members, log)) return null;
  if (!timer || !found?.machine) return null;
  const { tank } = pump;
  return {
    means: found.means,
    pump,
    timer,
    supply: supplyOf(care, timer),
    clock: timer.kind === 'repeat-cycle-timer' ? clockBehind(care, timer) : timer.clock,
    machine: found.machine,
    waterAtMostG: tank && (tank.holdsG - tank.reserveG) / Math.min(tank.refillEveryDays, STANDING_DAYS),
    members: members.map((enclosure) => ({ enclosure, air: airOfPumped(enclosure, pump, nozzles) })),
  };
}

function machineOf(
  pump: MistPump,
  timer: Timer,
  nozzles: number,
): { readonly means: MistMeans; readonly machine: MistUnit['machine'] } {
  switch (timer.kind) {
    case 'programmable-timer':
      return { means: 'timer', machine: timedMachine(pump, timer, nozzles) };
    case 'pin-dial':
      return { means: 'dial', machine: dialMachine(pump, timer, nozzles) };
    case 'repeat-cycle-timer':
      return { means: 'repeat-cycle', machine: repeatCycleMachine(pump, timer, nozzles) };
  }
}

/** A repeat-cycle timer knows no time of day: it follows the dial before it, or runs on from when it was plugged in. */
function clockBehind(care: Care, timer: Timer): MistUnit['clock'] {
  const supply = supplyOf(care, timer);
  return supply && supply.kind !== 'repeat-cycle-timer' ? supply.clock : 'standard';
}

function supplyOf(care: Care, { outlet }: Timer): Timer | null {
  return care.devices.find((device): device is Timer => device.id === outlet && isTimer(device)) ?? null;
}

function byHand(care: Care, enclosure: CareEnclosure, how: string): MistUnit {
  return how !== 'by-hand' && !needsWater(enclosure) ? unmisted(enclosure) : handUnit(care, enclosure);
}

/** Returns the unit of an enclosure that a person mists. */
export function handUnit(care: Care, enclosure: CareEnclosure): MistUnit {
  const sprayer = care.devices.find((device): device is HandSprayer => device.kind === 'hand-sprayer') ?? null;
  return {
    means: 'by-hand',
    pump: null,
    timer: null,
    supply: null,
    clock: 'wall',
    machine: handMachine(sprayer?.flowGPerHour ?? HAND_FLOW_G_PER_HOUR),
    waterAtMostG: null,
    members: [{ enclosure, air: airOfHand(enclosure, sprayer) }],
  };
}

function unmisted(enclosure: CareEnclosure): MistUnit {
  return {
    means: 'none',
    pump: null,
    timer: null,
    supply: null,
    clock: 'wall',
    machine: null,
    waterAtMostG: null,
    members: [{ enclosure, air: airUnmisted(enclosure) }],
  };
}

/** Returns whether an animal drinks from mists or is to be misted. */
function needsWater({ targets }: CareEnclosure): boolean {
  return targets.water.drink !== null || (targets.misting !== null && targets.misting !== 'none');
}
