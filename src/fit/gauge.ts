/** What a gauge is worth: its correction by a salt test of two points, and whether it is stuck. */
import { SALTS, saltHumidity } from '../science/salt-points.ts';
import type { GaugeReading } from './readings.ts';

/** True humidity = offset + gain x what the gauge says, humidities as fractions. */
export interface GaugeCorrection {
  readonly gain: number;
  readonly offset: number;
  /** The two points, true humidity and what the gauge said; empty where it was not tested. */
  readonly points: readonly (readonly [truth: number, said: number])[];
}

export const UNTESTED: GaugeCorrection = { gain: 1, offset: 0, points: [] };

const LEAST_GAIN = 0.6;
const MOST_GAIN = 1.6;
const LARGEST_ERROR = 0.25;
const LEAST_APART = 0.15;

export type SaltTest =
  | { readonly ok: true; readonly correction: GaugeCorrection }
  | { readonly ok: false; readonly why: 'form' | 'too near' | 'implausible' };

/** Returns the correction of `75.3=72,33=35` or `NaCl=72,MgCl2=35`: the true humidity or the salt, and what the gauge said, in %. */
export function saltTest(text: string, celsius: number): SaltTest {
  const points = text.split(/[,;]\s*(?=[A-Za-z]|\d+(?:\.\d+)?\s*=)/u).map((part) => pointOf(part, celsius));
  const [a, b] = points;
  if (points.length !== 2 || !a || !b) return { ok: false, why: 'form' };
  if (Math.abs(a[0] - b[0]) < LEAST_APART) return { ok: false, why: 'too near' };
  const gain = (b[0] - a[0]) / (b[1] - a[1]);
  const offset = a[0] - gain * a[1];
  const isPlausible =
    gain >= LEAST_GAIN && gain <= MOST_GAIN && [a, b].every(([truth, said]) => Math.abs(truth - said) <= LARGEST_ERROR);
  return isPlausible ? { ok: true, correction: { gain, offset, points: [a, b] } } : { ok: false, why: 'implausible' };
}

function pointOf(text: string, celsius: number): readonly [number, number] | null {
  const [left = '', right = '', more] = text.split('=').map((part) => part.trim().replace(/\s*%$/u, ''));
  if (more !== undefined) return null;
  const salt = SALTS.find((each) => each === left.toLowerCase().replace(/[.·x\s-].*$/u, ''));
  const truth = salt ? saltHumidity(salt, celsius) : percentOf(left);
  const said = percentOf(right);
  return truth === null || said === null ? null : [truth, said];
}

function percentOf(text: string): number | null {
  if (!/^\d+([.,]\d+)?$/u.test(text)) return null;
  const value = Number(text.replace(',', '.')) / 100;
  return value > 0 && value <= 1 ? value : null;
}

/** Returns a reading as it would have been without the gauge's error, 0 to 1. */
export function corrected(humidity: number, { gain, offset }: GaugeCorrection): number {
  return Math.min(1, Math.max(0, offset + gain * humidity));
}

export interface Stuck {
  readonly humidity: number;
  readonly hours: number;
  readonly row: number;
}

const STUCK_HOURS = 12;
const STUCK_READINGS = 20;
/** Saturated air keeps a gauge at its end for a night and longer. */
const SATURATED_FROM = 0.97;
const SATURATED_HOURS = 72;
const FEWEST_VALUES = 4;

/** Returns the longest time at one value where no air is so still, or the whole log where it knows too few values; null where it moves. */
export function stuckGauge(readings: readonly GaugeReading[]): Stuck | null {
  const [first] = readings;
  const last = readings.at(-1);
  if (!first || !last) return null;
  const values = new Set(readings.map(({ humidity }) => humidity));
  if (values.size < FEWEST_VALUES)
    return { humidity: first.humidity, hours: (last.utcMinute - first.utcMinute) / 60, row: first.row };
  let from = 0;
  let longest: Stuck | null = null;
  for (let at = 1; at <= readings.length; at++) {
    const [begin, end] = [readings[from], readings[at - 1]];
    if (!begin || !end || readings[at]?.humidity === begin.humidity) continue;
    const hours = (end.utcMinute - begin.utcMinute) / 60;
    const most = begin.humidity >= SATURATED_FROM ? SATURATED_HOURS : STUCK_HOURS;
    if (hours >= most && at - from >= STUCK_READINGS && hours > (longest?.hours ?? 0))
      longest = { humidity: begin.humidity, hours, row: begin.row };
    from = at;
  }
  return longest;
}
