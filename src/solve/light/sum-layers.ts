/**
 * The least sum of errors under a bound, a layer for each number of further changes. A layer spans only the days on which that many
 * changes can still be left: near the fewest settings for the bound these are few, and the whole choice is as cheap as one layer.
 */
import type { DialGraph } from './dial-graph.ts';
import { changeableFrom, NEVER } from './dial-graph.ts';
import type { BoundedGraph } from './fewest-settings.ts';
import { windowMinimum } from './window-minimum.ts';

export interface SumLayers {
  readonly bounded: BoundedGraph;
  readonly boundTenths: number;
  /** Further changes left in the topmost layer. */
  readonly top: number;
  readonly firstDay: Int32Array;
  readonly lastDay: Int32Array;
  /** Candidates within the bound on the days before, days + 1 entries. */
  readonly widthBefore: Int32Array;
  /** Place of layer k in `sums`, so that day and candidate add `widthBefore[day] + c − first[day]`. */
  readonly base: Float64Array;
  /** Least sum from the day on with candidate c standing on it and at most k changes left. */
  readonly sums: Int32Array;
}

/** Returns the layers 0 to `top`; `fewestSettings` must have run on the graph for this bound just before. */
export function sumLayers(bounded: BoundedGraph, boundTenths: number, top: number): SumLayers {
  const layers = layOutLayers(bounded, boundTenths, top);
  for (let k = 0; k <= top; k++) fillLayer(layers, k);
  return layers;
}

/** Returns the least sum with candidate c standing on the day and at most k changes left; NEVER where that is impossible. */
export function sumFrom(layers: SumLayers, k: number, day: number, c: number): number {
  if (day < (layers.firstDay[k] as number) || day > (layers.lastDay[k] as number)) return NEVER;
  const first = layers.bounded.first[day] as number;
  if (c < first || c > (layers.bounded.last[day] as number)) return NEVER;
  return layers.sums[(layers.base[k] as number) + (layers.widthBefore[day] as number) + c - first] as number;
}

/** Returns the least sum from a setting with candidate c that starts on the day, its least duration observed. */
export function sumOfStart(layers: SumLayers, k: number, day: number, c: number): number {
  const { graph, holdsUntil } = layers.bounded;
  if (!graph.errorBefore || !holdsUntil) return sumFrom(layers, k, day, c);
  const first = layers.bounded.first[day] as number;
  if (c < first || c > (layers.bounded.last[day] as number)) return NEVER;
  const count = graph.windows.length;
  const until = changeableFrom(graph, day, c);
  if (until > graph.days || (holdsUntil[day * count + c] as number) < until) return NEVER;
  const rest = sumFrom(layers, k, until - 1, c);
  if (rest >= NEVER) return NEVER;
  const held = (graph.errorBefore[(until - 1) * count + c] as number) - (graph.errorBefore[day * count + c] as number);
  return rest + held;
}

function layOutLayers(bounded: BoundedGraph, bound: number, top: number): SumLayers {
  const { graph, first, last, leastLeft } = bounded;
  const firstDay = new Int32Array(top + 1).fill(graph.days);
  const lastDay = new Int32Array(top + 1).fill(-1);
  const widthBefore = new Int32Array(graph.days + 1);
  const used = changesUsedAtLeast(bounded, bound);
  for (let day = 0; day < graph.days; day++) {
    widthBefore[day + 1] =
      (widthBefore[day] as number) + Math.max(0, (last[day] as number) - (first[day] as number) + 1);
  }
  let day = graph.days;
  for (let k = 0; k <= top; k++) {
    for (let earlier = day - 1; earlier >= 0; earlier--) if ((leastLeft[earlier] as number) <= k) day = earlier;
    firstDay[k] = day;
  }
  day = -1;
  for (let k = top; k >= 0; k--) {
    while (day + 1 < graph.days && (used[day + 1] as number) <= top - k) day++;
    lastDay[k] = day;
  }
  const base = new Float64Array(top + 1);
  let size = 0;
  for (let k = 0; k <= top; k++) {
    const [from, to] = [firstDay[k] as number, lastDay[k] as number];
    if (to < from) continue;
    base[k] = size - (widthBefore[from] as number);
    size += (widthBefore[to + 1] as number) - (widthBefore[from] as number);
  }
  return { bounded, boundTenths: bound, top, firstDay, lastDay, widthBefore, base, sums: new Int32Array(size) };
}

/** A lower bound of the changes between entering the first chosen setting and the day: what a free choice of dates would need. */
function changesUsedAtLeast({ graph }: BoundedGraph, bound: number): Int32Array {
  const { highTenths, lowTenths, stepTenths, source } = graph;
  const fresh = source.settingsBefore === 0;
  const used = new Int32Array(graph.days);
  let segments = 1;
  let [shortest, longest] = [0, 14_400];
  for (let day = 0; day < graph.days; day++) {
    const from = (highTenths[day] as number) - bound;
    const to = (lowTenths[day] as number) + bound;
    shortest = Math.max(shortest, from);
    longest = Math.min(longest, to);
    const fits = fresh ? Math.ceil(shortest / stepTenths) <= Math.floor(longest / stepTenths) : shortest <= longest;
    if (!fits) {
      segments++;
      [shortest, longest] = [Math.max(0, from), Math.min(14_400, to)];
    }
    used[day] = Math.max(0, segments - (fresh ? 1 : 2));
  }
  return used;
}

function fillLayer(layers: SumLayers, k: number): void {
  const { bounded, sums, base, widthBefore } = layers;
  const { graph, first, last, changesLeft, afterChange } = bounded;
  const count = graph.windows.length;
  const lastDay = layers.lastDay[k] as number;
  for (let day = lastDay; day >= (layers.firstDay[k] as number); day--) {
    const from = first[day] as number;
    const to = last[day] as number;
    const at = (base[k] as number) + (widthBefore[day] as number) - from;
    const mayHold = day < lastDay;
    const next = mayHold ? (base[k] as number) + (widthBefore[day + 1] as number) - (first[day + 1] as number) : 0;
    const nextFirst = mayHold ? (first[day + 1] as number) : 1;
    const nextLast = mayHold ? (last[day + 1] as number) : 0;
    const mayChange = k > 0 && day + 1 < graph.days && graph.changeDay[day + 1] === 1;
    if (mayChange) sumsAfterChange(layers, k - 1, day + 1, from, to);
    for (let c = from; c <= to; c++) {
      if ((changesLeft[day * count + c] as number) > k) {
        sums[at + c] = NEVER;
        continue;
      }
      let rest = day === graph.days - 1 ? 0 : NEVER;
      if (c >= nextFirst && c <= nextLast) rest = sums[next + c] as number;
      if (mayChange && (afterChange[c] as number) < rest) rest = afterChange[c] as number;
      sums[at + c] = rest >= NEVER ? NEVER : rest + (graph.errorTenths[day * count + c] as number);
    }
  }
}

/** Writes, for the candidates from..to of the day before, the least sum after a change on the day with k more left. */
function sumsAfterChange(layers: SumLayers, k: number, day: number, from: number, to: number): void {
  const { graph, first, last, starts, afterChange, queue } = layers.bounded;
  const low = first[day] as number;
  const high = last[day] as number;
  if (!graph.jump.limited) {
    const least = leastStart(layers, k, day, low, high);
    for (let c = from; c <= to; c++) afterChange[c] = least;
    return;
  }
  for (let c = low; c <= high; c++) starts[c] = sumOfStart(layers, k, day, c);
  windowMinimum(starts, low, high, graph.jump.first, graph.jump.last, from, to, afterChange, queue, NEVER);
}

function leastStart(layers: SumLayers, k: number, day: number, low: number, high: number): number {
  let least = NEVER;
  for (let c = low; c <= high; c++) {
    const sum = sumOfStart(layers, k, day, c);
    if (sum < least) least = sum;
  }
  return least;
}

/** How the whole plan begins: held from before for good, or entered on a day, with so many changes left. */
export interface Beginning {
  readonly sumTenths: number;
  /** Changes left after the entry; −1 where what stands is held to the end. */
  readonly changesLeft: number;
}

/**
 * Returns the least sum of all days with at most `changesLeft` changes after the entry, and the fewest that have this sum; sum NEVER where
 * none keeps the bound.
 */
export function leastBeginning(layers: SumLayers, changesLeft: number): Beginning {
  const held = heldToEnd(layers.bounded.graph, layers.boundTenths);
  let best: Beginning = { sumTenths: held, changesLeft: -1 };
  for (let k = 0; k <= changesLeft; k++) {
    const sumTenths = leastEntry(layers, k);
    if (sumTenths < best.sumTenths) best = { sumTenths, changesLeft: k };
  }
  return best;
}

function heldToEnd({ days, source }: DialGraph, bound: number): number {
  let sum = 0;
  for (let day = 0; day < days; day++) {
    const error = source.heldErrorTenths[day] as number;
    if (error > bound) return NEVER;
    sum += error;
  }
  return sum;
}

function leastEntry(layers: SumLayers, k: number): number {
  const { graph, first, last } = layers.bounded;
  let least = NEVER;
  let held = 0;
  for (let day = 0; day < graph.days; day++) {
    if (graph.source.entryDay[day] === 1) {
      const from = Math.max(first[day] as number, graph.jump.sourceFirst);
      const to = Math.min(last[day] as number, graph.jump.sourceLast);
      least = Math.min(least, held + leastStart(layers, k, day, from, to));
    }
    const error = graph.source.heldErrorTenths[day] as number;
    if (error > layers.boundTenths) return least;
    held += error;
  }
  return least;
}
