/** Whether a gauge's clock is off: the rises of its humidity are held against those that the mists must make, at every shift of a day. */
import type { FreeAir } from '../science/air-history.ts';
import { CLOCK_FARTHEST, type Reading, type Sampler } from './fit-air.ts';

const FARTHEST_MINUTES = 14 * 60;
const STEP_MINUTES = 5;
/** What moves more slowly than this either way is the day, not a mist. */
const SLOW_MINUTES = 90;
/** A likeness below this is chance. */
const LEAST_LIKENESS = 0.2;
/** How much more alike the shifted rises must be, in standard errors of the likeness. */
const SURELY = 5;
/** Readings in a row that say about the same. */
const CHAIN = 2;
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
  const windows = windowsOf(readings);
  const observed = new Float64Array(readings.length);
  quick(
    Float64Array.from(readings, ({ humidity }) => humidity),
    windows,
    observed,
  );
  const likeness = new Map<number, number>();
  const [into, moved] = [new Float64Array(readings.length), new Float64Array(readings.length)];
  for (const factor of GUESSES) {
    sampler.simulate({ ...estimate, airChangesPerHour: estimate.airChangesPerHour * factor });
    for (let shift = -FARTHEST_MINUTES; shift <= FARTHEST_MINUTES; shift += STEP_MINUTES) {
      sampler.read(shift, into);
      quick(into, windows, moved);
      likeness.set(shift, Math.max(likeness.get(shift) ?? -1, correlation(observed, moved)));
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

/** First reading of the hour and a half on either side of each reading, and the first after it. */
interface Windows {
  readonly from: Int32Array;
  readonly to: Int32Array;
}

function windowsOf(readings: readonly Reading[]): Windows {
  const minutes = Float64Array.from(readings, ({ minute }) => minute);
  const [from, to] = [new Int32Array(minutes.length), new Int32Array(minutes.length)];
  let [low, high] = [0, 0];
  minutes.forEach((minute, index) => {
    while ((minutes[low] ?? 0) < minute - SLOW_MINUTES) low++;
    while (high < minutes.length && (minutes[high] ?? 0) <= minute + SLOW_MINUTES) high++;
    from[index] = low;
    to[index] = high;
  });
  return { from, to };
}

/** What is left of a curve once the mean of the hour and a half on either side of each reading is taken off. */
function quick(values: Float64Array, { from, to }: Windows, into: Float64Array): void {
  let [low, high, sum] = [0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    for (; high < (to[i] ?? 0); high++) sum += values[high] ?? 0;
    for (; low < (from[i] ?? 0); low++) sum -= values[low] ?? 0;
    into[i] = (values[i] ?? 0) - sum / (high - low);
  }
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
