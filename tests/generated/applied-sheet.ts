/**
 * A person at the shelf with a change sheet in hand: takes what stands on the timers, does what the sheet says and no more, and compares
 * with the new plan. Returns what does not come out, in words.
 */
import type { ChangeSheet } from '../../src/plan/change-sheet.ts';
import type { MistSet, Plan } from '../../src/plan/plan.ts';

/** What stands on a timer, and the dates on which it is set anew to what. */
interface Standing {
  readonly now: string;
  readonly later: ReadonlyMap<string, string>;
}

export function faultsOfSheet(sheet: ChangeSheet, before: Plan, after: Plan): readonly string[] {
  return [
    ...faultsOfDials(sheet, before, after),
    ...faultsOfMists(sheet, before, after),
    ...faultsOfLoads(sheet, before, after),
  ];
}

function standing<T extends { readonly from: string }>(
  spans: readonly T[],
  on: string,
  key: (span: T) => string,
): Standing {
  const begun = spans.filter(({ from }) => from <= on);
  const last = begun[begun.length - 1];
  return {
    now: last ? key(last) : '',
    later: new Map(spans.filter(({ from }) => from > on).map((span) => [span.from, key(span)])),
  };
}

/** Later changes: what the old plan would have brought, less what falls away, with what is new taken from the new plan's settings. */
function laterOn(
  old: Standing,
  fresh: Standing,
  change: { readonly laterDates: readonly string[]; readonly droppedDates: readonly string[] },
): Standing['later'] {
  const dates = new Map(old.later);
  for (const date of change.droppedDates) dates.delete(date);
  for (const date of change.laterDates) dates.set(date, fresh.later.get(date) ?? '');
  return dates;
}

function isSame(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean {
  return JSON.stringify([...a].sort()) === JSON.stringify([...b].sort());
}

function faultsOfDials({ dials, on, stays }: ChangeSheet, before: Plan, after: Plan): readonly string[] {
  const ids = new Set(
    [...before.lighting, ...after.lighting].filter(({ settings }) => settings.length > 0).map(({ device }) => device),
  );
  return [...ids].flatMap((id) => {
    const of = (plan: Plan): Standing =>
      standing(plan.lighting.find(({ device }) => device === id)?.settings ?? [], on, ({ slots }) => slots.join());
    const [old, fresh] = [of(before), of(after)];
    const change = dials.find(({ device }) => device === id);
    const isNamed = stays.some(({ what, name }) => what === 'dial' && name === id);
    if (!change)
      return isNamed && old.now === fresh.now && isSame(old.later, fresh.later) ? [] : [`${id} is not on the sheet`];
    if (isNamed) return [`${id} changes and stays`];
    if (change.kind === 'gone') return fresh.now === '' && fresh.later.size === 0 ? [] : [`${id} is not gone`];
    const pins = new Set(change.kind === 'new' || old.now === '' ? [] : old.now.split(',').map(Number));
    for (const slot of change.goesOff) if (!pins.delete(slot)) return [`${id}: slot ${slot} is off already`];
    for (const slot of change.comesOn) {
      if (pins.has(slot)) return [`${id}: slot ${slot} is on already`];
      pins.add(slot);
    }
    const now = [...pins].sort((a, b) => a - b).join();
    const from = change.kind === 'new' ? { now: '', later: new Map<string, string>() } : old;
    return [
      ...(now === fresh.now ? [] : [`${id}: the pins come to ${now}, the plan says ${fresh.now}`]),
      ...(isSame(laterOn(from, fresh, change), fresh.later) ? [] : [`${id}: later changes do not come out`]),
    ];
  });
}

function keyedIn(set: MistSet): string {
  const entries = set.interval ? [] : [...set.entries].map(({ at, seconds }) => `${at}/${seconds}`).sort();
  return JSON.stringify([set.interval ?? null, entries]);
}

function faultsOfMists({ mists, on }: ChangeSheet, before: Plan, after: Plan): readonly string[] {
  const timersOf = (plan: Plan): ReadonlyMap<string, Standing> => {
    const pinned = new Set(plan.lighting.filter(({ settings }) => settings.length > 0).map(({ device }) => device));
    const misted = plan.misting.filter(({ pump, device }) => pump !== null && !(device !== null && pinned.has(device)));
    return new Map(
      misted.map((mist) => [mist.device ?? `hand of ${mist.enclosure}`, standing(mist.sets, on, keyedIn)]),
    );
  };
  const [olds, freshes] = [timersOf(before), timersOf(after)];
  return [...new Set([...olds.keys(), ...freshes.keys()])].flatMap((timer) => {
    const none: Standing = { now: '', later: new Map() };
    const [old, fresh] = [olds.get(timer) ?? none, freshes.get(timer) ?? none];
    const change = mists.find(({ device, enclosures }) => (device ?? `hand of ${enclosures[0]}`) === timer);
    const empty = JSON.stringify([null, []]);
    const [was, is] = [old.now || empty, fresh.now || empty];
    if (!change) return was === is && isSame(old.later, fresh.later) ? [] : [`mists on ${timer} are not on the sheet`];
    const [interval, entries] = JSON.parse(was) as [MistSet['interval'] | null, string[]];
    const keyed = new Set(entries);
    for (const { at, seconds } of change.remove)
      if (!keyed.delete(`${at}/${seconds}`)) return [`${timer}: no entry ${at}`];
    for (const { at, fromSeconds, toSeconds } of change.alter) {
      if (!keyed.delete(`${at}/${fromSeconds}`)) return [`${timer}: no entry ${at} of ${fromSeconds} s`];
      keyed.add(`${at}/${toSeconds}`);
    }
    for (const { at, seconds } of change.add) keyed.add(`${at}/${seconds}`);
    const now = JSON.stringify([change.interval ? change.interval.after : interval, [...keyed].sort()]);
    return [
      ...(now === is ? [] : [`${timer}: the entries come to ${now}, the plan says ${is}`]),
      ...(isSame(laterOn(old, fresh, change), fresh.later) ? [] : [`${timer}: later entries do not come out`]),
    ];
  });
}

function faultsOfLoads({ moved }: ChangeSheet, before: Plan, after: Plan): readonly string[] {
  const homes = (plan: Plan): Map<string, string> =>
    new Map(plan.hardware.flatMap(({ id, drives }) => drives.map((what): [string, string] => [what, id])));
  const now = homes(before);
  for (const { what, from, to } of moved) {
    if ((now.get(what) ?? null) !== from) return [`${what} does not hang on ${from}`];
    if (to === null) now.delete(what);
    else now.set(what, to);
  }
  return isSame(now, homes(after)) ? [] : ['what hangs where does not come out'];
}
