import { describe, expect, it } from 'vitest';
import { autoWords } from '../../../../src/emit/text/auto-words.ts';
import type { AutoPlaces } from '../../../../src/plan/plan.ts';

const LAMPS: AutoPlaces = {
  kind: 'lamps',
  placed: ['fern/day', 'fern/grow', 'moss/day'],
  isProven: false,
  levels: [
    { name: 'worst-error', value: 36.8, atLeast: 34.2 },
    { name: 'errors-a-day', value: 52.04, atLeast: 52.04 },
  ],
};
const PUMPS: AutoPlaces = {
  kind: 'pumps',
  placed: ['fern'],
  isProven: true,
  levels: [{ name: 'worst-shortfall', value: 0.3, atLeast: 0.3 }],
};

describe('what auto chose', () => {
  it.each([
    [
      'lamps' as const,
      'fern/grow',
      '  auto chose that together with 2 other lamps; a better arrangement may be left\n    the worst error is 36.8 min, and none is under 34.2 min\n    the sum of all errors of a day is 52.04 min, the least there is\n',
    ],
    ['pumps' as const, 'fern', '  auto chose that; no arrangement is better\n'],
    ['lamps' as const, 'fern/sun', ''],
    ['pumps' as const, 'moss', ''],
  ])('of %s: %s', (kind, id, said) => {
    expect(autoWords({ auto: [LAMPS, PUMPS] }, kind, id)).toBe(said);
    expect(autoWords({}, kind, id)).toBe('');
  });
});
