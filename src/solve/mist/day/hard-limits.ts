/** The hard limits of a day's entries that need no simulation: what pump and timer can do, and by how much each limit that may give way is exceeded. */
import { DAY_MINUTES, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { LightHours } from '../../../plan/plan.ts';
import type { MinuteSpan } from '../../../resolve/care.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import { type DayProblem, GIVING_WAY, type GivingLimit, type MistCase, type MistMachine } from './day-problem.ts';
import { runTouches, type StartGrid } from './start-grid.ts';

/** Margins that the solver plans with. */
export const DRY_OUT_MARGIN_MINUTES = 15;
export const WATER_MARGIN = 0.02;

const DUTY_WINDOW_SECONDS = 600;
const DAY_SECONDS = 86_400;

/** Amounts by which the limits of `GIVING_WAY` are exceeded, in that order; 0 where a limit holds. */
export type Amounts = Float64Array;

/** Returns the place of a limit in the order in which limits give way. */
export function indexOfLimit(limit: GivingLimit): number {
  return GIVING_WAY.indexOf(limit);
}

const GAP = indexOfLimit('gap');
const COUNT = indexOfLimit('count');
const LENGTH = indexOfLimit('length');
const TANK = indexOfLimit('tank');
const NOISE = indexOfLimit('noise');
const NO_MIST = indexOfLimit('no-mist');
const DRINK = indexOfLimit('drink');

/** Returns the tank water of a day in g. */
export function tankWaterG(machine: MistMachine, entries: readonly Run[]): number {
  let seconds = 0;
  for (const entry of entries) seconds += Math.max(0, entry.seconds - machine.lagSeconds);
  return (machine.pumpFlowGPerHour * seconds) / 3600 + machine.afterDripG * entries.length;
}

/** Returns whether pump and timer can run these entries (in the order of the day) and none is forbidden for good. */
export function machineAllows(
  machine: MistMachine,
  entries: readonly Run[],
  grid: StartGrid,
  dry: readonly MinuteSpan[],
): boolean {
  if (entries.length > machine.entriesAtMost) return false;
  for (let i = 0; i < entries.length; i++) {
    const entry = entries[i];
    const next = entries[i + 1 < entries.length ? i + 1 : 0];
    if (!entry || !next) continue;
    if (entry.seconds < machine.shortestSeconds || entry.seconds > machine.longestSeconds) return false;
    if (!grid.slotAt.has(entry.startMinute)) return false;
    if (dry.length > 0 && runTouches(dry, entry.startMinute, entry.seconds)) return false;
    if (pauseSeconds(entry, next) < machine.restSeconds - 1e-9) return false;
  }
  return machine.dutyFactor === null || dutyHolds(machine.dutyFactor, entries);
}

/** Returns the seconds from the end of a run to the start of the next, past midnight; negative where they overlap. */
function pauseSeconds(entry: Run, next: Run): number {
  const between = wrapMinute(next.startMinute - entry.startMinute) || DAY_MINUTES;
  return between * 60 - entry.seconds;
}

/** The most running time in any window is found in one that begins or ends with a run. Source: duty type S3, IEC 60034-1, over 10 min. */
function dutyHolds(duty: number, entries: readonly Run[]): boolean {
  const most = duty * DUTY_WINDOW_SECONDS + 1e-6;
  return entries.every((entry) => {
    const start = entry.startMinute * 60;
    return (
      runningSeconds(entries, start) <= most &&
      runningSeconds(entries, start + entry.seconds - DUTY_WINDOW_SECONDS) <= most
    );
  });
}

function runningSeconds(entries: readonly Run[], from: number): number {
  let sum = 0;
  for (const entry of entries) {
    for (const turn of [-DAY_SECONDS, 0, DAY_SECONDS]) {
      const start = entry.startMinute * 60 + turn;
      sum += Math.max(0, Math.min(from + DUTY_WINDOW_SECONDS, start + entry.seconds) - Math.max(from, start));
    }
  }
  return sum;
}

/** Fills the amounts of the limits that need no simulation and clears the others; returns whether all of them hold. */
export function fillPlannedAmounts(
  amounts: Amounts,
  problem: DayProblem,
  grid: StartGrid,
  entries: readonly Run[],
  margins: boolean,
): boolean {
  amounts.fill(0);
  for (const one of problem.cases) {
    if (one.cadence) fillCadence(amounts, one.cadence, entries);
    if (one.drink) amounts[DRINK] = Math.max(amounts[DRINK] ?? 0, missingDrinks(one, one.drink, entries));
  }
  if (problem.waterAtMostG !== null) {
    const most = problem.waterAtMostG * (margins ? 1 - WATER_MARGIN : 1);
    amounts[TANK] = excessG(tankWaterG(problem.machine, entries), most);
  }
  for (const entry of entries) {
    const slot = grid.slotAt.get(entry.startMinute);
    amounts[NOISE] = (amounts[NOISE] ?? 0) + (slot?.inNoise ?? 0);
    amounts[NO_MIST] = (amounts[NO_MIST] ?? 0) + (slot?.inNoMist ?? 0);
  }
  return amounts.every((amount) => amount === 0);
}

/** Returns the excess in g, rounded to 0.1 g. */
export function excessG(water: number, most: number): number {
  return Math.max(0, Math.ceil((water - most) * 10 - 1e-6) / 10);
}

function fillCadence(amounts: Amounts, cadence: NonNullable<MistCase['cadence']>, entries: readonly Run[]): void {
  const count = entries.length;
  const off = Math.max(0, cadence.perDay[0] - count, count - cadence.perDay[1]);
  amounts[COUNT] = Math.max(amounts[COUNT] ?? 0, off);
  let gapShort = 0;
  let lengthOff = 0;
  for (let i = 0; i < count; i++) {
    const entry = entries[i];
    const next = entries[i + 1 < count ? i + 1 : 0];
    if (!entry || !next) continue;
    lengthOff = Math.max(lengthOff, cadence.seconds[0] - entry.seconds, entry.seconds - cadence.seconds[1]);
    const between = wrapMinute(next.startMinute - entry.startMinute) || DAY_MINUTES;
    if (cadence.gapMinutes !== null) gapShort = Math.max(gapShort, cadence.gapMinutes - between);
  }
  amounts[GAP] = Math.max(amounts[GAP] ?? 0, gapShort);
  amounts[LENGTH] = Math.max(amounts[LENGTH] ?? 0, lengthOff);
}

/** Returns how many mists to drink from are missing in a case's hours. */
function missingDrinks(one: MistCase, drink: NonNullable<MistCase['drink']>, entries: readonly Run[]): number {
  let there = 0;
  for (const entry of entries) {
    if (entry.seconds >= drink.seconds && inHours(one, entry.startMinute, drink.when)) there++;
  }
  return Math.max(0, drink.mists - there);
}

/** Returns whether a minute lies in the lit, the dark or any hours of a case. */
export function inHours(one: MistCase, minute: number, when: LightHours): boolean {
  if (when === 'any') return true;
  const { onMinute, minutes } = one.air.lit;
  return wrapMinute(minute - onMinute) < minutes === (when === 'lit');
}
