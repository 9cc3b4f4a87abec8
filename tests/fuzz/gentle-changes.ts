/**
 * Changes that a keeper might well make: other values within reason, other units, moved dates and times, other words of the same kind,
 * keys left out, said twice or borrowed from another file, lists in another order. Most of it still means something, so that what follows
 * the reading is tried too. From a seed alone.
 */
import fc from 'fast-check';
import type { Draw } from '../property/household-generator.ts';
import { PROFILE_IDS } from './compile-target.ts';
import { otherNumber, otherQuantity, QUANTITY } from './other-quantities.ts';

/** Words of which one may stand where another does. */
const WORDS: readonly (readonly string[])[] = [
  ['standard', 'wall', 'automatic'],
  ['down-is-on', 'up-is-on'],
  ['none', 'light', 'medium', 'dense'],
  ['dry', 'damp-below'],
  ['halogen', 'mercury', 'metal-halide', 'fluorescent', 'led', 'ceramic', 'mat', 'cable'],
  ['daylight', 'basking', 'uvb', 'plants', 'heat'],
  ['none', 'on-off', 'pulse', 'dimming'],
  ['auto', 'always'],
  ['pump', 'by-hand', 'none', 'auto'],
  ['adult', 'juvenile', 'hatchling'],
  ['metric', 'us'],
  ['a4', 'letter'],
  ['en', 'es'],
  ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
  ['lit', 'dark', 'any'],
  ['dawn', 'dusk', 'dawn-and-dusk', 'even'],
  ['diurnal', 'nocturnal', 'crepuscular'],
  ['insects', 'greens', 'rodents', 'prepared'],
  ['brumation', 'cooling', 'fast'],
  ['new', 'quarantine', 'gravid', 'shedding', 'ill'],
  ['practice', 'ours'],
  ['keeper', 'sitter'],
  ['keep', 'skip', 'sitter', 'before'],
  [
    'Europe/Madrid',
    'America/New_York',
    'Australia/Lord_Howe',
    'Asia/Kathmandu',
    'Pacific/Apia',
    'Africa/Casablanca',
    'America/St_Johns',
  ],
  ['true', 'false'],
  PROFILE_IDS,
];
/** Too long a plan makes a case slow, and finds nothing that a short one does not. */
const DAYS_AT_MOST = 70;
/** Leaves and lists are drawn anew so often until one is found that can be changed. */
const TRIES = 12;

type Holder = Record<string, unknown> | unknown[];

/** Changes one to four things in a tree of maps, lists and values, in place. `other` is a tree to borrow from. */
export function changeGently(tree: unknown, other: unknown, draw: Draw): void {
  for (let left = draw.whole(1, 4); left > 0; left--) {
    const choice = draw.whole(0, 19);
    if (choice <= 13) changeLeaf(tree, draw);
    else if (choice <= 15) leaveOut(tree, draw);
    else if (choice === 16) sayTwice(tree, draw);
    else if (choice === 17) reorder(tree, draw);
    else borrow(tree, other, draw);
  }
}

function changeLeaf(tree: unknown, draw: Draw): void {
  for (let tries = TRIES; tries > 0; tries--) {
    const holder = holderIn(tree, draw);
    if (!holder) return;
    const key = draw.one(Object.keys(holder));
    const other = otherLeaf(key, valueAt(holder, key));
    if (!other) continue;
    const [value] = fc.sample(other, { seed: draw.whole(0, 2 ** 31 - 1), numRuns: 1 });
    put(holder, key, value);
    return;
  }
}

/** Returns what may stand in place of a value, or null where that cannot be told. */
function otherLeaf(key: string, value: unknown): fc.Arbitrary<unknown> | null {
  if (key === 'format' || key === 'id') return null;
  if (typeof value === 'boolean') return fc.constant(!value);
  if (key === 'days' && !Number.isNaN(Number(value))) return fc.integer({ min: 1, max: DAYS_AT_MOST });
  if (key === 'latitude') return degrees(66);
  if (key === 'longitude') return degrees(180);
  if (typeof value === 'number') return otherNumber(value);
  if (typeof value !== 'string') return null;
  if (/^\d{1,2}:\d\d$/.test(value)) return clockTime();
  if (/^\d{4}-\d\d-\d\d$/.test(value)) return otherDate(value);
  if (QUANTITY.test(value)) return otherQuantity(value);
  if (/^-?\d+(\.\d+)?$/.test(value)) return otherNumber(Number(value));
  const alike = WORDS.filter((words) => words.includes(value));
  return alike.length > 0 ? fc.constantFrom(...alike.flat()) : null;
}

function degrees(most: number): fc.Arbitrary<number> {
  return fc.integer({ min: -most * 100, max: most * 100 }).map((hundredths) => hundredths / 100);
}

function clockTime(): fc.Arbitrary<string> {
  const step = fc.constantFrom(1, 15, 30);
  return fc.tuple(fc.integer({ min: 0, max: 1439 }), step).map(([minute, by]) => {
    const rounded = minute - (minute % by);
    return `${two(Math.floor(rounded / 60))}:${two(rounded % 60)}`;
  });
}

function otherDate(date: string): fc.Arbitrary<string> {
  const near = fc.oneof(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -400, max: 400 }));
  const moved = near.map((days) => new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10));
  return fc.oneof({ weight: 9, arbitrary: moved }, { weight: 1, arbitrary: fc.constantFrom(...DATES) });
}

/** Leap days, ends of years and of months, days on which clocks change. */
const DATES = ['2027-03-28', '2027-10-31', '2028-02-29', '2027-12-31', '2027-01-01', '2027-11-07', '2027-04-04'];

function leaveOut(tree: unknown, draw: Draw): void {
  const holder = holderIn(tree, draw);
  if (!holder || holder === tree) return;
  const key = draw.one(Object.keys(holder));
  if (!Array.isArray(holder)) delete holder[key];
  else if (holder.length > 1) holder.splice(Number(key), 1);
}

/** An element once more, under another id where it has one. */
function sayTwice(tree: unknown, draw: Draw): void {
  const list = listIn(tree, draw);
  if (!list) return;
  const element: unknown = structuredClone(draw.one(list));
  if (isMap(element) && typeof element.id === 'string' && draw.chance(0.8)) element.id = `${element.id}-too`;
  list.splice(draw.whole(0, list.length), 0, element);
}

function reorder(tree: unknown, draw: Draw): void {
  const list = listIn(tree, draw);
  if (list) list.push(...list.splice(0, draw.whole(0, list.length - 1)));
}

/** A key that another file has in a like place. */
function borrow(tree: unknown, other: unknown, draw: Draw): void {
  for (let tries = TRIES; tries > 0; tries--) {
    let [here, there] = [tree, other];
    while (isHolder(here) && isHolder(there)) {
      const shared = Object.keys(there);
      if (shared.length === 0) break;
      const key = draw.one(shared);
      const [mine, theirs] = [valueAt(here, key), valueAt(there, key)];
      if (Array.isArray(here) || Array.isArray(there)) {
        const inner = Object.values(here);
        if (inner.length === 0) break;
        [here, there] = [draw.one(inner), theirs];
        continue;
      }
      if (mine !== undefined && isHolder(mine) && draw.chance(0.9)) {
        [here, there] = [mine, theirs];
        continue;
      }
      if (NOT_BORROWED.has(key)) break;
      put(here, key, structuredClone(theirs));
      return;
    }
  }
}

const NOT_BORROWED: ReadonlySet<string> = new Set(['id', 'kind', 'format', 'days', 'outlet', 'enclosures', 'hardware']);

/** Walks down to some list or map that is not empty. */
function holderIn(tree: unknown, draw: Draw): Holder | null {
  let found: Holder | null = null;
  let here = tree;
  while (isHolder(here) && Object.keys(here).length > 0) {
    found = here;
    const inner = Object.values(here).filter(isHolder);
    if (inner.length === 0 || draw.chance(0.15)) break;
    here = draw.one(inner);
  }
  return found;
}

function listIn(tree: unknown, draw: Draw): unknown[] | null {
  for (let tries = TRIES; tries > 0; tries--) {
    const holder = holderIn(tree, draw);
    const lists = [holder, ...Object.values(holder ?? {})].filter((each) => Array.isArray(each) && each.length > 0);
    if (lists.length > 0) return draw.one(lists) as unknown[];
  }
  return null;
}

function valueAt(holder: Holder, key: string): unknown {
  return (holder as Record<string, unknown>)[key];
}

function put(holder: Holder, key: string, value: unknown): void {
  (holder as Record<string, unknown>)[key] = value;
}

function isHolder(value: unknown): value is Holder {
  return typeof value === 'object' && value !== null;
}

function isMap(value: unknown): value is Record<string, unknown> {
  return isHolder(value) && !Array.isArray(value);
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
