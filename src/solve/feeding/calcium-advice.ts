/** The calcium to phosphorus advisory of each enclosure that is fed insects, with its spread and its limits. */
import type { Assumption } from '../../plan/plan.ts';
import type { Care, CareEnclosure, Feeder } from '../../resolve/care.ts';
import {
  carbonateGPerKg,
  labelledMinerals,
  type Minerals,
  mixRatio,
  publishedMinerals,
} from '../../science/calcium-phosphorus.ts';
import { ROACH_RATIO, tableName, WANTED_RATIO } from '../../science/feeder-composition.ts';

interface KnownFeeder {
  readonly feeder: Feeder;
  readonly share: number;
  readonly minerals: Minerals;
}

/** Returns one record an enclosure with insects of known composition, and one for roaches, of which only ratios are published. */
export function calciumAssumptions(care: Care): readonly Assumption[] {
  return care.enclosures.flatMap((enclosure) => {
    const feeders = enclosure.feeders.filter(({ food, share }) => food === 'insects' && share > 0);
    return [...mixRecord(enclosure, feeders), ...roachRecord(enclosure, feeders)];
  });
}

function mixRecord(enclosure: CareEnclosure, feeders: readonly Feeder[]): readonly Assumption[] {
  const known = feeders.flatMap((feeder): KnownFeeder[] => {
    const minerals = mineralsOf(feeder);
    return minerals ? [{ feeder, share: feeder.share, minerals }] : [];
  });
  const ratio = mixRatio(known);
  if (!ratio) return [];
  const unknown = feeders.filter((feeder) => !known.some((each) => each.feeder === feeder)).map(({ id }) => id);
  const sources = [...new Set(known.flatMap(({ minerals }) => minerals.sources))].toSorted();
  return [
    {
      path: `feeding.${enclosure.id}.calciumToPhosphorus`,
      value: [
        `about ${two(ratio.middle)} to 1 before dusting (${two(ratio.low)} to ${two(ratio.high)}); diets want ${WANTED_RATIO.low} to ${WANTED_RATIO.high} to 1`,
        ...(ratio.middle < WANTED_RATIO.low ? [shortfall(known)] : []),
        ...(unknown.length > 0 ? [`without ${unknown.join(', ')}, of which no composition is at hand`] : []),
      ].join('; '),
      source: `${sources.join('; ')}. Pieces are taken to weigh alike; feeders change with what they ate: on a high-calcium diet crickets rose from 0.17 to 0.40 in 24 h and lost it in a day's fast (Bah-Nelson I. et al. 2021, abstract read). An advisory, no prescription: ask your veterinarian`,
    },
  ];
}

function mineralsOf(feeder: Feeder): Minerals | null {
  const { calciumGPerKg, phosphorusGPerKg } = feeder;
  if (calciumGPerKg !== null && phosphorusGPerKg !== null) return labelledMinerals(calciumGPerKg, phosphorusGPerKg);
  const name = tableName(feeder.id);
  return name === null ? null : publishedMinerals(name);
}

/** What is missing to 1:1, as calcium carbonate by mass balance. */
function shortfall(known: readonly KnownFeeder[]): string {
  const total = known.reduce((all, { share }) => all + share, 0);
  const mean = (of: 'calciumMgPerKg' | 'phosphorusMgPerKg'): number =>
    known.reduce((all, { share, minerals }) => all + share * minerals[of].middle, 0) / total;
  const grams = carbonateGPerKg(mean('calciumMgPerKg'), mean('phosphorusMgPerKg'), WANTED_RATIO.low);
  return `by mass balance ${grams.toFixed(1)} g of calcium carbonate on a kilogram of feeders would make it 1 to 1, and how much of a dusting sticks is not known`;
}

function roachRecord(enclosure: CareEnclosure, feeders: readonly Feeder[]): readonly Assumption[] {
  const roaches = feeders.filter((feeder) => tableName(feeder.id) === ROACH_RATIO.feeder && !mineralsOf(feeder));
  if (roaches.length === 0) return [];
  return [
    {
      path: `feeding.${enclosure.id}.calciumToPhosphorus.roach`,
      value: `${roaches.map(({ id }) => id).join(', ')}: ${two(ROACH_RATIO.low)} to ${two(ROACH_RATIO.high)} to 1 before dusting`,
      source: ROACH_RATIO.source,
    },
  ];
}

function two(ratio: number): string {
  return ratio.toFixed(2);
}
