/** The moves of the local search. A set of entries that no stated move improves is an answer. */
import { DAY_MINUTES, wrapMinute } from '../../../basics/minute-of-day.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import type { DayProblem } from './day-problem.ts';
import type { Slot, StartGrid } from './start-grid.ts';

/** The lengths that a problem may use, ascending, in s. */
export interface Lengths {
  /** Everything that pump and timer can do. */
  readonly all: readonly number[];
  /** Those inside every cadence; the same as `all` where there is none, or none inside. */
  readonly wished: readonly number[];
}

function lengthsOf(problem: DayProblem): Lengths {
  const { lengthStepSeconds: step, shortestSeconds, longestSeconds } = problem.machine;
  const all: number[] = [];
  for (let seconds = Math.ceil(shortestSeconds / step - 1e-9) * step; seconds <= longestSeconds; seconds += step) {
    if (seconds > 0) all.push(seconds);
  }
  const wished = all.filter((seconds) =>
    problem.cases.every(({ cadence }) => !cadence || (seconds >= cadence.seconds[0] && seconds <= cadence.seconds[1])),
  );
  return { all, wished: wished.length > 0 ? wished : all };
}

/** Moves of one kind, from some entries. */
export type Family = (entries: readonly Run[]) => Iterable<readonly Run[]>;

/** The changes of a day's entries that a search tries, each in whole steps of pump and timer. */
export class DayMoves {
  readonly #grid: StartGrid;
  readonly #step: number;
  readonly #lengthStep: number;
  readonly lengths: Lengths;

  constructor(problem: DayProblem, grid: StartGrid) {
    this.#grid = grid;
    this.#step = problem.machine.startStepMinutes;
    this.#lengthStep = problem.machine.lengthStepSeconds;
    this.lengths = lengthsOf(problem);
  }

  /** The stated moves: a start or a length by one step, dropping, a length step from one to another, a shortest mist at any start. */
  stated(): readonly Family[] {
    const shortest = this.lengths.wished[0];
    return [
      (entries) => this.byLength(entries, 1),
      (entries) => this.shares(entries),
      (entries) => this.byStart(entries, 1),
      (entries) => this.drops(entries),
      ...(shortest === undefined ? [] : [(entries: readonly Run[]) => this.adds(entries, shortest, this.#grid.slots)]),
    ];
  }

  /** One entry shorter or longer by so many steps. */
  *byLength(entries: readonly Run[], steps: number): Generator<readonly Run[]> {
    for (let i = 0; i < entries.length; i++) {
      for (const way of [-steps, steps]) {
        const changed = this.#lengthened(entries, i, way);
        if (changed) yield changed;
      }
    }
  }

  /** Every entry shorter or longer by so many steps. */
  *together(entries: readonly Run[], steps: number): Generator<readonly Run[]> {
    for (const way of [-steps, steps]) {
      const changed = entries.map((entry) => ({ ...entry, seconds: entry.seconds + way * this.#lengthStep }));
      if (changed.every((entry) => entry.seconds > 0)) yield changed;
    }
  }

  /** A length step from one entry to another. */
  *shares(entries: readonly Run[]): Generator<readonly Run[]> {
    for (let i = 0; i < entries.length; i++) {
      const shorter = this.#lengthened(entries, i, -1);
      if (!shorter) continue;
      for (let j = 0; j < entries.length; j++) {
        const moved = i === j ? null : this.#lengthened(shorter, j, 1);
        if (moved) yield moved;
      }
    }
  }

  /** One entry earlier or later by so many steps. */
  *byStart(entries: readonly Run[], steps: number): Generator<readonly Run[]> {
    for (let i = 0; i < entries.length; i++) {
      const entry = entries[i];
      if (!entry) continue;
      for (const way of [-steps, steps]) {
        const minute = wrapMinute(entry.startMinute + way * this.#step);
        const moved = this.#placed(entries, i, minute, entry.seconds);
        if (moved) yield moved;
      }
    }
  }

  /** One entry to any of some slots. */
  *relocations(entries: readonly Run[], slots: readonly Slot[]): Generator<readonly Run[]> {
    for (let i = 0; i < entries.length; i++) {
      for (const slot of slots) {
        const moved = this.#placed(entries, i, slot.minute, entries[i]?.seconds ?? 0);
        if (moved) yield moved;
      }
    }
  }

  *drops(entries: readonly Run[]): Generator<readonly Run[]> {
    for (let i = 0; i < entries.length; i++) yield entries.filter((_, k) => k !== i);
  }

  *adds(entries: readonly Run[], seconds: number, slots: readonly Slot[]): Generator<readonly Run[]> {
    for (const slot of slots) {
      const added = this.#placed(entries, -1, slot.minute, seconds);
      if (added) yield added;
    }
  }

  #lengthened(entries: readonly Run[], index: number, steps: number): Run[] | null {
    const entry = entries[index];
    if (!entry) return null;
    const seconds = entry.seconds + steps * this.#lengthStep;
    if (seconds <= 0) return null;
    const changed = [...entries];
    changed[index] = { startMinute: entry.startMinute, seconds };
    return changed;
  }

  /** Returns the entries without one (index -1: all of them) and with one at a minute, in the order of the day; null where a start is taken or closed. */
  #placed(entries: readonly Run[], without: number, minute: number, seconds: number): Run[] | null {
    const slot = this.#grid.slotAt.get(minute);
    if (!slot) return null;
    const placed: Run[] = [];
    let done = false;
    for (let k = 0; k < entries.length; k++) {
      const entry = entries[k];
      if (!entry || k === without) continue;
      if (entry.startMinute === minute) return null;
      if (!done && (this.#grid.slotAt.get(entry.startMinute)?.position ?? DAY_MINUTES) > slot.position) {
        placed.push({ startMinute: minute, seconds });
        done = true;
      }
      placed.push(entry);
    }
    if (!done) placed.push({ startMinute: minute, seconds });
    return placed;
  }
}
