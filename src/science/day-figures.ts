/** What a keeper's gauge and eye would tell of a simulated day: the running mean of the humidity, soaked hours, peaks, dry leaves. */

import type { Run } from './enclosure-day.ts';
import type { PeriodicDay } from './wet-enclosure.ts';

const MINUTES = 1440;
const GOLDEN = 0.6180339887498949;
/** Brings two minutes down to a second or so. */
const EXTREMUM_STEPS = 9;
/** By so much may the running mean between two whole minutes pass both. */
const CREST = 0.06;
/** A peak counts where it begins within so long after the start of a mist; the centred mean shows a mist up to 2.5 min early. */
const PEAK_AFTER_MIST_MINUTES = 60;
const SEEN_EARLY_MINUTES = 2;

/** Relative humidity of a periodic day as the centred running mean over 5 min, a fraction, one value at each whole minute from 00:00. */
export class HumidityCurve {
  readonly byMinute = new Float64Array(MINUTES);
  /** Means over the lit hours, the dark hours and the day; NaN where there are no such hours. */
  lit = Number.NaN;
  dark = Number.NaN;
  mean = 0;
  low = 0;
  high = 0;
  /** Minute of the lowest value. */
  lowMinute = 0;
  readonly #halves = new Float64Array(MINUTES + 5);

  /** Reads the curve and its figures off a simulated day. */
  read(day: PeriodicDay): void {
    this.#sampleIntegral(day);
    const halves = this.#halves;
    const start = day.mesh.startMinute;
    const by = this.byMinute;
    let low = 2;
    let high = -1;
    let lowAt = 0;
    let sum = 0;
    for (let turn = 0; turn < 2; turn++) {
      const from = turn === 0 ? 0 : MINUTES - start;
      const to = turn === 0 ? MINUTES - start : MINUTES;
      const shift = turn === 0 ? start : start - MINUTES;
      for (let k = from; k < to; k++) {
        const value = 0.2 * ((halves[k + 5] ?? 0) - (halves[k] ?? 0));
        by[k + shift] = value;
        sum += value;
        if (value < low) {
          low = value;
          lowAt = k + shift;
        }
        if (value > high) high = value;
      }
    }
    this.mean = sum / MINUTES;
    this.low = extremeNear(this, day, lowAt, -1);
    this.high = Math.min(1, this.#highest(day, high));
    this.lowMinute = lowAt;
    this.#means(day, sum);
  }

  /** Samples the integral of the humidity half a minute before each whole minute from 2 before the first node to 2 after the last. */
  #sampleIntegral(day: PeriodicDay): void {
    const { minutes, count } = day.mesh;
    const { integral, humidity } = day;
    const halves = this.#halves;
    const whole = integral[count] ?? 0;
    // halves[k] is the integral at minute k - 2.5 from the first node: between nodes the cubic with the humidities as slopes.
    let k = 3;
    for (let node = 0; node < count; node++) {
      const from = minutes[node] ?? 0;
      const to = minutes[node + 1] ?? MINUTES;
      if (k - 2.5 > to) continue;
      const length = to - from;
      const per = 1 / length;
      const base = integral[node] ?? 0;
      const mean = ((integral[node + 1] ?? 0) - base) * per;
      const left = humidity[node] ?? 0;
      const right = humidity[node + 1] ?? 0;
      const square = (3 * mean - 2 * left - right) * per;
      const cube = (left + right - 2 * mean) * per * per;
      for (let at = k - 2.5 - from; at <= length; at++) halves[k++] = base + at * (left + at * (square + at * cube));
    }
    for (let k = 0; k < 3; k++) halves[k] = (halves[k + MINUTES] ?? 0) - whole;
    for (let k = 3; k < 5; k++) halves[k + MINUTES] = (halves[k] ?? 0) + whole;
  }

  /** Returns the highest value between the whole minutes too: of every crest that comes near to the highest at a whole one. */
  #highest(day: PeriodicDay, sampled: number): number {
    let highest = sampled;
    let before = this.byMinute[MINUTES - 1] ?? 0;
    let here = this.byMinute[0] ?? 0;
    for (let minute = 0; minute < MINUTES; minute++) {
      const next = this.byMinute[minute + 1 < MINUTES ? minute + 1 : 0] ?? 0;
      if (here > sampled - CREST && here >= before && here > next) {
        highest = Math.max(highest, extremeNear(this, day, minute, 1));
      }
      before = here;
      here = next;
    }
    return highest;
  }

  #means(day: PeriodicDay, sum: number): void {
    const { onMinute, minutes } = day.air.lit;
    const lit = trapezoid(this.byMinute, onMinute, minutes);
    this.lit = minutes > 0 ? lit / minutes : Number.NaN;
    this.dark = minutes < MINUTES ? (sum - lit) / (MINUTES - minutes) : Number.NaN;
  }
}

/** Returns the highest (sign 1) or lowest (sign -1) running mean within a minute of a whole minute, by golden section. */
function extremeNear(curve: HumidityCurve, day: PeriodicDay, minute: number, sign: 1 | -1): number {
  const around = (minute - day.mesh.startMinute + MINUTES) % MINUTES;
  let left = around - 1;
  let right = around + 1;
  let a = right - GOLDEN * (right - left);
  let b = left + GOLDEN * (right - left);
  let atA = sign * runningMean(day, a);
  let atB = sign * runningMean(day, b);
  for (let step = 0; step < EXTREMUM_STEPS; step++) {
    if (atA > atB) {
      right = b;
      b = a;
      atB = atA;
      a = right - GOLDEN * (right - left);
      atA = sign * runningMean(day, a);
    } else {
      left = a;
      a = b;
      atA = atB;
      b = left + GOLDEN * (right - left);
      atB = sign * runningMean(day, b);
    }
  }
  return sign * Math.max(atA, atB, sign * (curve.byMinute[minute] ?? 0));
}

/** Returns the centred running mean at a time in minutes from the first node. */
function runningMean(day: PeriodicDay, at: number): number {
  return (integralAt(day, at + 2.5) - integralAt(day, at - 2.5)) / 5;
}

/** Returns the integral of the humidity from the first node to a time, which may lie in a neighbouring day. */
function integralAt(day: PeriodicDay, time: number): number {
  const { minutes, count } = day.mesh;
  const turns = Math.floor(time / MINUTES);
  const at = time - turns * MINUTES;
  const node = nodeBefore(minutes, count, at);
  const from = minutes[node] ?? 0;
  const length = (minutes[node + 1] ?? MINUTES) - from;
  const u = (at - from) / length;
  const v = 1 - u;
  const base = day.integral[node] ?? 0;
  const gain = (day.integral[node + 1] ?? 0) - base;
  const bow = (day.humidity[node] ?? 0) * v - (day.humidity[node + 1] ?? 0) * u;
  return turns * (day.integral[count] ?? 0) + base + length * u * v * bow + gain * u * u * (3 - 2 * u);
}

/** Returns the last node at or before a time in [0, 1440). */
function nodeBefore(minutes: Float64Array, count: number, at: number): number {
  let low = 0;
  let high = count;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((minutes[middle] ?? 0) <= at) low = middle;
    else high = middle;
  }
  return low;
}

/** Returns the integral over [from, from + minutes) around the day. */
function trapezoid(by: Float64Array, from: number, minutes: number): number {
  if (minutes <= 0) return 0;
  const to = from + minutes;
  let sum = 0.5 * ((by[to % MINUTES] ?? 0) - (by[from % MINUTES] ?? 0));
  for (let minute = from; minute < Math.min(to, MINUTES); minute++) sum += by[minute] ?? 0;
  for (let minute = MINUTES; minute < to; minute++) sum += by[minute - MINUTES] ?? 0;
  return sum;
}

/** Returns the hours a day with the humidity above a level, with the lights on only where asked. */
export function hoursAbove(curve: HumidityCurve, day: PeriodicDay, level: number, litOnly: boolean): number {
  if (curve.high <= level) return 0;
  const { onMinute, minutes } = day.air.lit;
  if (!litOnly || minutes >= MINUTES) return minutesAbove(curve.byMinute, level, 0, MINUTES) / 60;
  const off = onMinute + minutes;
  const early = off > MINUTES ? minutesAbove(curve.byMinute, level, 0, off - MINUTES) : 0;
  return (minutesAbove(curve.byMinute, level, onMinute, Math.min(off, MINUTES)) + early) / 60;
}

/** Returns the minutes above a level in [from, to), the curve taken as linear between whole minutes. */
function minutesAbove(by: Float64Array, level: number, from: number, to: number): number {
  let sum = 0;
  let here = by[from] ?? 0;
  for (let minute = from; minute < to; minute++) {
    const next = by[minute + 1 < MINUTES ? minute + 1 : 0] ?? 0;
    if (here > level || next > level) sum += shareAbove(here, next, level);
    here = next;
  }
  return sum;
}

function shareAbove(here: number, next: number, level: number): number {
  if (here > level && next > level) return 1;
  return (Math.max(here, next) - level) / Math.abs(next - here);
}

/** Returns the first whole minutes of the peaks of a day. A peak reaches `reaches` after having been below `rearm`, within an hour of a mist's start. */
export function peakMinutes(
  curve: HumidityCurve,
  day: PeriodicDay,
  runs: readonly Run[],
  reaches: number,
  rearm: number,
): number[] {
  const peaks: number[] = [];
  if (curve.low >= rearm || curve.high < reaches || runs.length === 0) return peaks;
  const by = curve.byMinute;
  let armed = true;
  for (let turn = 0; turn < 2; turn++) {
    const from = turn === 0 ? curve.lowMinute : 0;
    const to = turn === 0 ? MINUTES : curve.lowMinute;
    for (let minute = from; minute < to; minute++) {
      const value = by[minute] ?? 0;
      if (value < rearm) armed = true;
      else if (armed && value >= reaches - CREST && (value >= reaches || crests(curve, day, minute) >= reaches)) {
        armed = false;
        if (followsMist(minute, runs)) peaks.push(minute);
      }
    }
  }
  return peaks.sort((a, b) => a - b);
}

/** Returns the highest value next to a minute that is a crest of the curve, 0 elsewhere. */
function crests(curve: HumidityCurve, day: PeriodicDay, minute: number): number {
  const by = curve.byMinute;
  const here = by[minute] ?? 0;
  const rising = here >= (by[(minute + MINUTES - 1) % MINUTES] ?? 0);
  return rising && here > (by[(minute + 1) % MINUTES] ?? 0) ? extremeNear(curve, day, minute, 1) : 0;
}

function followsMist(minute: number, runs: readonly Run[]): boolean {
  const latest = PEAK_AFTER_MIST_MINUTES + SEEN_EARLY_MINUTES;
  return runs.some((run) => (minute + SEEN_EARLY_MINUTES - run.startMinute + MINUTES) % MINUTES <= latest);
}

/** Returns the longest unbroken spell in minutes with the film under a share of its capacity, inside the lit, the dark or all hours. */
export function longestDryMinutes(day: PeriodicDay, below: number, when: 'lit' | 'dark' | 'any'): number {
  const { onMinute, minutes } = day.air.lit;
  if (when === 'any') return longestSpell(day, below, 0, MINUTES, true);
  const from = when === 'lit' ? onMinute : (onMinute + minutes) % MINUTES;
  const length = when === 'lit' ? minutes : MINUTES - minutes;
  if (length <= 0) return 0;
  return longestSpell(day, below, (from - day.mesh.startMinute + MINUTES) % MINUTES, length, length >= MINUTES);
}

/** Returns the longest spell inside [from, from + length) counted from the first node; `around` joins the end to the beginning. */
function longestSpell(day: PeriodicDay, below: number, from: number, length: number, around: boolean): number {
  const limit = below * day.enclosure.filmCapacityG;
  const { minutes, count } = day.mesh;
  const film = day.film;
  let longest = 0;
  let spellFrom = Number.NaN;
  // Twice around: a spell or a window may pass the first node.
  const turns = from + length > MINUTES || around ? 2 : 1;
  const until = around ? 2 * MINUTES : from + length;
  const begin = around ? 0 : from;
  for (let i = 0; i < turns * count; i++) {
    const shift = i >= count ? MINUTES : 0;
    const k = i >= count ? i - count : i;
    const t0 = (minutes[k] ?? 0) + shift;
    const t1 = (minutes[k + 1] ?? 0) + shift;
    if (t1 <= begin) continue;
    if (t0 >= until) break;
    const a = film[k] ?? 0;
    const b = film[k + 1] ?? 0;
    if (a < limit && Number.isNaN(spellFrom)) spellFrom = Math.max(t0, begin);
    if (a < limit === b < limit) continue;
    const crossing = t0 + ((limit - a) / (b - a)) * (t1 - t0);
    if (b < limit) spellFrom = Math.max(crossing, begin);
    else {
      longest = Math.max(longest, Math.min(crossing, until) - spellFrom);
      spellFrom = Number.NaN;
    }
  }
  if (!Number.isNaN(spellFrom)) longest = Math.max(longest, until - spellFrom);
  return Math.min(longest, length);
}

/** The day at even spacing from 00:00: running mean of the humidity, share of the film's capacity, temperature. */
export function dayCurve(
  curve: HumidityCurve,
  day: PeriodicDay,
  everyMinutes: number,
): { readonly humidity: number[]; readonly leafWetness: number[]; readonly temperatureC: number[] } {
  const humidity: number[] = [];
  const leafWetness: number[] = [];
  const temperatureC: number[] = [];
  for (let minute = 0; minute < MINUTES; minute += everyMinutes) {
    humidity.push(curve.byMinute[Math.round(minute) % MINUTES] ?? 0);
    leafWetness.push(day.enclosure.filmCapacityG > 0 ? filmAt(day, minute) / day.enclosure.filmCapacityG : 0);
    temperatureC.push(day.temperatureC[Math.round(minute)] ?? 0);
  }
  return { humidity, leafWetness, temperatureC };
}

/** Returns the film in g at a minute of the day. */
export function filmAt(day: PeriodicDay, minute: number): number {
  const { minutes, count, startMinute } = day.mesh;
  const at = (minute - startMinute + MINUTES) % MINUTES;
  const low = nodeBefore(minutes, count, at);
  const from = minutes[low] ?? 0;
  const to = minutes[low + 1] ?? from + 1;
  const a = day.film[low] ?? 0;
  return a + (((day.film[low + 1] ?? a) - a) * (at - from)) / (to - from);
}
