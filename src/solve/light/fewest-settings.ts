/** How many settings a dial needs so that no day is further from its target than a bound. */
import type { DialGraph } from './dial-graph.ts';
import { changeableFrom, MOST_ERROR_TENTHS, NEVER } from './dial-graph.ts';
import { windowMinimum } from './window-minimum.ts';

/** Arrays that every pass over one graph writes anew. */
export interface BoundedGraph {
  readonly graph: DialGraph;
  /** First and last candidate by day whose length is within the bound; first above last where none is. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** Fewest further changes from candidate c standing on the day, [day · candidates + c]; NEVER where none reaches the end. */
  readonly changesLeft: Int32Array;
  /** The least of a day's row. */
  readonly leastLeft: Int32Array;
  /** First day on which candidate c no longer holds the bound; written only where settings have a least duration. */
  readonly holdsUntil: Int32Array | null;
  readonly starts: Int32Array;
  readonly afterChange: Int32Array;
  readonly queue: Int32Array;
  /** Pins moved from one candidate to another, [from · candidates + to]; −1 where they have not been counted yet. */
  readonly pins: Int32Array;
}

/** Returns a graph with room for the bounds of a search, all of them still open. */
export function boundedGraph(graph: DialGraph): BoundedGraph {
  const { days } = graph;
  const count = graph.windows.length;
  return {
    graph,
    first: new Int32Array(days),
    last: new Int32Array(days),
    changesLeft: new Int32Array(days * count),
    leastLeft: new Int32Array(days),
    holdsUntil: graph.errorBefore ? new Int32Array(days * count) : null,
    starts: new Int32Array(count),
    afterChange: new Int32Array(count),
    queue: new Int32Array(count),
    pins: new Int32Array(count * count).fill(-1),
  };
}

/**
 * Returns the fewest settings of the whole plan with every error at most `boundTenths`, NEVER where no number does it; leaves in
 * `bounded` what the later levels read: the candidates within the bound and the changes left.
 */
export function fewestSettings(bounded: BoundedGraph, boundTenths: number): number {
  const { graph } = bounded;
  markWithin(bounded, boundTenths);
  const entry = new Int32Array(graph.days).fill(NEVER);
  for (let day = graph.days - 1; day >= 0; day--) {
    changesLeftOn(bounded, day, boundTenths);
    const mayStart = graph.changeDay[day] === 1 || graph.source.entryDay[day] === 1;
    if (!mayStart) continue;
    startsOn(bounded, day);
    if (graph.source.entryDay[day] === 1) entry[day] = leastFromSource(bounded, day);
    if (day > 0) leastAfterChange(bounded, day);
  }
  return fewestFromSource(graph, entry, boundTenths);
}

function markWithin({ graph, first, last }: BoundedGraph, bound: number): void {
  const { highTenths, lowTenths, firstAtLeast, stepTenths } = graph;
  const most = firstAtLeast.length - 1;
  for (let day = 0; day < graph.days; day++) {
    const shortest = Math.ceil(((highTenths[day] as number) - bound) / stepTenths);
    const longest = Math.floor(((lowTenths[day] as number) + bound) / stepTenths);
    first[day] = firstAtLeast[Math.min(Math.max(shortest, 0), most)] as number;
    last[day] = (firstAtLeast[Math.min(Math.max(longest + 1, 0), most)] as number) - 1;
  }
}

/** One day of the recursion backwards: hold for another day, or change where the next day allows it. */
function changesLeftOn(bounded: BoundedGraph, day: number, bound: number): void {
  const { graph, first, last, changesLeft, holdsUntil, afterChange } = bounded;
  const count = graph.windows.length;
  const row = day * count;
  const atEnd = day === graph.days - 1;
  const nextFirst = atEnd ? 1 : (first[day + 1] as number);
  const nextLast = atEnd ? 0 : (last[day + 1] as number);
  const mayChange = !atEnd && graph.changeDay[day + 1] === 1;
  let least = NEVER;
  for (let c = first[day] as number; c <= (last[day] as number); c++) {
    if ((graph.errorTenths[row + c] as number) > bound) {
      changesLeft[row + c] = NEVER;
      if (holdsUntil) holdsUntil[row + c] = day;
      continue;
    }
    const holds = c >= nextFirst && c <= nextLast;
    let left = atEnd ? 0 : holds ? (changesLeft[row + count + c] as number) : NEVER;
    if (mayChange && (afterChange[c] as number) + 1 < left) left = (afterChange[c] as number) + 1;
    changesLeft[row + c] = left;
    if (holdsUntil) holdsUntil[row + c] = holds ? Math.max(holdsUntil[row + count + c] as number, day + 1) : day + 1;
    if (left < least) least = left;
  }
  bounded.leastLeft[day] = least;
}

/** The changes left after starting each candidate on the day, its least duration observed. */
function startsOn(bounded: BoundedGraph, day: number): void {
  const { graph, first, last, changesLeft, holdsUntil, starts } = bounded;
  const count = graph.windows.length;
  for (let c = first[day] as number; c <= (last[day] as number); c++) {
    if (!holdsUntil) {
      starts[c] = changesLeft[day * count + c] as number;
      continue;
    }
    const until = changeableFrom(graph, day, c);
    const lasts = until <= graph.days && (holdsUntil[day * count + c] as number) >= until;
    starts[c] = lasts ? (changesLeft[(until - 1) * count + c] as number) : NEVER;
  }
}

function leastFromSource({ graph, first, last, starts }: BoundedGraph, day: number): number {
  const to = Math.min(last[day] as number, graph.jump.sourceLast);
  let least = NEVER;
  for (let c = Math.max(first[day] as number, graph.jump.sourceFirst); c <= to; c++) {
    if ((starts[c] as number) < least) least = starts[c] as number;
  }
  return least;
}

/** The least of the day's starts that each candidate of the day before may change to. */
function leastAfterChange(bounded: BoundedGraph, day: number): void {
  const { graph, first, last, starts, afterChange, queue } = bounded;
  const { limited, first: jumpFirst, last: jumpLast } = graph.jump;
  const low = first[day] as number;
  const high = last[day] as number;
  const from = first[day - 1] as number;
  const to = last[day - 1] as number;
  if (limited) {
    windowMinimum(starts, low, high, jumpFirst, jumpLast, from, to, afterChange, queue, NEVER);
    return;
  }
  let least = NEVER;
  for (let c = low; c <= high; c++) if ((starts[c] as number) < least) least = starts[c] as number;
  for (let c = from; c <= to; c++) afterChange[c] = least;
}

function fewestFromSource({ days, source }: DialGraph, entry: Int32Array, bound: number): number {
  let changes = NEVER;
  for (let day = 0; day < days; day++) {
    if (source.entryDay[day] === 1 && (entry[day] as number) + 1 < changes) changes = (entry[day] as number) + 1;
    if ((source.heldErrorTenths[day] as number) > bound)
      return changes >= NEVER ? NEVER : source.settingsBefore + changes;
  }
  return source.settingsBefore;
}

/** Returns the same number as `fewestSettings` and leaves nothing behind. */
export function settingsNeeded(bounded: BoundedGraph, boundTenths: number): number {
  return isFree(bounded.graph) ? longestHolds(bounded.graph, boundTenths) : fewestSettings(bounded, boundTenths);
}

/** Tells whether every piece of a setting is a setting too and any may follow any, so that it is enough to hold each as long as it goes. */
function isFree(graph: DialGraph): boolean {
  return !graph.errorBefore && !graph.jump.limited && graph.source.settingsBefore === 0;
}

function longestHolds(graph: DialGraph, bound: number): number {
  const { days, highTenths, lowTenths, changeDay } = graph;
  let settings = 1;
  let lastChange = 0;
  let start = 0;
  let [high, low] = [0, MOST_ERROR_TENTHS];
  for (let day = 0; day < days; day++) {
    if (changeDay[day] === 1) lastChange = day;
    high = Math.max(high, highTenths[day] as number);
    low = Math.min(low, lowTenths[day] as number);
    if (someLength(graph, high - bound, low + bound)) continue;
    if (lastChange === start) return NEVER;
    settings++;
    start = lastChange;
    day = start - 1;
    [high, low] = [0, MOST_ERROR_TENTHS];
  }
  return settings;
}

function someLength({ firstAtLeast, stepTenths }: DialGraph, shortest: number, longest: number): boolean {
  const most = firstAtLeast.length - 1;
  const from = Math.min(Math.max(Math.ceil(shortest / stepTenths), 0), most);
  const after = Math.min(Math.max(Math.floor(longest / stepTenths) + 1, 0), most);
  return (firstAtLeast[from] as number) < (firstAtLeast[after] as number);
}

/** Settings needed by bound, as far as they have been worked out; each tells something about every number of settings. */
export type KnownNeeds = Map<number, number>;

/**
 * Returns the least bound, tenths, within low..high (where `high` is known to do) that at most so many settings keep; reads and adds to
 * what is known.
 */
export function leastWorst(
  bounded: BoundedGraph,
  settings: number,
  low: number,
  high: number,
  known: KnownNeeds = new Map(),
): number {
  if (low >= high) return high;
  const free = isFree(bounded.graph);
  let [from, to] = [free ? low : Math.max(low, worstOfFree(bounded.graph, settings, low, high)), high];
  for (const [bound, needed] of known) {
    if (needed > settings) from = Math.max(from, bound + 1);
    else to = Math.min(to, bound);
  }
  const keeps = (bound: number): boolean => {
    const needed = settingsNeeded(bounded, bound);
    known.set(bound, needed);
    return needed <= settings;
  };
  return free ? halve(from, to, keeps) : gallop(from, to, keeps);
}

/** Steps up from below, each step twice the last: low bounds are quick to try. */
function gallop(low: number, high: number, keeps: (bound: number) => boolean): number {
  let [below, step] = [low - 1, 1];
  while (below + step < high && !keeps(below + step)) {
    below += step;
    step *= 2;
  }
  return halve(below + 1, Math.min(below + step, high), keeps);
}

/** Without least durations, largest jump and pushed windows no plan can be worse: a bound that is cheap, and often met. */
function worstOfFree(graph: DialGraph, settings: number, low: number, high: number): number {
  if (graph.source.settingsBefore > 0 || graph.pushedUntil) return low;
  return halve(low, high, (bound) => longestHolds(graph, bound) <= settings);
}

function halve(low: number, high: number, keeps: (bound: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (keeps(middle)) to = middle;
    else from = middle + 1;
  }
  return to;
}

/** Returns the least worst error that any number of settings reaches, in tenths; every problem has one. */
export function leastPossibleWorst(bounded: BoundedGraph): number {
  const low = nearestLengths(bounded.graph);
  if (settingsNeeded(bounded, low) < NEVER) return low;
  return leastWorst(bounded, NEVER - 1, low + 1, MOST_ERROR_TENTHS);
}

/** The worst day where each had the length nearest to its target: no plan is better, unless it holds what stood before. */
function nearestLengths({ days, windows, errorTenths, source }: DialGraph): number {
  const count = windows.length;
  let worst = 0;
  for (let day = 0; day < days; day++) {
    let least = source.heldErrorTenths[day] as number;
    for (let c = 0; c < count; c++) least = Math.min(least, errorTenths[day * count + c] as number);
    if (least > worst) worst = least;
  }
  return worst;
}
