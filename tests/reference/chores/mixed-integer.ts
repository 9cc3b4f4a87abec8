/**
 * Gathering as a mixed-integer program over occurrences × days, solved by HiGHS: binaries place each occurrence, a binary a day opens it,
 * an occurrence needs a follower within its gap. Nothing of the solver's recursion is in it.
 */
import loadHighs from 'highs';
import type { GatherProblem } from '../../../src/solve/chores/gather-problem.ts';
import { mayFollow } from '../../../src/solve/chores/place-chain.ts';

/** The package's function under its CommonJS type. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

/** What a day that is not preferred counts, in days of distance from when a chore is due. */
export const OFF = 10_000;

const EXACT = { mip_rel_gap: 0, mip_abs_gap: 0 } as const;

function solved(text: string): number {
  const solution = highs.solve(text, EXACT);
  if (solution.Status !== 'Optimal') throw new Error(solution.Status);
  return Math.round(solution.ObjectiveValue);
}

/** Returns the fewest days without work that must be opened. */
export function leastNewDays(problem: GatherProblem): number {
  return solved(lpText(problem, null));
}

/** Returns the least distance from due dates and preferred days with so many days opened. */
export function leastCost(problem: GatherProblem, newDays: number): number {
  return solved(lpText(problem, newDays));
}

/** Solves both, each for so many seconds at most; `newDays` is null where their number was not proven by then. */
export function gatheredWithin(
  problem: GatherProblem,
  seconds: number,
): { readonly isProven: boolean; readonly newDays: number | null } {
  const limits = { ...EXACT, output_flag: false, time_limit: seconds };
  const fewest = highs.solve(lpText(problem, null), limits);
  if (fewest.Status !== 'Optimal') return { isProven: false, newDays: null };
  const newDays = Math.round(fewest.ObjectiveValue);
  return { isProven: highs.solve(lpText(problem, newDays), limits).Status === 'Optimal', newDays };
}

/** Writes the program in the LP format; `newDays`: null minimises the days that are opened, else the rest with so many. */
function lpText(instance: GatherProblem, newDays: number | null): string {
  const rows: string[] = [];
  const binaries = new Set<string>();
  const aim: string[] = [];
  const opened = new Set<string>();
  for (const [c, chain] of instance.chains.entries())
    for (const [i, movable] of chain.entries()) {
      const name = (day: number, at = i) => `x${c}_${at}_${day}`;
      rows.push(`${movable.days.map((day) => name(day)).join(' + ')} = 1`);
      const next = chain[i + 1];
      for (const day of movable.days) {
        binaries.add(name(day));
        aim.push(`${(instance.isPreferred(day) ? 0 : OFF) + Math.abs(day - movable.due)} ${name(day)}`);
        if (!instance.hasWork(day)) {
          opened.add(`y${day}`);
          rows.push(`${name(day)} - y${day} <= 0`);
        }
        if (!next) continue;
        const onward = next.days.filter((other) => mayFollow(day, next, other)).map((other) => name(other, i + 1));
        rows.push(onward.length > 0 ? `${name(day)} - ${onward.join(' - ')} <= 0` : `${name(day)} = 0`);
      }
    }
  if (newDays !== null && opened.size > 0) rows.push(`${[...opened].join(' + ')} <= ${newDays}`);
  const objective = newDays === null ? [...opened].map((day) => `1 ${day}`) : aim;
  return `Minimize\n obj: ${objective.join(' + ') || '0 x0_0_0'}\nSubject To\n${rows.map((row, at) => ` c${at}: ${row}`).join('\n')}\nBinary\n ${[...binaries, ...opened].join('\n ')}\nEnd\n`;
}
