/**
 * What a repeat-cycle timer can be set to: x on, y off, again and again. Behind a dial it starts anew with each window, the last run cut
 * at its end; alone it runs on from the minute at which it was plugged in, the same every day where x + y divides 24 h.
 */
import { DAY_MINUTES, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { RepeatCycleTimer } from '../../../hardware/devices.ts';
import type { MinuteWindow } from '../../../plan/dial-day.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import { DayJudge, type Score } from '../day/day-judge.ts';
import { type DayProblem, type DaySolution, type ExceededLimit, GIVING_WAY } from '../day/day-problem.ts';
import { judgeMistDay } from '../day/solve-day.ts';
import type { MistUnit, UnitSpan } from '../mist-unit.ts';
import type { SetSolver } from './set-solution.ts';
import { rhythmOf, type UnitSolution } from './unit-solver.ts';

interface Pattern {
  readonly onSeconds: number;
  readonly periodMinutes: number;
  /** First start of the day where nothing switches its power; null behind a dial. */
  readonly phaseMinute: number | null;
}

/** Worst over spans, level by level; comparable before all spans are judged, for it only gets worse. */
interface Worst {
  readonly amounts: readonly number[];
  readonly levels: readonly number[];
}

const NOTHING: Worst = { amounts: GIVING_WAY.map(() => 0), levels: [] };
/** The hour from which a person would plug it in; ours. */
const PLUG_IN_FROM_MINUTE = 8 * 60;

/** Finds the one pattern of a repeat-cycle timer for all days of a set: every pattern is judged. */
export class RepeatCycleSolver implements SetSolver<UnitSolution> {
  readonly #unit: MistUnit;
  readonly #timer: RepeatCycleTimer;
  readonly #known = new Map<string, UnitSolution | null>();
  readonly #patternOf = new WeakMap<UnitSolution, Pattern>();

  constructor(unit: MistUnit, timer: RepeatCycleTimer) {
    this.#unit = unit;
    this.#timer = timer;
  }

  /** Returns whether any pattern can run under these spans at all. */
  canSolve(spans: readonly UnitSpan[]): boolean {
    return this.#solution(spans) !== null;
  }

  solve(spans: readonly UnitSpan[]): UnitSolution {
    const solution = this.#solution(spans);
    if (!solution) throw new Error('no pattern of the repeat-cycle timer can run');
    return solution;
  }

  judge(spans: readonly UnitSpan[], like: UnitSolution): UnitSolution | null {
    const pattern = this.#patternOf.get(like);
    return pattern ? this.#solutionOf(spans, pattern) : null;
  }

  #solution(spans: readonly UnitSpan[]): UnitSolution | null {
    const key = spans.map(({ fromDay }) => fromDay).join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const pattern = this.#best(spans, true) ?? this.#best(spans, false);
    const solution = pattern && this.#solutionOf(spans, pattern);
    this.#known.set(key, solution);
    return solution;
  }

  #problem({ spans }: UnitSpan): DayProblem {
    const { machine, waterAtMostG } = this.#unit;
    if (!machine) throw new Error('a repeat-cycle timer without a pump');
    const startStepMinutes = this.#unit.supply ? 1 : machine.startStepMinutes;
    return {
      machine: { ...machine, startStepMinutes, shortestSeconds: 1 },
      cases: spans.map(({ one }) => one),
      waterAtMostG,
      rhythm: rhythmOf(this.#unit),
    };
  }

  /** With margins only patterns that hold every limit count; without, the least of what is exceeded. */
  #best(spans: readonly UnitSpan[], margins: boolean): Pattern | null {
    const judged = distinct(spans).map((span) => ({ span, judge: new DayJudge(this.#problem(span), margins) }));
    let best: { readonly pattern: Pattern; readonly worst: Worst } | null = null;
    for (const pattern of this.#patterns()) {
      let worst: Worst | null = NOTHING;
      for (const { span, judge } of judged) {
        const score = judge.score(judge.ordered(runsOf(pattern, span.powered)));
        worst = score && worseOf(worst, score);
        if (!worst || (margins && worst.amounts.some((amount) => amount > 0))) worst = null;
        if (!worst || (best && compare(worst, best.worst) >= 0)) {
          worst = null;
          break;
        }
      }
      if (worst) best = { pattern, worst };
    }
    return best?.pattern ?? null;
  }

  *#patterns(): Generator<Pattern> {
    const { machine, supply, pump } = this.#unit;
    if (!machine || !pump) return;
    const { startStepMinutes: step, lengthStepSeconds, shortestSeconds, longestSeconds, restSeconds } = machine;
    for (let period = DAY_MINUTES; period >= step; period -= step) {
      if (!supply && DAY_MINUTES % period !== 0) continue;
      for (let on = Math.ceil(shortestSeconds / lengthStepSeconds) * lengthStepSeconds; on <= longestSeconds; ) {
        const off = period * 60 - on;
        const [least, most] = this.#timer.offSeconds;
        if (off >= Math.max(least, restSeconds) && off <= most) {
          if (supply) yield { onSeconds: on, periodMinutes: period, phaseMinute: null };
          else
            for (let phase = 0; phase < period; phase += step)
              yield { onSeconds: on, periodMinutes: period, phaseMinute: phase };
        }
        on += lengthStepSeconds;
      }
    }
  }

  #solutionOf(spans: readonly UnitSpan[], pattern: Pattern): UnitSolution | null {
    const days = new Map<UnitSpan['spans'], DaySolution>();
    for (const span of spans) {
      const day = judgeMistDay(this.#problem(span), runsOf(pattern, span.powered));
      if (!day) return null;
      days.set(span.spans, day);
    }
    const all = [...days.values()];
    const solution: UnitSolution = {
      exceeded: worstLimits(all),
      marginsHold: all.every(({ marginsHold }) => marginsHold),
      allowed: all[0]?.allowed ?? [],
      shortfall: Math.max(0, ...all.map(({ shortfall }) => shortfall)),
      shortfallOf: (span) => days.get(span.spans)?.shortfall ?? 0,
      entriesOf: (span) => runsOf(pattern, span.powered),
      interval: {
        onSeconds: pattern.onSeconds,
        offSeconds: pattern.periodMinutes * 60 - pattern.onSeconds,
        plugInMinute: pattern.phaseMinute === null ? null : plugInMinute(pattern.phaseMinute, pattern.periodMinutes),
      },
    };
    this.#patternOf.set(solution, pattern);
    return solution;
  }
}

function plugInMinute(phase: number, period: number): number {
  return wrapMinute(phase + Math.ceil((PLUG_IN_FROM_MINUTE - phase) / period) * period);
}

/** Returns what a pattern runs in a day, by start; the last run of a window is cut at its end. */
export function runsOf(
  { onSeconds, periodMinutes, phaseMinute }: Pattern,
  powered: readonly MinuteWindow[] | null,
): readonly Run[] {
  const windows = powered ?? [{ onMinute: phaseMinute ?? 0, offMinute: (phaseMinute ?? 0) + DAY_MINUTES }];
  const runs = windows.flatMap(({ onMinute, offMinute }) => {
    const count = Math.ceil((offMinute - onMinute) / periodMinutes - 1e-9);
    return Array.from({ length: count }, (_, index) => {
      const start = onMinute + index * periodMinutes;
      return { startMinute: wrapMinute(start), seconds: Math.min(onSeconds, (offMinute - start) * 60) };
    });
  });
  return runs.sort((a, b) => a.startMinute - b.startMinute);
}

function distinct(spans: readonly UnitSpan[]): readonly UnitSpan[] {
  const found = new Map<string, UnitSpan>();
  const ids = new Map<unknown, number>();
  for (const span of spans) {
    for (const { one } of span.spans) if (!ids.has(one)) ids.set(one, ids.size);
    const cases = span.spans.map(({ one }) => ids.get(one));
    const key = `${cases.join()} ${JSON.stringify(span.powered)}`;
    if (!found.has(key)) found.set(key, span);
  }
  return [...found.values()];
}

function worseOf(worst: Worst | null, { broken, amounts, levels }: Score): Worst | null {
  if (!worst) return null;
  return {
    amounts: worst.amounts.map((amount, index) => Math.max(amount, broken.length > 0 ? (amounts[index] ?? 0) : 0)),
    levels: levels.map((level, index) => Math.max(level, worst.levels[index] ?? 0)),
  };
}

/** As days are compared: fewest limits, then the earliest of the list, then the least amounts, then the levels. */
function compare(a: Worst, b: Worst): number {
  const [brokenA, brokenB] = [brokenOf(a), brokenOf(b)];
  const which = brokenA.length - brokenB.length || compareNumbers(brokenA, brokenB);
  if (which !== 0) return which;
  return compareNumbers([...a.amounts].reverse(), [...b.amounts].reverse()) || compareNumbers(a.levels, b.levels);
}

function brokenOf({ amounts }: Worst): readonly number[] {
  return amounts.flatMap((amount, index) => (amount > 0 ? [index] : []));
}

function compareNumbers(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const more = (a[i] ?? 0) - (b[i] ?? 0);
    if (Math.abs(more) > 1e-9) return more;
  }
  return 0;
}

function worstLimits(days: readonly DaySolution[]): readonly ExceededLimit[] {
  return GIVING_WAY.flatMap((limit) => {
    const found = days.flatMap(({ exceeded }) => exceeded.filter((each) => each.limit === limit));
    const worst = found.toSorted((a, b) => b.by - a.by)[0];
    return worst ? [worst] : [];
  });
}
