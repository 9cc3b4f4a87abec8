/** The starts that are open to a mist, in the order of the animal's day, and the places that a rhythm would have. */
import { DAY_MINUTES, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { MinuteSpan } from '../../../resolve/care.ts';
import type { DayProblem } from './day-problem.ts';

const BEFORE_LIGHTS_ON_MINUTES = 30;
const GAP_MINUTES = 120;

/** One start on the grid; a position is minutes from the day's beginning, 0 to 1439. */
export interface Slot {
  readonly minute: number;
  readonly position: number;
  /** Minutes by which it lies inside a span of `noise` or `no_mist` (to the nearer end, at least 1); 0: outside. */
  readonly inNoise: number;
  readonly inNoMist: number;
}

export interface StartGrid {
  /** Minute of the day from which it is counted: 30 min before the earliest lights-on. */
  readonly beginsMinute: number;
  /** Every start that is not forbidden for good, by position. */
  readonly slots: readonly Slot[];
  /** Those of them outside `noise` and `no_mist` (all slots where none are). */
  readonly allowed: readonly Slot[];
  readonly slotAt: ReadonlyMap<number, Slot>;
  /** Position of the latest lights-off. */
  readonly lightsOffPosition: number;
  /** Returns the positions at which the rhythm would have so many mists, ascending. */
  readonly places: (count: number) => readonly number[];
}

/** Lays the grid of a problem. */
export function startGrid(problem: DayProblem): StartGrid {
  const { beginsMinute, lightsOffPosition } = dayOf(problem);
  const slots = slotsOf(problem, beginsMinute);
  const free = slots.filter((slot) => slot.inNoise === 0 && slot.inNoMist === 0);
  const allowed = free.length > 0 ? free : slots;
  const known = new Map<number, readonly number[]>();
  const places = (count: number) => {
    const found = known.get(count) ?? placesOf(problem, allowed, lightsOffPosition, count);
    known.set(count, found);
    return found;
  };
  const slotAt = new Map(slots.map((slot) => [slot.minute, slot]));
  return { beginsMinute, slots, allowed, slotAt, lightsOffPosition, places };
}

function dayOf(problem: DayProblem): { beginsMinute: number; lightsOffPosition: number } {
  const lit = problem.cases.map(({ air }) => air.lit).filter(({ minutes }) => minutes > 0);
  if (lit.length === 0) return { beginsMinute: 0, lightsOffPosition: DAY_MINUTES - 1 };
  const span = (from: number) => Math.max(...lit.map(({ onMinute }) => wrapMinute(onMinute - from)));
  const earliest = lit.map(({ onMinute }) => onMinute).reduce((best, on) => (span(on) < span(best) ? on : best));
  const beginsMinute = wrapMinute(earliest - BEFORE_LIGHTS_ON_MINUTES);
  const offs = lit.map(({ onMinute, minutes }) => wrapMinute(onMinute - beginsMinute) + minutes);
  return { beginsMinute, lightsOffPosition: Math.max(...offs) };
}

function slotsOf(problem: DayProblem, beginsMinute: number): Slot[] {
  const { startStepMinutes, shortestSeconds } = problem.machine;
  const gather = (pick: (forbidden: DayProblem['cases'][number]['forbidden']) => readonly MinuteSpan[]) =>
    problem.cases.flatMap((one) => pick(one.forbidden));
  const never = gather((forbidden) => forbidden.starts);
  const dry = gather((forbidden) => forbidden.runs);
  const noise = gather((forbidden) => forbidden.noise);
  const noMist = gather((forbidden) => forbidden.noMist);
  const slots: Slot[] = [];
  for (let minute = 0; minute < DAY_MINUTES; minute += startStepMinutes) {
    if (depthIn(never, minute) > 0 || runTouches(dry, minute, shortestSeconds)) continue;
    const position = wrapMinute(minute - beginsMinute);
    slots.push({ minute, position, inNoise: depthIn(noise, minute), inNoMist: depthIn(noMist, minute) });
  }
  return slots.sort((a, b) => a.position - b.position);
}

/** Returns the minutes from a minute inside [from, to) to the nearer end of its span (at least 1), 0 outside of all. */
export function depthIn(spans: readonly MinuteSpan[], minute: number): number {
  let depth = 0;
  for (const { fromMinute, toMinute } of spans) {
    const length = spanMinutes(fromMinute, toMinute);
    const since = wrapMinute(minute - fromMinute);
    if (since < length) depth = Math.max(depth, Math.max(1, Math.min(since + 1, length - since)));
  }
  return depth;
}

/** Returns whether water of a run would flow inside one of the spans. */
export function runTouches(spans: readonly MinuteSpan[], startMinute: number, seconds: number): boolean {
  return spans.some(({ fromMinute, toMinute }) => {
    const length = spanMinutes(fromMinute, toMinute);
    return wrapMinute(startMinute - fromMinute) < length || wrapMinute(fromMinute - startMinute) < seconds / 60;
  });
}

/** Returns the length of [from, to); the whole day where both are equal or it runs from 00:00 to 24:00. */
function spanMinutes(fromMinute: number, toMinute: number): number {
  return toMinute - fromMinute >= DAY_MINUTES ? DAY_MINUTES : wrapMinute(toMinute - fromMinute) || DAY_MINUTES;
}

function placesOf(problem: DayProblem, allowed: readonly Slot[], lightsOff: number, count: number): readonly number[] {
  const first = allowed[0];
  if (!first || count <= 0) return [];
  const { favour } = problem.rhythm;
  if (favour === 'even') return evenPlaces(allowed, problem.machine.startStepMinutes, count);
  const gap = problem.rhythm.gapMinutes ?? GAP_MINUTES;
  const last = allowed.findLast((slot) => slot.position <= lightsOff) ?? allowed[allowed.length - 1] ?? first;
  const atDawn = favour === 'dawn' ? count : favour === 'dusk' ? 0 : Math.ceil(count / 2);
  const places = Array.from({ length: count }, (_, i) =>
    i < atDawn ? first.position + i * gap : last.position - (i - atDawn) * gap,
  );
  return places.sort((a, b) => a - b);
}

/** The middles of equal parts of the allowed minutes, each allowed start counting for its whole step. */
function evenPlaces(allowed: readonly Slot[], step: number, count: number): number[] {
  const whole = allowed.length * step;
  return Array.from({ length: count }, (_, i) => {
    const at = ((i + 0.5) * whole) / count;
    const index = Math.min(allowed.length - 1, Math.floor(at / step));
    return (allowed[index]?.position ?? 0) + at - index * step;
  });
}
