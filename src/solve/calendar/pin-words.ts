/** What to do to the pins of a dial, in words short enough for a calendar title. */

import { WEEKDAYS } from '../../basics/calendar-day.ts';
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import type { DialPlan, DialSetting } from '../../plan/plan.ts';
import { pinsToMove, slotDifference, slotRuns } from '../../plan/slots.ts';
import type { CalendarWords } from './event-seed.ts';

type Dial = Pick<DialPlan, 'stepMinutes' | 'turnsInDays' | 'pins'>;

/** Returns what turns the dial from one setting to the next; `before` is null where it is set for the first time. */
export function pinWords(
  dial: Dial,
  before: readonly number[] | null,
  after: readonly number[],
  words: CalendarWords,
): string {
  if (before === null) return firstPins(dial, after, words);
  const spans = (slots: readonly number[]): string => spanWords(dial, slots, words);
  if (dial.pins === null) {
    const { added, removed } = slotDifference(before, after);
    return words.inOrder([...said(added, spans, words.switchOn), ...said(removed, spans, words.switchOff)]);
  }
  const { push, lift } = pinsToMove(before, after, dial.pins);
  return words.inOrder([...said(push, spans, words.push), ...said(lift, spans, words.lift)]);
}

function firstPins(dial: Dial, on: readonly number[], words: CalendarWords): string {
  const spans = on.length === 0 ? words.allPins : spanWords(dial, on, words);
  if (dial.pins === null) return on.length === 0 ? words.switchOff(words.allPins) : words.switchOn(spans);
  const [rest, act, undo] =
    dial.pins === 'down-is-on'
      ? [words.liftTheRest, words.push, words.lift]
      : [words.pushTheRest, words.lift, words.push];
  if (on.length === 0) return undo(words.allPins);
  return on.length === slotsInAll(dial) ? act(words.allPins) : words.inOrder([act(spans), rest]);
}

function said(
  slots: readonly number[],
  spans: (slots: readonly number[]) => string,
  verb: (spans: string) => string,
): readonly string[] {
  return slots.length === 0 ? [] : [verb(spans(slots))];
}

/** Returns the setting in force afterwards, for the description. */
export function settingWords(device: string, setting: DialSetting, words: CalendarWords): string {
  const seen = new Set(
    setting.windows.map(({ day, on, off }) => `${day === undefined ? '' : `${words.weekdays[day]} `}${on}–${off}`),
  );
  const all = [...seen];
  return all.length === 0 ? words.afterwardsOff(device) : words.afterwards(device, words.list(all));
}

/** Returns spans of pins with their number, a 7-day dial's once where all days are alike. */
function spanWords(dial: Dial, slots: readonly number[], words: CalendarWords): string {
  const perDay = slotsInAll(dial) / dial.turnsInDays;
  const byDay = Array.from({ length: dial.turnsInDays }, (_, day) =>
    slots.filter((slot) => Math.floor(slot / perDay) === day).map((slot) => slot - day * perDay),
  );
  const texts = byDay.map((day) => daySpans(dial, day, perDay, words));
  const [first] = texts;
  if (first !== undefined && texts.every((text) => text === first))
    return dial.turnsInDays === 1 ? first : words.everyDay(first);
  const named = texts.flatMap((text, day) =>
    text === '' ? [] : [words.onWeekday(words.weekdays[WEEKDAYS[day] ?? 'mon'], text)],
  );
  return words.list(named);
}

function daySpans(dial: Dial, slots: readonly number[], perDay: number, words: CalendarWords): string {
  const runs = dial.turnsInDays === 1 ? slotRuns(slots, perDay) : slotRuns(slots, Number.POSITIVE_INFINITY);
  const spans = runs.map(({ first, last, count }) =>
    words.pinSpan(words.pins(count), clockTimeOf(first * dial.stepMinutes), clockTimeOf((last + 1) * dial.stepMinutes)),
  );
  return words.list(spans);
}

function slotsInAll(dial: Dial): number {
  return (dial.turnsInDays * 1440) / dial.stepMinutes;
}
