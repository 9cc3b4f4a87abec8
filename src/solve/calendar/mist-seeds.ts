/** Mists: new entries of a timer, whose titles say what to add, alter and delete, and mists by hand. */

import { epochDay } from '../../basics/calendar-day.ts';
import { grouped } from '../../basics/grouped.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import type { MistEntry, MistPlan, MistSet } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { Roster } from './on-duty.ts';

const LEAST_MIST_MINUTES = 5;

/** Enclosures that share a timer share its entries, and its event. */
export function mistSeeds(parts: CalendarParts, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  const seen = new Set<string>();
  const pinned = new Set(parts.lighting.filter(({ settings }) => settings.length > 0).map(({ device }) => device));
  return parts.misting
    .filter(({ device }) => device === null || !pinned.has(device))
    .flatMap((mist) => mistChanges(mist, words, roster))
    .filter(({ days, title }) => !seen.has(`${days.join()} ${title}`) && seen.add(`${days.join()} ${title}`));
}

function mistChanges(mist: MistPlan, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  const { device } = mist;
  if (device === null || mist.pump === 'by-hand') return [];
  return mist.sets.flatMap((set, index) => {
    const before = mist.sets[index - 1] ?? null;
    const change = set.interval
      ? intervalWords(set, before, words)
      : entryWords(before?.entries ?? null, set.entries, words);
    if (change === null) return [];
    const { day, who } = roster.turnOf('mist-entries', device, epochDay(set.from));
    return [
      {
        ...ALL_DAY,
        days: [day],
        title: words.setDevice(device, change),
        description: [...mistDetails(set, words), ...roster.titlesOn('change-sheet', day)],
        category: 'mist',
        for: who,
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
    words.list(entries.map(({ at, seconds }) => words.mistEntry(at, runLength(seconds))));
  if (before === null) return after.length === 0 ? words.noMist : words.enter(text(after));
  const was = new Map(before.map(({ at, seconds }) => [at, seconds]));
  const is = new Set(after.map(({ at }) => at));
  const add = after.filter(({ at }) => !was.has(at));
  const alter = after.filter(({ at, seconds }) => was.has(at) && was.get(at) !== seconds);
  const gone = before.filter(({ at }) => !is.has(at)).map(({ at }) => at);
  const altered = alter.map(({ at, seconds }) => words.alteredEntry(at, runLength(seconds)));
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
  return words.interval(runLength(onSeconds), runLength(offSeconds));
}

function mistDetails(set: MistSet, words: CalendarWords): readonly string[] {
  if (set.interval) return set.interval.plugInAt === undefined ? [] : [words.plugIn(set.interval.plugInAt)];
  if (set.entries.length === 0) return [];
  return [words.allEntries(words.list(set.entries.map(({ at, seconds }) => words.mistEntry(at, runLength(seconds)))))];
}

/** Returns the events of mists that a person gives. */
export function handMistSeeds(parts: CalendarParts, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  return parts.misting
    .filter(({ pump }) => pump === 'by-hand')
    .flatMap((mist) => handMistsOf(mist, parts, words, roster));
}

function handMistsOf(mist: MistPlan, parts: CalendarParts, words: CalendarWords, roster: Roster): readonly EventSeed[] {
  const name = parts.enclosures.find(({ id }) => id === mist.enclosure)?.name ?? mist.enclosure;
  const spans = mist.sets.flatMap(({ wall }) => wall);
  return spans.flatMap(({ from, to, entries }) => {
    const turns = [...grouped(datesBetween(from, to), (day) => roster.turnOf('mist-by-hand', mist.enclosure, day).who)];
    return turns.flatMap(([person, days]) =>
      entries.map(({ at, seconds }, slot) => ({
        days,
        minute: minuteOf(at),
        minutes: Math.max(LEAST_MIST_MINUTES, Math.ceil(seconds / 60)),
        title: words.mistByHand(name, runLength(seconds)),
        description: [],
        category: 'mist',
        for: person,
        kind: 'mist',
        task: `${mist.enclosure}/mist`,
        slot,
      })),
    );
  });
}

function datesBetween(from: string, to: string): readonly number[] {
  const first = epochDay(from);
  return Array.from({ length: epochDay(to) - first + 1 }, (_, index) => first + index);
}
