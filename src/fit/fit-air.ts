/**
 * The air values of an enclosure from its readings: air changes, evaporation without mist, and how fast a wet surface gives off water, with
 * the gauge's own clock as a fourth unknown. Our estimates count as what was believed before, within a factor of about five.
 */
import type { AirHistory, FreeAir } from '../science/air-history.ts';
import { inverted, medianOf, type Problem, type Solution, solveRobustly, type Unknown } from './least-squares.ts';

export const AIR_KEYS = ['airChangesPerHour', 'baseEvaporationGPerHour', 'transferMPerHour'] as const;
export type AirKey = (typeof AIR_KEYS)[number];

export interface Reading {
  /** Since the first instant of the history. */
  readonly minute: number;
  /** 0 to 1. */
  readonly humidity: number;
}

export interface FittedValue {
  readonly key: AirKey;
  readonly value: number;
  /** The 95 % interval. */
  readonly low: number;
  readonly high: number;
}

export interface AirFit {
  /** What the readings say; what they do not say is left out. */
  readonly values: readonly FittedValue[];
  /** All three values, fitted or held. */
  readonly air: FreeAir;
  /** Values that were free, but that the readings do not tell. */
  readonly untold: readonly AirKey[];
  /** Pairs that move the readings alike, with their correlation. */
  readonly alike: readonly { readonly keys: readonly [AirKey, AirKey]; readonly correlation: number }[];
  /** By how much the gauge's clock runs ahead, min. */
  readonly clockAheadMinutes: number;
  /** Robust spread of the readings about the model, as a fraction of saturation. */
  readonly residual: number;
  readonly residuals: Float64Array;
  /** By how much errors that follow one another widen the variance; 1 where they do not. */
  readonly inflation: number;
}

/** Spread of our estimates, as the logarithm of a factor. */
const BELIEF = 0.8;
/** Farther from our estimate than this factor nothing is looked for. */
const FARTHEST = 40;
/** Spread of a gauge's clock, and the farthest that it is taken along, min. */
const CLOCK_SPREAD = 3;
export const CLOCK_FARTHEST = 10;
/**
 * A value whose interval reaches farther than this factor either way is not told by the readings: with the values that are told least held
 * at our estimates, and with all of them free.
 */
const TOLD_WITHIN = 2;
const TOLD_WITHIN_ALL_FREE = 3;
const ALIKE_ABOVE = 0.9;
const EXPECTED_ERROR = 0.03;
const COARSE = [0.3, 0.6, 1, 1.8, 3.3];

/**
 * Fits the values in `free` (one at least) to readings in the order of time; the others are held at `estimate`.
 */
export function fitAir(
  history: AirHistory,
  readings: readonly Reading[],
  estimate: FreeAir,
  free: readonly AirKey[],
): AirFit {
  const observed = Float64Array.from(readings, ({ humidity }) => humidity);
  const sampler = new Sampler(history, readings, gaugeNoise(observed));
  const joint = solved(sampler, observed, estimate, free, coarseStart(sampler, observed, estimate, free));
  let [last, kept] = [joint, free];
  const widest = new Map(free.map((key, index) => [key, joint.coverage * errorOf(joint, index)]));
  for (
    let worst = worstTold(last, kept, widest);
    worst !== null && kept.length > 1;
    worst = worstTold(last, kept, widest)
  ) {
    const dropped = kept.indexOf(worst);
    kept = kept.filter((key) => key !== worst);
    last = solved(
      sampler,
      observed,
      estimate,
      kept,
      last.parameters.filter((_, index) => index !== dropped),
    );
  }
  const told = worstTold(last, kept, widest) === null ? kept : [];
  const untold = free.filter((key) => !told.includes(key));
  return {
    values: told.map((key) => {
      const centre = last.parameters[kept.indexOf(key)] ?? 0;
      const half = widest.get(key) ?? 0;
      return {
        key,
        value: estimate[key] * Math.exp(centre),
        low: estimate[key] * Math.exp(centre - half),
        high: estimate[key] * Math.exp(centre + half),
      };
    }),
    air: airOf(estimate, kept, last.parameters),
    untold,
    alike: alikePairs(joint, free),
    clockAheadMinutes: last.parameters[kept.length] ?? 0,
    residual: last.scale,
    residuals: last.residuals,
    inflation: last.inflation,
  };
}

function errorOf({ covariance }: Solution, index: number): number {
  return Math.sqrt(Math.max(0, covariance[index]?.[index] ?? 0));
}

/**
 * Returns the value that is told least, where its interval is too wide to say anything; null where all are told.
 *
 * @param widest half widths of the intervals with every value free, as logarithms
 */
function worstTold(solution: Solution, keys: readonly AirKey[], widest: ReadonlyMap<AirKey, number>): AirKey | null {
  const excess = keys.map((key, index) =>
    Math.max(
      (solution.coverage * errorOf(solution, index)) / Math.log(TOLD_WITHIN),
      (widest.get(key) ?? 0) / Math.log(TOLD_WITHIN_ALL_FREE),
    ),
  );
  const most = Math.max(...excess);
  return most > 1 ? (keys[excess.indexOf(most)] ?? null) : null;
}

/** Reads a simulated history at the readings' minutes, moved by what the gauge's clock is ahead. */
export class Sampler {
  readonly #history: AirHistory;
  readonly #minutes: Float64Array;
  readonly #nodes: Int32Array;
  readonly #noise: number;

  /** @param noise spread of single readings; a gauge that stops at 100 % reads less than saturated air on average */
  constructor(history: AirHistory, readings: readonly Reading[], noise: number) {
    this.#history = history;
    this.#noise = noise;
    this.#minutes = Float64Array.from(readings, ({ minute }) => minute);
    this.#nodes = nodesBefore(history.minutes, this.#minutes);
  }

  simulate(air: FreeAir): void {
    this.#history.simulate(air);
  }

  /** Fills the humidity at each reading whose clock is so many minutes ahead. */
  read(aheadMinutes: number, into: Float64Array): void {
    const { minutes, humidity } = this.#history;
    const last = minutes.length - 2;
    for (let i = 0; i < into.length; i++) {
      const minute = (this.#minutes[i] ?? 0) - aheadMinutes;
      let node = this.#nodes[i] ?? 0;
      while (node > 0 && (minutes[node] ?? 0) > minute) node--;
      while (node < last && (minutes[node + 1] ?? 0) <= minute) node++;
      const from = minutes[node] ?? 0;
      const length = (minutes[node + 1] ?? from) - from;
      const share = length > 0 ? Math.min(1, Math.max(0, (minute - from) / length)) : 0;
      const low = humidity[node] ?? 0;
      into[i] = readAtMostWhole(low + ((humidity[node + 1] ?? low) - low) * share, this.#noise);
    }
  }
}

/** Returns the mean of readings about a humidity that stop at 1. Source: the mean of a censored normal, Tobin J (1958), Econometrica 26:24-36. */
function readAtMostWhole(humidity: number, noise: number): number {
  const room = (1 - humidity) / noise;
  if (room > 3) return humidity;
  const density = Math.exp(-0.5 * room * room) / Math.sqrt(2 * Math.PI);
  return humidity - noise * (density - room * upperTail(room));
}

/** Share of a normal above a value of 0 or more. Source: Abramowitz and Stegun (1964), 26.2.16 (from memory), to 1e-5. */
function upperTail(value: number): number {
  const t = 1 / (1 + 0.33267 * value);
  const density = Math.exp(-0.5 * value * value) / Math.sqrt(2 * Math.PI);
  return density * (0.4361836 * t - 0.1201676 * t ** 2 + 0.937298 * t ** 3);
}

/** Spread of single readings from how three in a row bend, those near saturation left out; 0.03 where there are too few. */
export function gaugeNoise(observed: Float64Array): number {
  const bends = Array.from({ length: Math.max(0, observed.length - 2) }, (_, index) => {
    const [a = 0, b = 0, c = 0] = observed.subarray(index, index + 3);
    return Math.max(a, b, c) < 0.92 ? Math.abs(a - 2 * b + c) : Number.NaN;
  }).filter((bend) => !Number.isNaN(bend));
  if (bends.length < 50) return EXPECTED_ERROR;
  return Math.min(0.06, Math.max(0.002, (1.4826 * medianOf(Float64Array.from(bends))) / Math.sqrt(6)));
}

function nodesBefore(nodes: Float64Array, minutes: Float64Array): Int32Array {
  let node = 0;
  return Int32Array.from(minutes, (minute) => {
    while (node + 1 < nodes.length && (nodes[node + 1] ?? 0) <= minute) node++;
    return node;
  });
}

/** Parameters are the logarithms of value over estimate, then the clock. */
function airOf(estimate: FreeAir, free: readonly AirKey[], parameters: readonly number[]): FreeAir {
  const factor = (key: AirKey) => {
    const index = free.indexOf(key);
    return index < 0 ? 1 : Math.exp(parameters[index] ?? 0);
  };
  return {
    airChangesPerHour: estimate.airChangesPerHour * factor('airChangesPerHour'),
    baseEvaporationGPerHour: estimate.baseEvaporationGPerHour * factor('baseEvaporationGPerHour'),
    transferMPerHour: estimate.transferMPerHour * factor('transferMPerHour'),
  };
}

function solved(
  sampler: Sampler,
  observed: Float64Array,
  estimate: FreeAir,
  free: readonly AirKey[],
  start: readonly number[],
): Solution {
  let simulated = '';
  const most = Math.log(FARTHEST);
  const ofValue: Unknown = { centre: 0, spread: BELIEF, least: -most, most, step: 0.02 };
  const ofClock: Unknown = {
    centre: 0,
    spread: CLOCK_SPREAD,
    least: -CLOCK_FARTHEST,
    most: CLOCK_FARTHEST,
    step: 0.25,
  };
  const problem: Problem = {
    unknowns: [...free.map(() => ofValue), ofClock],
    observed,
    expectedError: EXPECTED_ERROR,
    model: (parameters, into) => {
      const key = parameters.slice(0, free.length).join(' ');
      if (key !== simulated) sampler.simulate(airOf(estimate, free, parameters));
      simulated = key;
      sampler.read(parameters[free.length] ?? 0, into);
    },
  };
  return solveRobustly(problem, start);
}

/** The best of a few coarse factors on each value in turn, so that the search begins near. */
function coarseStart(
  sampler: Sampler,
  observed: Float64Array,
  estimate: FreeAir,
  free: readonly AirKey[],
): readonly number[] {
  const into = new Float64Array(observed.length);
  const offBy = (parameters: readonly number[]): number => {
    sampler.simulate(airOf(estimate, free, parameters));
    sampler.read(0, into);
    return into.reduce((sum, each, index) => sum + Math.min(0.15, Math.abs(each - (observed[index] ?? 0))), 0);
  };
  let best: number[] = free.map(() => 0);
  for (const key of free) {
    const index = free.indexOf(key);
    const tried = COARSE.map((factor) => best.map((each, other) => (other === index ? Math.log(factor) : each)));
    best = tried.reduce(
      (least, each) => {
        const off = offBy(each);
        return off < least.off ? { off, each } : least;
      },
      { off: Number.POSITIVE_INFINITY, each: best },
    ).each;
  }
  return [...best, 0];
}

/** Pairs that the readings can hardly tell apart, from their own say alone. */
function alikePairs({ information }: Solution, free: readonly AirKey[]): AirFit['alike'] {
  const own = inverted(information.map((row, i) => row.map((value, j) => value + (i === j ? 1e-9 : 0))));
  return free.flatMap((a, i) =>
    free.slice(i + 1).flatMap((b, k) => {
      const j = i + 1 + k;
      const correlation = (own[i]?.[j] ?? 0) / Math.sqrt((own[i]?.[i] ?? 1) * (own[j]?.[j] ?? 1));
      return Math.abs(correlation) > ALIKE_ABOVE ? [{ keys: [a, b] as const, correlation }] : [];
    }),
  );
}
