/** The change sheet in words: what to push, lift, add, alter and delete, in the order of the shelf, and what stays. */

import { clockTimeOf } from '../../basics/minute-of-day.ts';
import { type ChangeSheet, changeSheet, type FeedChange, isEmptySheet, nameOf } from '../../plan/change-sheet.ts';
import { noteWords } from '../../plan/phrases/advice-words.ts';
import { loadName } from '../../plan/phrases/load-words.ts';
import { pinsToChange, pinsToSet, windowsInWords } from '../../plan/phrases/pin-words.ts';
import type { Feed, Plan } from '../../plan/plan.ts';
import { type SlotRun, slotRuns } from '../../plan/slots.ts';
import { type DialChange, type Interval, type MistChange, placeOf } from '../../plan/timer-changes.ts';
import { runLength } from '../../plan/words/run-length.ts';
import { type Words, words } from '../../plan/words/words.ts';
import { dateWords, sheetDate } from './settings-section.ts';

/** Returns the sheet of a plan against an earlier one, by default the revision it keeps as its previous. */
export function changesText(plan: Plan, before: Plan | null = plan.previous, on: string = sheetDate(plan)): string {
  const said = words(plan.language);
  const sheet = changeSheet(before, plan, on);
  const head = [
    said.changes.title(plan.name),
    before === null
      ? said.changes.noEarlier
      : before.made === plan.made
        ? said.changes.sinceFirst(dateWords(on, said.shelf))
        : said.changes.since(dateWords(on, said.shelf), dateWords(before.made, said.shelf)),
  ];
  if (before === null) return `${head.join('\n')}\n`;
  const { changes } = said;
  const date = (day: string): string => dateWords(day, said.shelf);
  const blocks = [
    ...timerBlocks(sheet, plan, before, said),
    listBlock(
      changes.loads,
      sheet.moved.map((move) => moveLine(move, plan, before, said)),
    ),
    listBlock(
      changes.covers,
      sheet.covers.flatMap((change) => coverLines(change, plan, said)),
    ),
    listBlock(changes.people, [
      ...sheet.feeds.map((change) => feedLine(change, plan, said)),
      ...sheet.chores.map((change) => choreLine(change, said)),
      ...(sheet.reaches ? [changes.reaches(date(sheet.reaches.after), date(sheet.reaches.before))] : []),
    ]),
    listBlock(
      changes.stays,
      sheet.stays.map(({ what, name }) => changes.staying[what](name)),
    ),
  ].filter((block) => block.length > 0);
  const body = isEmptySheet(sheet) ? [[changes.nothing], ...blocks] : blocks;
  return `${[head, ...body].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Timers as they stand along the shelf, then what is misted by hand. */
function timerBlocks(sheet: ChangeSheet, plan: Plan, before: Plan, said: Words): readonly (readonly string[])[] {
  const dials = sheet.dials.map((change) => ({ at: change.device, lines: dialBlock(change, plan, before, said) }));
  const mists = sheet.mists.map((change) => ({ at: change.device, lines: mistBlock(change, plan, said) }));
  return [...dials, ...mists]
    .toSorted((a, b) => placeOf(a.at, before, plan) - placeOf(b.at, before, plan))
    .map(({ lines }) => lines);
}

function listBlock(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [heading, ...lines.map((line) => `  ${line}`)];
}

function dialBlock(change: DialChange, plan: Plan, before: Plan, said: Words): readonly string[] {
  const { device, kind, after } = change;
  if (kind === 'gone') return [said.changes.goneDevice(device)];
  if (kind === 'new')
    return listBlock(said.changes.newDevice(device), [
      ...setLines(change, plan, said),
      ...clockLines(change, said),
      ...laterLines(change, said),
    ]);
  return listBlock(device, [
    nowLine(change, plan, before, said),
    ...(after && change.comesOn.length + change.goesOff.length > 0
      ? [said.changes.afterwards(windowsInWords(after.windows, said.shelf))]
      : []),
    ...clockLines(change, said),
    ...laterLines(change, said),
  ]);
}

/** What sets it from scratch. */
function setLines({ device, after }: DialChange, plan: Plan, said: Words): readonly string[] {
  const dial = plan.lighting.find((each) => each.device === device);
  if (!dial || !after) return [];
  const windows = windowsInWords(after.windows, said.shelf);
  return dial.pins === null
    ? [said.changes.today(windows)]
    : [...pinsToSet(dial, after.slots, said.shelf), said.changes.afterwards(windows)];
}

function clockLines({ clock }: Pick<DialChange, 'clock'>, said: Words): readonly string[] {
  return clock === null ? [] : [said.changes.clock(said.changes.clocks[clock.from], said.changes.clocks[clock.to])];
}

function laterLines(
  { laterDates, droppedDates }: Pick<DialChange, 'laterDates' | 'droppedDates'>,
  said: Words,
): readonly string[] {
  const dates = (list: readonly string[]): string => said.shelf.list(list.map((date) => dateWords(date, said.shelf)));
  return [
    ...(laterDates.length === 0 ? [] : [said.changes.later(dates(laterDates))]),
    ...(droppedDates.length === 0 ? [] : [said.changes.dropped(dates(droppedDates))]),
  ];
}

function nowLine(change: DialChange, plan: Plan, before: Plan, said: Words): string {
  if (change.comesOn.length + change.goesOff.length === 0) return said.changes.nothingNow;
  const dial =
    plan.lighting.find(({ device }) => device === change.device) ??
    before.lighting.find(({ device }) => device === change.device);
  if (dial && dial.pins !== null)
    return said.changes.today(pinsToChange(dial, change.before?.slots ?? [], change.after?.slots ?? [], said.shelf));
  const spans = (slots: readonly number[]): string =>
    said.shelf.list(slotRuns(slots, 1440 / change.stepMinutes).map((run) => runWords(run, change.stepMinutes)));
  return said.changes.today(
    [
      ...(change.comesOn.length > 0 ? [said.changes.comesOn(spans(change.comesOn))] : []),
      ...(change.goesOff.length > 0 ? [said.changes.goesOff(spans(change.goesOff))] : []),
    ].join('; '),
  );
}

function runWords({ first, count }: SlotRun, stepMinutes: number): string {
  return `${clockTimeOf(first * stepMinutes)}–${clockTimeOf(Math.min(1440, (first + count) * stepMinutes))}`;
}

function mistBlock(change: MistChange, plan: Plan, said: Words): readonly string[] {
  const list = said.shelf.list;
  const { changes } = said;
  const { remove, alter, add, keep, device } = change;
  const lines = [
    ...(change.interval ? [intervalLine(change.interval.after, said)] : []),
    ...(remove.length > 0 ? [changes.remove(list(remove.map(({ at }) => at)))] : []),
    ...(alter.length > 0
      ? [
          changes.alter(
            list(alter.map(({ at, fromSeconds, toSeconds }) => changes.altered(at, fromSeconds, toSeconds))),
          ),
        ]
      : []),
    ...(add.length > 0 ? [changes.add(list(add.map(({ at, seconds }) => changes.entry(at, runLength(seconds)))))] : []),
    ...(keep.length > 0
      ? [changes.keep(list(keep.map(({ at, seconds }) => changes.entry(at, runLength(seconds)))))]
      : []),
    ...clockLines(change, said),
    ...laterLines(change, said),
  ];
  const names = list(change.enclosures.map((id) => nameOf(plan, id)));
  return listBlock(device === null ? changes.mists(names) : changes.mistsOn(names, device), lines);
}

function intervalLine(interval: Interval | null, said: Words): string {
  if (interval === null) return said.changes.noInterval;
  const { onSeconds, offSeconds, plugInAt } = interval;
  const words = said.changes.interval(runLength(onSeconds), runLength(offSeconds));
  return plugInAt === undefined ? words : `${words}; ${said.calendar.plugIn(plugInAt)}`;
}

function moveLine({ what, from, to }: ChangeSheet['moved'][number], plan: Plan, before: Plan, said: Words): string {
  const name = loadName(to === null ? before : plan, what);
  if (from === null) return said.changes.plugsIn(name, to ?? '');
  return to === null ? said.changes.unplugged(name, from) : said.changes.moves(name, from, to);
}

function coverLines({ enclosure, advice }: ChangeSheet['covers'][number], plan: Plan, said: Words): readonly string[] {
  const name = nameOf(plan, enclosure);
  return advice.length === 0 ? [said.changes.coverGone(name)] : advice.map((each) => noteWords(plan, each, name));
}

function feedLine({ enclosure, added, removed, altered, first }: FeedChange, plan: Plan, said: Words): string {
  const date = (first.after ?? first.before)?.date ?? '';
  const detail = said.changes.firstFeed(
    dateWords(date, said.shelf),
    feedWords(first.before, said),
    feedWords(first.after, said),
  );
  return `${said.changes.feeds(nameOf(plan, enclosure), added, removed, altered)}; ${detail}`;
}

function feedWords(feed: Feed | null, said: Words): string {
  if (!feed) return said.changes.noFeed;
  const what = feed.count === null ? feed.feeder : said.calendar.pieces(feed.count, feed.feeder);
  return `${feed.time} ${what}, ${feed.dusting === null ? said.calendar.noDust : said.calendar.dustWith(feed.dusting)}`;
}

function choreLine({ title, kind, firstDates }: ChangeSheet['chores'][number], said: Words): string {
  const [first] = firstDates;
  const date = first === undefined ? '' : dateWords(first, said.shelf);
  if (kind === 'new') return said.changes.choreNew(title, date);
  if (kind === 'reworded') return said.changes.choreReworded(title);
  return kind === 'gone' ? said.changes.choreGone(title) : said.changes.choreChanged(title, date);
}
