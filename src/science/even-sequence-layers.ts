/**
 * The states of an even sequence, place by place: how often each item has stood so far, how long ago the items that must
 * keep apart stood last, and (around a cycle) where they stood first. Whole numbers throughout.
 */
import type { EvenProblem } from './even-problem.ts';

export interface Layer {
  size: number;
  /** Counts, then days since the last place of each spaced item, then (around a cycle) days to its first; `stride` a state. */
  readonly cells: number[];
  /** Largest deviation on the best way here, over the problem's denominator. */
  readonly worst: number[];
  /** Sum of the squared deviations at this prefix. */
  readonly cost: number[];
  /** Index into the next layer by state and item, -1 where the item may not stand. */
  readonly next: number[];
}

export interface Exploration {
  readonly layers: readonly Layer[];
  /** Which states of the last layer close the sequence. */
  readonly closes: readonly boolean[];
}

export interface Bounds {
  /** Largest deviation of an item, over the problem's denominator. */
  readonly worst: number;
  /** Largest deviation of a pair, over both denominators; null: pairs are not followed. */
  readonly pair: number | null;
  /** The sequence repeats: spacing holds around the seam too. */
  readonly around: boolean;
  /** Keep only so many states a layer, the best so far; null: all. */
  readonly beam: number | null;
}

/** What the search of one problem needs again and again. */
export interface Board {
  readonly problem: EvenProblem;
  readonly items: number;
  readonly length: number;
  readonly groups: number;
  /** Items with a spacing to any item. */
  readonly spaced: readonly number[];
  /** Position of an item in `spaced`, -1 for none. */
  readonly spacedAt: readonly number[];
  /** The largest spacing, days. */
  readonly reach: number;
  /** States that may still be made. */
  statesLeft: number;
}

/** Returns a problem laid out for the search, which may come upon `stateLimit` states. */
export function boardOf(problem: EvenProblem, stateLimit: number): Board {
  const apart = problem.spacing?.apart ?? [];
  const spaced = problem.rates.map((_, item) => item).filter((item) => apart[item]?.some((days) => days > 0));
  return {
    problem,
    items: problem.rates.length,
    length: problem.counts.reduce((all, count) => all + count, 0),
    groups: problem.pairing?.rates.length ?? 1,
    spaced,
    spacedAt: problem.rates.map((_, item) => spaced.indexOf(item)),
    reach: Math.max(0, ...apart.flat()),
    statesLeft: stateLimit,
  };
}

/**
 * Returns every state that can be reached within the bounds, layer by layer; null where no sequence is within them;
 * `exhausted` where the board's states ran out first.
 */
export function explore(board: Board, bounds: Bounds): Exploration | null | 'exhausted' {
  const shape = shapeOf(board, bounds);
  const layers: Layer[] = [firstLayer(board, shape)];
  for (let place = 0; place < board.length; place++) {
    const from = layers[place];
    if (!from) return null;
    const to = advance(board, bounds, shape, from, place);
    if (board.statesLeft < 0) return 'exhausted';
    if (to.size === 0) return null;
    if (bounds.beam !== null && to.size > bounds.beam) thin(from, to, shape.stride, bounds.beam);
    layers.push(to);
  }
  const last = layers[board.length];
  const closes = last ? closingStates(board, bounds, shape, last) : [];
  return closes.some((closed) => closed) ? { layers, closes } : null;
}

interface Shape {
  /** Groups that are counted apart: 1 where pairs are not followed. */
  readonly rows: number;
  readonly sinceAt: number;
  readonly headAt: number;
  readonly stride: number;
}

function shapeOf(board: Board, bounds: Bounds): Shape {
  const rows = bounds.pair === null ? 1 : board.groups;
  const sinceAt = rows * board.items;
  const headAt = sinceAt + board.spaced.length;
  return { rows, sinceAt, headAt, stride: headAt + (bounds.around ? board.spaced.length : 0) };
}

function firstLayer(board: Board, shape: Shape): Layer {
  const cells = new Array<number>(shape.stride).fill(0).fill(board.reach, shape.sinceAt);
  return { size: 1, cells, worst: [largest(board.problem.carried ?? [])], cost: [0], next: [] };
}

function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

/** Least and most counts that keep within the bounds after a place. */
interface Limits {
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly pairLeast: readonly number[];
  readonly pairMost: readonly number[];
}

function limitsAfter(board: Board, bounds: Bounds, place: number): Limits {
  const { rates, denominator, counts, carried, pairing } = board.problem;
  const prefix = place + 1;
  const least: number[] = [];
  const most: number[] = [];
  for (let item = 0; item < board.items; item++) {
    const due = prefix * (rates[item] ?? 0) - (carried?.[item] ?? 0);
    const total = counts[item] ?? 0;
    least.push(Math.max(0, total - (board.length - prefix), Math.ceil((due - bounds.worst) / denominator)));
    most.push(Math.min(total, Math.floor((due + bounds.worst) / denominator)));
  }
  const pairLeast: number[] = [];
  const pairMost: number[] = [];
  if (pairing && bounds.pair !== null) {
    const unit = pairing.denominator * denominator;
    for (let group = 0; group < board.groups; group++) {
      for (let item = 0; item < board.items; item++) {
        const due = prefix * (pairing.rates[group] ?? 0) * (rates[item] ?? 0);
        pairLeast.push(Math.max(0, Math.ceil((due - bounds.pair) / unit)));
        pairMost.push(Math.floor((due + bounds.pair) / unit));
      }
    }
  }
  return { least, most, pairLeast, pairMost };
}

function advance(board: Board, bounds: Bounds, shape: Shape, from: Layer, place: number): Layer {
  const limits = limitsAfter(board, bounds, place);
  const to: Layer = { size: 0, cells: [], worst: [], cost: [], next: [] };
  const seen = new Map<number | string, number>();
  const keyOf = keyMaker(board, shape, limits);
  const group = shape.rows === 1 ? 0 : (board.problem.pairing?.groups[place] ?? 0);
  const days = board.problem.spacing?.days;
  const daysOn = days && place > 0 ? (days[place] ?? 0) - (days[place - 1] ?? 0) : 0;
  const child = new Array<number>(shape.stride).fill(0);
  for (let state = 0; state < from.size; state++) {
    const base = state * shape.stride;
    const forced = forcedItem(board, shape, limits, from.cells, base, group);
    for (let item = 0; item < board.items; item++) {
      let index = -1;
      if (
        (forced === ANY || forced === item) &&
        mayStand(board, shape, limits, from.cells, base, group, place, item, daysOn)
      ) {
        fill(board, shape, from.cells, base, child, group, item, place, daysOn);
        const key = keyOf(child);
        const known = seen.get(key);
        index = known ?? append(board, shape, to, child, place);
        if (known === undefined) seen.set(key, index);
        const worst = Math.max(from.worst[state] ?? 0, deviationAt(board, shape, to.cells, index, place));
        to.worst[index] = Math.min(to.worst[index] ?? Number.POSITIVE_INFINITY, worst);
      }
      from.next.push(index);
    }
    if (board.statesLeft < 0) return to;
  }
  return to;
}

const ANY = -1;
const NONE = -2;

/** Returns the one item that must stand next for the limits to hold, ANY or NONE. */
function forcedItem(
  board: Board,
  shape: Shape,
  limits: Limits,
  cells: readonly number[],
  base: number,
  group: number,
): number {
  let forced = ANY;
  for (let item = 0; item < board.items; item++) {
    if (totalOf(board, shape, cells, base, item) < (limits.least[item] ?? 0)) {
      if (forced !== ANY) return NONE;
      forced = item;
    }
  }
  for (let at = 0; at < limits.pairLeast.length; at++) {
    if ((cells[base + at] ?? 0) >= (limits.pairLeast[at] ?? 0)) continue;
    const item = at % board.items;
    if (at - item !== group * board.items || (forced !== ANY && forced !== item)) return NONE;
    forced = item;
  }
  return forced;
}

function totalOf(board: Board, shape: Shape, cells: readonly number[], base: number, item: number): number {
  let total = 0;
  for (let row = 0; row < shape.rows; row++) total += cells[base + row * board.items + item] ?? 0;
  return total;
}

function mayStand(
  board: Board,
  shape: Shape,
  limits: Limits,
  cells: readonly number[],
  base: number,
  group: number,
  place: number,
  item: number,
  daysOn: number,
): boolean {
  if (totalOf(board, shape, cells, base, item) + 1 > (limits.most[item] ?? 0)) return false;
  const at = group * board.items + item;
  if (limits.pairMost.length > 0 && (cells[base + at] ?? 0) + 1 > (limits.pairMost[at] ?? 0)) return false;
  const spacing = board.problem.spacing;
  if (!spacing) return true;
  if ((spacing.days[place] ?? 0) < (spacing.notBefore[item] ?? Number.NEGATIVE_INFINITY)) return false;
  const apart = spacing.apart[item] ?? [];
  return board.spaced.every((other, i) => (cells[base + shape.sinceAt + i] ?? 0) + daysOn >= (apart[other] ?? 0));
}

function fill(
  board: Board,
  shape: Shape,
  cells: readonly number[],
  base: number,
  child: number[],
  group: number,
  item: number,
  place: number,
  daysOn: number,
): void {
  for (let i = 0; i < shape.stride; i++) child[i] = cells[base + i] ?? 0;
  const at = group * board.items + item;
  child[at] = (child[at] ?? 0) + 1;
  for (let i = shape.sinceAt; i < shape.headAt; i++) child[i] = Math.min(board.reach, (child[i] ?? 0) + daysOn);
  const spaced = board.spacedAt[item] ?? -1;
  if (spaced < 0) return;
  child[shape.sinceAt + spaced] = 0;
  if (shape.stride === shape.headAt) return;
  const days = board.problem.spacing?.days ?? [];
  const offset = (days[place] ?? 0) - (days[0] ?? 0);
  if (child[shape.headAt + spaced] === board.reach) child[shape.headAt + spaced] = Math.min(board.reach, offset);
}

function append(board: Board, shape: Shape, to: Layer, child: readonly number[], place: number): number {
  const index = to.size++;
  for (let i = 0; i < shape.stride; i++) to.cells.push(child[i] ?? 0);
  let cost = 0;
  for (let item = 0; item < board.items; item++)
    cost += signedDeviation(board, shape, to.cells, index, place, item) ** 2;
  to.cost.push(cost);
  board.statesLeft--;
  return index;
}

function signedDeviation(
  board: Board,
  shape: Shape,
  cells: readonly number[],
  state: number,
  place: number,
  item: number,
): number {
  const { rates, denominator, carried } = board.problem;
  const total = totalOf(board, shape, cells, state * shape.stride, item);
  return total * denominator + (carried?.[item] ?? 0) - (place + 1) * (rates[item] ?? 0);
}

function deviationAt(board: Board, shape: Shape, cells: readonly number[], state: number, place: number): number {
  let worst = 0;
  for (let item = 0; item < board.items; item++)
    worst = Math.max(worst, Math.abs(signedDeviation(board, shape, cells, state, place, item)));
  return worst;
}

/** Returns a function that names a state: a number where its digits fit into one, else text. */
function keyMaker(board: Board, shape: Shape, limits: Limits): (child: readonly number[]) => number | string {
  const paired = limits.pairLeast.length > 0;
  const least = paired ? limits.pairLeast : limits.least;
  const most = paired ? limits.pairMost : limits.most;
  const radix: number[] = [];
  for (let at = 0; at < shape.stride; at++)
    radix.push(at < shape.sinceAt ? Math.max(1, (most[at] ?? 0) - (least[at] ?? 0) + 1) : board.reach + 1);
  const span = radix.reduce((all, digits) => all * digits, 1);
  if (span > Number.MAX_SAFE_INTEGER) return (child) => child.join();
  return (child) => {
    let key = 0;
    for (let at = 0; at < shape.stride; at++) {
      const digit = (child[at] ?? 0) - (at < shape.sinceAt ? (least[at] ?? 0) : 0);
      key = key * (radix[at] ?? 1) + digit;
    }
    return key;
  };
}

/** Returns which states of the last layer hold the full counts and, around a cycle, keep their distance over the seam. */
function closingStates(board: Board, bounds: Bounds, shape: Shape, last: Layer): boolean[] {
  const closes: boolean[] = [];
  for (let state = 0; state < last.size; state++) {
    const base = state * shape.stride;
    const full = board.problem.counts.every((count, item) => totalOf(board, shape, last.cells, base, item) === count);
    closes.push(full && (!bounds.around || keepsSeam(board, shape, last.cells, base)));
  }
  return closes;
}

function keepsSeam(board: Board, shape: Shape, cells: readonly number[], base: number): boolean {
  const spacing = board.problem.spacing;
  if (!spacing || spacing.cycleDays === null) return true;
  const toNext = spacing.cycleDays + (spacing.days[0] ?? 0) - (spacing.days[board.length - 1] ?? 0);
  return board.spaced.every((before, i) =>
    board.spaced.every((after, j) => {
      const since = cells[base + shape.sinceAt + i] ?? 0;
      const head = cells[base + shape.headAt + j] ?? 0;
      return since + toNext + head >= (spacing.apart[before]?.[after] ?? 0);
    }),
  );
}

/** Keeps the best states of a layer: least worst deviation, then least cost, then the earlier one. */
function thin(from: Layer, to: Layer, stride: number, beam: number): void {
  const order = Array.from({ length: to.size }, (_, state) => state)
    .sort((a, b) => (to.worst[a] ?? 0) - (to.worst[b] ?? 0) || (to.cost[a] ?? 0) - (to.cost[b] ?? 0) || a - b)
    .slice(0, beam);
  const renamed = new Map(order.map((state, index) => [state, index]));
  const cells = order.flatMap((state) => to.cells.slice(state * stride, (state + 1) * stride));
  const worst = order.map((state) => to.worst[state] ?? 0);
  const cost = order.map((state) => to.cost[state] ?? 0);
  to.size = order.length;
  to.cells.splice(0, to.cells.length, ...cells);
  to.worst.splice(0, to.worst.length, ...worst);
  to.cost.splice(0, to.cost.length, ...cost);
  for (let i = 0; i < from.next.length; i++) from.next[i] = renamed.get(from.next[i] ?? -1) ?? -1;
}
