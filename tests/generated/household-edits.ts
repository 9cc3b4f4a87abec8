/** What a keeper alters in a household file from one day to the next: one edit a step, drawn from a list. */
import { parse, stringify } from 'yaml';
import { isoDateOf } from '../../src/basics/calendar-day.ts';
import { type Draw, SITES } from '../property/household-generator.ts';

/** A household file as data, loose as YAML is. */
export type Tree = Record<string, unknown>;

export interface Edit {
  readonly name: string;
  /** Alters the file in place; false where there is nothing to alter. `today` as a day number. */
  readonly apply: (file: Tree, draw: Draw, today: number) => boolean;
}

function list(tree: Tree, key: string): Tree[] {
  const value = tree[key];
  return Array.isArray(value) ? (value as Tree[]) : [];
}

function part(tree: Tree, key: string): Tree {
  return (tree[key] ?? {}) as Tree;
}

function keeper(file: Tree): Tree {
  return list(file, 'people')[0] ?? {};
}

function dials(file: Tree): Tree[] {
  return list(file, 'hardware').filter(({ kind }) => kind === 'pin-dial');
}

function device(file: Tree, kind: string): Tree | null {
  return list(file, 'hardware').find((each) => each.kind === kind) ?? null;
}

function anEnclosure(file: Tree, draw: Draw): Tree {
  return draw.one(list(file, 'enclosures'));
}

function set(tree: Tree | null, key: string, value: unknown): boolean {
  if (!tree || tree[key] === value) return false;
  tree[key] = value;
  return true;
}

function renameDial(file: Tree, draw: Draw): boolean {
  const dial = draw.one(dials(file));
  const was = String(dial.id);
  dial.id = `${was}x`;
  for (const enclosure of list(file, 'enclosures'))
    for (const lamp of list(enclosure, 'lamps')) if (lamp.outlet === was) lamp.outlet = dial.id;
  return true;
}

function removeDial(file: Tree, draw: Draw): boolean {
  if (dials(file).length < 2) return false;
  const dial = draw.one(dials(file));
  file.hardware = list(file, 'hardware').filter((each) => each !== dial);
  for (const enclosure of list(file, 'enclosures'))
    for (const lamp of list(enclosure, 'lamps')) if (lamp.outlet === dial.id) lamp.outlet = 'always';
  return true;
}

function removeEnclosure(file: Tree, draw: Draw): boolean {
  if (list(file, 'enclosures').length < 2) return false;
  const gone = anEnclosure(file, draw);
  file.enclosures = list(file, 'enclosures').filter((each) => each !== gone);
  return true;
}

function addEnclosure(file: Tree, draw: Draw): boolean {
  const copy = structuredClone(anEnclosure(file, draw));
  copy.id = `${String(copy.id)}-b`;
  if (list(file, 'enclosures').some(({ id }) => id === copy.id)) return false;
  if (copy.mist !== 'none') copy.mist = 'by-hand';
  for (const lamp of list(copy, 'lamps')) if (lamp.outlet !== 'always') lamp.outlet = 'auto';
  file.enclosures = [...list(file, 'enclosures'), copy];
  return true;
}

function chore(file: Tree, draw: Draw, today: number): boolean {
  const enclosure = anEnclosure(file, draw);
  const chores = list(enclosure, 'chores');
  if (chores.length > 0 && draw.chance(0.5)) {
    enclosure.chores = [];
    return true;
  }
  const every = draw.one(['1 day', '3 days', '1 week', '10 days', '1 month']);
  enclosure.chores = [{ id: `job-${today % 7}`, title: `Job of day ${today % 7}`, every, minutes: 5 }];
  return true;
}

function away(file: Tree, draw: Draw, today: number): boolean {
  if (list(file, 'away').length > 0 && draw.chance(0.5)) {
    file.away = [];
    return true;
  }
  const from = today + draw.whole(-5, 30);
  const to = from + draw.whole(2, 14);
  file.away = [{ from: isoDateOf(from), to: isoDateOf(to), sitter: 'sitter', visits: 'every 1 day' }];
  return true;
}

function otherSpecies(file: Tree, draw: Draw): boolean {
  const pairs: Readonly<Record<string, string>> = {
    'veiled-chameleon': 'panther-chameleon',
    'panther-chameleon': 'jacksons-chameleon',
    'jacksons-chameleon': 'veiled-chameleon',
    'ball-python': 'corn-snake',
    'corn-snake': 'ball-python',
  };
  const enclosure = anEnclosure(file, draw);
  const other = pairs[String(enclosure.species)];
  return other !== undefined && set(enclosure, 'species', other);
}

function otherZone(file: Tree, draw: Draw): boolean {
  const [timezone, latitude, longitude] = draw.one(SITES);
  const site = part(file, 'site');
  if (site.timezone === timezone) return false;
  Object.assign(site, { timezone, latitude, longitude });
  return true;
}

function feeders(file: Tree, draw: Draw): boolean {
  const own = list(anEnclosure(file, draw), 'feeders');
  const feeder = own[0];
  if (!feeder) return false;
  if (feeder.id === 'cricket' && draw.chance(0.5)) {
    feeder.share = '50 %';
    own.splice(1, own.length, { id: 'roach', share: '50 %', dust: true, shelf_life: '30 days' });
    return true;
  }
  return set(feeder, 'count', draw.whole(2, 6));
}

function state(file: Tree, draw: Draw, today: number): boolean {
  const enclosure = anEnclosure(file, draw);
  if (list(enclosure, 'states').length > 0) {
    enclosure.states = [];
    return true;
  }
  const from = isoDateOf(today + draw.whole(-10, 20));
  const to = isoDateOf(today + draw.whole(21, 60));
  enclosure.states = [{ is: draw.one(['new', 'gravid', 'shedding']), from, to }];
  return true;
}

function feedHour(file: Tree, draw: Draw): boolean {
  return set(keeper(file), 'feeds_at', `${draw.one(['07', '08', '09', '10'])}:${draw.one(['00', '15', '30', '45'])}`);
}

function renameKeeper(file: Tree): boolean {
  const person = keeper(file);
  return set(person, 'id', person.id === 'keeper' ? 'carer' : 'keeper');
}

/** Moves the plan on so that it begins some days from today; the old one stands in the folder. */
function movedOn(file: Tree, draw: Draw, today: number): boolean {
  return set(part(file, 'plan'), 'from', isoDateOf(today + draw.whole(-20, 20)));
}

export const EDITS: readonly Edit[] = [
  { name: 'another feeding hour', apply: feedHour },
  {
    name: 'another weekday for chores',
    apply: (file, draw) => set(keeper(file), 'chores_on', draw.one(['mon', 'thu', 'sat'])),
  },
  { name: 'a chore comes or goes', apply: chore },
  { name: 'an enclosure goes', apply: removeEnclosure },
  { name: 'an enclosure comes', apply: addEnclosure },
  {
    name: 'an enclosure is renamed',
    apply: (file, draw) => {
      const enclosure = anEnclosure(file, draw);
      return set(enclosure, 'id', `${String(enclosure.id)}r`);
    },
  },
  { name: 'another species', apply: otherSpecies },
  {
    name: 'another step of a dial',
    apply: (file, draw) => {
      const dial = draw.one(dials(file));
      return set(dial, 'step', dial.step === '15 min' ? '30 min' : '15 min');
    },
  },
  {
    name: 'another sense of pins',
    apply: (file, draw) => {
      const dial = draw.one(dials(file));
      return set(dial, 'pins', dial.pins === 'up-is-on' ? 'down-is-on' : 'up-is-on');
    },
  },
  { name: 'a dial is renamed', apply: renameDial },
  { name: 'a dial goes', apply: removeDial },
  {
    name: 'another clock of a dial',
    apply: (file, draw) => {
      const dial = draw.one(dials(file));
      return set(dial, 'clock', dial.clock === 'wall' ? 'standard' : 'wall');
    },
  },
  { name: 'another zone', apply: otherZone },
  { name: 'an absence comes or goes', apply: away },
  {
    name: 'fewer or more settings',
    apply: (file, draw) => set(part(file, 'plan'), 'settings_at_most', draw.whole(2, 12)),
  },
  {
    name: 'another spacing of settings',
    apply: (file, draw) => set(part(file, 'plan'), 'at_least_between', `${draw.one([7, 14, 21, 28])} days`),
  },
  {
    name: 'another weekday for pins',
    apply: (file, draw) => set(part(file, 'plan'), 'change_on', [draw.one(['mon', 'thu', 'sun'])]),
  },
  {
    name: 'a drier or damper room',
    apply: (file, draw) => set(part(part(file, 'site'), 'room'), 'humidity', `${draw.whole(25, 60)} %`),
  },
  { name: 'other mesh', apply: (file, draw) => set(anEnclosure(file, draw), 'open', `${draw.whole(20, 35)} %`) },
  { name: 'other feeders', apply: feeders },
  { name: 'a state comes or goes', apply: state },
  { name: 'a longer or shorter plan', apply: (file, draw) => set(part(file, 'plan'), 'days', draw.whole(20, 220)) },
  { name: 'a plan that begins on another day', apply: movedOn },
  { name: 'another language', apply: (file) => set(file, 'language', file.language === 'es' ? 'en' : 'es') },
  { name: 'the keeper is renamed', apply: renameKeeper },
  { name: 'a reminder', apply: (file, draw) => set(keeper(file), 'reminder', `${draw.one([10, 15, 30])} min`) },
  { name: 'another name', apply: (file, draw) => set(file, 'name', `Shelf of ${draw.whole(1, 1000)}`) },
  {
    name: 'another entry count of the mist timer',
    apply: (file, draw) => set(device(file, 'programmable-timer'), 'entries', draw.whole(3, 20)),
  },
  {
    name: 'quiet hours come or go',
    apply: (file) => {
      const noise = file.noise;
      if (noise === undefined) file.noise = { none: [['22:00', '06:30']] };
      else delete file.noise;
      return true;
    },
  },
];

/** Returns the file with one edit, and which. */
export function editedHousehold(
  text: string,
  draw: Draw,
  today: number,
  edits: readonly Edit[] = EDITS,
): { readonly text: string; readonly name: string } {
  for (;;) {
    const file = parse(text) as Tree;
    const edit = draw.one(edits);
    if (edit.apply(file, draw, today)) return { text: stringify(file), name: edit.name };
  }
}
