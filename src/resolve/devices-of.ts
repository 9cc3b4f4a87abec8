/** The devices of a household with everything said: what the file leaves out is taken from the figures below. */

import type { Log } from '../diagnostics/log.ts';
import type {
  Device,
  Dripper,
  HandSprayer,
  MistPump,
  Outlet,
  PinDial,
  ProgrammableTimer,
  RepeatCycleTimer,
} from '../hardware/devices.ts';
import type { ReadHousehold } from '../read/household.ts';
import type {
  ReadDevice,
  ReadDripper,
  ReadHandSprayer,
  ReadMistPump,
  ReadPinDial,
  ReadProgrammableTimer,
  ReadRepeatCycleTimer,
} from '../read/household-tree.ts';

/** Figures of ours where the file says nothing; lands, start_step and length_step are the design's, the rest cautious guesses. */
const DEVICE_DEFAULTS = {
  landsShare: 0.6,
  startStepMinutes: 15,
  lengthStepSeconds: 15,
  longestRunSeconds: 300,
  restSeconds: 600,
  refillEveryDays: 7,
  timerResolutionSeconds: 60,
  repeatResolutionSeconds: 1,
} as const;

/** Returns the devices in the file's order; notes the figures of pumps that were taken. */
export function devicesOf(household: ReadHousehold, log: Log): readonly Device[] {
  return (household.tree.hardware ?? []).map((device, index) => deviceOf(device, index, household, log));
}

function deviceOf(said: ReadDevice, index: number, household: ReadHousehold, log: Log): Device {
  const base = { id: said.id, path: ['hardware', index], where: said.where ?? null };
  switch (said.kind) {
    case 'pin-dial':
      return { ...base, ...pinDial(said) };
    case 'programmable-timer':
      return { ...base, ...programmableTimer(said) };
    case 'repeat-cycle-timer':
      return { ...base, ...repeatCycleTimer(said) };
    case 'mist-pump':
    case 'fogger':
      noteFigures(said, index, household, log);
      return { ...base, ...mistPump(said) };
    case 'dripper':
      return { ...base, ...dripper(said) };
    case 'hand-sprayer':
      return { ...base, ...handSprayer(said) };
  }
}

type Own<D> = Omit<D, 'id' | 'path' | 'where'>;

function pinDial(said: ReadPinDial): Own<PinDial> {
  return {
    kind: said.kind,
    stepMinutes: said.step,
    turnsInDays: said.turns_in ?? 1,
    outlets: said.outlets ?? 1,
    ratingW: said.rating ?? null,
    pins: said.pins ?? 'down-is-on',
    clock: said.clock ?? 'standard',
    now: said.now ? { onMinute: said.now.on, offMinute: said.now.off } : null,
    outlet: outletOf(said.outlet),
  };
}

function programmableTimer(said: ReadProgrammableTimer): Own<ProgrammableTimer> {
  const resolutionSeconds = said.resolution ?? DEVICE_DEFAULTS.timerResolutionSeconds;
  return {
    kind: said.kind,
    entries: said.entries,
    entryForm: said.lines ?? 'start-and-length',
    resolutionSeconds,
    shortestSeconds: said.shortest ?? resolutionSeconds,
    outlets: said.outlets ?? 1,
    ratingW: said.rating ?? null,
    clock: said.clock ?? 'wall',
    keepsTime: said.keeps_time ?? false,
    outlet: outletOf(said.outlet),
  };
}

function repeatCycleTimer(said: ReadRepeatCycleTimer): Own<RepeatCycleTimer> {
  return {
    kind: said.kind,
    onSeconds: [said.on.from, said.on.to],
    offSeconds: [said.off.from, said.off.to],
    resolutionSeconds: said.resolution ?? DEVICE_DEFAULTS.repeatResolutionSeconds,
    outlets: said.outlets ?? 1,
    ratingW: said.rating ?? null,
    outlet: outletOf(said.outlet),
  };
}

function mistPump(said: ReadMistPump): Own<MistPump> {
  const isFogger = said.kind === 'fogger';
  return {
    kind: said.kind,
    outlet: said.outlet,
    powerW: said.power,
    flowGPerHour: said.flow,
    nozzles: said.nozzles ?? 1,
    landsShare: said.lands ?? (isFogger ? 0 : DEVICE_DEFAULTS.landsShare),
    airborneShare: said.airborne ?? (isFogger ? 1 : 0),
    lagSeconds: said.lag ?? 0,
    afterDripG: said.after_drip ?? 0,
    longestRunSeconds: said.longest_run ?? DEVICE_DEFAULTS.longestRunSeconds,
    restSeconds: said.rest ?? DEVICE_DEFAULTS.restSeconds,
    dutyFactor: said.duty ?? null,
    startStepMinutes: said.start_step ?? DEVICE_DEFAULTS.startStepMinutes,
    lengthStepSeconds: said.length_step ?? DEVICE_DEFAULTS.lengthStepSeconds,
    tank: said.tank
      ? {
          holdsG: said.tank.holds,
          reserveG: said.tank.reserve ?? 0,
          refillEveryDays: said.tank.refill_every ?? DEVICE_DEFAULTS.refillEveryDays,
        }
      : null,
  };
}

function dripper(said: ReadDripper): Own<Dripper> {
  return {
    kind: said.kind,
    outlet: outletOf(said.outlet),
    powerW: said.power ?? 0,
    flowGPerHour: said.flow,
    bowl: said.bowl ? { holdsG: said.bowl.holds, emptyEveryDays: said.bowl.empty_every } : null,
    runs: dripperRuns(said.runs),
  };
}

function dripperRuns(runs: ReadDripper['runs']): Dripper['runs'] {
  if (runs === 'always') return runs;
  return 'after_a' in runs ? { afterMistMinutes: runs.for } : { everyMinutes: runs.every, forMinutes: runs.for };
}

function handSprayer(said: ReadHandSprayer): Own<HandSprayer> {
  return { kind: said.kind, flowGPerHour: said.flow };
}

function outletOf(said: string | undefined): Outlet {
  return said ?? 'always';
}

function noteFigures(said: ReadMistPump, index: number, household: ReadHousehold, log: Log): void {
  const taken = [
    said.longest_run === undefined ? `longest_run ${DEVICE_DEFAULTS.longestRunSeconds / 60} min` : null,
    said.rest === undefined ? `rest ${DEVICE_DEFAULTS.restSeconds / 60} min` : null,
  ].filter((figure) => figure !== null);
  if (taken.length > 0)
    log.report(
      'pump-figures-taken',
      { pump: said.id, figures: taken.join(', ') },
      household.placeOf(['hardware', index]),
    );
}
