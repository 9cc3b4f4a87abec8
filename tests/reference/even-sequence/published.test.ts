import { describe, expect, it } from 'vitest';
import { evenSequence } from '../../../src/science/even-sequence.ts';
import { evenWeekdays } from '../../../src/solve/feeding/feed-days.ts';
import {
  PREFIX_OPTIMA,
  PREFIX_PROVENANCE,
  PREFIX_SOURCE,
  RHYTHM_PROVENANCE,
  RHYTHM_SOURCE,
  RHYTHMS,
} from './published.ts';

function solved(demands: readonly number[], denominator: number) {
  const sequence = evenSequence({ rates: demands, denominator, counts: demands });
  if (!sequence) throw new Error('no sequence');
  return sequence;
}

describe(`even prefixes against the optima of ${PREFIX_SOURCE} (${PREFIX_PROVENANCE})`, () => {
  it.each(PREFIX_OPTIMA)('demands $demands', ({ demands, worst, squares }) => {
    const total = demands.reduce((all, demand) => all + demand, 0);
    const found = solved(demands, total);
    expect(found.worst * worst[1]).toBe(worst[0] * total);
    expect(found.sumOfSquares * squares[1]).toBe(squares[0] * total * total);
    expect(found.gap).toBeNull();
  });
});

describe('the bound of Tijdeman R. (1980) Discrete Mathematics 32:323-330 (from memory): no prefix more than 1 - 1/(2n - 2) off', () => {
  it('holds for every demand of two to four items up to 12 places, and for five items up to 9', () => {
    let tried = 0;
    let nearest = 0;
    const check = (demands: readonly number[]) => {
      const total = demands.reduce((all, demand) => all + demand, 0);
      const bound = 1 - 1 / (2 * demands.length - 2);
      const worst = solved(demands, total).worst / total;
      expect(worst, `demands ${demands}`).toBeLessThanOrEqual(bound + 1e-12);
      nearest = Math.max(nearest, worst / bound);
      tried++;
    };
    for (const [items, most] of [
      [2, 12],
      [3, 12],
      [4, 12],
      [5, 9],
    ] as const)
      for (const demands of partitions(items, most)) check(demands);
    console.info(`Tijdeman's bound: ${tried} demands, the nearest reaches ${(100 * nearest).toFixed(1)} % of it`);
    expect(tried).toBeGreaterThan(150);
    expect(nearest).toBeGreaterThan(0.9);
  });
});

/** Non-increasing demands with a sum of at most so much. */
function partitions(items: number, most: number, largest = most): readonly (readonly number[])[] {
  if (items === 0) return [[]];
  const out: (readonly number[])[] = [];
  for (let first = Math.min(largest, most - items + 1); first >= 1; first--)
    for (const rest of partitions(items - 1, most - first, first)) out.push([first, ...rest]);
  return out;
}

describe(`even gaps against the rhythms of ${RHYTHM_SOURCE} (${RHYTHM_PROVENANCE})`, () => {
  it.each(RHYTHMS)('two items, $onsets in $places: gaps $pattern', ({ onsets, places, pattern }) => {
    const { items } = solved([onsets, places - onsets], places);
    const found = items.map((item) => (item === 0 ? 'x' : '.')).join('');
    expect(rotations(pattern)).toContain(found);
    expect(gapsOf(found).toSorted((a, b) => a - b)).toEqual(gapsOf(pattern).toSorted((a, b) => a - b));
  });

  it('the weekdays of a feed have the largest gap of the rhythm over 7, and no set of days has a smaller one', () => {
    const largest = [0, 7, 4, 3, 2, 2, 2, 1];
    largest.forEach((gap, times) => {
      if (times === 0) return;
      const days = evenWeekdays(times);
      expect(days).toHaveLength(times);
      const found = gapsOf(Array.from({ length: 7 }, (_, day) => (days.includes(day) ? 'x' : '.')).join(''));
      expect(Math.max(...found)).toBe(gap);
      expect(gap).toBe(Math.ceil(7 / times));
    });
  });

  it('even prefixes are another aim: of demands 2, 1, 1 the first stands after gaps 3 and 1, where the rhythm has 2 and 2', () => {
    const { items } = solved([2, 1, 1], 4);
    expect(items).toEqual([0, 1, 2, 0]);
    expect(gapsOf(items.map((item) => (item === 0 ? 'x' : '.')).join(''))).toEqual([3, 1]);
    const rhythm = solved([2, 2], 4).items;
    expect(gapsOf(rhythm.map((item) => (item === 0 ? 'x' : '.')).join(''))).not.toEqual([3, 1]);
  });
});

function rotations(pattern: string): readonly string[] {
  return Array.from({ length: pattern.length }, (_, by) => pattern.slice(by) + pattern.slice(0, by));
}

function gapsOf(pattern: string): number[] {
  const onsets = [...pattern].flatMap((mark, place) => (mark === 'x' ? [place] : []));
  return onsets.map((onset, i) => (onsets[i + 1] ?? (onsets[0] ?? 0) + pattern.length) - onset);
}
