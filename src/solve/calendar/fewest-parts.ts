/**
 * The smallest folding, by exhaustive search. Every part lies within a largest one (a rule reaching as far as its exceptions
 * allow), so the search covers the dates with largest ones, fewest first, and then shares out the dates that several hold.
 * Sets of up to 40 dates are two words of 20 bits.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { largestSets } from './largest-sets.ts';
import type { Parts } from './longest-parts.ts';
import type { Part } from './rule-steps.ts';
import { shareOut } from './share-out.ts';

/** Where a search has looked at so many nodes, it gives up, and the bound says how much is proven. */
const MOST_NODES = 400_000;
/** Sharing out a cover takes about as long as so many nodes. */
const NODES_A_SHARING = 20;
const WORD = 20;

interface Search {
  readonly dates: readonly EpochDay[];
  readonly low: Int32Array;
  readonly high: Int32Array;
  /** Positions of the sets that hold a date. */
  readonly holding: readonly (readonly number[])[];
  /** Left-over dates that so many further parts cannot cover, however they are shared out. */
  readonly hopeless: Map<number, number>;
  readonly skipsDominated: boolean;
  nodes: number;
  /** Covers found whose shared dates no sharing satisfies. */
  unshared: number;
  /** A sharing was too large to try out: nothing is proven of what it was tried for. */
  gaveUp: boolean;
}

/** Returns a folding with the fewest parts of at most 40 dates; `known` is one to improve on, with a bound to start from. */
export function fewestParts(dates: readonly EpochDay[], known: Parts): Parts {
  const first = searchOf(dates, true);
  const second = { ...first, skipsDominated: false };
  for (let most = known.atLeast; most < known.parts.length; most += 1) {
    const parts = coverWith(first, most) ?? (first.unshared > 0 ? coverWith(second, most) : null);
    if (parts) return { parts, atLeast: most };
    if (unproven(first) || unproven(second)) return { parts: known.parts, atLeast: most };
  }
  return { parts: known.parts, atLeast: known.parts.length };
}

function unproven(search: Search): boolean {
  return search.nodes > MOST_NODES || search.gaveUp;
}

function searchOf(dates: readonly EpochDay[], skipsDominated: boolean): Search {
  const sets = largestSets(dates);
  const low = Int32Array.from(sets, (set) => bitsOf(set, 0));
  const high = Int32Array.from(sets, (set) => bitsOf(set, WORD));
  const holding = dates.map((_, index) => sets.flatMap((set, position) => (set.includes(index) ? [position] : [])));
  return { dates, low, high, holding, hopeless: new Map(), skipsDominated, nodes: 0, unshared: 0, gaveUp: false };
}

function bitsOf(indexes: readonly number[], from: number): number {
  return indexes.reduce(
    (bits, index) => (index >= from && index < from + WORD ? bits | (1 << (index - from)) : bits),
    0,
  );
}

function coverWith(search: Search, most: number): readonly Part[] | null {
  const all = search.dates.map((_, index) => index);
  return cover(search, bitsOf(all, 0), bitsOf(all, WORD), most, []);
}

function cover(search: Search, low: number, high: number, left: number, chosen: number[]): readonly Part[] | null {
  search.nodes += 1;
  if (low === 0 && high === 0) return shared(search, chosen);
  const key = high * 2 ** WORD + low;
  if (left === 0 || search.nodes > MOST_NODES || (search.hopeless.get(key) ?? 0) >= left) return null;
  const unshared = search.unshared;
  const branches = branchesOf(search, low, high, left);
  for (const set of branches) {
    const parts = cover(search, low & ~(search.low[set] ?? 0), high & ~(search.high[set] ?? 0), left - 1, [
      ...chosen,
      set,
    ]);
    if (parts) return parts;
  }
  if (search.unshared === unshared && search.nodes <= MOST_NODES) search.hopeless.set(key, left);
  return null;
}

function shared(search: Search, chosen: readonly number[]): readonly Part[] | null {
  const sets = chosen.map((set) =>
    search.dates.map((_, index) => index).filter((index) => search.holding[index]?.includes(set)),
  );
  const parts = shareOut(search.dates, sets);
  if (parts === null || parts === 'unknown') search.unshared += 1;
  search.nodes += NODES_A_SHARING;
  if (parts === 'unknown') search.gaveUp = true;
  return parts === 'unknown' ? null : parts;
}

/** Returns the sets to try for the date that fewest hold, largest first; none where the rest needs more than `left` parts. */
function branchesOf(search: Search, low: number, high: number, left: number): readonly number[] {
  let [needed, hardest, fewest] = [0, -1, Number.POSITIVE_INFINITY];
  for (let index = 0; index < search.dates.length; index += 1) {
    if (!holds(low, high, index)) continue;
    let [largest, count] = [1, 0];
    for (const set of search.holding[index] ?? []) {
      const size = overlap(search, set, low, high);
      if (size > largest) largest = size;
      if (size > 1) count += 1;
    }
    needed += 1 / largest;
    if (count < fewest) [hardest, fewest] = [index, count];
  }
  if (needed > left + 1e-9) return [];
  const sized = (search.holding[hardest] ?? []).map((set) => ({ set, size: overlap(search, set, low, high) }));
  const sorted = sized.sort((a, b) => b.size - a.size || a.set - b.set).map(({ set }) => set);
  return search.skipsDominated ? undominated(search, sorted, low, high) : sorted;
}

function undominated(search: Search, sorted: readonly number[], low: number, high: number): readonly number[] {
  const kept: number[] = [];
  for (const set of sorted) if (!kept.some((other) => contains(search, other, set, low, high))) kept.push(set);
  return kept;
}

function contains(search: Search, larger: number, smaller: number, low: number, high: number): boolean {
  const missingLow = (search.low[smaller] ?? 0) & low & ~(search.low[larger] ?? 0);
  const missingHigh = (search.high[smaller] ?? 0) & high & ~(search.high[larger] ?? 0);
  return missingLow === 0 && missingHigh === 0;
}

function holds(low: number, high: number, index: number): boolean {
  return ((index < WORD ? low >> index : high >> (index - WORD)) & 1) === 1;
}

function overlap(search: Search, set: number, low: number, high: number): number {
  return bitCount((search.low[set] ?? 0) & low) + bitCount((search.high[set] ?? 0) & high);
}

function bitCount(word: number): number {
  const pairs = word - ((word >> 1) & 0x55555);
  const fours = (pairs & 0x33333) + ((pairs >> 2) & 0x33333);
  const eights = (fours + (fours >> 4)) & 0xf0f0f;
  return ((eights * 0x10101) >> 16) & 0x1f;
}
