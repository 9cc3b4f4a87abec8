/** The change sheet in words: what to push, lift, add, alter and delete, in the order of the shelf, and what stays. */
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import {
  type ChangeSheet,
  changeSheet,
  type DialChange,
  type FeedChange,
  isEmptySheet,
  type MistChange,
} from '../../plan/change-sheet.ts';
import { pinsToChange, windowsInWords } from '../../plan/phrases/pin-words.ts';
import type { Feed, Plan } from '../../plan/plan.ts';
import { type SlotRun, slotRuns } from '../../plan/slots.ts';
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
      : said.changes.since(dateWords(on, said.shelf), dateWords(before.made, said.shelf)),
  ];
  if (before === null) return `${head.join('\n')}\n`;
  const blocks = [
    ...sheet.dials.map((change) => dialBlock(change, plan, before, said)),
    ...sheet.mists.map((change) => mistBlock(change, said)),
    listBlock(
      said.changes.loads,
      sheet.moved.map((move) => moveLine(move, said)),
    ),
    listBlock(said.changes.people, [
      ...sheet.feeds.map((change) => feedLine(change, said)),
      ...sheet.chores.map((change) => choreLine(change, said)),
    ]),
    listBlock(
      said.changes.stays,
      sheet.stays.map(({ what, name }) => said.changes.staying[what](name)),
    ),
  ].filter((block) => block.length > 0);
  const body = isEmptySheet(sheet) ? [[said.changes.nothing], ...blocks] : blocks;
  return `${[head, ...body].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function listBlock(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [heading, ...lines.map((line) => `  ${line}`)];
}

function dialBlock(change: DialChange, plan: Plan, before: Plan, said: Words): readonly string[] {
  const { device, kind, after } = change;
  if (kind === 'new') return [said.changes.newDevice(device)];
  if (kind === 'gone') return [said.changes.goneDevice(device)];
  const dates = (list: readonly string[]): string => said.shelf.list(list.map((date) => dateWords(date, said.shelf)));
  return [
    device,
    `  ${nowLine(change, plan, before, said)}`,
    ...(after && change.comesOn.length + change.goesOff.length > 0
      ? [`  ${said.changes.afterwards(windowsInWords(after.windows, said.shelf))}`]
      : []),
    ...(change.laterDates.length === 0 ? [] : [`  ${said.changes.later(dates(change.laterDates))}`]),
    ...(change.droppedDates.length === 0 ? [] : [`  ${said.changes.dropped(dates(change.droppedDates))}`]),
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

function mistBlock(change: MistChange, said: Words): readonly string[] {
  const list = said.shelf.list;
  const lines = [
    ...(change.remove.length > 0 ? [said.changes.remove(list(change.remove.map(({ at }) => at)))] : []),
    ...(change.alter.length > 0
      ? [
          said.changes.alter(
            list(
              change.alter.map(({ at, fromSeconds, toSeconds }) => said.changes.altered(at, fromSeconds, toSeconds)),
            ),
          ),
        ]
      : []),
    ...(change.add.length > 0
      ? [said.changes.add(list(change.add.map(({ at, seconds }) => said.changes.entry(at, seconds))))]
      : []),
    ...(change.keep.length > 0 ? [said.changes.keep(list(change.keep.map(({ at }) => at)))] : []),
    ...(change.laterDates.length > 0
      ? [said.changes.later(list(change.laterDates.map((date) => dateWords(date, said.shelf))))]
      : []),
  ];
  return listBlock(
    change.device === null
      ? said.changes.mists(change.enclosure)
      : said.changes.mistsOn(change.enclosure, change.device),
    lines,
  );
}

function moveLine({ what, from, to }: ChangeSheet['moved'][number], said: Words): string {
  const name = what.slice(what.indexOf(':') + 1);
  if (from === null) return said.changes.plugsIn(name, to ?? '');
  return to === null ? said.changes.unplugged(name, from) : said.changes.moves(name, from, to);
}

function feedLine({ enclosure, added, removed, altered, first }: FeedChange, said: Words): string {
  const date = (first.after ?? first.before)?.date ?? '';
  const detail = said.changes.firstFeed(
    dateWords(date, said.shelf),
    feedWords(first.before, said),
    feedWords(first.after, said),
  );
  return `${said.changes.feeds(enclosure, added, removed, altered)}; ${detail}`;
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
  return kind === 'gone' ? said.changes.choreGone(title) : said.changes.choreChanged(title, date);
}
