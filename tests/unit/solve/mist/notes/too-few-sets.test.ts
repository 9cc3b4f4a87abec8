import { describe, expect, it } from 'vitest';
import { tooFewSets } from '../../../../../src/solve/mist/notes/too-few-sets.ts';

describe('sets of mists that are too few, in words', () => {
  it.each([
    [0.69, 0.45, 'miss their humidity targets by 6.9 points', 'miss them by 4.5 points'],
    [0.1, 0, 'miss their humidity targets by 1 point', 'meet everything'],
    [1000, 0.3, 'exceed 1 limit', 'miss them by 3 points'],
    [
      2000.5,
      1000.25,
      'exceed 2 limits and miss their humidity targets by 5 points',
      'exceed 1 limit and miss them by 2.5 points',
    ],
  ])('%f and %f', (worst, alone, is, could) => {
    expect(tooFewSets(worst, alone)).toEqual({ worst: is, alone: could });
  });

  it.each([
    [0, 0],
    [0.004, 0],
    [0.45, 0.45],
    [0.451, 0.449],
    [0.45, 0.41],
    [1001.52, 1001.7],
    [1.52, 1.7],
    [1000.2, 1000.2],
  ])('%f and %f are nothing to speak of', (worst, alone) => {
    expect(tooFewSets(worst, alone)).toBeNull();
  });
});
