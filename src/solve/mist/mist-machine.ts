/** What a pump behind its timer, or a person with a sprayer, can do in a day; or why it can do nothing. */
import type { MistPump, PinDial, ProgrammableTimer, RepeatCycleTimer } from '../../hardware/devices.ts';
import type { MistMachine } from './day/day-problem.ts';

/** Least length of a mist where no cadence says more, s. */
const SHORTEST_MIST_SECONDS = 15;
/** By hand: ours, few and short enough for a person to do. */
const BY_HAND_AT_MOST = 3;
const BY_HAND_LONGEST_SECONDS = 300;
const BY_HAND_STEP_SECONDS = 15;
const BY_HAND_STEP_MINUTES = 15;
/** No more lines than this are worth a search. */
const ENTRIES_AT_MOST = 48;

/** What the pump draws whichever timer runs it. */
function pumpDraws(pump: MistPump, nozzles: number) {
  return {
    restSeconds: pump.restSeconds,
    dutyFactor: pump.dutyFactor,
    pumpFlowGPerHour: pump.flowGPerHour * nozzles,
    lagSeconds: pump.lagSeconds,
    afterDripG: pump.afterDripG,
  };
}

/** Returns the machine of a pump behind a programmable timer; null where not even its shortest run fits the pump. */
export function timedMachine(pump: MistPump, timer: ProgrammableTimer, nozzles: number): MistMachine | null {
  const lengthStepSeconds = multipleOf(timer.resolutionSeconds, pump.lengthStepSeconds);
  const shortestSeconds = Math.max(timer.shortestSeconds, SHORTEST_MIST_SECONDS);
  const longestSeconds = pump.longestRunSeconds;
  if (multipleOf(lengthStepSeconds, shortestSeconds) > longestSeconds) return null;
  return {
    entriesAtMost: Math.min(timer.entries, ENTRIES_AT_MOST),
    startStepMinutes: multipleOf(Math.ceil(timer.resolutionSeconds / 60), pump.startStepMinutes),
    lengthStepSeconds,
    shortestSeconds,
    longestSeconds,
    ...pumpDraws(pump, nozzles),
  };
}

/** Returns the machine of a pump or fogger behind a dial alone: runs are whole pins; null where one pin is longer than the pump may run. */
export function dialMachine(pump: MistPump, dial: PinDial, nozzles: number): MistMachine | null {
  const step = dial.stepMinutes * 60;
  if (step > pump.longestRunSeconds) return null;
  return {
    entriesAtMost: Math.min(Math.floor(1440 / dial.stepMinutes / 2), ENTRIES_AT_MOST),
    startStepMinutes: dial.stepMinutes,
    lengthStepSeconds: step,
    shortestSeconds: step,
    longestSeconds: Math.floor(pump.longestRunSeconds / step) * step,
    ...pumpDraws(pump, nozzles),
    restSeconds: Math.max(pump.restSeconds, step),
  };
}

/** Returns the machine that judges what a repeat-cycle timer makes; its runs are tried one pattern at a time. */
export function repeatCycleMachine(pump: MistPump, timer: RepeatCycleTimer, nozzles: number): MistMachine | null {
  const lengthStepSeconds = multipleOf(timer.resolutionSeconds, pump.lengthStepSeconds);
  const shortestSeconds = multipleOf(lengthStepSeconds, Math.max(timer.onSeconds[0], SHORTEST_MIST_SECONDS));
  const longestSeconds = Math.min(timer.onSeconds[1], pump.longestRunSeconds);
  if (shortestSeconds > longestSeconds) return null;
  return {
    entriesAtMost: 1440,
    startStepMinutes: pump.startStepMinutes,
    lengthStepSeconds,
    shortestSeconds,
    longestSeconds,
    ...pumpDraws(pump, nozzles),
  };
}

/** Returns what a person with a sprayer can do: at most three mists a day. */
export function handMachine(flowGPerHour: number): MistMachine {
  return {
    entriesAtMost: BY_HAND_AT_MOST,
    startStepMinutes: BY_HAND_STEP_MINUTES,
    lengthStepSeconds: BY_HAND_STEP_SECONDS,
    shortestSeconds: SHORTEST_MIST_SECONDS,
    longestSeconds: BY_HAND_LONGEST_SECONDS,
    restSeconds: 0,
    dutyFactor: null,
    pumpFlowGPerHour: flowGPerHour,
    lagSeconds: 0,
    afterDripG: 0,
  };
}

/** Returns the least multiple of a step that is at least a value; both above 0. */
function multipleOf(step: number, value: number): number {
  return Math.ceil(value / step - 1e-9) * step;
}
