/**
 * The wet enclosure a second time, for the tests alone and sharing nothing with the product but the type of its inputs and the
 * saturation line: classical Runge-Kutta (Kutta 1901) on air, film and temperature in steps of 1.5 s, days repeated until they close.
 */

import type { AirDay, Run, Spray, WetEnclosure } from '../../../src/science/enclosure-day.ts';
import { saturationPressurePa } from '../../../src/science/moist-air.ts';

export const STEP_SECONDS = 1.5;
const STEPS = 86_400 / STEP_SECONDS;
const PER_MINUTE = 60 / STEP_SECONDS;

export interface SecondDay {
  /** Running 5 min mean of the relative humidity and film in g at each step from 00:00. */
  readonly humidity: Float64Array;
  readonly film: Float64Array;
  readonly mean: number;
  readonly lit: number;
  readonly dark: number;
  readonly low: number;
  readonly high: number;
  readonly runOffG: number;
  readonly condensedG: number;
}

/** Saturation by temperature, linear between points 0.002 K apart: the exponentials would dominate the time. */
const TABLE_FROM = -20;
const TABLE_PER_K = 500;
const table = Float64Array.from({ length: 90 * TABLE_PER_K }, (_, i) => {
  const celsius = TABLE_FROM + i / TABLE_PER_K;
  return (1000 * saturationPressurePa(celsius)) / (461.523 * (celsius + 273.15));
});

function saturated(celsius: number): number {
  const at = (celsius - TABLE_FROM) * TABLE_PER_K;
  const index = Math.floor(at);
  const low = table[index] ?? 0;
  return low + ((table[index + 1] ?? low) - low) * (at - index);
}

/** Integrates days until one ends as it began. */
export function secondDay(body: WetEnclosure, spray: Spray, air: AirDay, runs: readonly Run[]): SecondDay {
  const on = sprayingSteps(runs, spray.lagSeconds);
  const force = forcingSteps(air);
  const relative = new Float64Array(STEPS);
  const film = new Float64Array(STEPS);
  let state = { air: air.roomVapourGPerM3, film: 0.3 * body.filmCapacityG, celsius: force[0] ?? 0 };
  let totals = { dripped: 0, condensed: 0 };
  for (let day = 0; day < 400; day++) {
    const before = state;
    const after = oneDay(body, spray, air.roomVapourGPerM3, on, force, state, relative, film);
    state = after.state;
    totals = after;
    const closed =
      Math.abs(state.air - before.air) < 1e-7 * saturated(state.celsius) &&
      Math.abs(state.film - before.film) < 1e-6 * Math.max(body.filmCapacityG, 1e-9) &&
      Math.abs(state.celsius - before.celsius) < 1e-7;
    if (closed) break;
  }
  const sprayed = (on.reduce((sum, one) => sum + one, 0) * STEP_SECONDS * spray.flowGPerHour) / 3600;
  const past = (1 - spray.landsShare - spray.airborneShare) * sprayed + spray.afterDripG * runs.length;
  return summary(air, relative, film, totals.dripped + past, totals.condensed);
}

/**
 * Integrates days that differ, one after the other, after the first of them twice over; returns the relative humidity at each step of each
 * day, no running mean taken.
 */
export function secondDays(
  body: WetEnclosure,
  spray: Spray,
  days: readonly { readonly air: AirDay; readonly runs: readonly Run[] }[],
): readonly Float64Array[] {
  const [first] = days;
  if (!first) return [];
  const film = new Float64Array(STEPS);
  let state: State = { air: first.air.roomVapourGPerM3, film: 0, celsius: forcingSteps(first.air)[0] ?? 0 };
  return [first, first, ...days]
    .map(({ air, runs }) => {
      const relative = new Float64Array(STEPS);
      const on = sprayingSteps(runs, spray.lagSeconds);
      state = oneDay(body, spray, air.roomVapourGPerM3, on, forcingSteps(air), state, relative, film).state;
      return relative;
    })
    .slice(2);
}

interface State {
  readonly air: number;
  readonly film: number;
  readonly celsius: number;
}

function oneDay(
  body: WetEnclosure,
  spray: Spray,
  room: number,
  on: Uint8Array,
  force: Float64Array,
  start: State,
  relative: Float64Array,
  filmAt: Float64Array,
): { state: State; dripped: number; condensed: number } {
  const h = STEP_SECONDS / 3600;
  const capacity = body.filmCapacityG;
  const share = capacity > 0 ? (body.transferMPerHour * body.wettableAreaM2) / capacity : 0;
  let { air, film, celsius } = start;
  let dripped = 0;
  let condensed = 0;
  const slope = { air: 0, film: 0, celsius: 0 };
  const rates = (trial: number, m: number, t: number, flow: number, towards: number) => {
    const full = saturated(t);
    // The air never holds more than at saturation: within a step, a trial value above it would carry out vapour that is none.
    const x = Math.min(trial, full);
    const evaporation = share * Math.max(0, m) * Math.max(0, full - x);
    const base = body.baseEvaporationGPerHour * Math.max(0, 1 - x / full);
    slope.air = body.airChangesPerHour * (room - x) + (evaporation + base + spray.airborneShare * flow) / body.volumeM3;
    slope.film = spray.landsShare * flow - evaporation;
    slope.celsius = ((towards - t) * 60) / body.warmUpMinutes;
  };
  for (let step = 0; step < STEPS; step++) {
    relative[step] = air / saturated(celsius);
    filmAt[step] = film;
    const flow = on[step] ? spray.flowGPerHour : 0;
    const towards = force[step] ?? 0;
    rates(air, film, celsius, flow, towards);
    const [a1, m1, t1] = [slope.air, slope.film, slope.celsius];
    rates(air + (h / 2) * a1, film + (h / 2) * m1, celsius + (h / 2) * t1, flow, towards);
    const [a2, m2, t2] = [slope.air, slope.film, slope.celsius];
    rates(air + (h / 2) * a2, film + (h / 2) * m2, celsius + (h / 2) * t2, flow, towards);
    const [a3, m3, t3] = [slope.air, slope.film, slope.celsius];
    rates(air + h * a3, film + h * m3, celsius + h * t3, flow, towards);
    air += (h / 6) * (a1 + 2 * a2 + 2 * a3 + slope.air);
    film += (h / 6) * (m1 + 2 * m2 + 2 * m3 + slope.film);
    celsius += (h / 6) * (t1 + 2 * t2 + 2 * t3 + slope.celsius);
    const full = saturated(celsius);
    if (air > full) {
      condensed += (air - full) * body.volumeM3;
      film += (air - full) * body.volumeM3;
      air = full;
    }
    if (film > capacity) {
      dripped += film - capacity;
      film = capacity;
    }
  }
  return { state: { air, film, celsius }, dripped, condensed };
}

function sprayingSteps(runs: readonly Run[], lagSeconds: number): Uint8Array {
  const on = new Uint8Array(STEPS);
  for (const run of runs) {
    const from = run.startMinute * PER_MINUTE + lagSeconds / STEP_SECONDS;
    const to = run.startMinute * PER_MINUTE + run.seconds / STEP_SECONDS;
    for (let step = from; step < to; step++) on[step % STEPS] = 1;
  }
  return on;
}

function forcingSteps(air: AirDay): Float64Array {
  const ordered = [...air.temperatureSteps].sort((a, b) => a.fromMinute - b.fromMinute);
  return Float64Array.from({ length: STEPS }, (_, step) => {
    const reached = ordered.filter(({ fromMinute }) => fromMinute <= step / PER_MINUTE);
    return (reached.at(-1) ?? ordered.at(-1))?.celsius ?? 0;
  });
}

function summary(
  air: AirDay,
  relative: Float64Array,
  film: Float64Array,
  runOffG: number,
  condensedG: number,
): SecondDay {
  const humidity = runningMeans(relative);
  const isLit = (step: number) => (step / PER_MINUTE - air.lit.onMinute + 1440) % 1440 < air.lit.minutes;
  let [sum, litSum, litSteps] = [0, 0, 0];
  let [low, high] = [2, 0];
  for (let step = 0; step < STEPS; step++) {
    const value = humidity[step] ?? 0;
    sum += value;
    low = Math.min(low, value);
    high = Math.max(high, value);
    if (!isLit(step)) continue;
    litSum += value;
    litSteps++;
  }
  const lit = litSum / litSteps;
  const dark = (sum - litSum) / (STEPS - litSteps);
  return { humidity, film, mean: sum / STEPS, lit, dark, low, high, runOffG, condensedG };
}

/** Trapezoid over 2.5 min either side. */
function runningMeans(values: Float64Array): Float64Array {
  const half = 2.5 * PER_MINUTE;
  const at = (step: number) => values[(step + STEPS) % STEPS] ?? 0;
  let sum = 0;
  for (let k = -half; k <= half; k++) sum += k === -half || k === half ? at(k) / 2 : at(k);
  return Float64Array.from({ length: STEPS }, (_, step) => {
    const value = sum / (2 * half);
    sum += (at(step + half + 1) + at(step + half)) / 2 - (at(step - half) + at(step - half + 1)) / 2;
    return value;
  });
}

/** Returns the longest spell in minutes with the film under a share of capacity inside [from, from + length) around the day. */
export function secondDryMinutes(day: SecondDay, limitG: number, fromMinute: number, lengthMinutes: number): number {
  const steps = lengthMinutes * PER_MINUTE;
  const turns = lengthMinutes >= 1440 ? 2 : 1;
  let [longest, spell] = [0, 0];
  for (let k = 0; k < turns * steps; k++) {
    spell = (day.film[(fromMinute * PER_MINUTE + k) % STEPS] ?? 0) < limitG ? spell + 1 : 0;
    longest = Math.max(longest, spell);
  }
  return Math.min(longest / PER_MINUTE, lengthMinutes);
}

/** Returns how many peaks begin: at least `reaches` after less than `rearm`, from the 2.5 min that the mean looks ahead to an hour after a mist's start. */
export function secondPeaks(day: SecondDay, runs: readonly Run[], reaches: number, rearm: number): number {
  const from = day.humidity.findIndex((value) => value < rearm);
  if (from < 0) return 0;
  let [count, armed] = [0, true];
  for (let k = 0; k < STEPS; k++) {
    const step = (from + k) % STEPS;
    const value = day.humidity[step] ?? 0;
    if (value < rearm) armed = true;
    if (!armed || value < reaches) continue;
    armed = false;
    if (runs.some((run) => (step / PER_MINUTE + 2.5 - run.startMinute + 1440) % 1440 <= 62.5)) count++;
  }
  return count;
}
