import { describe, expect, it } from 'vitest';
import { runLength } from '../../../../src/plan/words/run-length.ts';

describe('the length of a run', () => {
  it.each([
    [5, '5 s'],
    [90, '90 s'],
    [119, '119 s'],
    [120, '2 min'],
    [135, '2 min 15 s'],
    [7199, '119 min 59 s'],
    [7200, '2 h'],
    [9000, '2 h 30 min'],
  ])('of %i s is said as %s', (seconds, said) => {
    expect(runLength(seconds)).toBe(said);
  });
});
