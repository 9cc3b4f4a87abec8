/**
 * Calcium and phosphorus of feeders as published, mg per kg as fed. Rows marked `memory` were recalled from the named paper and not
 * read in it: they are shown, never asserted.
 */
export interface CompositionRow {
  readonly feeder: string;
  readonly item: string;
  readonly calciumMgPerKg: number;
  readonly phosphorusMgPerKg: number;
  /** Uncertainty of the calcium as a share of it: a value printed with one significant digit. */
  readonly calciumSpread: number;
  readonly source: string;
  readonly provenance: 'opened' | 'memory';
}

const STAHL_2010 =
  'Stahl S., Donoghue S. (2010) Nutrition of Reptiles, Small Animal Clinical Nutrition 5th ed., Table 71-6';
const FINKE_2002 = 'Finke M.D. (2002) Zoo Biology 21:269-285';
const FINKE_2013 = 'Finke M.D. (2013) Zoo Biology 32:27-36';

function opened(feeder: string, item: string, calciumMgPerKg: number, phosphorusMgPerKg: number): CompositionRow {
  const row = { feeder, item, calciumMgPerKg, phosphorusMgPerKg };
  return { ...row, calciumSpread: 0.5, source: STAHL_2010, provenance: 'opened' };
}

function recalled(
  feeder: string,
  item: string,
  calciumMgPerKg: number,
  phosphorusMgPerKg: number,
  source = FINKE_2002,
): CompositionRow {
  return { feeder, item, calciumMgPerKg, phosphorusMgPerKg, calciumSpread: 0.5, source, provenance: 'memory' };
}

export const FEEDER_COMPOSITION: readonly CompositionRow[] = [
  opened('cricket', 'Acheta domestica, commercial cricket', 380, 4940),
  opened('cricket', 'house cricket', 300, 2700),
  opened('waxworm', 'Galleria mellonella larvae', 210, 1890),
  opened('mealworm', 'Tenebrio molitor larvae', 210, 2520),
  recalled('cricket', 'house cricket adult', 407, 2950),
  recalled('cricket', 'house cricket nymph', 275, 2520),
  recalled('mealworm', 'mealworm larvae', 169, 2850),
  recalled('superworm', 'superworm larvae', 177, 2370),
  recalled('waxworm', 'waxworm larvae', 243, 1950),
  recalled('earthworm', 'earthworm', 444, 1590),
  recalled('soldier-fly', 'black soldier fly larvae', 9340, 3560, FINKE_2013),
];

/** Roaches are published as a range of ratios only. Source: Kulma M. et al. (2016) J. Anim. Feed Sci. 25(4):354-360, abstract read. */
export const ROACH_RATIO = {
  feeder: 'roach',
  low: 1 / 23.5,
  high: 1 / 1.9,
  source: 'Kulma M. et al. (2016) J. Anim. Feed Sci. 25(4):354-360',
} as const;

/** What a diet should hold. Source: a veterinary handout (rev. 6/96), "1 to 2 parts calcium to 1 part phosphorus", in agreement with the MSD Veterinary Manual's table. */
export const WANTED_RATIO = { low: 1, high: 2 } as const;

const WORDS: readonly (readonly [string, RegExp])[] = [
  ['soldier-fly', /soldier|\bbsf/],
  ['superworm', /superworm|zophobas/],
  ['mealworm', /mealworm|tenebrio/],
  ['waxworm', /wax-?worm|wax-?moth|galleria/],
  ['earthworm', /earthworm|nightcrawler/],
  ['roach', /roach|dubia|lateralis|discoid/],
  ['cricket', /cricket|acheta/],
];

/** Returns the name under which the tables know a feeder, or null. */
export function tableName(feederId: string): string | null {
  return WORDS.find(([, word]) => word.test(feederId.toLowerCase()))?.[0] ?? null;
}
