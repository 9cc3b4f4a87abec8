/** Everything a person is to do, as few recurring events: what a phone shows. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { grouped } from '../../basics/grouped.ts';
import { clockTimeOf, DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { cutAt, plainLine, plainLines } from '../../basics/plain-line.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { EventDraft } from '../../plan/event-draft.ts';
import { type MinutesOfDay, siteOffsets, unsafeMinutes } from '../../plan/site-offsets.ts';
import { words } from '../../plan/words/words.ts';
import { clockSeeds } from './clock-seeds.ts';
import { dialSeeds } from './dial-seeds.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import { feedSeeds } from './feed-seeds.ts';
import { type DateRun, type Folding, foldDates } from './fold-dates.ts';
import { absenceSeeds, choreSeeds, shoppingSeeds } from './job-seeds.ts';
import { handMistSeeds, mistSeeds } from './mist-seeds.ts';
import { onDutyIn, rosterOf } from './on-duty.ts';

/** A phone shows some forty characters; beyond this nobody reads. */
const LONGEST_TITLE = 200;
const LONGEST_DESCRIPTION = 2000;
const LEAST_MINUTES = 5;
/** So many times as many events as need be are worth a word; fewer are no matter to a phone. */
const NOTED_FROM = 1.2;

/**
 * Returns the events of all people, by start, without identities. `shopper` buys; without one the first person does.
 * Every wanted date is covered by exactly one event. May report `title-cut`, `event-all-day` and `more-events`.
 */
export function calendarEvents(parts: CalendarParts, shopper: string | null, log: Log): readonly EventDraft[] {
  const language = words(parts.language).calendar;
  const unsafe = unsafeMinutes(siteOffsets(parts));
  const seeds = seedsOf(parts, shopper, language).map((seed) => safeTime(plainSeed(seed, log), unsafe, language, log));
  const reminders = new Map(parts.people.map(({ id, reminderMinutes }) => [id, reminderMinutes]));
  const folding = foldingOnce();
  const folded = joined(seeds).map((seed) => foldSeed(seed, reminders.get(seed.for) ?? null, folding));
  const [events, atLeast] = [
    folded.flatMap(({ events }) => events),
    folded.reduce((sum, each) => sum + each.atLeast, 0),
  ];
  if (events.length > atLeast * NOTED_FROM) log.report('more-events', { events: events.length, atLeast });
  return byStart(events);
}

function seedsOf(parts: CalendarParts, shopper: string | null, language: CalendarWords): readonly EventSeed[] {
  const keeper = (parts.people.find(({ id }) => id === 'keeper') ?? parts.people[0])?.id ?? 'keeper';
  const roster = rosterOf(parts, onDutyIn(parts, keeper));
  return [
    ...feedSeeds(parts, language),
    ...choreSeeds(parts, language),
    ...dialSeeds(parts, language, roster),
    ...mistSeeds(parts, language, roster),
    ...handMistSeeds(parts, language, roster),
    ...clockSeeds(parts, language, roster),
    ...shoppingSeeds(parts, language, onDutyIn(parts, shopper ?? keeper)),
    ...absenceSeeds(parts, language, keeper),
  ];
}

function plainSeed(seed: EventSeed, log: Log): EventSeed {
  const title = plainLine(seed.title);
  const length = [...title].length;
  if (length > LONGEST_TITLE) log.report('title-cut', { task: seed.task, length, most: LONGEST_TITLE });
  const description = seed.description.map(plainLines).filter((line) => line !== '');
  return {
    ...seed,
    title: cutAt(title, LONGEST_TITLE),
    description: description.map((line) => cutAt(line, LONGEST_DESCRIPTION)),
  };
}

/** Where the clocks change, a time that they skip or repeat becomes all day, with the time in the title. */
function safeTime(seed: EventSeed, unsafe: readonly MinutesOfDay[], language: CalendarWords, log: Log): EventSeed {
  if (seed.minute === null) return seed;
  const minutes = Math.max(LEAST_MINUTES, seed.minutes);
  const [from, to] = [seed.minute, seed.minute + minutes];
  const hours = unsafe.find(({ fromMinute, toMinute }) =>
    [0, DAY_MINUTES].some((day) => from <= toMinute + day && to >= fromMinute + day),
  );
  if (!hours) return { ...seed, minutes };
  const time = clockTimeOf(seed.minute);
  const span = { from: clockTimeOf(hours.fromMinute), to: clockTimeOf(hours.toMinute) };
  log.report('event-all-day', { task: seed.task, time, ...span });
  return { ...seed, minute: ALL_DAY.minute, minutes: ALL_DAY.minutes, title: language.atTime(time, seed.title) };
}

/** Returns the seeds with those that differ in nothing but their dates joined into one. */
function joined(seeds: readonly EventSeed[]): readonly EventSeed[] {
  const alike = grouped(seeds, ({ title, description, category, for: person, kind, task, slot, minute, minutes }) =>
    JSON.stringify([person, task, slot, minute, minutes, category, kind, title, description]),
  );
  return [...alike.values()].flatMap(([seed, ...others]) =>
    seed ? [{ ...seed, days: [seed, ...others].flatMap(({ days }) => days) }] : [],
  );
}

/** Many enclosures are cleaned, measured and fed on the same dates. */
function foldingOnce(): (dates: readonly EpochDay[]) => Folding {
  const known = new Map<string, Folding>();
  return (dates) => {
    const key = dates.join();
    const folding = known.get(key) ?? foldDates(dates);
    known.set(key, folding);
    return folding;
  };
}

function foldSeed(
  seed: EventSeed,
  reminderMinutes: number | null,
  folding: (dates: readonly EpochDay[]) => Folding,
): { readonly events: readonly EventDraft[]; readonly atLeast: number } {
  const dates = [...new Set(seed.days)].sort((a, b) => a - b);
  const { runs, atLeast } = folding(dates);
  return { events: runs.map((run) => draftOf(seed, run, reminderMinutes)), atLeast };
}

function draftOf(seed: EventSeed, run: DateRun, reminderMinutes: number | null): EventDraft {
  const at = (day: EpochDay): string =>
    seed.minute === null ? isoDateOf(day) : `${isoDateOf(day)}T${clockTimeOf(seed.minute)}`;
  return {
    title: seed.title,
    description: seed.description.join('\n'),
    category: seed.category,
    start: at(run.from),
    minutes: seed.minutes,
    allDay: seed.minute === null,
    rule: run.rule,
    until: run.rule === null ? null : at(run.to),
    exdates: run.excepted.map(at),
    alarmMinutes: seed.minute === null ? null : reminderMinutes,
    for: seed.for,
    kind: seed.kind,
    task: seed.task,
    slot: seed.slot,
  };
}

function byStart(events: readonly EventDraft[]): readonly EventDraft[] {
  const keyed = events.map((event) => {
    const { start, for: person, task, slot, title, rule } = event;
    return { event, key: [start, person, task, slot, title, rule].join('\u0000') };
  });
  return keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)).map(({ event }) => event);
}
