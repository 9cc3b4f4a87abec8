/** The interval of a repeat-cycle timer: so long on, so long off, again and again from the moment that power comes. */
import { DAY_MINUTES, wrapMinute } from '../../basics/minute-of-day.ts';
import type { MinuteSpan } from '../../resolve/care.ts';
import type { Run } from '../../science/wet-enclosure.ts';
import { compareScores, DayJudge, type Score } from './day-judge.ts';
import type { DayProblem, DaySolution } from './day-problem.ts';
import { combinedSolution } from './solve-day.ts';

export interface IntervalProblem {
  /** Its start and length steps are those of the interval; its entries limit does not count. */
  readonly problem: DayProblem;
  readonly onSeconds: readonly [number, number];
  readonly offSeconds: readonly [number, number];
  /** When each case has power, in the order of the cases; null: the timer stands alone on a live outlet. */
  readonly powered: readonly (readonly MinuteSpan[])[] | null;
}

export interface IntervalSolution {
  readonly onSeconds: number;
  readonly offSeconds: number;
  /** Where it stands alone: a moment at which it is to be plugged in, the first of the day's runs; else null. */
  readonly plugInMinute: number | null;
  /** The runs that it makes, case by case, in the order of the day. */
  readonly entriesByCase: readonly (readonly Run[])[];
  /** Entries are the first case's; figures, shortfall and limits of each case with its own. */
  readonly solution: DaySolution;
}

interface Interval {
  readonly onSeconds: number;
  readonly offSeconds: number;
  readonly fromMinute: number | null;
}

interface Found {
  readonly interval: Interval;
  readonly scores: readonly Score[];
  readonly worst: Score;
}

/** Returns the best interval by the order of the day's entries, or null where the timer has none that fits; alone only such as divide 24 h. */
export function solveInterval(asked: IntervalProblem): IntervalSolution | null {
  const careful = judgesOf(asked, true);
  const planned = bestInterval(asked, careful);
  if (planned && planned.worst.broken.length === 0) return answer(asked, careful, planned, true);
  const bare = judgesOf(asked, false);
  const found = bestInterval(asked, bare);
  return found && answer(asked, bare, found, false);
}

/** One judge a case, each with its own runs; starts on any minute, a run may be cut short. */
function judgesOf(asked: IntervalProblem, margins: boolean): readonly DayJudge[] {
  const machine = {
    ...asked.problem.machine,
    entriesAtMost: Number.POSITIVE_INFINITY,
    startStepMinutes: 1,
    lengthStepSeconds: 1,
    shortestSeconds: 1,
  };
  return asked.problem.cases.map((one) => new DayJudge({ ...asked.problem, machine, cases: [one] }, margins));
}

function bestInterval(asked: IntervalProblem, judges: readonly DayJudge[]): Found | null {
  let best: Found | null = null;
  const later: Interval[] = [];
  for (const interval of intervalsOf(asked)) {
    if (!judges.every((judge, i) => judge.holdsPlanned(runsOf(asked, interval, i, judge)))) later.push(interval);
    else best = betterOf(best, judged(asked, judges, interval));
  }
  if (best && best.worst.broken.length === 0) return best;
  for (const interval of later) best = betterOf(best, judged(asked, judges, interval));
  return best;
}

function betterOf(a: Found | null, b: Found | null): Found | null {
  if (!a || !b) return a ?? b;
  return compareFound(b, a) < 0 ? b : a;
}

/** By the order of scores; what is left equal, by the longer pause. */
function compareFound(a: Found, b: Found): number {
  const grid = { slotAt: new Map() };
  return compareScores(a.worst, b.worst, grid) || b.interval.offSeconds - a.interval.offSeconds;
}

/** All intervals of the timer on the grid: on in length steps, on + off in start steps. */
function* intervalsOf(asked: IntervalProblem): Generator<Interval> {
  const { startStepMinutes, lengthStepSeconds, longestSeconds, shortestSeconds } = asked.problem.machine;
  const least = Math.max(asked.onSeconds[0], shortestSeconds);
  const most = Math.min(asked.onSeconds[1], longestSeconds);
  for (let period = startStepMinutes; period <= DAY_MINUTES; period += startStepMinutes) {
    if (!asked.powered && DAY_MINUTES % period !== 0) continue;
    for (
      let on = Math.ceil(least / lengthStepSeconds - 1e-9) * lengthStepSeconds;
      on <= most;
      on += lengthStepSeconds
    ) {
      const offSeconds = period * 60 - on;
      if (on <= 0 || offSeconds < asked.offSeconds[0] || offSeconds > asked.offSeconds[1]) continue;
      if (asked.powered) yield { onSeconds: on, offSeconds, fromMinute: null };
      else {
        for (let from = 0; from < period; from += startStepMinutes) {
          yield { onSeconds: on, offSeconds, fromMinute: from };
        }
      }
    }
  }
}

/** Returns the runs that an interval makes in a case, in the order of its day. */
function runsOf(asked: IntervalProblem, interval: Interval, index: number, judge: DayJudge): readonly Run[] {
  const period = (interval.onSeconds + interval.offSeconds) / 60;
  const windows = asked.powered?.[index];
  const runs: Run[] = [];
  if (!windows) {
    for (let minute = interval.fromMinute ?? 0; minute < DAY_MINUTES; minute += period) {
      runs.push({ startMinute: minute, seconds: interval.onSeconds });
    }
    return judge.ordered(runs);
  }
  for (const { fromMinute, toMinute } of windows) {
    const length = toMinute - fromMinute >= DAY_MINUTES ? DAY_MINUTES : wrapMinute(toMinute - fromMinute);
    for (let since = 0; since < length; since += period) {
      const seconds = Math.min(interval.onSeconds, (length - since) * 60);
      runs.push({ startMinute: wrapMinute(fromMinute + since), seconds });
    }
  }
  return judge.ordered(runs);
}

/** Returns the worst of the cases at every level, or null where pump or timer cannot run it. */
function judged(asked: IntervalProblem, judges: readonly DayJudge[], interval: Interval): Found | null {
  const scores: Score[] = [];
  for (const [i, judge] of judges.entries()) {
    const score = judge.score(runsOf(asked, interval, i, judge));
    if (!score) return null;
    scores.push(score);
  }
  const first = scores[0];
  if (!first) return null;
  const amounts = first.amounts.map((_, k) => Math.max(...scores.map((score) => score.amounts[k] ?? 0)));
  const worst: Score = {
    entries: first.entries,
    amounts,
    broken: amounts.flatMap((amount, k) => (amount > 0 ? [k] : [])),
    levels: first.levels.map((_, k) => Math.max(...scores.map((score) => score.levels[k] ?? 0))),
    shortfall: Math.max(...scores.map(({ shortfall }) => shortfall)),
    meanOff: first.meanOff,
  };
  return { interval, scores, worst };
}

function answer(asked: IntervalProblem, judges: readonly DayJudge[], found: Found, margins: boolean): IntervalSolution {
  const { onSeconds, offSeconds } = found.interval;
  const entriesByCase = found.scores.map(({ entries }) => entries);
  return {
    onSeconds,
    offSeconds,
    plugInMinute: asked.powered ? null : (entriesByCase[0]?.[0]?.startMinute ?? null),
    entriesByCase,
    solution: combinedSolution(judges, found.scores, found.worst, margins),
  };
}
