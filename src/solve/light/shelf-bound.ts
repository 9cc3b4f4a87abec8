/**
 * Bounds from below on what any arrangement of lamps on timers costs, without searching. Each is of an easier shelf: every timer as good as
 * the best, with as many outlets as the largest and no history; lamps keep their targets and hang together only where two of them could.
 */
import { WEEKDAYS, weekdayIndex } from '../../basics/calendar-day.ts';
import { grouped } from '../../basics/grouped.ts';
import type { Care } from '../../resolve/care.ts';
import { layOutGraph, MOST_ERROR_TENTHS } from './dial-graph.ts';
import { type LampTimer, placementWords, stepMinutesOf } from './dial-group.ts';
import type { DialHistory } from './dial-history.ts';
import type { DialProblem } from './dial-problem.ts';
import { boundedGraph, fewestSettings, leastWorst } from './fewest-settings.ts';
import type { Seats } from './seats.ts';
import { DEFAULT_SETTINGS_AT_MOST } from './settings-allowed.ts';
import type { ShelfLamp, TenthsByDay } from './shelf-lamp.ts';
import { sumOfNearest } from './solve-dial.ts';
import { leastBeginning, sumLayers } from './sum-layers.ts';

/** The best timer that there could be. */
interface BestTimer {
  readonly problem: Omit<DialProblem, 'highTenths' | 'lowTenths'>;
  readonly settings: number;
  readonly mayChange: Uint8Array;
}

/** Lamps whose days hang on the same time, from the shortest target to the longest; lamps of one wish ask for the same. */
interface Row {
  /** Wish of each lamp; ascending. */
  readonly wishOf: readonly number[];
  readonly wishes: readonly TenthsByDay[];
}

/** What no arrangement of a shelf's lamps is under, in errors and in timers. */
export class ShelfBound {
  readonly #from: number;
  readonly #best: BestTimer;
  readonly #rows: readonly Row[];
  readonly #timers: number;
  readonly #outlets: number;
  readonly #leftOut: number;
  readonly #worstAlone: number;

  /** @param leftOut lamps that an arrangement may leave out */
  constructor(care: Care, seats: Seats, historyOf: (timer: LampTimer) => DialHistory, leftOut: number) {
    const histories = seats.timers.map(({ timer }) => historyOf(timer));
    const from = Math.min(care.plan.days, Math.max(0, ...histories.map(({ past }) => past?.untilDayIndex ?? 0)));
    this.#from = from;
    this.#best = bestTimer(care, seats, histories, from);
    const fixed = seats.timers.flatMap((each) => each.fixed);
    this.#leftOut = leftOut;
    const aiming = [...fixed, ...seats.lamps].filter(({ target }) => target.kind === 'day' || target.kind === 'inset');
    this.#rows = [...grouped(aiming, ({ enclosure }) => placementWords(enclosure.targets.day)).values()].map((row) =>
      rowOf(row, from),
    );
    this.#timers = seats.timers.length;
    this.#outlets = Math.max(1, ...seats.timers.map((each) => Math.max(0, each.freeOutlets) + each.fixed.length));
    this.#worstAlone =
      this.#rows
        .flatMap(({ wishOf, wishes }) =>
          ofEachLamp(
            wishOf,
            wishes.map((wish) => this.#leastWorst(wish)),
          ),
        )
        .sort((a, b) => b - a)[leftOut] ?? 0;
  }

  /** Returns a worst error, tenths of a minute, that no arrangement is under. */
  leastWorst(): number {
    let [from, to] = [this.#worstAlone, MOST_ERROR_TENTHS];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (this.leastTimers(middle) <= this.#timers) to = middle;
      else from = middle + 1;
    }
    return to;
  }

  /** Returns a number of timers that every arrangement with no worse an error uses. */
  leastTimers(worstTenths: number): number {
    const timers = this.#rows.reduce((sum, row) => sum + this.#timersOf(row, worstTenths), 0);
    return Math.max(0, timers - this.#leftOut);
  }

  /** Returns a sum of errors that no arrangement with no worse an error is under. */
  leastSum(worstTenths: number): number {
    return this.#rows.reduce((sum, row) => sum + this.#sumOf(row, worstTenths), 0);
  }

  /** Returns whether some settings of the best timer stay within an error of the targets of two lamps. */
  canShare(one: ShelfLamp, other: ShelfLamp, worstTenths: number): boolean {
    return this.#canShare(one.targetTenths.subarray(this.#from), other.targetTenths.subarray(this.#from), worstTenths);
  }

  /** Fills timers in order, each as far as any lamp up to its first could share it with one beyond: no other way needs fewer. */
  #timersOf({ wishOf, wishes }: Row, worstTenths: number): number {
    const reach = this.#reaches(wishes, worstTenths);
    let [timers, first] = [0, 0];
    while (first < wishOf.length) {
      timers++;
      const furthest = reach[wishOf[first] ?? 0] ?? 0;
      let next = first + 1;
      while (next < Math.min(wishOf.length, first + this.#outlets) && (wishOf[next] ?? 0) <= furthest) next++;
      first = next;
    }
    return timers;
  }

  #reaches(wishes: readonly TenthsByDay[], worstTenths: number): readonly number[] {
    let furthest = 0;
    return wishes.map((wish, index) => {
      furthest = Math.max(furthest, index);
      for (let other = wishes.length - 1; other > furthest; other--)
        if (this.#canShare(wish, wishes[other] ?? wish, worstTenths)) furthest = other;
      return furthest;
    });
  }

  /** Returns whether some settings stay within an error of both targets; spacing is not asked for. */
  #canShare(one: TenthsByDay, other: TenthsByDay, worstTenths: number): boolean {
    for (let day = 0; day < one.length; day++)
      if (Math.abs((one[day] ?? 0) - (other[day] ?? 0)) > 2 * worstTenths) return false;
    const { settings, mayChange, problem } = this.#best;
    const step = problem.stepMinutes * 10;
    let [used, start, lastChange, high, low] = [1, 0, 0, 0, MOST_ERROR_TENTHS];
    for (let day = 0; day < one.length; day++) {
      if (mayChange[day] === 1) lastChange = day;
      const [a, b] = [one[day] ?? 0, other[day] ?? 0];
      high = Math.max(high, a, b);
      low = Math.min(low, a, b);
      if (Math.ceil(Math.max(0, high - worstTenths) / step) * step <= low + worstTenths) continue;
      if (lastChange === start || used === settings) return false;
      used++;
      start = lastChange;
      day = start - 1;
      [high, low] = [0, MOST_ERROR_TENTHS];
    }
    return true;
  }

  /** The better of two bounds: what the lamps would cost alone, and what lies between the targets that share a timer. */
  #sumOf({ wishOf, wishes }: Row, worstTenths: number): number {
    const alone = wishes.map((wish) => this.#leastSum(wish, worstTenths));
    const sums = wishes.map((wish) => wish.reduce((sum, tenths) => sum + tenths, 0));
    const dearest = ofEachLamp(wishOf, alone).sort((a, b) => b - a);
    const alike = dearestOfEach(dearest.slice(this.#leftOut), this.#outlets);
    if (this.#leftOut > 0) return alike;
    return Math.max(alike, spreadOver(ofEachLamp(wishOf, sums), Math.min(...alone), this.#outlets));
  }

  #leastWorst(targetTenths: TenthsByDay): number {
    const { bounded, settings } = this.#alone(targetTenths);
    return leastWorst(bounded, settings, 0, MOST_ERROR_TENTHS);
  }

  #leastSum(targetTenths: TenthsByDay, worstTenths: number): number {
    const { bounded, settings } = this.#alone(targetTenths);
    if (settings === bounded.graph.days) return sumOfNearest(bounded.graph);
    if (fewestSettings(bounded, worstTenths) > settings) return 0;
    const left = settings - 1;
    return leastBeginning(sumLayers(bounded, worstTenths, left), left).sumTenths;
  }

  #alone(targetTenths: TenthsByDay) {
    const { problem, settings } = this.#best;
    const graph = layOutGraph({ ...problem, highTenths: targetTenths, lowTenths: targetTenths });
    return { bounded: boundedGraph(graph), settings: Math.min(settings, graph.days) };
  }
}

/** What stood on a timer may be held at first, be no whole step long, and make one setting more than is allowed. */
function bestTimer(care: Care, seats: Seats, histories: readonly DialHistory[], from: number): BestTimer {
  const { plan } = care;
  const stood = histories.flatMap(({ earlier, past }) => [
    ...(earlier ? [earlier.window] : []),
    ...(past?.settings.map(({ window }) => window) ?? []),
  ]);
  const asked = plan.settingsAtMost ?? (plan.toleranceMinutes === null ? DEFAULT_SETTINGS_AT_MOST : null);
  const days = plan.days - from;
  const changeOnWeekdays = plan.changeOn?.map((day) => WEEKDAYS.indexOf(day)) ?? null;
  const firstWeekday = weekdayIndex(plan.from + from);
  return {
    settings: asked === null ? days : asked + (stood.length > 0 ? 1 : 0),
    mayChange: Uint8Array.from({ length: days }, (_, day) =>
      day > 0 && (changeOnWeekdays?.includes((firstWeekday + day) % 7) ?? true) ? 1 : 0,
    ),
    problem: {
      days,
      firstWeekday,
      stepMinutes: [...seats.timers.map(({ timer }) => stepMinutesOf(timer)), ...stood.map((w) => w.lengthMinutes)]
        .filter((minutes) => minutes > 0)
        .reduce(commonMeasure, 1440),
      placement: { kind: 'midday', minute: 720 },
      noLightBeforeMinute: null,
      noLightAfterMinute: null,
      changeOnWeekdays,
      settingsAtMost: null,
      toleranceTenths: null,
      atLeastBetweenDays: stood.length > 0 ? 1 : plan.atLeastBetweenDays,
      jumpAtMostMinutes: null,
      earlier: null,
      insideByDay: null,
      past: null,
    },
  };
}

function commonMeasure(a: number, b: number): number {
  return b === 0 ? a : commonMeasure(b, a % b);
}

function rowOf(lamps: readonly ShelfLamp[], from: number): Row {
  const byWish = [...grouped(lamps, ({ targetTenths }) => targetTenths.subarray(from).join()).values()]
    .map((alike) => ({ count: alike.length, target: alike[0]?.targetTenths.subarray(from) ?? new Int32Array(0) }))
    .map((wish) => ({ ...wish, sum: wish.target.reduce((sum, tenths) => sum + tenths, 0) }))
    .sort((a, b) => a.sum - b.sum);
  return {
    wishes: byWish.map(({ target }) => target),
    wishOf: byWish.flatMap(({ count }, wish) => new Array<number>(count).fill(wish)),
  };
}

function ofEachLamp(wishOf: readonly number[], values: readonly number[]): number[] {
  return wishOf.map((wish) => values[wish] ?? 0);
}

/** A timer costs no less than the dearest of its lamps alone: least where the dearest hang together, as many as there are outlets. */
function dearestOfEach(costs: readonly number[], outlets: number): number {
  return costs.reduce((sum, cost, index) => (index % outlets === 0 ? sum + cost : sum), 0);
}

/** A timer costs no less than half of what lies between its targets, nor than `least`: least where lamps share it in order. */
function spreadOver(sums: readonly number[], least: number, outlets: number): number {
  const cost: number[] = [0];
  for (let end = 1; end <= sums.length; end++) {
    let best = Number.POSITIVE_INFINITY;
    for (let start = Math.max(0, end - outlets); start < end; start++) {
      const half = Math.ceil(((sums[end - 1] ?? 0) - (sums[start] ?? 0)) / 2);
      best = Math.min(best, (cost[start] ?? 0) + Math.max(least, half));
    }
    cost.push(best);
  }
  return cost[sums.length] ?? 0;
}
