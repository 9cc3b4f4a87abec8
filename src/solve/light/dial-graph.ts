/**
 * The dial problem as a graph: a node is "candidate c stands on day d", an edge holds it for another day or changes it. Everything that
 * the levels of the choice share is laid out here once, in flat arrays.
 */
import type { DialWindow } from '../../hardware/pins.ts';
import { slotsOfDay } from '../../hardware/pins.ts';
import type { CandidateWindow, InsetCandidates } from './candidate-windows.ts';
import { candidateWindows, insetCandidates, placeWindow } from './candidate-windows.ts';
import type { DialProblem } from './dial-problem.ts';

/** More than any error, sum or count; small enough to be added to without leaving 32 bits. */
export const NEVER = 1_000_000_000;
export const MOST_ERROR_TENTHS = 14_400;

/** How the first chosen setting is entered. */
export interface GraphSource {
  /** What stood before, and whose pins are moved first; null: an empty dial whose first pins are not counted. */
  readonly window: DialWindow | null;
  /** Settings that the plan has before any is chosen. */
  readonly settingsBefore: number;
  /** 1 on the days on which the first chosen setting may start. */
  readonly entryDay: Uint8Array;
  /** Error of holding what stood before, by day; NEVER where it may not be held. */
  readonly heldErrorTenths: Int32Array;
}

export interface DialGraph {
  readonly days: number;
  readonly stepMinutes: number;
  readonly stepTenths: number;
  readonly highTenths: Int32Array;
  readonly lowTenths: Int32Array;
  /** By length, then start. */
  readonly windows: readonly CandidateWindow[];
  readonly lengthMinutes: Int32Array;
  /** First candidate at least so many steps long, 0 to one step more than a day. */
  readonly firstAtLeast: Int32Array;
  /** [day · candidates + c]; NEVER where the candidate may not stand that day. */
  readonly errorTenths: Int32Array;
  /** 1 where a change may fall on the day. */
  readonly changeDay: Uint8Array;
  readonly gapDays: number;
  /** Sum of errors before the day, [day · candidates + c], days + 1 rows; null where no setting has a least duration. */
  readonly errorBefore: Int32Array | null;
  /** Inset dials: the day from which a pushed candidate started that day may be changed, above `days` where never. */
  readonly pushedUntil: Int32Array | null;
  readonly source: GraphSource;
  readonly jump: JumpWindows;
}

/** Which candidates may follow which: those within the largest jump. */
export interface JumpWindows {
  readonly limited: boolean;
  /** First and last candidate that may follow c. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** First and last candidate that may be entered from the source. */
  readonly sourceFirst: number;
  readonly sourceLast: number;
}

/** Lays out the days of a problem that are still to be chosen, under its own largest jump. */
export function layOutGraph(problem: DialProblem): DialGraph {
  const today = problem.past?.untilDayIndex ?? 0;
  const days = problem.days - today;
  const high = problem.highTenths.subarray(today);
  const low = problem.lowTenths.subarray(today);
  const inset = problem.insideByDay ? insetCandidates(problem, problem.insideByDay.slice(today)) : null;
  const all = inset ? inset.windows : candidateWindows(problem);
  const source = sourceOf(problem, today, high, low);
  const [from, to] = usefulRange(all, source.window, high, low, inset !== null);
  const windows = all.slice(from, to);
  const lengthMinutes = Int32Array.from(windows, (window) => window.lengthMinutes);
  const gapDays = Math.max(1, problem.atLeastBetweenDays);
  const errorTenths = errorsOf(lengthMinutes, high, low);
  if (inset) forbidOutside(errorTenths, inset, from, windows.length);
  const timed = gapDays > 1 || inset !== null;
  return {
    days,
    stepMinutes: problem.stepMinutes,
    stepTenths: problem.stepMinutes * 10,
    highTenths: high,
    lowTenths: low,
    windows,
    lengthMinutes,
    firstAtLeast: firstAtLeastOf(lengthMinutes, problem.stepMinutes),
    errorTenths,
    changeDay: changeDaysOf(problem, today),
    gapDays,
    errorBefore: timed ? errorBeforeOf(errorTenths, days, windows.length) : null,
    pushedUntil: inset ? pushedUntilOf(inset, from, windows) : null,
    source,
    jump: jumpWindows(lengthMinutes, source.window, problem.jumpAtMostMinutes),
  };
}

/** Returns the same graph under another largest jump, null for none. */
export function underJump(graph: DialGraph, jumpAtMostMinutes: number | null): DialGraph {
  return { ...graph, jump: jumpWindows(graph.lengthMinutes, graph.source.window, jumpAtMostMinutes) };
}

/** Returns the first day on which candidate c, started on the day, may be changed; `days` where it stays, above where it may not. */
export function changeableFrom(graph: DialGraph, day: number, c: number): number {
  const spaced = Math.min(day + graph.gapDays, graph.days);
  if (!graph.pushedUntil) return spaced;
  return Math.max(spaced, graph.pushedUntil[day * graph.windows.length + c] as number);
}

/**
 * Returns the range of candidates that can be of use: a length beyond all targets is worse on every day than one nearer to them,
 * unless it is a step on the way from what stood before. Inside a daylight window only long ones can be spared.
 */
function usefulRange(
  windows: readonly CandidateWindow[],
  before: DialWindow | null,
  high: Int32Array,
  low: Int32Array,
  inset: boolean,
): readonly [number, number] {
  let least = before ? before.lengthMinutes * 20 : Number.POSITIVE_INFINITY;
  let most = before ? before.lengthMinutes * 20 : 0;
  for (let day = 0; day < high.length; day++) {
    const twiceMiddle = (high[day] as number) + (low[day] as number);
    if (twiceMiddle < least) least = twiceMiddle;
    if (twiceMiddle > most) most = twiceMiddle;
  }
  let from = 0;
  let to = windows.length;
  if (!inset) while (from + 1 < to && (windows[from + 1]?.lengthMinutes ?? 0) * 20 <= least) from++;
  const longest = windows.find((window) => window.lengthMinutes * 20 >= most)?.lengthMinutes ?? 1440;
  while (to - 1 > from && (windows[to - 1]?.lengthMinutes ?? 0) > longest) to--;
  return [from, to];
}

function errorsOf(lengthMinutes: Int32Array, high: Int32Array, low: Int32Array): Int32Array {
  const count = lengthMinutes.length;
  const errors = new Int32Array(high.length * count);
  for (let day = 0; day < high.length; day++) {
    for (let c = 0; c < count; c++) {
      const lengthTenths = (lengthMinutes[c] as number) * 10;
      errors[day * count + c] = Math.max((high[day] as number) - lengthTenths, lengthTenths - (low[day] as number));
    }
  }
  return errors;
}

function forbidOutside(errors: Int32Array, inset: InsetCandidates, from: number, count: number): void {
  const width = inset.windows.length;
  for (let day = 0; day < inset.regimeOfDay.length; day++) {
    const row = (inset.regimeOfDay[day] as number) * width + from;
    for (let c = 0; c < count; c++) if (inset.allowed[row + c] === 0) errors[day * count + c] = NEVER;
  }
}

function pushedUntilOf(inset: InsetCandidates, from: number, windows: readonly CandidateWindow[]): Int32Array {
  const days = inset.regimeOfDay.length;
  const count = windows.length;
  const until = new Int32Array(days * count);
  for (let c = 0; c < count; c++) {
    if (windows[c]?.pushedSteps === 0) continue;
    let binds = NEVER;
    for (let day = days - 1; day >= 0; day--) {
      if (inset.binding[(inset.regimeOfDay[day] as number) * inset.windows.length + from + c] === 1) binds = day + 1;
      until[day * count + c] = binds;
    }
  }
  return until;
}

function errorBeforeOf(errors: Int32Array, days: number, count: number): Int32Array {
  const before = new Int32Array((days + 1) * count);
  for (let at = 0; at < days * count; at++) {
    const error = errors[at] as number;
    before[at + count] = (before[at] as number) + (error === NEVER ? 0 : error);
  }
  return before;
}

function firstAtLeastOf(lengthMinutes: Int32Array, stepMinutes: number): Int32Array {
  const steps = slotsOfDay(stepMinutes);
  const first = new Int32Array(steps + 2);
  let c = 0;
  for (let step = 0; step <= steps + 1; step++) {
    while (c < lengthMinutes.length && (lengthMinutes[c] as number) < step * stepMinutes) c++;
    first[step] = c;
  }
  return first;
}

function changeDaysOf(problem: DialProblem, today: number): Uint8Array {
  const days = new Uint8Array(problem.days - today);
  for (let day = 0; day < days.length; day++) {
    const weekday = (problem.firstWeekday + today + day) % 7;
    days[day] = problem.changeOnWeekdays === null || problem.changeOnWeekdays.includes(weekday) ? 1 : 0;
  }
  return days;
}

function sourceOf(problem: DialProblem, today: number, high: Int32Array, low: Int32Array): GraphSource {
  const gap = Math.max(1, problem.atLeastBetweenDays);
  const running = problem.past?.settings.at(-1);
  if (running) {
    const count = problem.past?.settings.length ?? 0;
    if (problem.past?.isReplaced) return freshSource(high.length, running.window, count);
    return heldSource(problem, today, high, low, running.window, count, running.fromDayIndex + gap - today);
  }
  const since = problem.earlier?.daysSinceChange ?? null;
  if (problem.earlier && since !== null && gap > 1 && since < gap) {
    return heldSource(problem, today, high, low, problem.earlier.window, 1, gap);
  }
  return freshSource(high.length, problem.earlier?.window ?? null, 0);
}

/** The first setting starts on the first day. */
function freshSource(days: number, window: DialWindow | null, settingsBefore: number): GraphSource {
  const entryDay = new Uint8Array(days);
  entryDay[0] = 1;
  return { window, settingsBefore, entryDay, heldErrorTenths: new Int32Array(days).fill(NEVER) };
}

/** A window that stands already: it may stay for as long as it is one that the dial may show, else until it can first be changed. */
function heldSource(
  problem: DialProblem,
  today: number,
  high: Int32Array,
  low: Int32Array,
  window: DialWindow,
  settingsBefore: number,
  spacedFrom: number,
): GraphSource {
  const changeDay = changeDaysOf(problem, today);
  const placed = placeWindow(problem, window.lengthMinutes);
  const asPlaced = placed !== null && placed.onMinute === window.onMinute;
  const entryDay = new Uint8Array(high.length);
  const heldErrorTenths = new Int32Array(high.length);
  const tenths = window.lengthMinutes * 10;
  let couldChange = false;
  for (let day = 0; day < high.length; day++) {
    const mayChange = day >= spacedFrom && (day === 0 ? problem.past !== null : changeDay[day] === 1);
    if (mayChange) entryDay[day] = 1;
    couldChange ||= mayChange;
    const outers = problem.insideByDay?.[today + day];
    const mayStay = outers ? outers.every((outer) => liesInside(window, outer)) : asPlaced;
    const error = Math.max(Math.abs((high[day] as number) - tenths), Math.abs((low[day] as number) - tenths));
    heldErrorTenths[day] = mayStay || !couldChange ? error : NEVER;
  }
  return { window, settingsBefore, entryDay, heldErrorTenths };
}

/** Tells whether a window lies inside another on the 24 h circle. */
function liesInside(window: DialWindow, outer: DialWindow): boolean {
  if (window.lengthMinutes === 0 || outer.lengthMinutes === 1440) return true;
  const start = (((window.onMinute - outer.onMinute) % 1440) + 1440) % 1440;
  return start + window.lengthMinutes <= outer.lengthMinutes;
}

function jumpWindows(lengthMinutes: Int32Array, before: DialWindow | null, jump: number | null): JumpWindows {
  const count = lengthMinutes.length;
  const first = new Int32Array(count);
  const last = new Int32Array(count).fill(count - 1);
  if (jump === null) return { limited: false, first, last, sourceFirst: 0, sourceLast: count - 1 };
  for (let c = 0; c < count; c++) {
    [first[c], last[c]] = within(lengthMinutes, lengthMinutes[c] as number, jump);
  }
  const [sourceFirst, sourceLast] = before ? within(lengthMinutes, before.lengthMinutes, jump) : [0, count - 1];
  return { limited: true, first, last, sourceFirst, sourceLast };
}

function within(lengthMinutes: Int32Array, length: number, jump: number): readonly [number, number] {
  let first = 0;
  let last = lengthMinutes.length - 1;
  while (first <= last && (lengthMinutes[first] as number) < length - jump) first++;
  while (last >= first && (lengthMinutes[last] as number) > length + jump) last--;
  return [first, last];
}
