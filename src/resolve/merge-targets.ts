/**
 * Lays an enclosure's `targets` over its profile: a few groups are replaced whole, the rest key by key, and each value remembers its speaker.
 */
import type { Place } from '../diagnostics/diagnostic.ts';
import type { ReadHousehold } from '../read/household.ts';
import type { FilePath, Said } from '../read/placed-file.ts';
import type { ReadProfile } from '../read/profile.ts';
import type { ReadTargets } from '../read/targets.ts';

/** A file that says targets, and where in it they begin. */
export interface Speaker {
  readonly kind: 'file' | 'profile';
  readonly file: string;
  readonly root: FilePath;
  readonly placeOf: (path: FilePath) => Place;
  readonly saidAt: (path: FilePath) => Said;
}

/** One value of the merged tree; `spokenAt` is its path in the speaker's file. */
export interface Leaf {
  readonly path: FilePath;
  readonly value: unknown;
  readonly speaker: Speaker;
  readonly spokenAt: FilePath;
}

export interface MergedTargets {
  readonly tree: ReadTargets;
  /** In no particular order. */
  readonly leaves: readonly Leaf[];
}

/** Groups that a household replaces whole; a stage's parts are merged in `stages.ts`. */
const REPLACED_WHOLE = ['photoperiod', 'day', 'basking', 'uvb', 'misting', 'feeding'];
/** Parts of a profile that are no targets of their own or are merged elsewhere. */
const NOT_MERGED = ['format', 'species', 'name', 'scientific', 'sources', 'stages', 'chores'];

/** Returns the speaker of a whole profile. */
export function profileSpeaker(profile: ReadProfile): Speaker {
  return { kind: 'profile', file: profile.file, root: [], placeOf: profile.placeOf, saidAt: profile.saidAt };
}

/** Returns the speaker of what stands at a path of the household file. */
export function householdSpeaker(household: ReadHousehold, root: FilePath): Speaker {
  return { kind: 'file', file: household.file, root, placeOf: household.placeOf, saidAt: household.saidAt };
}

/** Merges everything but stages and chores; `over` wins. */
export function mergeTargets(
  base: { readonly tree: ReadTargets; readonly speaker: Speaker },
  over: { readonly tree: ReadTargets; readonly speaker: Speaker } | null,
): MergedTargets {
  const leaves: Leaf[] = [];
  const under = without(base.tree, NOT_MERGED);
  const above = over ? withHumidityForm(without(over.tree, NOT_MERGED), under) : {};
  const tree = mergeMaps(under, above, [], base.speaker, over?.speaker ?? base.speaker, leaves);
  return { tree: tree as ReadTargets, leaves };
}

type Tree = Readonly<Record<string, unknown>>;

/** A household that asks for the mean drops the profile's day and night, and the other way round. */
function withHumidityForm(over: Tree, under: Tree): Tree {
  const [said, before] = [over.humidity, under.humidity];
  if (!isMap(said) || !isMap(before)) return over;
  const dropped =
    said.mean !== undefined ? ['day', 'night'] : said.day !== undefined || said.night !== undefined ? ['mean'] : [];
  const drops = dropped.filter((key) => before[key] !== undefined && said[key] === undefined);
  return { ...over, humidity: { ...said, ...Object.fromEntries(drops.map((key) => [key, DROPPED])) } };
}

const DROPPED = Symbol('dropped');

function mergeMaps(under: Tree, over: Tree, path: FilePath, base: Speaker, above: Speaker, leaves: Leaf[]): Tree {
  const merged: Record<string, unknown> = {};
  for (const key of [...new Set([...Object.keys(under), ...Object.keys(over)])]) {
    if (isWordOfOrigin(key)) continue;
    const here = [...path, key];
    const [low, high] = [under[key], over[key]];
    if (high === DROPPED) continue;
    if (high !== undefined && isMap(low) && isMap(high) && !isWhole(here))
      merged[key] = mergeMaps(low, high, here, base, above, leaves);
    else {
      const speaker = high === undefined ? base : above;
      merged[key] = high === undefined ? low : high;
      collectLeaves(merged[key], here, speaker, [...speaker.root, ...here], leaves);
    }
  }
  return merged;
}

function isWhole(path: FilePath): boolean {
  return path.length === 1 && REPLACED_WHOLE.includes(String(path[0]));
}

/** Adds every value at or below a path: bands, times and texts are values of their own, lists of maps are entered. */
export function collectLeaves(
  value: unknown,
  path: FilePath,
  speaker: Speaker,
  spokenAt: FilePath,
  into: Leaf[],
): void {
  if (value === undefined) return;
  if (Array.isArray(value) && value.some(isMap)) {
    for (const [index, item] of value.entries())
      collectLeaves(item, [...path, index], speaker, [...spokenAt, index], into);
  } else if (isMap(value) && !isTime(value)) {
    for (const [key, item] of Object.entries(value).filter(([name]) => !isWordOfOrigin(name)))
      collectLeaves(item, [...path, key], speaker, [...spokenAt, key], into);
  } else into.push({ path, value, speaker, spokenAt });
}

/** Who said it is asked of the speaker, it is no target. */
function isWordOfOrigin(key: string): boolean {
  return key === 'source' || key === 'why' || key === 'also';
}

/** An edge, a time of day, or a span of the calendar. */
function isTime(value: Tree): boolean {
  return 'of' in value || 'minute' in value || ('unit' in value && 'count' in value);
}

function isMap(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function without(tree: ReadTargets, keys: readonly string[]): Tree {
  return Object.fromEntries(Object.entries(tree).filter(([key]) => !keys.includes(key)));
}
