/**
 * Lamps on alike dials as a mixed-integer program for HiGHS, one setting in the plan: how many dials have each length, and which length each
 * lamp gets. Nothing of the search, its bound or the choice of settings is in it.
 */
import { Program, type Term } from '../dial/mixed-integer.ts';

export interface AlikeShelf {
  /** Targets of each lamp, tenths of a minute, one a day. */
  readonly targets: readonly (readonly number[])[];
  readonly dials: number;
  readonly outlets: number;
  readonly stepMinutes: number;
}

export interface ShelfOptimum {
  readonly isProven: boolean;
  /** Tenths of a minute; null where no arrangement was found in time. */
  readonly worst: number | null;
}

/** Returns the least worst error, or the best found in so many seconds. */
export function leastWorstOfShelf(shelf: AlikeShelf, seconds: number): ShelfOptimum {
  const { targets, dials, outlets } = shelf;
  const lengths = lengthsBetween(shelf);
  const program = new Program();
  const dialsAt = (length: number) => program.integer(`dials_${length}`);
  const hangs = (lamp: number, length: number) => program.binary(`lamp_${lamp}_${length}`);
  program.atMost(
    lengths.map((length): Term => [1, dialsAt(length)]),
    dials,
  );
  for (const length of lengths)
    program.atMost([...targets.map((_, lamp): Term => [1, hangs(lamp, length)]), [-outlets, dialsAt(length)]], 0);
  for (const [lamp, target] of targets.entries()) {
    program.equals(
      lengths.map((length): Term => [1, hangs(lamp, length)]),
      1,
    );
    const errors = lengths.map((length): Term => [furthest(target, length * 10), hangs(lamp, length)]);
    program.atMost([...errors, [-1, 'worst']], 0);
    for (const length of lengths)
      program.atMost(
        [
          [1, hangs(lamp, length)],
          [-1, dialsAt(length)],
        ],
        0,
      );
  }
  const found = program.solve([[1, 'worst']], { time_limit: seconds });
  const isFound = Number.isFinite(found.ObjectiveValue) && Object.keys(found.Columns).length > 0;
  return { isProven: found.Status === 'Optimal', worst: isFound ? Math.round(found.ObjectiveValue) : null };
}

function lengthsBetween({ targets, stepMinutes }: AlikeShelf): readonly number[] {
  const all = targets.flat();
  const from = Math.max(0, Math.floor(Math.min(...all) / 10 / stepMinutes));
  const to = Math.ceil(Math.max(...all) / 10 / stepMinutes);
  return Array.from({ length: to - from + 1 }, (_, index) => (from + index) * stepMinutes);
}

function furthest(target: readonly number[], tenths: number): number {
  return target.reduce((most, each) => Math.max(most, Math.abs(each - tenths)), 0);
}
