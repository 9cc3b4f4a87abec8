/**
 * Sequences in which each item stands as evenly as whole places allow: the prefix-deviation problem (chairman assignment,
 * just-in-time sequencing), with days between items that must keep apart and with pairs of two orders kept even as well.
 * Source: Tijdeman R. (1980) Discrete Mathematics 32:323-330; Miltenburg J. (1989) Management Science 35:192-207.
 */
import type { EvenProblem } from './even-problem.ts';
import { type Board, boardOf, type Exploration, explore, type Layer } from './even-sequence-layers.ts';

export interface EvenSequence {
  /** Item of each place. */
  readonly items: readonly number[];
  /** Largest deviation over all prefixes, over the problem's denominator. */
  readonly worst: number;
  /** Over the square of the denominator. */
  readonly sumOfSquares: number;
  /** Largest deviation of a pair in steps of a half, rounded up; 0 without pairs. */
  readonly pairLevel: number;
  /** Lower bounds where the search was cut short by its limit of states; null where the sequence is shown to be the best. */
  readonly gap: { readonly worstAtLeast: number; readonly pairLevelAtLeast: number } | null;
  /** States made. */
  readonly states: number;
}

const STATE_LIMIT = 250_000;
/** States kept a layer where the limit is reached: fewer in a longer sequence, so that the work stays bounded. */
const BEAM = { most: 400, least: 16, states: 60_000 } as const;
/** Deviations tried, in items, beyond which spacing is taken not to hold. */
const CAPS = [1, 1.5, 2, 3, 4] as const;

/**
 * Returns the sequence with the least worst deviation |x(k) - k r| over items and prefixes; of these the least worst
 * deviation of a pair from its product rate, in steps of 0.5; then the least sum of squares; then the first one.
 * null where the spacing leaves no sequence. The limit is one of states, not of time: the answer is the same everywhere.
 */
export function evenSequence(problem: EvenProblem, stateLimit = STATE_LIMIT): EvenSequence | null {
  const board = boardOf(problem, stateLimit);
  if (board.length === 0) return { items: [], worst: 0, sumOfSquares: 0, pairLevel: 0, gap: null, states: 0 };
  const straight = solve(board, false, stateLimit) ?? (problem.spacing ? null : mostDueFirst(problem, board.length));
  if (!straight || keepsAround(problem, straight.items)) return straight;
  const around = solve(board, true, stateLimit);
  return around && { ...around, states: straight.states + around.states };
}

/** A sequence that always exists without spacing: at each place the item that is most behind, the first of equals. */
function mostDueFirst(problem: EvenProblem, length: number): EvenSequence {
  const left = [...problem.counts];
  const behind = problem.rates.map((_, item) => -(problem.carried?.[item] ?? 0));
  const items = Array.from({ length }, () => {
    problem.rates.forEach((rate, item) => {
      behind[item] = (behind[item] ?? 0) + rate;
    });
    const open = left.flatMap((count, item) => (count > 0 ? [item] : []));
    const next = open.reduce((most, item) => ((behind[item] ?? 0) > (behind[most] ?? 0) ? item : most), open[0] ?? 0);
    left[next] = (left[next] ?? 0) - 1;
    behind[next] = (behind[next] ?? 0) - problem.denominator;
    return next;
  });
  return {
    items,
    ...measure(problem, items),
    pairLevel: pairLevelOf(problem, items),
    gap: { worstAtLeast: 0, pairLevelAtLeast: 0 },
    states: length,
  };
}

/** Returns the level of the worst pair deviation, in steps of 0.5, rounded up; 0 without pairs. */
export function pairLevelOf(problem: EvenProblem, items: readonly number[]): number {
  const pairing = problem.pairing;
  if (!pairing) return 0;
  const unit = pairing.denominator * problem.denominator;
  const counts = pairing.rates.map(() => problem.rates.map(() => 0));
  let worst = 0;
  items.forEach((item, place) => {
    const row = counts[pairing.groups[place] ?? 0];
    if (row) row[item] = (row[item] ?? 0) + 1;
    counts.forEach((cells, group) => {
      cells.forEach((count, other) => {
        const due = (place + 1) * (pairing.rates[group] ?? 0) * (problem.rates[other] ?? 0);
        worst = Math.max(worst, Math.abs(count * unit - due));
      });
    });
  });
  return Math.ceil((2 * worst) / unit - 1e-6);
}

/** Returns the most places, of those on `days`, that are at least `apart` days from one another, around the cycle too. */
export function mostPlacesApart(days: readonly number[], apart: number, cycleDays: number | null): number {
  const first = days[0] ?? 0;
  const starts = cycleDays === null ? [first] : [...new Set(days.filter((day) => day - first < apart))];
  return starts.reduce((best, start) => Math.max(best, packedFrom(days, apart, start, cycleDays)), 0);
}

function packedFrom(days: readonly number[], apart: number, start: number, cycleDays: number | null): number {
  let last: number | null = null;
  let packed = 0;
  for (const day of days) {
    const fits = day >= start && (last === null || day - last >= apart);
    if (!fits || (cycleDays !== null && start + cycleDays - day < apart && packed > 0)) continue;
    last = day;
    packed++;
  }
  return packed;
}

/** Returns whether a sequence that repeats keeps its items apart over the seam. */
function keepsAround(problem: EvenProblem, items: readonly number[]): boolean {
  const spacing = problem.spacing;
  if (!spacing || spacing.cycleDays === null) return true;
  const { days, apart, cycleDays } = spacing;
  return items.every((before, i) =>
    items.every((after, j) => (days[j] ?? 0) + cycleDays - (days[i] ?? 0) >= (apart[before]?.[after] ?? 0)),
  );
}

function solve(board: Board, around: boolean, stateLimit: number): EvenSequence | null {
  board.statesLeft = stateLimit;
  const least = leastWorst(board, around);
  if (!least) return null;
  const plain =
    explored(board, { worst: least.worst, pair: null, around, beam: least.exact ? null : beamOf(board) }) ?? least;
  const base = readOff(board, plain.exploration);
  const pairs = betterPairs(board, least, around, pairLevelOf(board.problem, base));
  const items = pairs.items ?? base;
  const exact = least.exact && plain.exact && pairs.exact;
  return {
    items,
    ...measure(board.problem, items),
    pairLevel: pairLevelOf(board.problem, items),
    gap: exact ? null : { worstAtLeast: least.atLeast, pairLevelAtLeast: pairs.atLeast },
    states: stateLimit - Math.max(0, board.statesLeft),
  };
}

interface LeastWorst {
  readonly worst: number;
  readonly atLeast: number;
  readonly exact: boolean;
  readonly exploration: Exploration;
}

/** Returns the least worst deviation of any sequence, from the smallest of a ladder of caps that leaves one. */
function leastWorst(board: Board, around: boolean): LeastWorst | null {
  const { denominator, carried } = board.problem;
  const start = Math.max(0, ...(carried ?? []).map(Math.abs));
  const free = 1 - 1 / Math.max(2, 2 * board.items - 2);
  for (const cap of [free, ...CAPS]) {
    const worst = Math.floor(start + cap * denominator);
    const found = explored(board, { worst, pair: null, around, beam: null });
    if (!found) continue;
    const reached = leastClosing(found.exploration);
    return { worst: reached, atLeast: found.exact ? reached : lowestPossible(board), ...found };
  }
  return null;
}

function leastClosing(exploration: Exploration): number {
  const last = exploration.layers[exploration.layers.length - 1];
  return exploration.closes.reduce(
    (least, closed, state) => (closed ? Math.min(least, last?.worst[state] ?? 0) : least),
    Number.POSITIVE_INFINITY,
  );
}

/** Returns a bound that no sequence beats: the farthest that any item's due is from a whole number. */
function lowestPossible(board: Board): number {
  const { rates, denominator, carried } = board.problem;
  let bound = 0;
  for (let prefix = 1; prefix <= board.length; prefix++) {
    rates.forEach((rate, item) => {
      const due = prefix * rate - (carried?.[item] ?? 0);
      const over = ((due % denominator) + denominator) % denominator;
      bound = Math.max(bound, Math.min(over, denominator - over));
    });
  }
  return bound;
}

function beamOf({ length }: Board): number {
  return Math.min(BEAM.most, Math.max(BEAM.least, Math.floor(BEAM.states / length)));
}

/** Explores all states, or the best of each layer where the limit is reached. */
function explored(
  board: Board,
  bounds: Parameters<typeof explore>[1],
): { readonly exploration: Exploration; readonly exact: boolean } | null {
  if (bounds.beam === null && board.statesLeft > 0) {
    const all = explore(board, bounds);
    if (all === null) return null;
    if (all !== 'exhausted') return { exploration: all, exact: true };
  }
  const beam = beamOf(board);
  board.statesLeft = beam * (board.length + 1) * board.items;
  const some = explore(board, { ...bounds, beam });
  board.statesLeft = 0;
  return some === null || some === 'exhausted' ? null : { exploration: some, exact: false };
}

interface BetterPairs {
  /** null: none was found under the level. */
  readonly items: readonly number[] | null;
  /** Whether all lower levels are shown to have none, and this sequence to be the best of its level. */
  readonly exact: boolean;
  readonly atLeast: number;
}

/** Returns the best sequence of the lowest pair level under `level` that has one. */
function betterPairs(board: Board, least: LeastWorst, around: boolean, level: number): BetterPairs {
  const pairing = board.problem.pairing;
  if (!pairing || board.groups < 2) return { items: null, exact: true, atLeast: level };
  const unit = pairing.denominator * board.problem.denominator;
  let atLeast = 1;
  let proven = true;
  for (let tried = 1; tried < level; tried++) {
    const pair = Math.floor(((tried + 1e-6) * unit) / 2);
    const found = explored(board, { worst: least.worst, pair, around, beam: null });
    if (found) return { items: readOff(board, found.exploration), exact: found.exact && proven, atLeast };
    proven &&= board.statesLeft > 0;
    if (proven) atLeast = tried + 1;
  }
  return { items: null, exact: proven, atLeast };
}

/** Returns the first sequence with the least sum of squares among those explored. */
function readOff(board: Board, { layers, closes }: Exploration): number[] {
  const toGo = closes.map((closed) => (closed ? 0 : Number.POSITIVE_INFINITY));
  const ahead: number[][] = [];
  ahead[board.length] = toGo;
  for (let place = board.length - 1; place >= 0; place--) {
    const [layer, next] = [layers[place], layers[place + 1]];
    if (layer && next) ahead[place] = leastToGo(board.items, layer, next, ahead[place + 1] ?? []);
  }
  const items: number[] = [];
  let state = 0;
  for (let place = 0; place < board.length; place++) {
    const [layer, next] = [layers[place], layers[place + 1]];
    if (!layer || !next) break;
    const goal = ahead[place]?.[state] ?? 0;
    const item = firstReaching(board.items, layer, next, ahead[place + 1] ?? [], state, goal);
    items.push(item);
    state = layer.next[state * board.items + item] ?? 0;
  }
  return items;
}

function leastToGo(items: number, layer: Layer, next: Layer, ahead: readonly number[]): number[] {
  const toGo: number[] = [];
  for (let state = 0; state < layer.size; state++) {
    let least = Number.POSITIVE_INFINITY;
    for (let item = 0; item < items; item++) least = Math.min(least, through(items, layer, next, ahead, state, item));
    toGo.push(least);
  }
  return toGo;
}

function through(
  items: number,
  layer: Layer,
  next: Layer,
  ahead: readonly number[],
  state: number,
  item: number,
): number {
  const child = layer.next[state * items + item] ?? -1;
  return child < 0 ? Number.POSITIVE_INFINITY : (next.cost[child] ?? 0) + (ahead[child] ?? Number.POSITIVE_INFINITY);
}

function firstReaching(
  items: number,
  layer: Layer,
  next: Layer,
  ahead: readonly number[],
  state: number,
  goal: number,
): number {
  for (let item = 0; item < items; item++) if (through(items, layer, next, ahead, state, item) === goal) return item;
  throw new Error('a sequence that was counted cannot be read off');
}

/** Returns the worst deviation and the sum of squares of a sequence. */
function measure(
  problem: EvenProblem,
  items: readonly number[],
): { readonly worst: number; readonly sumOfSquares: number } {
  const deviation = problem.rates.map((_, item) => problem.carried?.[item] ?? 0);
  let worst = deviation.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  let sumOfSquares = 0;
  for (const placed of items) {
    deviation.forEach((value, item) => {
      const now = value - (problem.rates[item] ?? 0) + (item === placed ? problem.denominator : 0);
      deviation[item] = now;
      worst = Math.max(worst, Math.abs(now));
      sumOfSquares += now * now;
    });
  }
  return { worst, sumOfSquares };
}
