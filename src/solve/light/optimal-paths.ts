/** Every plan that is best by worst error, sum and number of settings, as one small graph; and the fewest pins moved within it. */
import { pinsMoved } from '../../hardware/pins.ts';
import { changeableFrom, NEVER } from './dial-graph.ts';
import type { Beginning, SumLayers } from './sum-layers.ts';
import { sumFrom, sumOfStart } from './sum-layers.ts';

/** The start of a setting: its day, its candidate, the changes left after it, and its node on the last day of its least duration. */
export interface PathStart {
  readonly day: number;
  /** The last day of its least duration. */
  readonly settledOn: number;
  /** Its candidate window, by place in the graph. */
  readonly c: number;
  readonly changesLeft: number;
  readonly node: number;
}

export interface EntryStart {
  readonly start: PathStart;
  /** Fewest pins moved from there on, the step from what stood before included. */
  readonly pins: number;
}

/** Returns the place of a state in the layers, −1 where the layers do not hold it. */
export function nodeOf(layers: SumLayers, k: number, day: number, c: number): number {
  const { base, widthBefore, bounded, firstDay, lastDay } = layers;
  if (day < (firstDay[k] as number) || day > (lastDay[k] as number)) return -1;
  const first = bounded.first[day] as number;
  if (c < first || c > (bounded.last[day] as number)) return -1;
  return (base[k] as number) + (widthBefore[day] as number) + c - first;
}

/** Returns the pins of one day that differ between two candidates. */
function pinsBetween({ bounded: { graph, pins } }: SumLayers, from: number, to: number): number {
  const { windows, stepMinutes } = graph;
  const at = from * windows.length + to;
  const known = pins[at] ?? NEVER;
  if (known >= 0) return known;
  const [before, after] = [windows[from], windows[to]];
  const moved = before && after ? pinsMoved(before, after, stepMinutes) : NEVER;
  pins[at] = moved;
  return moved;
}

/**
 * The graph of all best plans that begin as given. Nodes are kept in flat lists, a layer at a time and days ascending, so that every
 * successor of a node stands after it.
 */
export class OptimalPaths {
  readonly layers: SumLayers;
  readonly entries: readonly EntryStart[];
  /** One more than the place of a node in the lists, 0 where no best plan passes it. */
  readonly #placeOf: Int32Array;
  readonly #candidates: number[] = [];
  readonly #changesLeft: number[] = [];
  /** Node of the same setting on the next day, −1 where holding it on loses something or the plan ends. */
  readonly #holds: number[] = [];
  readonly #pins: number[] = [];
  /** Changes of the node at place p: from firstChange[p] up to firstChange[p + 1]. */
  readonly #firstChange: number[] = [0];
  readonly #changeDays: number[] = [];
  readonly #changeCandidates: number[] = [];
  readonly #changeNodes: number[] = [];
  /** First and last day of each layer that a best plan passes. */
  readonly #fromDay: Int32Array;
  readonly #toDay: Int32Array;

  constructor(layers: SumLayers, beginning: Beginning) {
    this.layers = layers;
    this.#placeOf = new Int32Array(layers.sums.length);
    this.#fromDay = new Int32Array(layers.top + 1).fill(layers.bounded.graph.days);
    this.#toDay = new Int32Array(layers.top + 1).fill(-1);
    const starts = this.#entryStarts(beginning);
    for (const start of starts) this.#mark(start.changesLeft, start.settledOn, start.node);
    for (let k = beginning.changesLeft; k >= 0; k--) this.#walkLayer(k);
    this.#countPins();
    this.entries = starts.map((start) => ({ start, pins: this.#pinsOfEntry(start.c) + this.pinsFrom(start.node) }));
  }

  /** Returns the fewest pins moved from a node on; NEVER where no best plan passes it. */
  pinsFrom(node: number): number {
    const place = this.#placeOf[node] as number;
    return place > 0 ? (this.#pins[place - 1] as number) : NEVER;
  }

  /** Returns the changes out of a node that move no pin too many. */
  fewestPinChanges(node: number): readonly PathStart[] {
    const place = (this.#placeOf[node] as number) - 1;
    const changes: PathStart[] = [];
    for (let at = this.#firstChange[place] ?? 0; at < (this.#firstChange[place + 1] ?? 0); at++) {
      if (this.#pinsOfChange(place, at) !== this.#pins[place]) continue;
      const [day, c] = [this.#changeDays[at] as number, this.#changeCandidates[at] as number];
      changes.push(this.#startOf((this.#changesLeft[place] as number) - 1, day, c));
    }
    return changes;
  }

  /** Marks a node as passed by a best plan before its turn to be listed comes. */
  #mark(k: number, day: number, node: number): void {
    if (this.#placeOf[node] !== 0) return;
    this.#placeOf[node] = -1;
    if (day < (this.#fromDay[k] as number)) this.#fromDay[k] = day;
    if (day > (this.#toDay[k] as number)) this.#toDay[k] = day;
  }

  #entryStarts({ sumTenths, changesLeft }: Beginning): readonly PathStart[] {
    const { graph, first, last } = this.layers.bounded;
    const starts: PathStart[] = [];
    let held = 0;
    for (let day = 0; day < graph.days && changesLeft >= 0; day++) {
      const to = Math.min(last[day] as number, graph.jump.sourceLast);
      const mayEnter = graph.source.entryDay[day] === 1;
      for (let c = Math.max(first[day] as number, graph.jump.sourceFirst); mayEnter && c <= to; c++) {
        const isBest = held + sumOfStart(this.layers, changesLeft, day, c) === sumTenths;
        if (isBest) starts.push(this.#startOf(changesLeft, day, c));
      }
      const error = graph.source.heldErrorTenths[day] as number;
      if (error > this.layers.boundTenths) break;
      held += error;
    }
    return starts;
  }

  #startOf(changesLeft: number, day: number, c: number): PathStart {
    const settledOn = changeableFrom(this.layers.bounded.graph, day, c) - 1;
    return { day, settledOn, c, changesLeft, node: nodeOf(this.layers, changesLeft, settledOn, c) };
  }

  #walkLayer(k: number): void {
    const { graph, first, last } = this.layers.bounded;
    for (let day = this.#fromDay[k] as number; day <= (this.#toDay[k] as number); day++) {
      const row = nodeOf(this.layers, k, day, first[day] as number) - (first[day] as number);
      for (let c = first[day] as number; c <= (last[day] as number); c++) {
        if (this.#placeOf[row + c] === 0) continue;
        this.#placeOf[row + c] = this.#candidates.push(c);
        this.#changesLeft.push(k);
        const error = graph.errorTenths[day * graph.windows.length + c] as number;
        const rest = (this.layers.sums[row + c] as number) - error;
        const holds = sumFrom(this.layers, k, day + 1, c) === rest ? nodeOf(this.layers, k, day + 1, c) : -1;
        if (holds >= 0) this.#mark(k, day + 1, holds);
        this.#holds.push(holds);
        this.#addChanges(k, day + 1, c, rest);
        this.#firstChange.push(this.#changeDays.length);
      }
    }
  }

  #addChanges(k: number, day: number, c: number, rest: number): void {
    const { graph, first, last } = this.layers.bounded;
    if (k === 0 || day === graph.days || graph.changeDay[day] !== 1) return;
    const to = Math.min(last[day] as number, graph.jump.last[c] as number);
    for (let other = Math.max(first[day] as number, graph.jump.first[c] as number); other <= to; other++) {
      if (sumOfStart(this.layers, k - 1, day, other) !== rest) continue;
      const settledOn = changeableFrom(graph, day, other) - 1;
      const node = nodeOf(this.layers, k - 1, settledOn, other);
      this.#mark(k - 1, settledOn, node);
      this.#changeDays.push(day);
      this.#changeCandidates.push(other);
      this.#changeNodes.push(node);
    }
  }

  #countPins(): void {
    for (let place = this.#holds.length - 1; place >= 0; place--) {
      const holds = this.#holds[place] as number;
      const [from, to] = [this.#firstChange[place] as number, this.#firstChange[place + 1] as number];
      let least = holds >= 0 ? this.pinsFrom(holds) : from === to ? 0 : NEVER;
      for (let at = from; at < to; at++) least = Math.min(least, this.#pinsOfChange(place, at));
      this.#pins[place] = least;
    }
  }

  #pinsOfChange(place: number, change: number): number {
    const [from, to] = [this.#candidates[place] as number, this.#changeCandidates[change] as number];
    return pinsBetween(this.layers, from, to) + this.pinsFrom(this.#changeNodes[change] as number);
  }

  #pinsOfEntry(c: number): number {
    const { windows, stepMinutes, source } = this.layers.bounded.graph;
    const window = windows[c];
    return source.window && window ? pinsMoved(source.window, window, stepMinutes) : 0;
  }
}
