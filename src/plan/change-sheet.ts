/** What to alter on the shelf, on paper and in habit, from one plan to the next; data that the change sheet prints. */
import { type CoverChange, coverChanges } from './cover-changes.ts';
import type { Chore, Feed, Plan } from './plan.ts';
import {
  type DialChange,
  dialChanges,
  type MistChange,
  mistChanges,
  paired,
  placeOf,
  type Staying,
} from './timer-changes.ts';

export interface ChangeSheet {
  /** When the plan compared with was made; null where there is none. */
  readonly since: string | null;
  /** The day from which the new plan holds. */
  readonly on: string;
  /** The last days of both plans, where they differ: feeds and chores after the earlier one's are new. */
  readonly reaches: { readonly before: string; readonly after: string } | null;
  /** In the order of the hardware, and so are the timers of `mists`. */
  readonly dials: readonly DialChange[];
  readonly mists: readonly MistChange[];
  readonly moved: readonly { readonly what: string; readonly from: string | null; readonly to: string | null }[];
  readonly feeds: readonly FeedChange[];
  readonly chores: readonly ChoreChange[];
  /** What is advised to be covered of the mesh, or no longer. */
  readonly covers: readonly CoverChange[];
  /** What stays as it is; ids of dials, names of enclosures, the number of chores. */
  readonly stays: readonly Unchanged[];
}

export interface Unchanged {
  readonly what: 'dial' | 'mists' | 'feeds' | 'chores';
  readonly name: string;
}

export interface FeedChange {
  readonly enclosure: string;
  readonly added: number;
  readonly removed: number;
  readonly altered: number;
  /** The first that differs, before and after; null where it has no counterpart. */
  readonly first: { readonly before: Feed | null; readonly after: Feed | null };
}

export interface ChoreChange {
  readonly id: string;
  readonly title: string;
  /** `reworded`: on the same dates, under another title or with other minutes. */
  readonly kind: 'new' | 'gone' | 'changed' | 'reworded';
  readonly firstDates: readonly string[];
}

/** Compares two plans from `on` (YYYY-MM-DD) on; without an earlier plan everything is new. */
export function changeSheet(before: Plan | null, after: Plan, on: string): ChangeSheet {
  const dials = dialChanges(before, after, on);
  const mists = mistChanges(before, after, on);
  const shared = { from: on, to: before && before.to < after.to ? before.to : after.to };
  const feeds = feedChanges(before?.feeding ?? [], after.feeding, shared);
  const chores = paired(choresOf(before), choresOf(after), (chore) => `${chore.id} ${chore.who}`);
  const otherChores = chores.flatMap(([a, b]) => choreChange(a, b, shared) ?? []);
  return {
    since: before?.made ?? null,
    on,
    reaches: before && before.to !== after.to ? { before: before.to, after: after.to } : null,
    dials: dials.flatMap((change) => ('stays' in change ? [] : [change])),
    mists: mists.flatMap((change) => ('stays' in change ? [] : [change])),
    moved: before ? movedLoads(before, after) : [],
    feeds,
    chores: otherChores,
    covers: before ? coverChanges(before, after, on) : [],
    stays: [
      ...dials.flatMap((change) => ('stays' in change ? [{ what: 'dial' as const, name: change.stays }] : [])),
      ...mists.flatMap((change) => ('stays' in change ? mistsOf(change, after) : [])),
      ...feedsThatStay(before, after, feeds),
      ...choresThatStay(chores.length - otherChores.length),
    ],
  };
}

function mistsOf({ enclosures }: Staying, plan: Plan): readonly Unchanged[] {
  return enclosures.map((id) => ({ what: 'mists', name: nameOf(plan, id) }));
}

function feedsThatStay(before: Plan | null, after: Plan, changed: readonly FeedChange[]): readonly Unchanged[] {
  const others = new Set(changed.map(({ enclosure }) => enclosure));
  return after.enclosures
    .filter(({ id }) => before?.feeding.some((feed) => feed.enclosure === id) && !others.has(id))
    .map(({ name }) => ({ what: 'feeds', name }));
}

function choresThatStay(count: number): readonly Unchanged[] {
  return count > 0 ? [{ what: 'chores', name: String(count) }] : [];
}

/** Returns the name of an enclosure as the keeper calls it. */
export function nameOf({ enclosures }: Plan, id: string): string {
  return enclosures.find((each) => each.id === id)?.name ?? id;
}

/** Setting pins and entries is told by the timers themselves. */
const TOLD_BY_TIMERS: ReadonlySet<string> = new Set(['re-pin', 'mist-entries', 'change-sheet', 'mist-by-hand']);

function choresOf(plan: Plan | null): readonly Chore[] {
  return (plan?.chores ?? []).filter(({ kind }) => !TOLD_BY_TIMERS.has(kind));
}

/** Returns whether nothing at all is to be altered. */
export function isEmptySheet(sheet: ChangeSheet): boolean {
  return (
    sheet.reaches === null &&
    [sheet.dials, sheet.mists, sheet.moved, sheet.covers, sheet.feeds, sheet.chores].every((list) => list.length === 0)
  );
}

function movedLoads(before: Plan, after: Plan): ChangeSheet['moved'] {
  const homes = (plan: Plan): ReadonlyMap<string, string> =>
    new Map(plan.hardware.flatMap(({ id, drives }) => drives.map((what) => [what, id] as const)));
  const [was, is] = [homes(before), homes(after)];
  return [...new Set([...is.keys(), ...was.keys()])]
    .filter((what) => was.get(what) !== is.get(what))
    .map((what) => ({ what, from: was.get(what) ?? null, to: is.get(what) ?? null }))
    .toSorted((a, b) => placeOf(a.to ?? a.from, before, after) - placeOf(b.to ?? b.from, before, after));
}

/** Dates that are compared, both inclusive. */
interface Span {
  readonly from: string;
  readonly to: string;
}

function feedChanges(before: readonly Feed[], after: readonly Feed[], { from, to }: Span): readonly FeedChange[] {
  const of = (feeds: readonly Feed[], id: string) =>
    numbered(feeds.filter(({ enclosure, date }) => enclosure === id && date >= from && date <= to));
  const enclosures = [...new Set([...after, ...before].map(({ enclosure }) => enclosure))];
  return enclosures.flatMap((enclosure) => {
    const matching = paired(of(before, enclosure), of(after, enclosure), ({ key }) => key).map(
      ([a, b]) => [a?.feed ?? null, b?.feed ?? null] as const,
    );
    const differing = matching.filter(([a, b]) => !a || !b || !isSameFeed(a, b));
    const [first] = [...differing].sort(([a1, b1], [a2, b2]) =>
      compare((b1 ?? a1)?.date ?? '', (b2 ?? a2)?.date ?? ''),
    );
    if (!first || before.length === 0) return [];
    return [
      {
        enclosure,
        added: differing.filter(([a]) => !a).length,
        removed: differing.filter(([, b]) => !b).length,
        altered: differing.filter(([a, b]) => a && b).length,
        first: { before: first[0], after: first[1] },
      },
    ];
  });
}

/** Tells feeds of one stream and date apart by their order, not by their hour. */
function numbered(feeds: readonly Feed[]): readonly { readonly key: string; readonly feed: Feed }[] {
  const seen = new Map<string, number>();
  return feeds.map((feed) => {
    const stream = `${feed.date} ${feed.food}`;
    const order = seen.get(stream) ?? 0;
    seen.set(stream, order + 1);
    return { key: `${stream} ${order}`, feed };
  });
}

function isSameFeed(a: Feed, b: Feed): boolean {
  return (
    a.time === b.time &&
    a.feeder === b.feeder &&
    a.count === b.count &&
    a.portion === b.portion &&
    a.gutLoadFrom === b.gutLoadFrom &&
    a.preDosed === b.preDosed &&
    a.dusting === b.dusting &&
    a.by === b.by &&
    a.standIn === b.standIn
  );
}

function choreChange(before: Chore | null, after: Chore | null, { from, to }: Span): ChoreChange | null {
  const chore = after ?? before;
  if (!chore) return null;
  const { id, title } = chore;
  const coming = (dates: readonly string[] = [], last = '9999-12-31'): readonly string[] =>
    dates.filter((date) => date >= from && date <= last);
  if (!before) {
    const dates = coming(after?.dates);
    return dates.length === 0 ? null : { id, title, kind: 'new', firstDates: dates.slice(0, 3) };
  }
  const was = coming(before.dates, to);
  if (!after) return was.length === 0 ? null : { id, title, kind: 'gone', firstDates: [] };
  const is = coming(after.dates, to);
  if (was.join() !== is.join())
    return { id, title, kind: 'changed', firstDates: is.filter((date) => !was.includes(date)).slice(0, 3) };
  const isTold = before.title === title && before.minutes === after.minutes;
  return isTold ? null : { id, title, kind: 'reworded', firstDates: [] };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
