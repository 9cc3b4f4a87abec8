/**
 * Robust non-linear least squares with 95 % intervals: Huber's loss by iterative reweighting through a Levenberg-Marquardt library (whose
 * one home this is), a robust scale, and a covariance that allows for errors that follow one another.
 * Source: Huber PJ (1964), Ann. Math. Statist. 35:73-101; Geyer CJ (1992), Statist. Sci. 7:473-483 (initial positive sequence).
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';

/** A parameter with what is believed of it before any reading: a normal spread about a centre. */
export interface Unknown {
  readonly centre: number;
  readonly spread: number;
  readonly least: number;
  readonly most: number;
  /** Step for the slope by differences. */
  readonly step: number;
}

export interface Problem {
  readonly unknowns: readonly Unknown[];
  readonly observed: Float64Array;
  /** Fills what the model gives at every observation. */
  readonly model: (parameters: readonly number[], into: Float64Array) => void;
  /** Size of errors that are expected before any is known. */
  readonly expectedError: number;
}

export interface Solution {
  readonly parameters: readonly number[];
  /** Of the parameters, what was believed before counted in. */
  readonly covariance: readonly (readonly number[])[];
  /** The readings' own say: the inverse of the covariance without what was believed before. */
  readonly information: readonly (readonly number[])[];
  /** Robust spread of the residuals (1.4826 x median of their size). */
  readonly scale: number;
  readonly residuals: Float64Array;
  /** By how much errors that follow one another widen the variance; 1 where they do not. */
  readonly inflation: number;
  /** Half width of a 95 % interval in standard errors. */
  readonly coverage: number;
}

const HUBER = 1.345;
const ROUNDS = 8;
const FIRST_ITERATIONS = 8;
const NEXT_ITERATIONS = 2;
/** A round that moves every parameter by less than this share of its error ends the search. */
const SETTLED = 0.03;
const LEAST_SCALE = 1e-4;

/** Returns the parameters that fit best from a start, and how well they are known. */
export function solveRobustly(problem: Problem, start: readonly number[]): Solution {
  const count = problem.observed.length;
  const weights = new Float64Array(count).fill(1);
  const fitted = new Float64Array(count);
  let parameters = [...start];
  let scale = problem.expectedError;
  for (let round = 0; round < ROUNDS; round++) {
    const next = weighted(problem, parameters, weights, scale, round === 0 ? FIRST_ITERATIONS : NEXT_ITERATIONS);
    const moved = Math.max(...next.map((each, index) => Math.abs(each - (parameters[index] ?? 0))));
    parameters = next;
    problem.model(parameters, fitted);
    scale = reweigh(problem.observed, fitted, weights);
    const errors = standardErrors(problem, parameters, fitted, weights, scale);
    if (round > 0 && moved < SETTLED * Math.min(...errors)) break;
  }
  return judged(problem, parameters, fitted, weights, scale);
}

/** One weighted fit: rows are scaled by hand, and what was believed before is a row of its own for each parameter. */
function weighted(
  { unknowns, observed, model }: Problem,
  start: readonly number[],
  weights: Float64Array,
  scale: number,
  maxIterations: number,
): number[] {
  const count = observed.length;
  const rows = Float64Array.from({ length: count + unknowns.length }, (_, row) => row);
  const size = weights.map((weight) => Math.sqrt(weight) / scale);
  const y = rows.map((row) => {
    const unknown = unknowns[row - count];
    return unknown ? unknown.centre / unknown.spread : (observed[row] ?? 0) * (size[row] ?? 0);
  });
  const known: { key: string; values: Float64Array }[] = [];
  const valuesOf = (parameters: readonly number[]): Float64Array => {
    const key = parameters.join(' ');
    const found = known.find((each) => each.key === key);
    if (found) return found.values;
    const values = new Float64Array(count);
    model(parameters, values);
    known.unshift({ key, values });
    known.length = Math.min(known.length, 3);
    return values;
  };
  const { parameterValues } = levenbergMarquardt(
    { x: rows, y },
    (parameters) => {
      const values = valuesOf(parameters);
      const beliefs = unknowns.map(({ spread }, index) => (parameters[index] ?? 0) / spread);
      return (row) => (row < count ? (values[row] ?? 0) * (size[row] ?? 0) : (beliefs[row - count] ?? 0));
    },
    {
      initialValues: start,
      minValues: unknowns.map(({ least }) => least),
      maxValues: unknowns.map(({ most }) => most),
      gradientDifference: unknowns.map(({ step }) => step),
      damping: 0.1,
      maxIterations,
      errorTolerance: 0,
    },
  );
  return parameterValues;
}

/** Sets Huber's weights and returns the robust scale. */
function reweigh(observed: Float64Array, fitted: Float64Array, weights: Float64Array): number {
  const sizes = observed.map((each, index) => Math.abs(each - (fitted[index] ?? 0)));
  const scale = Math.max(LEAST_SCALE, 1.4826 * medianOf(sizes));
  sizes.forEach((size, index) => {
    weights[index] = size <= HUBER * scale ? 1 : (HUBER * scale) / size;
  });
  return scale;
}

/** Returns the middle value; 0 of an empty list. */
export function medianOf(values: Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : 0.5 * ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0));
}

function judged(
  problem: Problem,
  parameters: readonly number[],
  fitted: Float64Array,
  weights: Float64Array,
  scale: number,
): Solution {
  const { unknowns, observed } = problem;
  const residuals = observed.map((each, index) => each - (fitted[index] ?? 0));
  const information = informationOf(problem, parameters, fitted, weights, scale);
  const inflation = chainInflation(residuals, weights);
  const own = information.map((row) => row.map((value) => value / (inflation * lossOf(residuals, weights, scale))));
  const whole = own.map((row, i) => row.map((value, j) => value + (i === j ? (unknowns[i]?.spread ?? 1) ** -2 : 0)));
  const freedom = Math.max(3, observed.length / inflation - unknowns.length);
  return {
    parameters,
    covariance: inverted(whole),
    information: own,
    scale,
    residuals,
    inflation,
    coverage: 1.96 + 2.37 / freedom + 2.8 / freedom ** 2,
  };
}

function standardErrors(
  problem: Problem,
  parameters: readonly number[],
  fitted: Float64Array,
  weights: Float64Array,
  scale: number,
): readonly number[] {
  const information = informationOf(problem, parameters, fitted, weights, scale);
  const whole = information.map((row, i) =>
    row.map((value, j) => value + (i === j ? (problem.unknowns[i]?.spread ?? 1) ** -2 : 0)),
  );
  return inverted(whole).map((row, index) => Math.sqrt(Math.max(0, row[index] ?? 0)));
}

/** Slopes' products over the readings that Huber's loss takes as they are, in units of the scale. */
function informationOf(
  { unknowns, model }: Problem,
  parameters: readonly number[],
  fitted: Float64Array,
  weights: Float64Array,
  scale: number,
): number[][] {
  const slopes = unknowns.map(({ step }, index) => {
    const [up, down] = [new Float64Array(fitted.length), new Float64Array(fitted.length)];
    model(
      parameters.map((each, other) => (other === index ? each + step : each)),
      up,
    );
    model(
      parameters.map((each, other) => (other === index ? each - step : each)),
      down,
    );
    return up.map((each, row) => (each - (down[row] ?? 0)) / (2 * step));
  });
  return slopes.map((a) =>
    slopes.map((b) => {
      let sum = 0;
      for (let row = 0; row < a.length; row++) if (weights[row] === 1) sum += (a[row] ?? 0) * (b[row] ?? 0);
      return sum / scale ** 2;
    }),
  );
}

/** Variance of the bounded residuals over the share of unbounded ones: what Huber's loss costs beside plain least squares. */
function lossOf(residuals: Float64Array, weights: Float64Array, scale: number): number {
  let [sum, inside] = [0, 0];
  residuals.forEach((each, index) => {
    sum += (each * (weights[index] ?? 0)) ** 2;
    if (weights[index] === 1) inside++;
  });
  return Math.max(0.2, (sum / scale ** 2) * (1 / Math.max(1, inside)));
}

/** Returns 1 + 2 x the sum of autocorrelations of the bounded residuals, in pairs until one is not above 0; at least 1. */
function chainInflation(residuals: Float64Array, weights: Float64Array): number {
  const bounded = residuals.map((each, index) => each * (weights[index] ?? 0));
  const count = bounded.length;
  const product = (lag: number): number => {
    let sum = 0;
    for (let i = 0; i + lag < count; i++) sum += (bounded[i] ?? 0) * (bounded[i + lag] ?? 0);
    return sum;
  };
  const whole = product(0);
  if (whole <= 0) return 1;
  let total = -1;
  for (let lag = 0; lag + 1 < count / 3; lag += 2) {
    const pair = (product(lag) + product(lag + 1)) / whole;
    if (pair <= 0) break;
    total += 2 * pair;
  }
  return Math.max(1, total);
}

/** Returns the inverse of a small symmetric matrix that is positive definite. */
export function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let pivot = 0; pivot < size; pivot++) {
    const lead = rows[pivot] ?? [];
    const head = lead[pivot] || Number.MIN_VALUE;
    const scaled = lead.map((value) => value / head);
    rows[pivot] = scaled;
    for (let i = 0; i < size; i++) {
      const row = rows[i] ?? [];
      const factor = row[pivot] ?? 0;
      if (i !== pivot && factor !== 0) rows[i] = row.map((value, j) => value - factor * (scaled[j] ?? 0));
    }
  }
  return rows.map((row) => row.slice(size));
}
