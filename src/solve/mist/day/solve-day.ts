/** Answers a day's question: the entries, what the air then does, and what had to give way. */
import type { MinuteSpan } from '../../../resolve/care.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import { DayJudge, type Score } from './day-judge.ts';
import {
  type CaseOutcome,
  type DayProblem,
  type DaySolution,
  type ExceededLimit,
  GIVING_WAY,
  type GivingLimit,
  type SolveOptions,
} from './day-problem.ts';
import { DaySearch } from './day-search.ts';
import { tankWaterG } from './hard-limits.ts';
import { shortfallOf, targetMisses } from './humidity-shortfall.ts';
import type { StartGrid } from './start-grid.ts';

/**
 * Returns the entries of one day for all cases of a problem: with the hard limits' margins, else without them, else with as few
 * limits exceeded as can be found. Always returns entries (none where nothing better is found).
 */
export function solveMistDay(problem: DayProblem, options: SolveOptions = {}): DaySolution {
  const careful = new DayJudge(problem, true);
  const planned = new DaySearch(careful, options).best();
  if (planned.broken.length === 0) return solutionOf(careful, planned, true, 0);
  const bare = new DayJudge(problem, false);
  const seeds = [...(options.seeds ?? []), planned.entries];
  const found = new DaySearch(bare, { ...options, seeds }).best();
  return solutionOf(bare, found, false, careful.simulations);
}

/** Returns what given entries do under a problem, as a solution; null where pump or timer cannot run them or they are forbidden for good. */
export function judgeMistDay(problem: DayProblem, entries: readonly Run[]): DaySolution | null {
  const careful = new DayJudge(problem, true);
  const planned = careful.score(careful.ordered(entries));
  if (!planned) return null;
  if (planned.broken.length === 0) return solutionOf(careful, planned, true, 0);
  const bare = new DayJudge(problem, false);
  const score = bare.score(bare.ordered(entries));
  return score && solutionOf(bare, score, false, careful.simulations);
}

/** `before`: simulations of days that were given up. */
function solutionOf(judge: DayJudge, score: Score, marginsHold: boolean, before: number): DaySolution {
  const { grid } = judge;
  const { machine } = judge.problem;
  const cases = outcomesOf(judge, score.entries);
  return {
    entries: score.entries,
    cases,
    shortfall: Math.max(0, ...cases.map(({ shortfall }) => shortfall)),
    waterG: Math.round(tankWaterG(machine, score.entries) * 10) / 10,
    exceeded: score.broken.map((index) => exceededLimit(index, score.amounts[index] ?? 0)),
    marginsHold,
    allowed: spansOf(grid, machine.startStepMinutes),
    places: grid.places(score.entries.length).map((position) => (position + grid.beginsMinute) % 1440),
    levels: score.levels,
    simulations: before + judge.simulations,
  };
}

function outcomesOf(judge: DayJudge, entries: readonly Run[]): CaseOutcome[] {
  return judge.outcomes(entries).map(({ figures, targets }) => {
    const misses = targetMisses(targets, figures);
    return { figures, misses, shortfall: shortfallOf(misses) };
  });
}

const UNITS: Readonly<Record<GivingLimit, ExceededLimit['unit']>> = {
  gap: 'min',
  count: 'mists',
  length: 's',
  'dry-out': 'min',
  tank: 'g/day',
  tray: 'g/day',
  noise: 'min',
  'no-mist': 'min',
  drink: 'mists',
};

function exceededLimit(index: number, by: number): ExceededLimit {
  const limit = GIVING_WAY[index] ?? 'gap';
  return { limit, by, unit: UNITS[limit] };
}

/** Joins neighbouring allowed starts into spans [from, to). */
function spansOf(grid: StartGrid, step: number): readonly MinuteSpan[] {
  const spans: { fromMinute: number; toMinute: number; end: number }[] = [];
  for (const slot of grid.allowed) {
    const last = spans[spans.length - 1];
    if (last && last.end === slot.position) {
      last.end += step;
      last.toMinute = (slot.minute + step) % 1440 || 1440;
    } else {
      spans.push({ fromMinute: slot.minute, toMinute: slot.minute + step, end: slot.position + step });
    }
  }
  return spans.map(({ fromMinute, toMinute }) => ({ fromMinute, toMinute }));
}
