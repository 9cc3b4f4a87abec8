/** The feeders of an enclosure; feeders of a stream that have no share get equal parts of what the others leave. */
import type { ReadFeeder } from '../read/household-tree.ts';
import type { FilePath } from '../read/placed-file.ts';
import type { Feeder } from './care.ts';

/** Returns the feeders of an enclosure; those without a share have equal parts of the rest. */
export function feedersOf(said: readonly ReadFeeder[], path: FilePath): readonly Feeder[] {
  return said.map((feeder, index) => feederOf(feeder, shareOf(feeder, said), [...path, 'feeders', index]));
}

function foodOf(feeder: ReadFeeder): Feeder['food'] {
  return feeder.food ?? 'insects';
}

function shareOf(feeder: ReadFeeder, all: readonly ReadFeeder[]): number {
  if (feeder.share !== undefined) return feeder.share;
  const stream = all.filter((other) => foodOf(other) === foodOf(feeder));
  const given = stream.reduce((sum, other) => sum + (other.share ?? 0), 0);
  return Math.max(0, 1 - given) / stream.filter((other) => other.share === undefined).length;
}

function feederOf(said: ReadFeeder, share: number, path: FilePath): Feeder {
  return {
    id: said.id,
    path,
    food: foodOf(said),
    share,
    count: said.count ?? null,
    dust: said.dust ?? false,
    shelfLifeDays: said.shelf_life ?? null,
    lossesPerWeek: said.losses ?? 0,
    gutLoadHours: said.gut_load ?? null,
    inStock: said.in_stock ?? null,
    standIn: said.stand_in ?? false,
    calciumGPerKg: said.calcium ?? null,
    phosphorusGPerKg: said.phosphorus ?? null,
    culture: said.culture
      ? { firstAfterDays: said.culture.first_after, lastsDays: said.culture.lasts, keep: said.culture.keep }
      : null,
  };
}
