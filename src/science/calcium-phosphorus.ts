/**
 * Calcium to phosphorus of a rotation, by mass, from published composition or the keeper's own label values. An advisory: feeders
 * differ with what they ate, pieces are taken to weigh alike, and what sticks of a dusting is not known. It knows no vitamins.
 */
import { type CompositionRow, FEEDER_COMPOSITION } from './feeder-composition.ts';

export interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface Minerals {
  readonly calciumMgPerKg: Spread;
  readonly phosphorusMgPerKg: Spread;
  readonly sources: readonly string[];
  readonly fromMemory: boolean;
}

/**
 * Returns the published minerals of a feeder by its table name: the middle is the mean of the rows that were read in their source (of
 * those from memory where no other exists), the spread reaches over all rows; null for a feeder that no row names.
 */
export function publishedMinerals(tableName: string): Minerals | null {
  const rows = FEEDER_COMPOSITION.filter(({ feeder }) => feeder === tableName);
  const read = rows.filter(({ provenance }) => provenance === 'opened');
  const central = read.length > 0 ? read : rows;
  if (rows.length === 0) return null;
  return {
    calciumMgPerKg: {
      low: Math.min(...rows.map((row) => row.calciumMgPerKg * (1 - row.calciumSpread))),
      middle: mean(central, (row) => row.calciumMgPerKg),
      high: Math.max(...rows.map((row) => row.calciumMgPerKg * (1 + row.calciumSpread))),
    },
    phosphorusMgPerKg: {
      low: Math.min(...rows.map((row) => row.phosphorusMgPerKg)),
      middle: mean(central, (row) => row.phosphorusMgPerKg),
      high: Math.max(...rows.map((row) => row.phosphorusMgPerKg)),
    },
    sources: [
      ...new Set(rows.map(({ source, provenance }) => (provenance === 'memory' ? `${source} (from memory)` : source))),
    ],
    fromMemory: read.length === 0,
  };
}

function mean(rows: readonly CompositionRow[], value: (row: CompositionRow) => number): number {
  return rows.reduce((all, row) => all + value(row), 0) / rows.length;
}

/** Returns label values, g per kg, as minerals without a spread. */
export function labelledMinerals(calciumGPerKg: number, phosphorusGPerKg: number): Minerals {
  const exactly = (gPerKg: number): Spread => ({ low: gPerKg * 1000, middle: gPerKg * 1000, high: gPerKg * 1000 });
  return {
    calciumMgPerKg: exactly(calciumGPerKg),
    phosphorusMgPerKg: exactly(phosphorusGPerKg),
    sources: ['label values from the household file'],
    fromMemory: false,
  };
}

/**
 * Returns the ratio of a mix, calcium over phosphorus by mass: shares are of the weight, and need not sum to 1; null for an empty mix
 * or one without phosphorus. Low takes the least calcium over the most phosphorus, high the reverse.
 */
export function mixRatio(parts: readonly { readonly share: number; readonly minerals: Minerals }[]): Spread | null {
  const total = (of: 'calciumMgPerKg' | 'phosphorusMgPerKg', at: keyof Spread): number =>
    parts.reduce((all, { share, minerals }) => all + share * minerals[of][at], 0);
  if (total('phosphorusMgPerKg', 'low') <= 0) return null;
  return {
    low: total('calciumMgPerKg', 'low') / total('phosphorusMgPerKg', 'high'),
    middle: total('calciumMgPerKg', 'middle') / total('phosphorusMgPerKg', 'middle'),
    high: total('calciumMgPerKg', 'high') / total('phosphorusMgPerKg', 'low'),
  };
}

/** Calcium in calcium carbonate, by mass: 40.078 / 100.086. */
const CALCIUM_IN_CARBONATE = 0.4004;

/**
 * Returns the calcium carbonate, g per kg of feeders, that brings them to a ratio: a mass balance, 0 where they are there already.
 */
export function carbonateGPerKg(calciumMgPerKg: number, phosphorusMgPerKg: number, ratio: number): number {
  return Math.max(0, ratio * phosphorusMgPerKg - calciumMgPerKg) / 1000 / CALCIUM_IN_CARBONATE;
}
