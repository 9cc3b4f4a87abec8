/** Every plan that is best by worst error, sum and number of settings, as one small graph; and the fewest pins moved within it. */
import { pinsMoved } from '../../hardware/pins.ts';
import { changeableFrom, NEVER } from './dial-graph.ts';
import type { Beginning, SumLayers } from './sum-layers.ts';
import { sumFrom, sumOfStart } from './sum-layers.ts';

/** The start of a setting: its day, its candidate, the changes left after it, and its node on the last day of its least duration. */
export interface PathStart {
  readonly day: number;
  readonly settledOn: number;
  readonly c: number;
  readonly changesLeft: number;
  readonly node: number;
}

export interface OptimalPaths {
  /** Starts of the first chosen setting, with the fewest pins moved from there on, the step from what stood before included. */
  readonly entries: readonly { readonly start: PathStart; readonly pins: number }[];
  readonly layers: SumLayers;
  /** Changes out of a node that lose nothing at the first three levels. */
  readonly changesOf: ReadonlyMap<number, readonly PathStart[]>;
  /** Fewest pins moved from a node on; NEVER where no best plan passes it. */
  readonly pinsFrom: Int32Array;
}

interface PathNode {
  readonly node: number;
  readonly c: number;
  /** Node of the same setting on the next day, −1 where holding it on loses something or the plan ends. */
  readonly holds: number;
  readonly changes: readonly PathStart[];
}

/** Returns the graph of all best plans that begin as given. */
export function optimalPaths(layers: SumLayers, beginning: Beginning): OptimalPaths {
  const seen = new Uint8Array(layers.sums.length);
  const starts = entryStarts(layers, beginning);
  for (const start of starts) seen[start.node] = 1;
  const nodes: PathNode[] = [];
  for (let k = beginning.changesLeft; k >= 0; k--) walkLayer(layers, k, seen, nodes);
  const pinsFrom = fewestPins(layers, nodes);
  const changesOf = new Map(nodes.filter((node) => node.changes.length > 0).map((node) => [node.node, node.changes]));
  const entries = starts.map((start) => ({
    start,
    pins: pinsIntoSource(layers, start) + (pinsFrom[start.node] as number),
  }));
  return { entries, layers, changesOf, pinsFrom };
}

/** Returns the place of a state in the layers. */
export function nodeOf(layers: SumLayers, k: number, day: number, c: number): number {
  const { base, widthBefore, bounded } = layers;
  return (base[k] as number) + (widthBefore[day] as number) + c - (bounded.first[day] as number);
}

/** Returns the pins of one day that differ between two candidates. */
export function pinsBetween(layers: SumLayers, from: number, to: number): number {
  const { windows, stepMinutes } = layers.bounded.graph;
  const [before, after] = [windows[from], windows[to]];
  return before && after ? pinsMoved(before, after, stepMinutes) : NEVER;
}

function pinsIntoSource(layers: SumLayers, start: PathStart): number {
  const { windows, stepMinutes, source } = layers.bounded.graph;
  const window = windows[start.c];
  return source.window && window ? pinsMoved(source.window, window, stepMinutes) : 0;
}

function startOf(layers: SumLayers, changesLeft: number, day: number, c: number): PathStart {
  const settledOn = changeableFrom(layers.bounded.graph, day, c) - 1;
  return { day, settledOn, c, changesLeft, node: nodeOf(layers, changesLeft, settledOn, c) };
}

function entryStarts(layers: SumLayers, { sumTenths, changesLeft }: Beginning): readonly PathStart[] {
  const { graph, first, last } = layers.bounded;
  const starts: PathStart[] = [];
  let held = 0;
  for (let day = 0; day < graph.days && changesLeft >= 0; day++) {
    const to = Math.min(last[day] as number, graph.jump.sourceLast);
    const mayEnter = graph.source.entryDay[day] === 1;
    for (let c = Math.max(first[day] as number, graph.jump.sourceFirst); mayEnter && c <= to; c++) {
      if (held + sumOfStart(layers, changesLeft, day, c) === sumTenths)
        starts.push(startOf(layers, changesLeft, day, c));
    }
    const error = graph.source.heldErrorTenths[day] as number;
    if (error > layers.boundTenths) break;
    held += error;
  }
  return starts;
}

function walkLayer(layers: SumLayers, k: number, seen: Uint8Array, nodes: PathNode[]): void {
  const { graph, first, last } = layers.bounded;
  const count = graph.windows.length;
  for (let day = layers.firstDay[k] as number; day <= (layers.lastDay[k] as number); day++) {
    const row = nodeOf(layers, k, day, 0);
    for (let c = first[day] as number; c <= (last[day] as number); c++) {
      if (seen[row + c] !== 1) continue;
      const rest = (layers.sums[row + c] as number) - (graph.errorTenths[day * count + c] as number);
      if (day === graph.days - 1) {
        nodes.push({ node: row + c, c, holds: -1, changes: [] });
        continue;
      }
      const holds = sumFrom(layers, k, day + 1, c) === rest ? nodeOf(layers, k, day + 1, c) : -1;
      const changes = changesAt(layers, k, day, c, rest);
      if (holds >= 0) seen[holds] = 1;
      for (const change of changes) seen[change.node] = 1;
      nodes.push({ node: row + c, c, holds, changes });
    }
  }
}

const NO_CHANGES: readonly PathStart[] = [];

function changesAt(layers: SumLayers, k: number, day: number, c: number, rest: number): readonly PathStart[] {
  const { graph, first, last } = layers.bounded;
  const next = day + 1;
  if (k === 0 || graph.changeDay[next] !== 1) return NO_CHANGES;
  let changes: PathStart[] | null = null;
  const to = Math.min(last[next] as number, graph.jump.last[c] as number);
  for (let other = Math.max(first[next] as number, graph.jump.first[c] as number); other <= to; other++) {
    if (sumOfStart(layers, k - 1, next, other) !== rest) continue;
    changes ??= [];
    changes.push(startOf(layers, k - 1, next, other));
  }
  return changes ?? NO_CHANGES;
}

/** Nodes come a layer at a time, days ascending, so that backwards every successor is known. */
function fewestPins(layers: SumLayers, nodes: readonly PathNode[]): Int32Array {
  const pins = new Int32Array(layers.sums.length).fill(NEVER);
  for (let at = nodes.length - 1; at >= 0; at--) {
    const node = nodes[at];
    if (!node) continue;
    let least = node.holds >= 0 ? (pins[node.holds] as number) : node.changes.length > 0 ? NEVER : 0;
    for (const change of node.changes) {
      const moved = pinsBetween(layers, node.c, change.c) + (pins[change.node] as number);
      if (moved < least) least = moved;
    }
    pins[node.node] = least;
  }
  return pins;
}
