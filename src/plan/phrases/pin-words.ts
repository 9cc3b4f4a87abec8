/** Pins in words for a person with the dial in hand: what to push, what to lift, how many, from which to which. */
import { clockTimeOf, DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { DialPlan, Window } from '../plan.ts';
import { pinsToMove, type SlotRun, slotRuns } from '../slots.ts';
import type { Words } from '../words/words.ts';

type ShelfWords = Words['shelf'];
type Dial = Pick<DialPlan, 'stepMinutes' | 'turnsInDays' | 'pins'>;

/** Returns what sets a dial from scratch, a sentence a line; the pins of one day where all days of the week are alike. */
export function pinsToSet(dial: Dial, slots: readonly number[], words: ShelfWords): readonly string[] {
  const perDay = DAY_MINUTES / dial.stepMinutes;
  const day = slotsOfDay(slots, perDay);
  const [span, all, none, others] =
    dial.pins === 'up-is-on'
      ? [words.liftSpan, words.liftAll, words.pushAll, words.othersDown]
      : [words.pushSpan, words.pushAll, words.liftAll, words.othersUp];
  const inAll = perDay * dial.turnsInDays;
  if (day.length === 0) return [none(inAll)];
  if (day.length === perDay) return [all(inAll)];
  const lines = slotRuns(day, perDay).map((run) => span(run.count, firstPin(run, dial), lastPin(run, dial)));
  return [...lines.map((line) => (dial.turnsInDays === 7 ? words.everyDay(line) : line)), others];
}

/** Returns what turns a dial that shows one setting into the other, for instance `push down 1 pin: 07:15; lift 1 pin: 18:45`. */
export function pinsToChange(
  dial: Dial,
  before: readonly number[],
  after: readonly number[],
  words: ShelfWords,
): string {
  const perDay = DAY_MINUTES / dial.stepMinutes;
  const moves = pinsToMove(slotsOfDay(before, perDay), slotsOfDay(after, perDay), dial.pins ?? 'down-is-on');
  const parts = [
    ...(moves.push.length > 0 ? [words.pushSome(moves.push.length, runWords(dial, moves.push, perDay, words))] : []),
    ...(moves.lift.length > 0 ? [words.liftSome(moves.lift.length, runWords(dial, moves.lift, perDay, words))] : []),
  ];
  const all = words.also(parts);
  return dial.turnsInDays === 7 ? words.everyDay(all) : all;
}

/** Slots of the first day; a 7-day dial does the same on every day. */
function slotsOfDay(slots: readonly number[], perDay: number): readonly number[] {
  return slots.filter((slot) => slot < perDay);
}

function runWords(dial: Dial, slots: readonly number[], perDay: number, words: ShelfWords): string {
  const runs = slotRuns(slots, perDay).map((run) =>
    run.count === 1 ? firstPin(run, dial) : words.pinRange(firstPin(run, dial), lastPin(run, dial)),
  );
  return words.list(runs);
}

function firstPin({ first }: SlotRun, { stepMinutes }: Dial): string {
  return clockTimeOf(first * stepMinutes);
}

function lastPin({ last }: SlotRun, { stepMinutes }: Dial): string {
  return clockTimeOf(last * stepMinutes);
}

/** Returns windows in words, one over midnight as one; a 7-day dial's once. */
export function windowsInWords(windows: readonly Window[], words: ShelfWords): string {
  const day = windows[0]?.day;
  const ofDay = windows.filter((window) => window.day === day);
  if (ofDay.length === 0) return words.offAllDay;
  if (ofDay.some(({ on, off }) => on === '00:00' && off === '24:00')) return words.onAllDay;
  return words.list(joinedOverMidnight(ofDay).map(({ on, off }) => words.onFromTo(on, off)));
}

/** Returns windows as a person reads them: one that passes midnight is one, its off before its on. */
export function joinedOverMidnight(windows: readonly Window[]): readonly Window[] {
  const early = windows.find(({ on }) => on === '00:00');
  const late = windows.find(({ off }) => off === '24:00');
  if (!early || !late || early === late) return windows;
  const rest = windows.filter((window) => window !== early && window !== late);
  return [...rest, { on: late.on, off: early.off }];
}
