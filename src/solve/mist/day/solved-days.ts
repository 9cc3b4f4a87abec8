/**
 * Days that were solved already. What a day's answer depends on is all in its question, so two enclosures that ask the same, in whatever
 * households, are answered once. The memory lasts as long as the process and forgets what was asked longest ago.
 */
import { createHash } from 'node:crypto';
import type { DayProblem, DaySolution, MistCase, SolveOptions } from './day-problem.ts';

/** Lets processes or threads that solve at the same time tell each other their answers. */
export interface DayExchange {
  readonly tell: (key: string, solution: DaySolution) => void;
  /** Returns what others have told since it was last asked. */
  readonly heard: () => Iterable<readonly [key: string, solution: DaySolution]>;
}

/** An answer takes some 4 kB. */
const REMEMBERED = 10_000;

const known = new Map<string, DaySolution>();
let exchange: DayExchange | null = null;

/** Shares what is solved from now on; null ends it. */
export function shareSolvedDays(others: DayExchange | null): void {
  exchange = others;
}

/** Returns the answer to a question, from memory where the same was asked before, else what `solve` finds. */
export function rememberedDay(problem: DayProblem, options: SolveOptions, solve: () => DaySolution): DaySolution {
  const key = dayKey(problem, options);
  const before = recalled(key) ?? overheard(key);
  if (before) return before;
  const solution = solve();
  remember(key, solution);
  exchange?.tell(key, solution);
  return solution;
}

function recalled(key: string): DaySolution | null {
  const solution = known.get(key);
  if (solution) remember(key, solution);
  return solution ?? null;
}

function overheard(key: string): DaySolution | null {
  for (const [told, solution] of exchange?.heard() ?? []) remember(told, solution);
  return known.get(key) ?? null;
}

function remember(key: string, solution: DaySolution): void {
  known.delete(key);
  known.set(key, solution);
  if (known.size <= REMEMBERED) return;
  for (const oldest of known.keys()) {
    known.delete(oldest);
    break;
  }
}

const CASE_TEXT = new WeakMap<MistCase, string>();

/** All of a case but whose it is. */
function caseText(one: MistCase): string {
  const text = CASE_TEXT.get(one) ?? JSON.stringify({ ...one, enclosure: null });
  CASE_TEXT.set(one, text);
  return text;
}

/** Returns what stands for a question: equal where the answer must be. */
export function dayKey(
  { machine, cases, waterAtMostG, rhythm }: DayProblem,
  { seeds = [], untilMet = false }: SolveOptions,
): string {
  const hash = createHash('sha256').update(JSON.stringify([machine, waterAtMostG, rhythm, untilMet, seeds]));
  for (const one of cases) hash.update('\n').update(caseText(one));
  return hash.digest('base64');
}
