/** Changes of what is set on the hardware: pins, mist entries, and the clocks of the timers themselves. */
import { epochDay } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { clockChangesOf } from '../../basics/utc-offsets.ts';
import type { DialPlan, MistEntry, MistPlan, MistSet } from '../../plan/plan.ts';
import { siteOffsets } from '../../plan/site-offsets.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { OnDuty } from './on-duty.ts';
import { pinWords, settingWords } from './pin-words.ts';

export function dialSeeds(parts: CalendarParts, words: CalendarWords, onDuty: OnDuty): readonly EventSeed[] {
  return parts.lighting.flatMap((dial) => dialChanges(dial, words, onDuty));
}

function dialChanges(dial: DialPlan, words: CalendarWords, onDuty: OnDuty): readonly EventSeed[] {
  return dial.settings.flatMap((setting, index) => {
    const before = dial.settings[index - 1]?.slots ?? null;
    if (before?.join() === setting.slots.join()) return [];
    return [
      {
        ...ALL_DAY,
        days: [epochDay(setting.from)],
        title: words.setDevice(dial.device, pinWords(dial, before, setting.slots, words)),
        description: [settingWords(dial.device, setting, words), words.dialClock[dial.clock]],
        category: 'lighting',
        for: onDuty(setting.from),
        kind: 'lighting',
        task: `dial/${dial.device}`,
      },
    ];
  });
}

/** Enclosures that share a timer share its entries, and its event. */
export function mistSeeds(parts: CalendarParts, words: CalendarWords, onDuty: OnDuty): readonly EventSeed[] {
  const seen = new Set<string>();
  return parts.misting
    .flatMap((mist) => mistChanges(mist, words, onDuty))
    .filter(({ days, title }) => !seen.has(`${days.join()} ${title}`) && seen.add(`${days.join()} ${title}`));
}

function mistChanges(mist: MistPlan, words: CalendarWords, onDuty: OnDuty): readonly EventSeed[] {
  const { device } = mist;
  if (device === null || mist.pump === 'by-hand') return [];
  return mist.sets.flatMap((set, index) => {
    const before = mist.sets[index - 1] ?? null;
    const change = set.interval
      ? intervalWords(set, before, words)
      : entryWords(before?.entries ?? null, set.entries, words);
    if (change === null) return [];
    return [
      {
        ...ALL_DAY,
        days: [epochDay(set.from)],
        title: words.setDevice(device, change),
        description: mistDetails(set, words),
        category: 'mist',
        for: onDuty(set.from),
        kind: 'mist-entries',
        task: `mist/${device}`,
      },
    ];
  });
}

function entryWords(
  before: readonly MistEntry[] | null,
  after: readonly MistEntry[],
  words: CalendarWords,
): string | null {
  const text = (entries: readonly MistEntry[]): string =>
    words.list(entries.map(({ at, seconds }) => words.mistEntry(at, words.seconds(seconds))));
  if (before === null) return after.length === 0 ? words.noMist : words.enter(text(after));
  const was = new Map(before.map(({ at, seconds }) => [at, seconds]));
  const is = new Set(after.map(({ at }) => at));
  const add = after.filter(({ at }) => !was.has(at));
  const alter = after.filter(({ at, seconds }) => was.has(at) && was.get(at) !== seconds);
  const gone = before.filter(({ at }) => !is.has(at)).map(({ at }) => at);
  const altered = alter.map(({ at, seconds }) => words.alteredEntry(at, words.seconds(seconds)));
  const steps = [
    ...(add.length > 0 ? [words.add(text(add))] : []),
    ...(alter.length > 0 ? [words.alter(words.list(altered))] : []),
    ...(gone.length > 0 ? [words.remove(words.list(gone))] : []),
  ];
  return steps.length === 0 ? null : words.inOrder(steps);
}

function intervalWords(set: MistSet, before: MistSet | null, words: CalendarWords): string | null {
  if (!set.interval) return null;
  const { onSeconds, offSeconds } = set.interval;
  if (before?.interval?.onSeconds === onSeconds && before.interval.offSeconds === offSeconds) return null;
  return words.interval(lengthWords(onSeconds, words), lengthWords(offSeconds, words));
}

function lengthWords(seconds: number, words: CalendarWords): string {
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  const texts = [...(minutes > 0 ? [words.minutes(minutes)] : []), ...(rest > 0 ? [words.seconds(rest)] : [])];
  return texts.join(' ');
}

function mistDetails(set: MistSet, words: CalendarWords): readonly string[] {
  if (set.interval) return set.interval.plugInAt === undefined ? [] : [words.plugIn(set.interval.plugInAt)];
  if (set.entries.length === 0) return [];
  return [
    words.allEntries(words.list(set.entries.map(({ at, seconds }) => words.mistEntry(at, words.seconds(seconds))))),
  ];
}

/** One event a clock change within the plan, where there is a timer to turn or to leave alone. */
export function clockSeeds(parts: CalendarParts, words: CalendarWords, onDuty: OnDuty): readonly EventSeed[] {
  const turned = parts.hardware.filter(({ clock }) => clock === 'wall').map(({ id }) => id);
  const left = parts.hardware.filter(({ clock }) => clock === 'standard' || clock === 'automatic').map(({ id }) => id);
  if (turned.length + left.length === 0) return [];
  return clockChangeDays(parts).map(({ day, byMinutes }) => ({
    ...ALL_DAY,
    days: [day],
    title: words.inOrder([
      (byMinutes > 0 ? words.clocksForward : words.clocksBack)(words.minutes(Math.abs(byMinutes))),
      ...(turned.length > 0 ? [words.turn(words.list(turned))] : []),
      ...(left.length > 0 ? [words.leave(words.list(left))] : []),
    ]),
    description: [...(turned.length > 0 ? [words.turnHow] : []), ...(left.length > 0 ? [words.leaveWhy] : [])],
    category: 'clock',
    for: onDuty(day),
    kind: 'clock-change',
    task: 'clocks',
  }));
}

/** Clock changes on the dates of the plan, each on the local date on which the new time begins. */
function clockChangeDays(parts: CalendarParts): readonly { readonly day: number; readonly byMinutes: number }[] {
  const [first, last] = [epochDay(parts.from), epochDay(parts.to)];
  return clockChangesOf(siteOffsets(parts))
    .map(({ utcMinute, beforeMinutes, afterMinutes }) => ({
      day: Math.floor((utcMinute + afterMinutes) / DAY_MINUTES),
      byMinutes: afterMinutes - beforeMinutes,
    }))
    .filter(({ day, byMinutes }) => byMinutes !== 0 && day >= first && day <= last);
}
