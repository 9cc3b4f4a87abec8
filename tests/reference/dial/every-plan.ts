/**
 * The choice of settings by trying every plan, written from the rules alone and sharing no code with the solver: slots are sets of
 * numbers, a window is found by pushing it outwards step by step, and plans are compared by the list of their values.
 */
import type { DialProblem } from '../../../src/solve/light/dial-problem.ts';

export interface Shown {
  readonly from: number;
  readonly onMinute: number;
  readonly lengthMinutes: number;
}

export interface Judged {
  readonly plan: readonly Shown[];
  /** Worst error, sum, settings, pins, then dates, then lengths; of the days still to be chosen. */
  readonly worth: readonly number[];
  readonly largestJump: number;
}

export interface EveryPlan {
  readonly best: Judged;
  readonly byAtMost: ReadonlyMap<number, Judged>;
  readonly jumpKept: boolean;
  readonly toleranceReached: boolean;
  readonly jumpCost: { readonly worstWithoutTenths: number; readonly settingsToUndo: number | null } | null;
}

const DAY = 1440;
const fold = (minute: number): number => ((minute % DAY) + DAY) % DAY;

function minutesLit(on: number, length: number, step: number): ReadonlySet<number> {
  const lit = new Set<number>();
  for (let minute = 0; minute < length; minute += step) lit.add(fold(on + minute));
  return lit;
}

function pinsBetween(a: Shown, b: Shown, step: number): number {
  const one = minutesLit(a.onMinute, a.lengthMinutes, step);
  const other = minutesLit(b.onMinute, b.lengthMinutes, step);
  return [...one].filter((m) => !other.has(m)).length + [...other].filter((m) => !one.has(m)).length;
}

/** Where a window of this length stands in a setting that lasts over these days, null where it fits nowhere. */
export function windowOver(problem: DialProblem, length: number, from: number, to: number): Omit<Shown, 'from'> | null {
  const { stepMinutes: step, placement } = problem;
  if (length === 0) return { onMinute: 0, lengthMinutes: 0 };
  const near = (minute: number) => Math.floor(minute / step + 0.5) * step;
  let on = near(placement.minute - length / 2);
  if (placement.kind === 'lights-on') on = near(placement.minute);
  if (placement.kind === 'lights-off') on = near(placement.minute) - length;
  const allowed = (start: number): boolean => {
    const lit = [...minutesLit(start, length, step)];
    if (!unbroken(problem, fold(start), length)) return false;
    for (let day = from; day <= to; day++) {
      for (const outer of problem.insideByDay?.[day] ?? []) {
        const room = minutesLit(outer.onMinute, outer.lengthMinutes, step);
        if (lit.some((minute) => !room.has(minute))) return false;
        if (outer.lengthMinutes < DAY && fold(start - outer.onMinute) + length > outer.lengthMinutes) return false;
      }
    }
    return true;
  };
  for (let away = 0; away <= DAY; away += step) {
    for (const start of [on - away, on + away]) {
      if (allowed(start)) return { onMinute: length === DAY ? 0 : fold(start), lengthMinutes: length };
    }
  }
  return null;
}

/** No minute of the window is one that the household keeps dark, and it does not pass from one evening into the next morning. */
function unbroken(problem: DialProblem, on: number, length: number): boolean {
  const { noLightBeforeMinute: before, noLightAfterMinute: after } = problem;
  if (before === null && after === null) return true;
  const dawn = before ?? 0;
  const dusk = after ?? DAY;
  const room = dusk > dawn ? dusk - dawn : dusk - dawn + DAY;
  return length === DAY ? room === DAY : fold(on - dawn) + length <= room;
}

const sameWindow = (one: Shown, other: Shown): boolean =>
  one.onMinute === other.onMinute && one.lengthMinutes === other.lengthMinutes;

const errorOn = (problem: DialProblem, day: number, length: number): number =>
  Math.max(
    Math.abs(length * 10 - (problem.highTenths[day] ?? 0)),
    Math.abs(length * 10 - (problem.lowTenths[day] ?? 0)),
  );

/** Every plan that keeps all limits but the largest jump and the number of settings. */
function* plansOf(problem: DialProblem, most: number): Generator<Judged> {
  const { days, stepMinutes: step } = problem;
  const gap = Math.max(1, problem.atLeastBetweenDays);
  const today = problem.past?.untilDayIndex ?? 0;
  const mayChange = (day: number) =>
    problem.changeOnWeekdays === null || problem.changeOnWeekdays.includes((problem.firstWeekday + day) % 7);
  const lengths = Array.from({ length: DAY / step + 1 }, (_, at) => at * step);
  const earlier: Shown | null = problem.earlier ? { from: -1, ...problem.earlier.window } : null;
  const since = problem.earlier?.daysSinceChange ?? null;

  function judge(plan: readonly Shown[]): Judged {
    let [worst, sum, pins, largestJump] = [0, 0, 0, 0];
    plan.forEach((shown, at) => {
      const end = plan[at + 1]?.from ?? days;
      for (let day = Math.max(shown.from, today); day < end; day++) {
        worst = Math.max(worst, errorOn(problem, day, shown.lengthMinutes));
        sum += errorOn(problem, day, shown.lengthMinutes);
      }
      const before = plan[at - 1] ?? earlier;
      if (!before) return;
      pins += pinsBetween(before, shown, step);
      largestJump = Math.max(largestJump, Math.abs(before.lengthMinutes - shown.lengthMinutes));
    });
    const worth = [worst, sum, plan.length, pins, ...plan.map((s) => s.from), ...plan.map((s) => s.lengthMinutes)];
    return { plan, worth, largestJump };
  }

  /** The plan so far; its last setting began on `from` and is shown from there on. */
  function* goOn(plan: readonly Shown[], standing: boolean): Generator<Judged> {
    const last = plan[plan.length - 1];
    if (!last) return;
    for (let next = Math.max(today, last.from + 1); next <= days; next++) {
      const shown = standing ? last : windowShown(last, next - 1);
      const isChange =
        next < days && (mayChange(next) || (problem.past !== null && next === today)) && next - last.from >= gap;
      if (next < days && !isChange) continue;
      if (standing && !mayStand(last, next)) return;
      if (!shown) return;
      const before = plan[plan.length - 2];
      if (!standing && before && sameWindow(before, shown)) continue;
      const soFar = [...plan.slice(0, -1), shown];
      if (next === days) yield judge(soFar);
      else if (soFar.length < most) {
        for (const length of lengths)
          yield* goOn([...soFar, { from: next, onMinute: 0, lengthMinutes: length }], false);
      }
    }
  }

  function windowShown(begun: Shown, to: number): Shown | null {
    const window = windowOver(problem, begun.lengthMinutes, begun.from, to);
    return window ? { from: begun.from, ...window } : null;
  }

  /** A window from before the plan or re-plan may stay until it can first be changed, and after that where the rules place it so. */
  function mayStand(shown: Shown, until: number): boolean {
    for (let day = today; day < until; day++) {
      let couldChange = false;
      for (let change = today; change <= day; change++) {
        const isDate = (change > 0 && mayChange(change)) || (problem.past !== null && change === today);
        if (isDate && change - shown.from >= gap) couldChange = true;
      }
      if (!couldChange) continue;
      const inside = (problem.insideByDay?.[day] ?? []).every(
        (outer) =>
          shown.lengthMinutes === 0 ||
          outer.lengthMinutes === DAY ||
          fold(shown.onMinute - outer.onMinute) + shown.lengthMinutes <= outer.lengthMinutes,
      );
      const placed = windowOver({ ...problem, insideByDay: null }, shown.lengthMinutes, day, day);
      if (problem.insideByDay ? !inside : placed?.onMinute !== shown.onMinute) return false;
    }
    return true;
  }

  if (problem.past) {
    yield* goOn(
      problem.past.settings.map((s) => ({ from: s.fromDayIndex, ...s.window })),
      true,
    );
  } else if (problem.earlier && since !== null && gap > 1 && since < gap) {
    yield* goOn([{ from: 0, ...problem.earlier.window }], true);
  } else {
    for (const length of lengths) yield* goOn([{ from: 0, onMinute: 0, lengthMinutes: length }], false);
  }
}

export function isBetter(one: readonly number[], other: readonly number[]): boolean {
  for (let at = 0; at < one.length; at++) {
    const difference = (one[at] ?? 0) - (other[at] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}

const bestOf = (plans: readonly Judged[]): Judged | null =>
  plans.reduce<Judged | null>((best, plan) => (best === null || isBetter(plan.worth, best.worth) ? plan : best), null);

const least = (values: readonly number[]): number =>
  values.reduce((one, other) => Math.min(one, other), Number.POSITIVE_INFINITY);

const worstOf = (plan: Judged): number => plan.worth[0] ?? 0;

/** Tries every plan of at most `most` settings. */
export function everyPlan(problem: DialProblem, most: number): EveryPlan {
  const all = [...plansOf(problem, most)];
  const fewestAtAll = least(all.map((plan) => plan.plan.length));
  const asked = problem.settingsAtMost ?? (problem.toleranceTenths === null ? 8 : null);
  const atMost = asked === null ? null : Math.max(asked, fewestAtAll);
  const within = atMost === null ? all : all.filter((plan) => plan.plan.length <= atMost);
  let jump = problem.jumpAtMostMinutes ?? Number.POSITIVE_INFINITY;
  const jumpKept = within.some((plan) => plan.largestJump <= jump);
  if (!jumpKept) jump = least(within.map((plan) => plan.largestJump));
  const kept = all.filter((plan) => plan.largestJump <= jump);
  const inNumber = (count: number) => kept.filter((plan) => plan.plan.length <= count);

  const byAtMost = new Map<number, Judged>();
  for (let count = 1; count <= most; count++) {
    const best = bestOf(inNumber(count));
    if (best) byAtMost.set(count, best);
  }
  const tolerance = problem.toleranceTenths;
  let settings = atMost ?? most;
  let toleranceReached = true;
  if (tolerance !== null) {
    const reaching = kept.filter((plan) => worstOf(plan) <= tolerance).map((plan) => plan.plan.length);
    const fewest = least(reaching);
    toleranceReached = fewest <= (atMost ?? most);
    if (toleranceReached) settings = fewest;
    else if (atMost === null) {
      const worst = least(kept.map(worstOf));
      settings = least(kept.filter((plan) => worstOf(plan) === worst).map((plan) => plan.plan.length));
    }
  }
  const best = byAtMost.get(Math.min(settings, most));
  if (!best) throw new Error('no plan at all');
  const worstWithoutTenths = least(all.filter((plan) => plan.plan.length <= settings).map(worstOf));
  const undoing = least(kept.filter((plan) => worstOf(plan) <= worstWithoutTenths).map((plan) => plan.plan.length));
  const jumpCost =
    problem.jumpAtMostMinutes !== null && worstWithoutTenths < worstOf(best)
      ? { worstWithoutTenths, settingsToUndo: Number.isFinite(undoing) ? undoing : null }
      : null;
  return { best, byAtMost, jumpKept, toleranceReached, jumpCost };
}
