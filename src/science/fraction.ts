/** Exact fractions of small whole numbers, so that shares and rates are compared without rounding. */

export interface Fraction {
  readonly n: number;
  /** Positive; the fraction is in lowest terms. */
  readonly d: number;
}

export const ZERO: Fraction = { n: 0, d: 1 };
export const ONE: Fraction = { n: 1, d: 1 };

/** Returns the greatest common divisor, 0 for two zeros. */
function gcd(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** Returns the least common multiple of positive whole numbers; 1 for none. */
export function lcm(values: readonly number[]): number {
  return values.reduce((all, value) => (all / gcd(all, value)) * value, 1);
}

/** Returns n/d in lowest terms; d must not be 0. */
export function fraction(n: number, d: number): Fraction {
  const divisor = gcd(n, d) || 1;
  const sign = d < 0 ? -1 : 1;
  return { n: (sign * n) / divisor, d: (sign * d) / divisor };
}

/** Returns the sum, in lowest terms. */
export function add(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

/** Returns the difference, in lowest terms. */
export function subtract(a: Fraction, b: Fraction): Fraction {
  return add(a, { n: -b.n, d: b.d });
}

/** Returns the product, in lowest terms. */
export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.n, a.d * b.d);
}

/** Returns a/b; b must not be 0. */
export function divide(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d, a.d * b.n);
}

/** Returns the sum of all; 0 of none. */
export function sum(values: readonly Fraction[]): Fraction {
  return values.reduce(add, ZERO);
}

/** Returns a number below, at or above 0 as a is below, at or above b. */
export function compare(a: Fraction, b: Fraction): number {
  return a.n * b.d - b.n * a.d;
}

/** Returns the fraction nearest to a decimal, to 0.001 %. */
export function fractionOf(decimal: number): Fraction {
  return fraction(Math.round(decimal * 100_000), 100_000);
}

/** Returns the fractions over their least common denominator. */
export function overOneDenominator(values: readonly Fraction[]): {
  readonly numerators: readonly number[];
  readonly denominator: number;
} {
  const denominator = lcm(values.map((value) => value.d));
  return { numerators: values.map((value) => (value.n * denominator) / value.d), denominator };
}
