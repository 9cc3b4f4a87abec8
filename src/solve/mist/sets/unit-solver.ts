/** Solves days of a unit, each distinct question once. */

import type { MinuteSpan } from '../../../resolve/care.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import type {
  CaseOutcome,
  DayProblem,
  DaySolution,
  ExceededLimit,
  MistCase,
  SolveOptions,
} from '../day/day-problem.ts';
import { centredBand, shortfallOf, targetMisses, withMargins } from '../day/humidity-shortfall.ts';
import { judgeMistDay, solveMistDay } from '../day/solve-day.ts';
import { rememberedDay } from '../day/solved-days.ts';
import type { MistUnit, UnitSpan } from '../mist-unit.ts';
import type { SetSolution, SetSolver } from './set-solution.ts';
import { caseKey } from './unit-days.ts';

/** Entries for some spans at once, and how good they are for each. */
export interface UnitSolution extends SetSolution {
  readonly exceeded: readonly ExceededLimit[];
  readonly marginsHold: boolean;
  /** Starts allowed under all of the spans. */
  readonly allowed: readonly MinuteSpan[];
  /** On the days of one of the spans, by start. */
  readonly entriesOf: (span: UnitSpan) => readonly Run[];
  /** What a repeat-cycle timer is set to. */
  readonly interval?: {
    readonly onSeconds: number;
    readonly offSeconds: number;
    readonly plugInMinute: number | null;
  };
}

/** Returns one day's answer for some cases as the answer for every span of theirs. */
function solutionOf(cases: readonly MistCase[], day: DaySolution): UnitSolution {
  const entries = [...day.entries].sort((a, b) => a.startMinute - b.startMinute);
  return {
    exceeded: day.exceeded,
    marginsHold: day.marginsHold,
    allowed: day.allowed,
    shortfall: day.shortfall,
    shortfallOf: ({ spans }) => Math.max(0, ...spans.map(({ one }) => day.cases[cases.indexOf(one)]?.shortfall ?? 0)),
    entriesOf: () => entries,
  };
}

/** So many cases are simulated from the beginning; the rest where they turn out to bind. */
const FIRST_CASES = 2;
const SEEDS = 3;

/** Finds the entries of a set whose timer takes them line by line; a question that was asked before is not solved again. */
export class UnitSolver implements SetSolver<UnitSolution> {
  readonly unit: MistUnit;
  /** Questions solved, and days simulated for them. */
  solved = 0;
  simulations = 0;
  readonly #known = new Map<string, UnitSolution>();
  #seeds: readonly (readonly Run[])[] = [];

  constructor(unit: MistUnit, seeds: readonly (readonly Run[])[] = []) {
    this.unit = unit;
    this.#seeds = seeds;
  }

  solve(
    spans: readonly UnitSpan[],
    { untilMet = false, near }: { readonly untilMet?: boolean; readonly near?: UnitSolution } = {},
  ): UnitSolution {
    const cases = distinctCases(spans);
    const key = `${untilMet} ${cases.map(caseKey).join('\n')}`;
    const known = this.#known.get(key);
    if (known) return known;
    const [first] = spans;
    const seeds = near && first ? [near.entriesOf(first)] : [];
    const solution = solutionOf(cases, this.solveCases(cases, { untilMet, seeds }));
    if (first) this.#seeds = [solution.entriesOf(first), ...this.#seeds].slice(0, SEEDS);
    this.#known.set(key, solution);
    return solution;
  }

  judge(spans: readonly UnitSpan[], like: UnitSolution): UnitSolution | null {
    const [first] = spans;
    const cases = distinctCases(spans);
    const day = first ? judgeMistDay(this.problemOf(cases), like.entriesOf(first)) : null;
    return day && solutionOf(cases, day);
  }

  /**
   * Every level of a day is the worst over its cases, so a few of them bind: solves with those simulated, the others only seen by the
   * clock, and adds whichever the answer does worse for until none is left.
   */
  solveCases(cases: readonly MistCase[], options: SolveOptions = {}): DaySolution {
    const seeded = { ...options, seeds: [...(options.seeds ?? []), ...this.#seeds] };
    return rememberedDay(this.problemOf(cases), seeded, () => this.#solveBinding(cases, seeded));
  }

  #solveBinding(cases: readonly MistCase[], options: SolveOptions): DaySolution {
    const active = new Set(cases.slice(0, cases.length <= FIRST_CASES ? cases.length : 1));
    let seeds = options.seeds ?? [];
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

  /** Returns the question of some cases at once. */
  problemOf(cases: readonly MistCase[]): DayProblem {
    const { machine, waterAtMostG } = this.unit;
    if (!machine) throw new Error('an enclosure that is not misted has no question to solve');
    return { machine, cases, waterAtMostG, rhythm: rhythmOf(this.unit) };
  }
}

/** Returns the rhythm of a unit: that of its first enclosure. */
export function rhythmOf({ members }: MistUnit): DayProblem['rhythm'] {
  const enclosure = members[0]?.enclosure;
  const misting = enclosure?.targets.misting;
  const said = misting && misting !== 'none' ? misting : null;
  return {
    favour: said?.favour ?? (enclosure?.activity === 'diurnal' ? 'dawn-and-dusk' : 'dusk'),
    gapMinutes: said?.gapMinutes ?? null,
  };
}

/** Nothing asked of the air: every humidity target null. */
export const NO_TARGETS: MistCase['targets'] = {
  day: null,
  night: null,
  mean: null,
  peak: null,
  peaksPerDay: null,
  floor: null,
  ceiling: null,
  soakedAtMostHours: null,
};

/** Returns a case of which only clock, cadence and drink count: nothing in it needs a simulated day. */
export function unseen(one: MistCase): MistCase {
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
