/** What a benchmark tells: rows to read, figures held against what was promised, and the same work done by something else beside it. */

export type Row = readonly [label: string, value: string | number, unit: string];

/** A figure that was promised, and what was measured. */
export interface Target {
  readonly what: string;
  readonly measured: string;
  readonly target: string;
  /** Measured by promised; null where nothing is divided. */
  readonly share: number | null;
  /** null: promised to be reported, no more. */
  readonly isMet: boolean | null;
}

/** The same work, in the same run, by what else could be taken for it. */
export interface Beside {
  readonly work: string;
  readonly ours: string;
  readonly other: string;
  readonly takes: string;
  /** With its words: `12 times as long`. */
  readonly ratio: string;
}

export interface Table {
  readonly name: string;
  readonly rows: readonly Row[];
  readonly targets?: readonly Target[];
  readonly beside?: readonly Beside[];
}

/** Returns a figure that was to be at most so much; `more` stands behind what was measured. */
export function atMost(what: string, value: number, limit: number, unit: string, more = ''): Target {
  const target = `at most ${shown(limit)} ${unit}`;
  return { what, measured: `${shown(value)} ${unit}${more}`, target, share: value / limit, isMet: value <= limit };
}

/** Returns a figure that was to be at least so much. */
export function atLeast(what: string, value: number, limit: number, unit: string, more = ''): Target {
  const target = `at least ${shown(limit)} ${unit}`;
  return { what, measured: `${shown(value)} ${unit}${more}`, target, share: value / limit, isMet: value >= limit };
}

/** Returns a number in three digits or so, thousands apart. */
export function shown(value: number): string {
  const size = Math.abs(value);
  const digits = Number.isInteger(value) || size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.01 ? 3 : 4;
  const [whole = '', part] = value.toFixed(digits).split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  return part === undefined ? spaced : `${spaced}.${part}`;
}

/** Returns how many times something is of another, in words. */
export function times(more: number, of: number, as = 'as long'): string {
  return `${shown(more / of)} times ${as}`;
}

export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** Returns what a piece of work takes once, in ms. */
export async function onceMs(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Returns the least of several runs in ms: what else the machine does can only add. */
export function leastMs(work: () => unknown, rounds: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}
