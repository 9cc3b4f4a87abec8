import { describe, expect, it } from 'vitest';
import { compiledHousehold, planIn } from '../../compiled-household.ts';
import { PROFILE_IDS } from '../../shipped-profiles.ts';
import { ORDINARY, ordinaryHousehold } from './households.ts';

describe('every shipped profile in an ordinary room and an ordinary enclosure', () => {
  it('has a household here', () => {
    expect(ORDINARY.map(({ species }) => species).sort()).toEqual(PROFILE_IDS);
  });

  it.each(ORDINARY)('$species has a shortfall of 0 all year', (one) => {
    const [mist] = planIn(compiledHousehold(ordinaryHousehold(one))).misting;
    const worst = mist?.sets.flatMap(({ conditions }) => conditions.map(({ shortfall }) => shortfall)) ?? [];
    const entries = mist?.sets[0]?.entries.map(({ at, seconds }) => `${at} ${seconds} s`).join(', ');
    const water = mist?.sets[0]?.conditions[0]?.predicted.waterMlPerDay;
    console.info(
      `${one.species}: worst ${Math.max(...worst)}, ${mist?.sets.length} set(s), ${entries}, ${water} mL a day`,
    );
    expect(mist?.sets.flatMap(({ shortfalls }) => shortfalls)).toEqual([]);
    expect(Math.max(...worst)).toBe(0);
  });
});
