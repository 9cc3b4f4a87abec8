import fc from 'fast-check';
import { distance } from 'fastest-levenshtein';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestSpelling } from '../../../src/basics/nearest-spelling.ts';

/** Plain recursion over the definition, for short words. */
function byDefinition(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const [x, y] = [a.slice(0, -1), b.slice(0, -1)];
  const least = Math.min(
    byDefinition(x, b) + 1,
    byDefinition(a, y) + 1,
    byDefinition(x, y) + (a.at(-1) === b.at(-1) ? 0 : 1),
  );
  const swapped = a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1);
  return swapped ? Math.min(least, byDefinition(a.slice(0, -2), b.slice(0, -2)) + 1) : least;
}

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 });

describe('the distance of two words', () => {
  it('is that of its definition', () => {
    fc.assert(
      fc.property(word, word, (a, b) => editDistance(a, b) === byDefinition(a, b)),
      { seed: 3, numRuns: 300 },
    );
  });

  it('is at most that without swaps, and at least half of it', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        const [own, other] = [editDistance(a, b), distance(a, b)];
        return own <= other && 2 * own >= other;
      }),
      { seed: 4 },
    );
  });

  it('counts a swap of neighbours once', () => {
    expect(editDistance('dail', 'dial')).toBe(1);
    expect(distance('dail', 'dial')).toBe(2);
  });
});

describe('the nearest spelling', () => {
  it.each([
    ['enclosurs', ['enclosures', 'hardware'], 'enclosures'],
    ['Pin_Dial', ['pin-dial', 'fogger'], 'pin-dial'],
    ['ot', ['on', 'to'], 'on'],
    ['mist', ['mists', 'misting'], 'mists'],
    ['xyz', ['enclosures'], null],
    ['led', ['ceramic'], null],
    ['', ['a'], 'a'],
  ] as const)('of %s among %j is %s', (wrong, candidates, expected) => {
    expect(nearestSpelling(wrong, candidates)).toBe(expected);
  });
});
