/**
 * The ON steps of a timer as slot numbers: 0 is the step from 00:00 (Monday 00:00 on a 7-day dial). Lists are ascending and hold no
 * slot twice. One revolution has `slotsInAll` slots, and slot 0 follows the last one.
 */
import type { PinSense } from './plan.ts';

/** Neighbouring ON slots: `count` of them from `first` on, past the end of the revolution where they pass midnight. */
export interface SlotRun {
  readonly first: number;
  readonly last: number;
  readonly count: number;
}

/** Returns the runs in order of their first slot, one that passes the end of the revolution last; empty where no slot is on. */
export function slotRuns(slots: readonly number[], slotsInAll: number): readonly SlotRun[] {
  const first = slots[0];
  if (first === undefined) return [];
  if (slots.length === slotsInAll) return [{ first: 0, last: slotsInAll - 1, count: slotsInAll }];
  const runs: { first: number; last: number; count: number }[] = [];
  for (const slot of slots) {
    const run = runs.at(-1);
    if (run && run.last === slot - 1) {
      run.last = slot;
      run.count++;
    } else runs.push({ first: slot, last: slot, count: 1 });
  }
  const [head, tail] = [runs[0], runs.at(-1)];
  if (!head || !tail || runs.length < 2 || head.first !== 0 || tail.last !== slotsInAll - 1) return runs;
  const joined = { first: tail.first, last: head.last, count: head.count + tail.count };
  return [...runs.slice(1, -1), joined];
}

/** Returns the slots of `to` that `from` lacks, and the other way round; both ascending. */
export function slotDifference(
  from: readonly number[],
  to: readonly number[],
): { readonly added: readonly number[]; readonly removed: readonly number[] } {
  const [before, after] = [new Set(from), new Set(to)];
  return { added: to.filter((slot) => !before.has(slot)), removed: from.filter((slot) => !after.has(slot)) };
}

/** Returns the pins to press and to lift so that a dial which shows `from` shows `to`, for either kind of pin. */
export function pinsToMove(
  from: readonly number[],
  to: readonly number[],
  sense: PinSense,
): { readonly push: readonly number[]; readonly lift: readonly number[] } {
  const { added, removed } = slotDifference(from, to);
  return sense === 'down-is-on' ? { push: added, lift: removed } : { push: removed, lift: added };
}
