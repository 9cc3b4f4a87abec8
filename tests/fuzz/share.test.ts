/** A small share of the long run (`npm run fuzz`), and that a campaign sees what is wrong. */
import { pbkdf2Sync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { campaign, type Target } from './campaign.ts';
import { earlierPlans } from './earlier-plans.ts';
import { households } from './households.ts';
import { profiles } from './profiles.ts';
import { readings } from './readings.ts';
import { requests } from './requests.ts';

const SEED = 2027;
const ALL: readonly (readonly [Target, number])[] = [
  [households, 40],
  [profiles, 24],
  [earlierPlans, 24],
  [readings, 60],
  [requests, 120],
];

function upTo(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}

describe('damaged input', () => {
  it.each(ALL.map(([target, count]) => ({ name: target.name, target, count })))(
    '$name: no fault',
    async ({ target, count }) => {
      const { faults, endings, cases } = await campaign(target, SEED, upTo(count), {
        slowMs: Number.POSITIVE_INFINITY,
      });
      expect(faults).toEqual([]);
      expect(cases).toBe(count);
      expect(Object.keys(endings).length).toBeGreaterThan(1);
    },
  );

  it('is told by its case, and what throws or takes too long is a fault', async () => {
    const { faults, endings } = await campaign(
      {
        name: 'planted',
        share: 0,
        run: (_draw, index) => {
          if (index === 1) throw new Error('planted');
          if (index === 2) pbkdf2Sync('planted', 'salt', 200_000, 64, 'sha512');
          return 'well';
        },
      },
      SEED,
      upTo(4),
      { slowMs: 30 },
    );
    expect(faults.map(({ index }) => index)).toEqual([1, 2]);
    expect(faults[0]?.what).toContain('planted');
    expect(endings).toEqual({ well: 3 });
  });
});
