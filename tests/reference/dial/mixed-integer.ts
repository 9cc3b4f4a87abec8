/**
 * The choice of settings as mixed-integer programs, solved by HiGHS: a binary for each window on each day, a binary for each change, and
 * for the pins a variable for each slot. Nothing of the solver's recursion is in it.
 *
 * Source of the program: HiGHS, Q. Huangfu and J. A. J. Hall, Parallelizing the dual revised simplex method, Math. Prog. Comp. 10 (2018) 119.
 */
import loadHighs from 'highs';
import type { DialProblem } from '../../../src/solve/light/dial-problem.ts';
import { type Shown, windowOver } from './every-plan.ts';

export interface MixedIntegerOptimum {
  readonly worst: number;
  readonly sum: number;
  readonly settings: number;
  readonly pins: number | null;
}

/** The package exports a function; its type calls it the default of a module. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

export type Term = readonly [factor: number, variable: string];

const EXACTLY = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.4 } as const;

/** A program as text; every variable is 0 or more. */
export class Program {
  readonly #rows: string[] = [];
  readonly #binaries = new Set<string>();
  readonly #integers = new Set<string>();

  binary(name: string): string {
    this.#binaries.add(name);
    return name;
  }

  /** A whole number from 0 on. */
  integer(name: string): string {
    this.#integers.add(name);
    return name;
  }

  atMost(terms: readonly Term[], limit: number): void {
    this.#rows.push(`${sumOf(terms)} <= ${limit}`);
  }

  equals(terms: readonly Term[], value: number): void {
    this.#rows.push(`${sumOf(terms)} = ${value}`);
  }

  least(objective: readonly Term[]): number {
    const result = this.solve(objective, {});
    if (result.Status !== 'Optimal') throw new Error(`the program is ${result.Status}`);
    return Math.round(result.ObjectiveValue);
  }

  /** Returns the best found in so many seconds, null where nothing was, and what no solution is under. */
  within(objective: readonly Term[], seconds: number): { readonly best: number | null; readonly atLeast: number } {
    return highs.withModel((model) => {
      model.readModel({ format: 'lp', data: this.#textOf(objective) });
      for (const [name, value] of Object.entries({ ...EXACTLY, time_limit: seconds })) model.options.set(name, value);
      model.run();
      const best = Number(model.info.get('objective_function_value'));
      const atLeast = Number(model.info.get('mip_dual_bound'));
      return { best: Number.isFinite(best) && best < 1e20 ? best : null, atLeast };
    });
  }

  solve(objective: readonly Term[], limits: { readonly time_limit?: number }): ReturnType<typeof highs.solve> {
    return highs.solve(this.#textOf(objective), { ...EXACTLY, ...limits });
  }

  #textOf(objective: readonly Term[]): string {
    return [
      'Minimize',
      sumOf(objective),
      'Subject To',
      ...this.#rows,
      'Binaries',
      [...this.#binaries].join('\n'),
      'General',
      [...this.#integers].join('\n'),
      'End',
    ].join('\n');
  }
}

function sumOf(terms: readonly Term[]): string {
  const parts = terms.filter(([factor]) => factor !== 0);
  if (parts.length === 0) return '0 nothing';
  const texts = parts.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`);
  const lines: string[] = [];
  for (let at = 0; at < texts.length; at += 20) lines.push(texts.slice(at, at + 20).join(' '));
  return lines.join('\n');
}

/** A window that may stand on the days for which `allowed` says so. */
export interface Choice extends Omit<Shown, 'from'> {
  readonly allowed: (day: number) => boolean;
}

/** The windows of all lengths that lie between the targets, one step beyond on either side. */
export function choicesOf(problem: DialProblem): readonly Choice[] {
  const { stepMinutes } = problem;
  const shortest =
    Math.min(...problem.lowTenths, (problem.earlier?.window.lengthMinutes ?? 1440) * 10) / 10 - stepMinutes;
  const longest = Math.max(...problem.highTenths, (problem.earlier?.window.lengthMinutes ?? 0) * 10) / 10 + stepMinutes;
  return Array.from({ length: 1440 / stepMinutes + 1 }, (_, steps) => steps * stepMinutes)
    .filter((length) => length >= shortest && length <= longest)
    .flatMap((length) => {
      const window = windowOver(problem, length, 0, problem.days - 1);
      return window ? [{ ...window, allowed: () => true }] : [];
    });
}

/** Solves one level after the other; the pins only where asked. `settingsAtMost` must be given. */
export function mixedIntegerOptimum(
  problem: DialProblem,
  choices: readonly Choice[],
  levels: 1 | 3 | 4,
): MixedIntegerOptimum {
  const worst = programOf(problem, choices, null).least([[1, 'worst']]);
  if (levels === 1) return { worst, sum: 0, settings: 0, pins: null };
  const bySum = programOf(problem, choices, worst);
  const sum = bySum.least(errorTerms(problem, choices));
  bySum.atMost(errorTerms(problem, choices), sum + 0.5);
  const changes = bySum.least(changeTerms(problem));
  if (levels === 3) return { worst, sum, settings: changes + 1, pins: null };
  bySum.atMost(changeTerms(problem), changes + 0.5);
  return { worst, sum, settings: changes + 1, pins: bySum.least(pinTerms(problem, choices, bySum)) };
}

/** Solves the first level alone, for so many seconds at most; tells whether it was proven. */
export function leastWorstWithin(
  problem: DialProblem,
  choices: readonly Choice[],
  seconds: number,
): { readonly isProven: boolean; readonly worst: number } {
  const result = programOf(problem, choices, null).solve([[1, 'worst']], { time_limit: seconds });
  return { isProven: result.Status === 'Optimal', worst: Math.round(result.ObjectiveValue) };
}

const shows = (day: number, choice: number) => `y_${day}_${choice}`;
const changesOn = (day: number) => `z_${day}`;

function errorOf(problem: DialProblem, day: number, { lengthMinutes }: Choice): number {
  const tenths = lengthMinutes * 10;
  return Math.max(Math.abs(tenths - (problem.highTenths[day] ?? 0)), Math.abs(tenths - (problem.lowTenths[day] ?? 0)));
}

function errorTerms(problem: DialProblem, choices: readonly Choice[]): readonly Term[] {
  return daysOf(problem).flatMap((day) =>
    choices.map((choice, at): Term => [errorOf(problem, day, choice), shows(day, at)]),
  );
}

function changeTerms(problem: DialProblem): readonly Term[] {
  return daysOf(problem)
    .slice(1)
    .map((day): Term => [1, changesOn(day)]);
}

function daysOf(problem: DialProblem): readonly number[] {
  return Array.from({ length: problem.days }, (_, day) => day);
}

function programOf(problem: DialProblem, choices: readonly Choice[], worst: number | null): Program {
  const program = new Program();
  for (const day of daysOf(problem)) {
    program.equals(
      choices.map((_, at): Term => [1, program.binary(shows(day, at))]),
      1,
    );
    choices.forEach((choice, at) => {
      const isFar = worst !== null && errorOf(problem, day, choice) > worst;
      if (isFar || !choice.allowed(day)) program.equals([[1, shows(day, at)]], 0);
      if (day === 0) return;
      program.atMost(
        [
          [1, shows(day, at)],
          [-1, shows(day - 1, at)],
          [-1, program.binary(changesOn(day))],
        ],
        0,
      );
    });
    if (worst !== null) continue;
    program.atMost(
      [...choices.map((choice, at): Term => [errorOf(problem, day, choice), shows(day, at)]), [-1, 'worst']],
      0,
    );
  }
  limitChanges(problem, program);
  limitJumps(problem, choices, program);
  return program;
}

function limitChanges(problem: DialProblem, program: Program): void {
  program.atMost(changeTerms(problem), (problem.settingsAtMost ?? 8) - 1);
  const gap = Math.max(1, problem.atLeastBetweenDays);
  for (const day of daysOf(problem).slice(1)) {
    const isDay = problem.changeOnWeekdays?.includes((problem.firstWeekday + day) % 7) ?? true;
    if (!isDay || day < gap) program.equals([[1, changesOn(day)]], 0);
    const close = daysOf(problem).filter((other) => other >= Math.max(1, day) && other < day + gap);
    if (gap > 1)
      program.atMost(
        close.map((other): Term => [1, changesOn(other)]),
        1,
      );
  }
}

function limitJumps(problem: DialProblem, choices: readonly Choice[], program: Program): void {
  const jump = problem.jumpAtMostMinutes;
  if (jump === null) return;
  for (const day of daysOf(problem)) {
    const now = choices.map(({ lengthMinutes }, at): Term => [lengthMinutes, shows(day, at)]);
    if (day === 0) {
      if (!problem.earlier) continue;
      const { lengthMinutes } = problem.earlier.window;
      program.atMost(now, lengthMinutes + jump);
      program.atMost(
        now.map(([factor, name]): Term => [-factor, name]),
        jump - lengthMinutes,
      );
      continue;
    }
    const before = choices.map(({ lengthMinutes }, at): Term => [-lengthMinutes, shows(day - 1, at)]);
    program.atMost([...now, ...before], jump);
    program.atMost(
      [...now, ...before].map(([factor, name]): Term => [-factor, name]),
      jump,
    );
  }
}

/** For each slot and day a variable that is 1 where the slot differs from the day before. */
function pinTerms(problem: DialProblem, choices: readonly Choice[], program: Program): readonly Term[] {
  const { stepMinutes } = problem;
  const lit = (slot: number, { onMinute, lengthMinutes }: Omit<Shown, 'from'>) =>
    (slot * stepMinutes - onMinute + 1440) % 1440 < lengthMinutes;
  const slots = Array.from({ length: 1440 / stepMinutes }, (_, slot) => slot).filter((slot) =>
    [...choices, ...(problem.earlier ? [problem.earlier.window] : [])].some((choice) => lit(slot, choice)),
  );
  const terms: Term[] = [];
  for (const day of daysOf(problem)) {
    for (const slot of slots) {
      const now = choices.flatMap((choice, at): Term[] => (lit(slot, choice) ? [[1, shows(day, at)]] : []));
      const moved = `m_${day}_${slot}`;
      if (day === 0) {
        if (!problem.earlier) continue;
        const was = lit(slot, problem.earlier.window) ? 1 : 0;
        program.atMost([...now, [-1, moved]], was);
        program.atMost([...now.map(([, name]): Term => [-1, name]), [-1, moved]], -was);
      } else {
        const before = choices.flatMap((choice, at): Term[] => (lit(slot, choice) ? [[-1, shows(day - 1, at)]] : []));
        program.atMost([...now, ...before, [-1, moved]], 0);
        program.atMost([...[...now, ...before].map(([factor, name]): Term => [-factor, name]), [-1, moved]], 0);
      }
      terms.push([1, moved]);
    }
  }
  return terms;
}
