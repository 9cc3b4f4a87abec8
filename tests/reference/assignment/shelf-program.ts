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

export interface ShelfOverWeeks extends AlikeShelf {
  /** First day of each week in which a length stays; the first is 0. */
  readonly weeksFrom: readonly number[];
  readonly settingsAtMost: number;
  readonly atLeastBetweenDays: number;
}

/** Returns the least worst error found with several settings in the plan, pins changed at the start of a week, and what none is under. */
export function leastWorstOverWeeks(
  shelf: ShelfOverWeeks,
  seconds: number,
): { readonly best: number | null; readonly atLeast: number } {
  const program = new Program();
  const dials = Array.from({ length: shelf.dials }, (_, dial) => dial);
  for (const dial of dials) settingsOf(program, shelf, dial);
  for (const lamp of shelf.targets.keys())
    program.equals(
      dials.map((dial): Term => [1, program.binary(`at_${lamp}_${dial}`)]),
      1,
    );
  for (const dial of dials)
    program.atMost(
      shelf.targets.map((_, lamp): Term => [1, `at_${lamp}_${dial}`]),
      shelf.outlets,
    );
  for (const [lamp, target] of shelf.targets.entries())
    for (const dial of dials) errorsOn(program, shelf, lamp, target, dial);
  return program.within([[1, 'worst']], seconds);
}

const stands = (dial: number, week: number, length: number) => `on_${dial}_${week}_${length}`;
const changes = (dial: number, week: number) => `change_${dial}_${week}`;

function settingsOf(program: Program, shelf: ShelfOverWeeks, dial: number): void {
  const { weeksFrom, settingsAtMost, atLeastBetweenDays } = shelf;
  const lengths = lengthsBetween(shelf);
  const weeks = [...weeksFrom.keys()];
  for (const week of weeks) {
    program.equals(
      lengths.map((length): Term => [1, program.binary(stands(dial, week, length))]),
      1,
    );
    if (week === 0) continue;
    for (const length of lengths)
      program.atMost(
        [
          [1, stands(dial, week, length)],
          [-1, stands(dial, week - 1, length)],
          [-1, program.binary(changes(dial, week))],
        ],
        0,
      );
    const from = weeksFrom[week] ?? 0;
    if (from < atLeastBetweenDays) program.equals([[1, changes(dial, week)]], 0);
    const close = weeks.filter((other) => other >= week && (weeksFrom[other] ?? 0) < from + atLeastBetweenDays);
    program.atMost(
      close.map((other): Term => [1, changes(dial, other)]),
      1,
    );
  }
  program.atMost(
    weeks.slice(1).map((week): Term => [1, changes(dial, week)]),
    settingsAtMost - 1,
  );
}

/** Where a lamp hangs on a dial, the worst error is no less than what the dial's length misses in each week. */
function errorsOn(
  program: Program,
  shelf: ShelfOverWeeks,
  lamp: number,
  target: readonly number[],
  dial: number,
): void {
  const lengths = lengthsBetween(shelf);
  for (const [week, from] of shelf.weeksFrom.entries()) {
    const days = target.slice(from, shelf.weeksFrom[week + 1]);
    const errors = lengths.map((length) => furthest(days, length * 10));
    const most = Math.max(...errors);
    program.atMost(
      [
        ...lengths.map((length, index): Term => [errors[index] ?? 0, stands(dial, week, length)]),
        [most, `at_${lamp}_${dial}`],
        [-1, 'worst'],
      ],
      most,
    );
  }
}
