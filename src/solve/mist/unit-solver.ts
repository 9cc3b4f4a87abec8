/** Solves days of a unit, each distinct question once. */
import type { Run } from '../../science/wet-enclosure.ts';
import type { CaseOutcome, DayProblem, DaySolution, MistCase, SolveOptions } from './day-problem.ts';
import { centredBand, shortfallOf, targetMisses, withMargins } from './humidity-shortfall.ts';
import type { MistUnit, UnitSpan } from './mist-unit.ts';
import { judgeMistDay, solveMistDay } from './solve-day.ts';
import { caseKey } from './unit-days.ts';

/** Entries for some cases at once, and how good they are for each. */
export interface UnitSolution {
  readonly cases: readonly MistCase[];
  readonly day: DaySolution;
}

/** So many cases are simulated from the beginning; the rest where they turn out to bind. */
const FIRST_CASES = 2;
const SEEDS = 3;

export class UnitSolver {
  readonly unit: MistUnit;
  /** Questions solved, and days simulated for them. */
  solved = 0;
  simulations = 0;
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
    const solution = { cases, day: this.#solved(cases, options) };
    this.#seeds = [solution.day.entries, ...this.#seeds].slice(0, SEEDS);
    this.#known.set(key, solution);
    return solution;
  }

  /**
   * Every level of a day is the worst over its cases, so a few of them bind: solves with those simulated, the others only seen by the
   * clock, and adds whichever the answer does worse for until none is left.
   */
  #solved(cases: readonly MistCase[], options: SolveOptions): DaySolution {
    const active = new Set(cases.slice(0, cases.length <= FIRST_CASES ? cases.length : 1));
    let seeds = [...(options.seeds ?? []), ...this.#seeds];
    for (;;) {
      this.solved++;
      const asked = cases.map((one) => (active.has(one) ? one : unseen(one)));
      const day = solveMistDay(this.problemOf(asked), { ...options, seeds });
      this.simulations += day.simulations;
      if (active.size === cases.length) return day;
      const judged = judgeMistDay(this.problemOf(cases), day.entries);
      if (!judged) throw new Error('entries that were found for all cases cannot run under all');
      const binding = bindingCases(cases, judged.cases).filter((one) => !active.has(one));
      if (isAsGood(judged, day) || binding.length === 0) return judged;
      for (const one of binding) active.add(one);
      seeds = [day.entries, ...seeds];
    }
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

const NO_TARGETS: MistCase['targets'] = {
  day: null,
  night: null,
  mean: null,
  peak: null,
  peaksPerDay: null,
  floor: null,
  ceiling: null,
  soakedAtMostHours: null,
};

/** A case of which only clock, cadence and drink count: nothing in it needs a simulated day. */
function unseen(one: MistCase): MistCase {
  return { ...one, targets: NO_TARGETS, dryOut: null, runOffAtMostG: null };
}

function isAsGood(judged: DaySolution, day: DaySolution): boolean {
  return (
    judged.marginsHold === day.marginsHold &&
    judged.exceeded.length <= day.exceeded.length &&
    judged.exceeded.every(({ by }, index) => by <= (day.exceeded[index]?.by ?? 0) + 1e-9) &&
    judged.levels.every((level, index) => level <= (day.levels[index] ?? 0) + 1e-9)
  );
}

/** Returns the cases that are worst in one respect: shortfall, mean, dry leaves, run-off. */
function bindingCases(cases: readonly MistCase[], outcomes: readonly CaseOutcome[]): readonly MistCase[] {
  const respects = [
    ({ targets }: MistCase, { figures }: CaseOutcome) => shortfallOf(targetMisses(withMargins(targets), figures)),
    ({ targets }: MistCase, { figures }: CaseOutcome) => meanOff(targets, figures),
    ({ dryOut }: MistCase, { figures }: CaseOutcome) => (dryOut ? dryOut.minutes - figures.dryOutMinutes : null),
    ({ runOffAtMostG }: MistCase, { figures }: CaseOutcome) =>
      runOffAtMostG === null ? null : figures.runOffG - runOffAtMostG,
  ];
  return respects.flatMap((respect) => {
    let worst: { readonly one: MistCase; readonly value: number } | null = null;
    for (const [index, one] of cases.entries()) {
      const outcome = outcomes[index];
      const value = outcome ? respect(one, outcome) : null;
      if (value !== null && (!worst || value > worst.value)) worst = { one, value };
    }
    return worst ? [worst.one] : [];
  });
}

function meanOff(targets: MistCase['targets'], figures: CaseOutcome['figures']): number | null {
  const centred = centredBand(targets);
  if (!centred) return null;
  const value = centred.of === 'day' ? figures.dayHumidity : figures.meanHumidity;
  return Number.isNaN(value) ? null : Math.abs(value - (centred.band[0] + centred.band[1]) / 2);
}

/** Returns the cases of spans, each that reads the same once. */
export function distinctCases(spans: readonly UnitSpan[]): readonly MistCase[] {
  return [...new Set(spans.flatMap(({ spans: each }) => each.map(({ one }) => one)))];
}
