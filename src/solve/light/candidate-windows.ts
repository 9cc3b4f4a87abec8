/** Which windows a dial may show: one a length, placed as the household says and moved inside its limits by the fewest steps. */
import { DAY_MINUTES, wrapMinute } from '../../basics/minute-of-day.ts';
import type { DialWindow } from '../../hardware/pins.ts';
import { slotsOfDay } from '../../hardware/pins.ts';
import type { DialProblem, WindowPlacement } from './dial-problem.ts';

export interface CandidateWindow extends DialWindow {
  /** Steps by which a daylight window pushes it later (above 0) or earlier (below 0) than it would lie; 0: as placed. */
  readonly pushedSteps: number;
}

/** Start minutes, unwrapped, from which a window fits: from..to inclusive, both on the grid; empty where to is below from. */
interface StartSpan {
  readonly from: number;
  readonly to: number;
}

type Limits = Pick<DialProblem, 'stepMinutes' | 'placement' | 'noLightBeforeMinute' | 'noLightAfterMinute'>;
const ANYWHERE: StartSpan = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };

/** Returns the start of a window of the given length as the placement alone has it; may lie below 0 or above 1439. */
function placedStart(placement: WindowPlacement, lengthMinutes: number, stepMinutes: number): number {
  const onGrid = (minute: number) => Math.floor(minute / stepMinutes + 0.5) * stepMinutes;
  if (placement.kind === 'lights-on') return onGrid(placement.minute);
  if (placement.kind === 'lights-off') return onGrid(placement.minute) - lengthMinutes;
  return onGrid(placement.minute - lengthMinutes / 2);
}

/**
 * Returns the window of a length under placement and no-light limits, or null where the length does not fit. Where the way round is
 * equally far in both directions, the earlier start is taken.
 */
export function placeWindow(limits: Limits, lengthMinutes: number): DialWindow | null {
  const start = startWithinLimits(limits, lengthMinutes);
  return start === null ? null : windowAt(start, lengthMinutes);
}

function startWithinLimits(limits: Limits, lengthMinutes: number): number | null {
  const placed = placedStart(limits.placement, lengthMinutes, limits.stepMinutes);
  if (lengthMinutes === 0) return 0;
  return clamped(placed, noLightSpan(limits, lengthMinutes, placed));
}

function windowAt(start: number, lengthMinutes: number): DialWindow {
  const edgeless = lengthMinutes === 0 || lengthMinutes === DAY_MINUTES;
  return { onMinute: edgeless ? 0 : wrapMinute(start), lengthMinutes };
}

/** Returns the starts that keep the no-light limits, in the turn of the day that lies nearest to `near`. */
function noLightSpan(limits: Limits, lengthMinutes: number, near: number): StartSpan {
  const { noLightBeforeMinute: before, noLightAfterMinute: after } = limits;
  if (before === null && after === null) return ANYWHERE;
  const from = before ?? 0;
  const to = after ?? DAY_MINUTES;
  const lit = { onMinute: from, lengthMinutes: to > from ? to - from : to - from + DAY_MINUTES };
  return startsInside(lit, lengthMinutes, limits.stepMinutes, near);
}

/** Returns the starts on the grid from which a window lies inside `outer`, in the turn of the day nearest to `near`. */
function startsInside(outer: DialWindow, lengthMinutes: number, step: number, near: number): StartSpan {
  const from = Math.ceil(outer.onMinute / step) * step;
  const to = Math.floor((outer.onMinute + outer.lengthMinutes) / step) * step - lengthMinutes;
  if (to < from) return { from: 1, to: 0 };
  let best: StartSpan = { from, to };
  let least = Number.POSITIVE_INFINITY;
  const turn = Math.floor((near - from) / DAY_MINUTES);
  for (const turns of [turn - 1, turn, turn + 1]) {
    const span = { from: from + turns * DAY_MINUTES, to: to + turns * DAY_MINUTES };
    const distance = Math.max(0, span.from - near, near - span.to);
    if (distance < least) [best, least] = [span, distance];
  }
  return best;
}

function clamped(start: number, span: StartSpan): number | null {
  return span.to < span.from ? null : Math.min(Math.max(start, span.from), span.to);
}

/** Returns every window that placement and no-light limits allow, by length, none first. */
export function candidateWindows(problem: DialProblem): readonly CandidateWindow[] {
  const candidates: CandidateWindow[] = [];
  for (let steps = 0; steps <= slotsOfDay(problem.stepMinutes); steps++) {
    const window = placeWindow(problem, steps * problem.stepMinutes);
    if (window) candidates.push({ ...window, pushedSteps: 0 });
  }
  return candidates;
}

/** The candidates of a dial whose window must lie inside others, and on which days each may stand. */
export interface InsetCandidates {
  readonly windows: readonly CandidateWindow[];
  /** Which of `allowed` and `binding` holds on a day, one a day. */
  readonly regimeOfDay: Int32Array;
  /** 1 where candidate c may stand: [regime · candidates + c]. */
  readonly allowed: Uint8Array;
  /** 1 where a pushed candidate would not fit one step nearer to its place: [regime · candidates + c]. */
  readonly binding: Uint8Array;
}

/**
 * Returns, for each length, the window as placed and those to which a daylight window can push it. A setting shows a pushed one only
 * where one of its days binds it, so that it is moved by the fewest steps.
 */
export function insetCandidates(
  problem: DialProblem,
  insideByDay: readonly (readonly DialWindow[])[],
): InsetCandidates {
  const { regimeOfDay, regimes } = regimesOf(insideByDay);
  const windows: CandidateWindow[] = [];
  const columns: { readonly spans: readonly StartSpan[]; readonly start: number }[] = [];
  for (let steps = 0; steps <= slotsOfDay(problem.stepMinutes); steps++) {
    const length = steps * problem.stepMinutes;
    const placed = startWithinLimits(problem, length);
    if (placed === null) continue;
    const spans = regimes.map((outers) => startsOfRegime(problem, outers, length, placed));
    for (const start of startsToTry(placed, spans)) {
      windows.push({ ...windowAt(start, length), pushedSteps: (start - placed) / problem.stepMinutes });
      columns.push({ spans, start });
    }
  }
  const fits = (regime: number, c: number, towards: number): boolean => {
    const span = columns[c]?.spans[regime];
    const start = (columns[c]?.start ?? 0) + towards;
    return span !== undefined && span.from <= start && start <= span.to;
  };
  const allowed = new Uint8Array(regimes.length * windows.length);
  const binding = new Uint8Array(regimes.length * windows.length);
  for (let regime = 0; regime < regimes.length; regime++) {
    windows.forEach((window, c) => {
      const nearer = -Math.sign(window.pushedSteps) * problem.stepMinutes;
      allowed[regime * windows.length + c] = fits(regime, c, 0) ? 1 : 0;
      binding[regime * windows.length + c] = window.pushedSteps !== 0 && !fits(regime, c, nearer) ? 1 : 0;
    });
  }
  return { windows, regimeOfDay, allowed, binding };
}

function startsOfRegime(
  problem: DialProblem,
  outers: readonly DialWindow[],
  length: number,
  placed: number,
): StartSpan {
  if (length === 0) return ANYWHERE;
  let { from, to } = noLightSpan(problem, length, placed);
  for (const outer of outers) {
    if (outer.lengthMinutes === DAY_MINUTES) continue;
    const span = startsInside(outer, length, problem.stepMinutes, placed);
    from = Math.max(from, span.from);
    to = Math.min(to, span.to);
  }
  return { from, to };
}

function startsToTry(placed: number, spans: readonly StartSpan[]): readonly number[] {
  const starts = new Set([placed]);
  for (const span of spans) {
    const start = clamped(placed, span);
    if (start !== null) starts.add(start);
  }
  return [...starts].sort((one, other) => one - other);
}

function regimesOf(insideByDay: readonly (readonly DialWindow[])[]): {
  readonly regimeOfDay: Int32Array;
  readonly regimes: readonly (readonly DialWindow[])[];
} {
  const regimes: (readonly DialWindow[])[] = [];
  const numbers = new Map<string, number>();
  const regimeOfDay = Int32Array.from(insideByDay, (outers) => {
    const key = outers.map((outer) => `${outer.onMinute}+${outer.lengthMinutes}`).join(' ');
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, regimes.length);
    return regimes.push(outers) - 1;
  });
  return { regimeOfDay, regimes };
}
