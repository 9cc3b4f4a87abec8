/** What to alter on the shelf, on paper and in habit, from one plan to the next; data that the change sheet prints. */
import type { Chore, DialPlan, DialSetting, Feed, MistEntry, MistPlan, MistSet, Plan } from './plan.ts';

export interface ChangeSheet {
  /** When the plan compared with was made; null where there is none. */
  readonly since: string | null;
  /** The day from which the new plan holds. */
  readonly on: string;
  readonly dials: readonly DialChange[];
  readonly mists: readonly MistChange[];
  readonly moved: readonly { readonly what: string; readonly from: string | null; readonly to: string | null }[];
  readonly feeds: readonly FeedChange[];
  readonly chores: readonly ChoreChange[];
  /** What stays as it is; ids of dials, names of enclosures. */
  readonly stays: readonly Unchanged[];
}

export interface Unchanged {
  readonly what: 'dial' | 'mists' | 'feeds';
  readonly name: string;
}

export interface DialChange {
  readonly device: string;
  readonly kind: 'new' | 'gone' | 'changed';
  readonly stepMinutes: number;
  readonly before: DialSetting | null;
  readonly after: DialSetting | null;
  /** Slots that come on and that go off today. */
  readonly comesOn: readonly number[];
  readonly goesOff: readonly number[];
  /** Dates of later settings that are new or other than before. */
  readonly laterDates: readonly string[];
  readonly droppedDates: readonly string[];
}

export interface MistChange {
  readonly enclosure: string;
  readonly device: string | null;
  readonly add: readonly MistEntry[];
  readonly remove: readonly MistEntry[];
  readonly alter: readonly { readonly at: string; readonly fromSeconds: number; readonly toSeconds: number }[];
  readonly keep: readonly MistEntry[];
  readonly laterDates: readonly string[];
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
  readonly kind: 'new' | 'gone' | 'changed';
  readonly firstDates: readonly string[];
}

/** Compares two plans from `on` (YYYY-MM-DD) on; without an earlier plan everything is new. */
export function changeSheet(before: Plan | null, after: Plan, on: string): ChangeSheet {
  const dials = pairs(setDials(before), setDials(after), (dial) => dial.device).map(([a, b]) =>
    dialChange(isOtherKind(a, b) ? null : a, b, on),
  );
  const mists = pairs(before?.misting ?? [], after.misting, (mist) => mist.enclosure).map(([a, b]) =>
    mistChange(a, b, on),
  );
  const feeds = feedChanges(before?.feeding ?? [], after.feeding, on);
  const chores = pairs(before?.chores ?? [], after.chores, (chore) => `${chore.id} ${chore.who}`).map(([a, b]) =>
    choreChange(a, b, on),
  );
  const changedFeeds = new Set(feeds.map(({ enclosure }) => enclosure));
  return {
    since: before?.made ?? null,
    on,
    dials: dials.flatMap((change) => (change === null || 'stays' in change ? [] : [change])),
    mists: mists.flatMap((change) => (change === null || 'stays' in change ? [] : [change])),
    moved: before ? movedLoads(before, after) : [],
    feeds,
    chores: chores.flatMap((change) => (change === null ? [] : [change])),
    stays: [
      ...[...dials, ...mists].flatMap((change) => (change !== null && 'stays' in change ? [change.stays] : [])),
      ...after.enclosures
        .filter(({ id }) => before?.feeding.some((feed) => feed.enclosure === id) && !changedFeeds.has(id))
        .map(({ name }) => ({ what: 'feeds' as const, name })),
    ],
  };
}

/** The dials on which something is set: one that has no setting is as good as not there. */
function setDials(plan: Plan | null): readonly DialPlan[] {
  return (plan?.lighting ?? []).filter(({ settings }) => settings.length > 0);
}

/** Returns whether nothing at all is to be altered. */
export function isEmptySheet(sheet: ChangeSheet): boolean {
  return [sheet.dials, sheet.mists, sheet.moved, sheet.feeds, sheet.chores].every((list) => list.length === 0);
}

function pairs<T>(
  before: readonly T[],
  after: readonly T[],
  key: (item: T) => string,
): readonly (readonly [T | null, T | null])[] {
  const old = new Map(before.map((item) => [key(item), item]));
  const fresh = new Set(after.map(key));
  return [
    ...after.map((item) => [old.get(key(item)) ?? null, item] as const),
    ...before.filter((item) => !fresh.has(key(item))).map((item) => [item, null] as const),
  ];
}

/** Returns the setting in force on a date; null outside the plan. */
export function settingOn<T extends { readonly from: string; readonly to: string }>(
  settings: readonly T[],
  date: string,
): T | null {
  return settings.find(({ from, to }) => from <= date && date <= to) ?? null;
}

/** Pins of another length or sense cannot be compared: such a dial is set from scratch. */
function isOtherKind(before: DialPlan | null, after: DialPlan | null): boolean {
  return (
    before !== null &&
    after !== null &&
    (before.stepMinutes !== after.stepMinutes || before.turnsInDays !== after.turnsInDays || before.pins !== after.pins)
  );
}

function dialChange(
  before: DialPlan | null,
  after: DialPlan | null,
  on: string,
): DialChange | { readonly stays: Unchanged } | null {
  const [old, fresh] = [before && settingOn(before.settings, on), after && settingOn(after.settings, on)];
  const device = after?.device ?? before?.device ?? '';
  const [oldSlots, freshSlots] = [new Set(old?.slots ?? []), new Set(fresh?.slots ?? [])];
  const comesOn = [...freshSlots].filter((slot) => !oldSlots.has(slot));
  const goesOff = [...oldSlots].filter((slot) => !freshSlots.has(slot));
  const laterDates = laterChanges(before?.settings ?? [], after?.settings ?? [], on);
  const droppedDates = laterChanges(after?.settings ?? [], before?.settings ?? [], on).filter(
    (date) => !laterDates.includes(date),
  );
  if (before && after && comesOn.length + goesOff.length + laterDates.length + droppedDates.length === 0)
    return { stays: { what: 'dial', name: device } };
  return {
    device,
    kind: !before ? 'new' : !after ? 'gone' : 'changed',
    stepMinutes: (after ?? before)?.stepMinutes ?? 0,
    before: old,
    after: fresh,
    comesOn,
    goesOff,
    laterDates,
    droppedDates,
  };
}

/** Returns the start dates after `on` in `after` at which `before` does not bring the same slots. */
function laterChanges(before: readonly DialSetting[], after: readonly DialSetting[], on: string): readonly string[] {
  const old = new Map(before.map(({ from, slots }) => [from, slots.join()]));
  return after.filter(({ from, slots }) => from > on && old.get(from) !== slots.join()).map(({ from }) => from);
}

function mistChange(
  before: MistPlan | null,
  after: MistPlan | null,
  on: string,
): MistChange | { readonly stays: Unchanged } | null {
  const [old, fresh] = [before && settingOn(before.sets, on), after && settingOn(after.sets, on)];
  const enclosure = after?.enclosure ?? before?.enclosure ?? '';
  const was = new Map((old?.entries ?? []).map((entry) => [entry.at, entry]));
  const is = new Map((fresh?.entries ?? []).map((entry) => [entry.at, entry]));
  const add = [...is.values()].filter(({ at }) => !was.has(at));
  const remove = [...was.values()].filter(({ at }) => !is.has(at));
  const alter = [...is.values()].flatMap(({ at, seconds }) => {
    const earlier = was.get(at);
    return earlier && earlier.seconds !== seconds ? [{ at, fromSeconds: earlier.seconds, toSeconds: seconds }] : [];
  });
  const laterDates = laterSets(before?.sets ?? [], after?.sets ?? [], on);
  if (add.length + remove.length + alter.length + laterDates.length === 0) {
    return (old?.entries.length ?? 0) > 0 ? { stays: { what: 'mists', name: enclosure } } : null;
  }
  const keep = [...is.values()].filter(({ at, seconds }) => was.get(at)?.seconds === seconds);
  return { enclosure, device: after?.device ?? before?.device ?? null, add, remove, alter, keep, laterDates };
}

function laterSets(before: readonly MistSet[], after: readonly MistSet[], on: string): readonly string[] {
  const key = (set: MistSet): string => set.entries.map(({ at, seconds }) => `${at}/${seconds}`).join();
  const old = new Map(before.map((set) => [set.from, key(set)]));
  return after.filter((set) => set.from > on && old.get(set.from) !== key(set)).map(({ from }) => from);
}

function movedLoads(before: Plan, after: Plan): ChangeSheet['moved'] {
  const homes = (plan: Plan): ReadonlyMap<string, string> =>
    new Map(plan.hardware.flatMap(({ id, drives }) => drives.map((what) => [what, id] as const)));
  const [was, is] = [homes(before), homes(after)];
  return [...new Set([...is.keys(), ...was.keys()])]
    .filter((what) => was.get(what) !== is.get(what))
    .map((what) => ({ what, from: was.get(what) ?? null, to: is.get(what) ?? null }));
}

function feedChanges(before: readonly Feed[], after: readonly Feed[], on: string): readonly FeedChange[] {
  const enclosures = [...new Set([...after, ...before].map(({ enclosure }) => enclosure))];
  return enclosures.flatMap((enclosure) => {
    const matching = pairs(
      numbered(before.filter((feed) => feed.enclosure === enclosure && feed.date >= on)),
      numbered(after.filter((feed) => feed.enclosure === enclosure && feed.date >= on)),
      ({ key }) => key,
    ).map(([a, b]) => [a?.feed ?? null, b?.feed ?? null] as const);
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
    a.dusting === b.dusting &&
    a.by === b.by &&
    a.standIn === b.standIn
  );
}

function choreChange(before: Chore | null, after: Chore | null, on: string): ChoreChange | null {
  const coming = (chore: Chore | null): readonly string[] => (chore?.dates ?? []).filter((date) => date >= on);
  const [was, is] = [coming(before), coming(after)];
  if (before && after && was.join() === is.join() && before.title === after.title && before.minutes === after.minutes)
    return null;
  const chore = after ?? before;
  if (!chore || !before)
    return chore ? { id: chore.id, title: chore.title, kind: 'new', firstDates: is.slice(0, 3) } : null;
  if (!after) return { id: chore.id, title: chore.title, kind: 'gone', firstDates: [] };
  return {
    id: chore.id,
    title: chore.title,
    kind: 'changed',
    firstDates: is.filter((date) => !was.includes(date)).slice(0, 3),
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
