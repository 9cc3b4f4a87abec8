/** What an arrangement of lamps on timers costs: least errors of each set of lamps on each timer, worked out once. */
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { Care } from '../../resolve/care.ts';
import { dialGroup, envelopeOf, type LampTimer, stepMinutesOf } from './dial-group.ts';
import type { DialHistory } from './dial-history.ts';
import type { DialProblem } from './dial-problem.ts';
import type { ShelfLamp } from './shelf-lamp.ts';
import { leastErrors, leastSumOfErrors, leastWorstError } from './solve-dial.ts';
import { lampError, litTenths, problemOf, type SolvedGroup, solveGroup } from './solve-group.ts';

export interface Errors {
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
}

export const NO_ERROR: Errors = { worstErrorTenths: 0, sumErrorTenths: 0 };

/** Returns the worse worst and the sum of both sums. */
export function withErrors(a: Errors, b: Errors): Errors {
  return {
    worstErrorTenths: Math.max(a.worstErrorTenths, b.worstErrorTenths),
    sumErrorTenths: a.sumErrorTenths + b.sumErrorTenths,
  };
}

/** The day windows of an enclosure on a timer's clock, one a day. */
export type EnclosingOf = (enclosureId: string, timer: LampTimer) => readonly MinuteWindow[];

/** What lamps on a timer cost in error, each combination solved once. */
export class ShelfCosts {
  readonly #care: Care;
  readonly #historyOf: (timer: LampTimer) => DialHistory;
  readonly #day = new Map<string, Errors>();
  readonly #solved = new Map<string, SolvedGroup>();
  readonly #part = new Map<string, Errors>();
  readonly #bounds = new Map<string, number>();
  readonly #alone = new Map<string, number>();
  readonly #timerKeys = new Map<string, string>();
  readonly #lampKeys = new Map<string, string>();
  readonly #wishKeys = new Map<string, string>();

  constructor(care: Care, historyOf: (timer: LampTimer) => DialHistory) {
    this.#care = care;
    this.#historyOf = historyOf;
  }

  /** Returns what makes two timers the same for the solver. */
  timerKey(timer: LampTimer): string {
    const known = this.#timerKeys.get(timer.id);
    if (known !== undefined) return known;
    const { earlier, past } = this.#historyOf(timer);
    const key = JSON.stringify([stepMinutesOf(timer), timer.clock, earlier, past]);
    this.#timerKeys.set(timer.id, key);
    return key;
  }

  /** Returns a short name of what a lamp asks for: the same for lamps that are the same for the solver. */
  lampKey(lamp: ShelfLamp): string {
    const known = this.#lampKeys.get(lamp.id);
    if (known !== undefined) return known;
    const wish = JSON.stringify([lamp.target, lamp.enclosure.targets.day, Array.from(lamp.targetTenths)]);
    const key = this.#wishKeys.get(wish) ?? `w${this.#wishKeys.size}`;
    this.#wishKeys.set(wish, key);
    this.#lampKeys.set(lamp.id, key);
    return key;
  }

  /** Returns the least worst and sum of e(d) of day lamps on a timer. */
  dayErrors(timer: LampTimer, lamps: readonly ShelfLamp[]): Errors {
    return this.#keep(this.#day, this.setKey(timer, lamps), () =>
      leastErrors(problemOf(this.#care, dialGroup(timer, lamps), this.#historyOf(timer), [])),
    );
  }

  /** Returns a worst error that no day dial with these lamps and any others is under. */
  dayBound(timer: LampTimer, lamps: readonly ShelfLamp[]): number {
    if (this.#isMonotone(timer)) return this.dayErrors(timer, lamps).worstErrorTenths;
    return this.#keep(this.#bounds, this.setKey(timer, lamps), () => leastWorstError(this.#loosened(timer, lamps)));
  }

  /** Returns a worst error that no dial for parts of the day with these lamps and any others is under. */
  partBound(timer: LampTimer, lamps: readonly ShelfLamp[]): number {
    if (this.#isMonotone(timer)) return this.partErrors(timer, lamps, null, '').worstErrorTenths;
    if (dialGroup(timer, lamps).kind !== 'inset') return 0;
    const key = `${this.setKey(timer, lamps)} in any day`;
    return this.#keep(this.#bounds, key, () => leastWorstError(this.#loosened(timer, lamps)));
  }

  /** Returns a sum of errors that no day dial with this lamp is under, whatever else hangs there and however large its worst error. */
  aloneSum(timer: LampTimer, lamp: ShelfLamp): number {
    return this.#keep(this.#alone, this.setKey(timer, [lamp]), () => leastSumOfErrors(this.#loosened(timer, [lamp])));
  }

  /** More lamps on a timer never make it better, unless a tolerance gives them more settings, or a jump or the past is given up for them. */
  #isMonotone(timer: LampTimer): boolean {
    const { toleranceMinutes, jumpAtMostMinutes } = this.#care.plan;
    return toleranceMinutes === null && jumpAtMostMinutes === null && this.#historyOf(timer).past === null;
  }

  /** The problem with all that lamps beside these could loosen. */
  #loosened(timer: LampTimer, lamps: readonly ShelfLamp[]): DialProblem {
    const problem = problemOf(this.#care, dialGroup(timer, lamps), this.#historyOf(timer), []);
    const isBound = problem.toleranceTenths === null && problem.past === null;
    return {
      ...problem,
      toleranceTenths: null,
      settingsAtMost: isBound ? problem.settingsAtMost : problem.days,
      jumpAtMostMinutes: null,
      insideByDay: null,
    };
  }

  /** Returns half the spread of the lamps' targets summed over the days: no window comes nearer to all of them. */
  spreadSum(lamps: readonly ShelfLamp[]): number {
    const { high, low } = envelopeOf(lamps);
    return Math.ceil(high.reduce((sum, tenths, day) => sum + tenths - (low[day] ?? 0), 0) / 2);
  }

  /** Returns the windows of day lamps on a timer. */
  solvedDay(timer: LampTimer, lamps: readonly ShelfLamp[]): SolvedGroup {
    return this.#keep(this.#solved, this.setKey(timer, lamps), () =>
      solveGroup(this.#care, dialGroup(timer, lamps), this.#historyOf(timer), []),
    );
  }

  /** Returns how far an inset lamp misses its own target on a day dial. */
  followError(timer: LampTimer, dayLamps: readonly ShelfLamp[], lamp: ShelfLamp): Errors {
    return this.#keep(this.#part, `${this.setKey(timer, dayLamps)} follow ${this.lampKey(lamp)}`, () =>
      lampError(lamp, litTenths(this.solvedDay(timer, dayLamps))),
    );
  }

  /** Returns a bound from below on `followError` that needs no windows: the dial's window is never further than its worst from the longest day. */
  followBound(dayLamps: readonly ShelfLamp[], day: Errors, lamp: ShelfLamp): Errors {
    let [worstErrorTenths, sumErrorTenths] = [0, 0];
    for (let index = 0; index < lamp.targetTenths.length; index++) {
      const longest = dayLamps.reduce((most, { targetTenths }) => Math.max(most, targetTenths[index] ?? 0), 0);
      const least = longest - day.worstErrorTenths - (lamp.targetTenths[index] ?? 0);
      if (least > worstErrorTenths) worstErrorTenths = least;
      if (least > 0) sumErrorTenths += least;
    }
    return { worstErrorTenths, sumErrorTenths };
  }

  /** Returns the least errors of inset or spans lamps on a timer of their own; without `enclosing` a bound from below. */
  partErrors(timer: LampTimer, lamps: readonly ShelfLamp[], enclosing: EnclosingOf | null, daysKey: string): Errors {
    const group = dialGroup(timer, lamps);
    if (group.kind === 'idle' || (group.kind === 'spans' && !enclosing)) return NO_ERROR;
    const key = `${this.setKey(timer, lamps)} in ${enclosing ? daysKey : 'any day'}`;
    return this.#keep(this.#part, key, () => {
      const history = this.#historyOf(timer);
      if (!enclosing) return leastErrors({ ...problemOf(this.#care, group, history, []), insideByDay: null });
      const ids = [
        ...new Set(lamps.filter(({ target }) => target.kind !== 'none').map(({ enclosure }) => enclosure.id)),
      ];
      const windows = ids.map((id) => enclosing(id, timer));
      return group.kind === 'spans'
        ? solveGroup(this.#care, group, history, windows)
        : leastErrors(problemOf(this.#care, group, history, windows));
    });
  }

  /** Returns what makes two sets of lamps on two timers the same for the solver. */
  setKey(timer: LampTimer, lamps: readonly ShelfLamp[]): string {
    const keys = [...new Set(lamps.filter(({ target }) => target.kind !== 'none').map((lamp) => this.lampKey(lamp)))];
    return `${this.timerKey(timer)} ${keys.sort().join(',')}`;
  }

  /** Sets of lamps worked out so far. */
  get worked(): number {
    return this.#worked;
  }

  #worked = 0;

  #keep<V>(memo: Map<string, V>, key: string, work: () => V): V {
    const known = memo.get(key);
    if (known !== undefined) return known;
    this.#worked++;
    const value = work();
    memo.set(key, value);
    return value;
  }
}
