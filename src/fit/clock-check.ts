/** Whether a gauge's clock is off: the rises of its humidity are held against those that the mists must make, at every shift of a day. */
import type { FreeAir } from '../science/air-history.ts';
import { CLOCK_FARTHEST, type Reading, type Sampler } from './fit-air.ts';

const FARTHEST_MINUTES = 14 * 60;
const STEP_MINUTES = 5;
/** What moves more slowly than this is the day, not a mist. */
const SLOW_MINUTES = 90;
/** A likeness below this is chance. */
const LEAST_LIKENESS = 0.3;
/** How much more alike the shifted rises must be, in standard errors of the likeness. */
const SURELY = 5;
/** Readings in a row that say about the same. */
const CHAIN = 5;
/** Of likenesses this near to the best the smallest shift is taken: mists at even gaps look alike after one. */
const NEARLY = 0.95;
const GUESSES = [0.4, 1, 2.5];

/** Returns by how many minutes a gauge's clock runs ahead (negative: behind), or null where it is right or cannot be told. */
export function clockOff(
  sampler: Sampler,
  readings: readonly Reading[],
  estimate: FreeAir,
  mistCount: number,
): number | null {
  if (mistCount < 3) return null;
  const observed = quick(
    Float64Array.from(readings, ({ humidity }) => humidity),
    readings,
  );
  const likeness = new Map<number, number>();
  const into = new Float64Array(readings.length);
  for (const factor of GUESSES) {
    sampler.simulate({ ...estimate, airChangesPerHour: estimate.airChangesPerHour * factor });
    for (let shift = -FARTHEST_MINUTES; shift <= FARTHEST_MINUTES; shift += STEP_MINUTES) {
      sampler.read(shift, into);
      const alike = correlation(observed, quick(into, readings));
      likeness.set(shift, Math.max(likeness.get(shift) ?? -1, alike));
    }
  }
  const best = Math.max(...likeness.values());
  const near = [...likeness].filter(([shift]) => Math.abs(shift) <= CLOCK_FARTHEST).map(([, alike]) => alike);
  const now = Math.max(0, ...near);
  const error = Math.sqrt(CHAIN / Math.max(10, readings.length));
  if (best < LEAST_LIKENESS || Math.atanh(best) - Math.atanh(now) < SURELY * error) return null;
  const [nearest = 0] = [...likeness]
    .filter(([, alike]) => alike >= NEARLY * best)
    .map(([shift]) => shift)
    .sort((a, b) => Math.abs(a) - Math.abs(b));
  const top = climbed(likeness, nearest);
  return Math.abs(top) > CLOCK_FARTHEST ? top : null;
}

/** The shift at the top of the hill that one stands on. */
function climbed(likeness: ReadonlyMap<number, number>, from: number): number {
  const at = (shift: number) => likeness.get(shift) ?? -1;
  const better = [from - STEP_MINUTES, from + STEP_MINUTES].find((shift) => at(shift) > at(from));
  return better === undefined ? from : climbed(likeness, better);
}

/** What is left of a curve once the mean of the hour and a half around each reading is taken off. */
function quick(values: Float64Array, readings: readonly Reading[]): Float64Array {
  let [from, to, sum] = [0, 0, 0];
  return values.map((value, index) => {
    const minute = readings[index]?.minute ?? 0;
    for (; to < values.length && (readings[to]?.minute ?? 0) <= minute + SLOW_MINUTES; to++) sum += values[to] ?? 0;
    for (; (readings[from]?.minute ?? 0) < minute - SLOW_MINUTES; from++) sum -= values[from] ?? 0;
    return value - sum / (to - from);
  });
}

function correlation(a: Float64Array, b: Float64Array): number {
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i] ?? 0, b[i] ?? 0];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}
