import { describe, expect, it } from 'vitest';
import { FERGUSON_ZONES, FERGUSON_ZONES_SOURCE, fergusonZone } from '../../../src/science/ferguson-zones.ts';

/**
 * Ranges of Baines et al. (2016) Table 1 as a secondary copy prints them (opened; the table itself is recalled).
 * Ferguson et al. (2010), abstract (opened): the medians of exposure run from 0.35 in zone 1 to 3.1 in zone 4.
 */
const TABLE: readonly (readonly [zone: number, mean: readonly number[], max: readonly number[]])[] = [
  [1, [0, 0.7], [0.6, 1.4]],
  [2, [0.7, 1.0], [1.1, 3.0]],
  [3, [1.0, 2.6], [2.9, 7.4]],
  [4, [2.6, 3.5], [4.5, 9.5]],
];

describe('Ferguson zones', () => {
  it.each(TABLE)('zone %i has the ranges of the table', (zone, mean, max) => {
    expect(fergusonZone(zone)).toEqual({ fergusonZone: zone, mean, max });
  });

  it('hold the published medians of the least and the greatest exposure', () => {
    const [first, last] = [FERGUSON_ZONES[0], FERGUSON_ZONES[3]];
    expect(((first?.mean[0] ?? 0) + (first?.mean[1] ?? 0)) / 2).toBeCloseTo(0.35, 10);
    expect(last?.mean[0]).toBeLessThanOrEqual(3.1);
    expect(last?.mean[1]).toBeGreaterThanOrEqual(3.1);
  });

  it('join without a gap in the mean, and name both works', () => {
    for (const [index, zone] of FERGUSON_ZONES.slice(1).entries())
      expect(zone.mean[0]).toBe(FERGUSON_ZONES[index]?.mean[1]);
    expect(FERGUSON_ZONES_SOURCE).toMatch(/Ferguson.*2010.*Baines.*2016/);
  });

  it.each([0, 5, 1.5, Number.NaN])('know no zone %d', (zone) => expect(fergusonZone(zone)).toBeNull());
});
