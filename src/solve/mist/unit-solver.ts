/** Solves days of a unit, each distinct question once. */
import type { Run } from '../../science/wet-enclosure.ts';
import type { DayProblem, DaySolution, MistCase, SolveOptions } from './day-problem.ts';
import type { MistUnit, UnitSpan } from './mist-unit.ts';
import { judgeMistDay, solveMistDay } from './solve-day.ts';
import { caseKey } from './unit-days.ts';

/** Entries for some cases at once, and how good they are for each. */
export interface UnitSolution {
  readonly cases: readonly MistCase[];
  readonly day: DaySolution;
}

export class UnitSolver {
  readonly unit: MistUnit;
  solved = 0;
  readonly #known = new Map<string, UnitSolution>();
  #seeds: readonly (readonly Run[])[] = [];

  constructor(unit: MistUnit) {
    this.unit = unit;
  }

  /** Returns the best entries for all cases of these spans at once. */
  solve(spans: readonly UnitSpan[], options: SolveOptions = {}): UnitSolution {
    const cases = distinctCases(spans);
    const key = `${options.untilMet === true} ${cases.map(caseKey).join('\n')}`;
    const known = this.#known.get(key);
    if (known) return known;
    this.solved++;
    const seeds = [...(options.seeds ?? []), ...this.#seeds];
    const solution = { cases, day: solveMistDay(this.problemOf(cases), { ...options, seeds }) };
    this.#seeds = [solution.day.entries, ...this.#seeds].slice(0, 3);
    this.#known.set(key, solution);
    return solution;
  }

  /** Returns what given entries do under spans, or null where they cannot run there. */
  judge(spans: readonly UnitSpan[], entries: readonly Run[]): UnitSolution | null {
    const cases = distinctCases(spans);
    const day = judgeMistDay(this.problemOf(cases), entries);
    return day && { cases, day };
  }

  problemOf(cases: readonly MistCase[]): DayProblem {
    const { machine, waterAtMostG, members } = this.unit;
    if (!machine) throw new Error('an enclosure that is not misted has no question to solve');
    const enclosure = members[0]?.enclosure;
    const misting = enclosure?.targets.misting;
    const said = misting && misting !== 'none' ? misting : null;
    return {
      machine,
      cases,
      waterAtMostG,
      rhythm: {
        favour: said?.favour ?? (enclosure?.activity === 'diurnal' ? 'dawn-and-dusk' : 'dusk'),
        gapMinutes: said?.gapMinutes ?? null,
      },
    };
  }
}

/** Returns the cases of spans, each that reads the same once. */
export function distinctCases(spans: readonly UnitSpan[]): readonly MistCase[] {
  const found = new Map<string, MistCase>();
  for (const { spans: each } of spans) for (const { one } of each) found.set(caseKey(one), one);
  return [...found.values()];
}
