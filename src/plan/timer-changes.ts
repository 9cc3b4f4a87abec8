/** What a person alters on the timers of the shelf from one plan to the next: pins, entries, intervals. Applied to what stands, it leads to the new plan. */
import type { ClockKind, DialPlan, DialSetting, MistEntry, MistPlan, MistSet, Plan } from './plan.ts';

export interface DialChange {
  readonly device: string;
  /** `new`: set from scratch, for nothing stood on it, or on pins of another length or sense. `gone`: nothing is set on it any more. */
  readonly kind: 'new' | 'gone' | 'changed';
  readonly stepMinutes: number;
  /** Where its clock is to show another time than before. */
  readonly clock: ClockChange | null;
  readonly before: DialSetting | null;
  readonly after: DialSetting | null;
  /** Slots that come on and that go off today. */
  readonly comesOn: readonly number[];
  readonly goesOff: readonly number[];
  /** Dates of later settings that are new or other than before. */
  readonly laterDates: readonly string[];
  readonly droppedDates: readonly string[];
}

export interface ClockChange {
  readonly from: ClockKind;
  readonly to: ClockKind;
}

/** The mists of one timer, or of one enclosure that a person mists. */
export interface MistChange {
  readonly enclosures: readonly string[];
  /** null: by hand. */
  readonly device: string | null;
  readonly clock: ClockChange | null;
  /** What a repeat-cycle timer is set to; null where it stays, or there is none. */
  readonly interval: { readonly before: Interval | null; readonly after: Interval | null } | null;
  readonly add: readonly MistEntry[];
  readonly remove: readonly MistEntry[];
  readonly alter: readonly { readonly at: string; readonly fromSeconds: number; readonly toSeconds: number }[];
  readonly keep: readonly MistEntry[];
  readonly laterDates: readonly string[];
  readonly droppedDates: readonly string[];
}

export type Interval = NonNullable<MistSet['interval']>;

/** What stays as it is. */
export interface Staying {
  readonly stays: string;
  readonly enclosures: readonly string[];
}

/** Compares the pins and lines of all timers, in the order of the new plan's hardware; those of timers that are gone come last. */
export function dialChanges(before: Plan | null, after: Plan, on: string): readonly (DialChange | Staying)[] {
  return paired(setDials(before), setDials(after), ({ device }) => device)
    .map(([a, b]) => dialChange(a, b, on))
    .toSorted((a, b) => placeOf(deviceOf(a), before, after) - placeOf(deviceOf(b), before, after));
}

/** Compares what is keyed in for mists, timers in the order of the hardware, then the enclosures that a person mists. */
export function mistChanges(before: Plan | null, after: Plan, on: string): readonly (MistChange | Staying)[] {
  return paired(mistUnits(before), mistUnits(after), ({ key }) => key)
    .flatMap(([a, b]) => mistChange(a, b, on) ?? [])
    .toSorted((a, b) => placeOf(mistDeviceOf(a), before, after) - placeOf(mistDeviceOf(b), before, after));
}

/** Returns the place of a device along the shelf; what hangs on none comes last. */
export function placeOf(device: string | null, before: Plan | null, after: Plan): number {
  const ids = [...after.hardware, ...(before?.hardware ?? [])].map(({ id }) => id);
  const at = device === null ? -1 : ids.indexOf(device);
  return at < 0 ? ids.length : at;
}

/** Returns what stands on a date: what began last, for a timer goes on where its plan has ended; null before anything began. */
export function standingOn<T extends { readonly from: string }>(spans: readonly T[], date: string): T | null {
  return spans.findLast(({ from }) => from <= date) ?? null;
}

/** Returns items of one key side by side, in the order of `after`; those that are only in `before` come last. */
export function paired<T>(
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

/** The dials on which something is set: one that has no setting is as good as not there. */
function setDials(plan: Plan | null): readonly DialPlan[] {
  return (plan?.lighting ?? []).filter(({ settings }) => settings.length > 0);
}

function deviceOf(change: DialChange | Staying): string {
  return 'stays' in change ? change.stays : change.device;
}

function mistDeviceOf(change: MistChange | Staying): string | null {
  return 'stays' in change ? change.stays || null : change.device;
}

/** Pins of another length or sense cannot be compared: such a dial is set from scratch. */
function isOtherKind(before: DialPlan, after: DialPlan): boolean {
  return (
    before.stepMinutes !== after.stepMinutes || before.turnsInDays !== after.turnsInDays || before.pins !== after.pins
  );
}

function dialChange(then: DialPlan | null, after: DialPlan | null, on: string): DialChange | Staying {
  const device = after?.device ?? then?.device ?? '';
  const before = then && after && isOtherKind(then, after) ? null : then;
  const [old, fresh] = [before && standingOn(before.settings, on), after && standingOn(after.settings, on)];
  const [was, is] = [new Set(old?.slots ?? []), new Set(fresh?.slots ?? [])];
  const change: DialChange = {
    device,
    kind: !after ? 'gone' : !old ? 'new' : 'changed',
    stepMinutes: (after ?? then)?.stepMinutes ?? 0,
    clock: clockChange(then, after),
    before: old,
    after: fresh,
    comesOn: [...is].filter((slot) => !was.has(slot)),
    goesOff: [...was].filter((slot) => !is.has(slot)),
    ...laterDates(before?.settings ?? [], after?.settings ?? [], on, ({ slots }) => slots.join()),
  };
  const isSame = change.comesOn.length + change.goesOff.length === 0 && isSameLater(change);
  return change.kind === 'changed' && isSame ? { stays: device, enclosures: [] } : change;
}

function clockChange(before: { clock: ClockKind } | null, after: { clock: ClockKind } | null): ClockChange | null {
  return before && after && before.clock !== after.clock ? { from: before.clock, to: after.clock } : null;
}

function isSameLater({ clock, laterDates: later, droppedDates }: Later & { clock: ClockChange | null }): boolean {
  return clock === null && later.length + droppedDates.length === 0;
}

interface Later {
  readonly laterDates: readonly string[];
  readonly droppedDates: readonly string[];
}

/** Start dates after `on` that bring what the other plan does not bring on the same date. */
function laterDates<T extends { readonly from: string }>(
  before: readonly T[],
  after: readonly T[],
  on: string,
  key: (item: T) => string,
): Later {
  const others = (some: readonly T[], reference: readonly T[]): readonly string[] => {
    const known = new Map(reference.map((item) => [item.from, key(item)]));
    return some.filter((item) => item.from > on && known.get(item.from) !== key(item)).map(({ from }) => from);
  };
  const later = others(after, before);
  return { laterDates: later, droppedDates: others(before, after).filter((date) => !later.includes(date)) };
}

/** Enclosures that share a timer share its entries; a pump behind pins is told by the pins. */
interface MistedTogether {
  readonly key: string;
  readonly device: string | null;
  readonly clock: ClockKind;
  readonly enclosures: readonly string[];
  readonly sets: readonly MistSet[];
}

function mistUnits(plan: Plan | null): readonly MistedTogether[] {
  const pinned = new Set(setDials(plan).map(({ device }) => device));
  const units = new Map<string, MistedTogether>();
  for (const mist of plan?.misting ?? []) {
    if (mist.pump === null || (mist.device !== null && pinned.has(mist.device))) continue;
    const key = unitKey(mist);
    const known = units.get(key);
    const enclosures = [...(known?.enclosures ?? []), mist.enclosure];
    units.set(
      key,
      known ? { ...known, enclosures } : { key, device: mist.device, clock: mist.clock, enclosures, sets: mist.sets },
    );
  }
  return [...units.values()];
}

function unitKey({ device, enclosure }: MistPlan): string {
  return device === null ? `by hand ${enclosure}` : `on ${device}`;
}

function mistChange(
  before: MistedTogether | null,
  after: MistedTogether | null,
  on: string,
): MistChange | Staying | null {
  const [old, fresh] = [before && standingOn(before.sets, on), after && standingOn(after.sets, on)];
  const change: MistChange = {
    enclosures: (after ?? before)?.enclosures ?? [],
    device: (after ?? before)?.device ?? null,
    clock: clockChange(before, after),
    interval: intervalChange(old, fresh),
    ...entryChanges(keyedIn(old), keyedIn(fresh)),
    ...laterDates(before?.sets ?? [], after?.sets ?? [], on, keyOf),
  };
  const { add, remove, alter, interval, device, enclosures } = change;
  if (interval !== null || add.length + remove.length + alter.length > 0 || !isSameLater(change)) return change;
  return isSilent(old) ? null : { stays: device ?? '', enclosures };
}

function isSilent(set: MistSet | null): boolean {
  return set === null || (set.entries.length === 0 && set.interval === undefined);
}

/** The entries that a repeat-cycle timer makes by itself are not keyed in. */
function keyedIn(set: MistSet | null): readonly MistEntry[] {
  return set === null || set.interval ? [] : set.entries;
}

function keyOf(set: MistSet): string {
  return JSON.stringify([intervalOf(set), keyedIn(set)]);
}

function intervalOf(set: MistSet | null): Interval | null {
  return set?.interval ?? null;
}

function intervalChange(old: MistSet | null, fresh: MistSet | null): MistChange['interval'] {
  const [before, after] = [intervalOf(old), intervalOf(fresh)];
  const isSame = before?.onSeconds === after?.onSeconds && before?.offSeconds === after?.offSeconds;
  return isSame && before?.plugInAt === after?.plugInAt ? null : { before, after };
}

function entryChanges(
  before: readonly MistEntry[],
  after: readonly MistEntry[],
): Pick<MistChange, 'add' | 'remove' | 'alter' | 'keep'> {
  const was = new Map(before.map((entry) => [entry.at, entry]));
  const is = new Map(after.map((entry) => [entry.at, entry]));
  return {
    add: after.filter(({ at }) => !was.has(at)),
    remove: before.filter(({ at }) => !is.has(at)),
    alter: after.flatMap(({ at, seconds }) => {
      const earlier = was.get(at);
      return earlier && earlier.seconds !== seconds ? [{ at, fromSeconds: earlier.seconds, toSeconds: seconds }] : [];
    }),
    keep: after.filter(({ at, seconds }) => was.get(at)?.seconds === seconds),
  };
}
