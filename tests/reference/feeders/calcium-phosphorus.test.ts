import { describe, expect, it } from 'vitest';
import {
  carbonateGPerKg,
  labelledMinerals,
  mixRatio,
  publishedMinerals,
} from '../../../src/science/calcium-phosphorus.ts';
import { FEEDER_COMPOSITION, ROACH_RATIO, tableName, WANTED_RATIO } from '../../../src/science/feeder-composition.ts';

/** Stahl S., Donoghue S. (2010), Small Animal Clinical Nutrition 5th ed., Table 71-6 (opened): energy as fed, and minerals per kcal. */
const TABLE_71_6 = [
  { feeder: 'cricket', kcalPerG: 1.9, calciumMgPerKcal: 0.2, phosphorusMgPerKcal: 2.6, ratio: 0.077 },
  { feeder: 'cricket', kcalPerG: 1.0, calciumMgPerKcal: 0.3, phosphorusMgPerKcal: 2.7, ratio: 0.111 },
  { feeder: 'waxworm', kcalPerG: 2.1, calciumMgPerKcal: 0.1, phosphorusMgPerKcal: 0.9, ratio: 0.111 },
  { feeder: 'mealworm', kcalPerG: 2.1, calciumMgPerKcal: 0.1, phosphorusMgPerKcal: 1.2, ratio: 0.083 },
] as const;

describe('feeder composition as published', () => {
  it.each(TABLE_71_6)(
    '$feeder with $kcalPerG kcal/g',
    ({ feeder, kcalPerG, calciumMgPerKcal, phosphorusMgPerKcal, ratio }) => {
      const calcium = kcalPerG * 1000 * calciumMgPerKcal;
      const row = FEEDER_COMPOSITION.find(
        (each) =>
          each.feeder === feeder && Math.abs(each.calciumMgPerKg - calcium) < 0.5 && each.provenance === 'opened',
      );
      expect(row?.phosphorusMgPerKg).toBeCloseTo(kcalPerG * 1000 * phosphorusMgPerKcal, 6);
      expect((row?.calciumMgPerKg ?? 0) / (row?.phosphorusMgPerKg ?? 1)).toBeCloseTo(ratio, 3);
      expect(row?.calciumSpread).toBe(0.5);
    },
  );

  it('rows from memory are marked in what is shown', () => {
    expect(publishedMinerals('superworm')?.fromMemory).toBe(true);
    expect(publishedMinerals('superworm')?.sources.join()).toContain('from memory');
    expect(publishedMinerals('cricket')?.fromMemory).toBe(false);
  });

  it('roaches lie between 1:23.5 and 1:1.9 (Kulma M. et al. 2016, abstract opened)', () => {
    expect([1 / ROACH_RATIO.low, 1 / ROACH_RATIO.high].map((each) => Math.round(each * 10) / 10)).toEqual([23.5, 1.9]);
  });

  it.each([
    ['house-cricket', 'cricket'],
    ['small-mealworms', 'mealworm'],
    ['black-soldier-fly', 'soldier-fly'],
    ['dubia', 'roach'],
    ['stick-insect', null],
  ])('%s is looked up as %s', (id, name) => expect(tableName(id)).toBe(name));
});

describe('the ratio of a mix', () => {
  it.each([
    [1, 6.35],
    [1.5, 10.03],
    [2, 13.72],
  ])('calcium carbonate that brings 407 mg Ca and 2950 mg P to %d:1 (mass balance, computed)', (ratio, grams) => {
    expect(Math.abs(carbonateGPerKg(407, 2950, ratio) / grams - 1)).toBeLessThan(0.01);
    const added = carbonateGPerKg(407, 2950, ratio) * 400.4;
    expect((407 + added) / 2950).toBeCloseTo(ratio, 9);
  });

  it('is of the masses, not the mean of the ratios', () => {
    const ratio = mixRatio([
      { share: 0.5, minerals: labelledMinerals(10, 5) },
      { share: 0.5, minerals: labelledMinerals(1, 10) },
    ]);
    expect(ratio?.middle).toBeCloseTo(11 / 15, 12);
    expect(ratio?.low).toBeCloseTo(11 / 15, 12);
  });

  it('spreads with the rows, and no published insect but soldier fly larvae reaches 1:1 undusted', () => {
    for (const name of ['cricket', 'mealworm', 'waxworm', 'superworm', 'earthworm']) {
      const minerals = publishedMinerals(name);
      const ratio = minerals && mixRatio([{ share: 1, minerals }]);
      expect(ratio?.high ?? 9).toBeLessThan(WANTED_RATIO.low);
      expect(ratio?.low ?? 9).toBeLessThan(ratio?.middle ?? 0);
    }
    const larvae = publishedMinerals('soldier-fly');
    expect(larvae && mixRatio([{ share: 1, minerals: larvae }])?.middle).toBeGreaterThan(WANTED_RATIO.high);
  });

  it('nothing known, no ratio', () => {
    expect(mixRatio([])).toBeNull();
    expect(publishedMinerals('stick-insect')).toBeNull();
  });
});
