/** What there is to say about mists, air and water. */
import { type Kind, type Weight, wording } from '../diagnostic.ts';
import { stateWords } from './amounts.ts';

export type LimitName = 'gap' | 'count' | 'length' | 'dry-out' | 'tank' | 'tray' | 'noise' | 'no-mist' | 'drink';

const LIMIT_WORDS: Readonly<Record<LimitName, (enclosure: string, by: string) => string>> = {
  gap: (enclosure, by) => `two mists of ${enclosure} lie ${by} nearer than misting.gap asks`,
  count: (enclosure, by) => `${enclosure} gets ${by} than misting.per_day asks`,
  length: (enclosure, by) => `a mist of ${enclosure} is ${by} than misting.seconds asks`,
  'dry-out': (enclosure, by) => `the leaves of ${enclosure} stay dry ${by} less than water.dry_out asks`,
  tank: (enclosure, by) => `the mists of ${enclosure} take ${by} a day more than the tank gives between two refills`,
  tray: (enclosure, by) => `${by} a day more runs off in ${enclosure} than its tray takes between two emptyings`,
  noise: (enclosure, by) => `a mist of ${enclosure} starts ${by} inside the hours without noise`,
  'no-mist': (enclosure, by) => `a mist of ${enclosure} starts ${by} inside water.no_mist`,
  drink: (enclosure, by) =>
    `${enclosure} has ${by} to drink from too few; a person gives the water: a chore stands in the plan`,
};

/** A target that the air misses, said as a warning or as a note. */
const missedTarget = (kind: Kind, weight: Weight) =>
  wording<{
    enclosure: string;
    target: string;
    is: string;
    wants: string;
    by: string;
    months: string;
    remedy: string;
  }>(
    kind,
    weight,
    ({ enclosure, target, is, wants, by, months }) =>
      `${target} of ${enclosure} comes to ${is} and is to be ${wants}: ${by} (${months})`,
    ({ remedy }) => remedy,
  );

function sharingGap({ name, value, atLeast }: { name: string; value: number; atLeast: number }): string {
  if (name === 'limits-exceeded')
    return `exceeds ${value} limit${value === 1 ? '' : 's'} with one of them; a sharing with less may be left, but with ${atLeast} at least`;
  const what = name === 'shortfalls' ? 'their shortfalls add up to' : 'their worst shortfall is';
  return `${what} ${value}; a better sharing may be left, by ${Math.round((value - atLeast) * 100) / 100} at most: none is under ${atLeast}`;
}

export const water = {
  'pumps-not-proven': wording<{
    enclosures: number;
    pumps: number;
    level: { name: string; value: number; atLeast: number };
  }>(
    'note',
    'note',
    ({ enclosures, pumps, level }) =>
      `auto shares ${enclosures} enclosures out to ${pumps} pumps, and ${sharingGap(level)}`,
    () => 'name the pump of a few enclosures to make the search small',
  ),
  'pump-shared-with-unmisted': wording<{ pump: string; enclosure: string; misted: string }>(
    'cannot be done',
    'refusal',
    ({ pump, enclosure, misted }) =>
      `${pump} sprays ${enclosure} too, which is not to be misted, whenever it sprays ${misted}`,
    ({ enclosure }) => `take its nozzle out of ${enclosure} and write mist: none there`,
  ),
  'pump-beside-lamps': wording<{ pump: string; timer: string; lamps: string; longest: string }>(
    'cannot be done',
    'refusal',
    ({ pump, timer, lamps, longest }) =>
      `${pump} would run as long as ${lamps} on ${timer}; the pump may run ${longest} at most`,
    ({ timer }) => `take its plug out of ${timer}, and give it a programmable timer of its own that counts seconds`,
  ),
  'pump-step': wording<{ pump: string; timer: string; step: string; longest: string; pins: 'pins' | 'runs' }>(
    'cannot be done',
    'refusal',
    ({ pump, timer, step, longest, pins }) =>
      `${timer} has ${pins} of ${step}; ${pump} may run ${longest} at most; its enclosures are planned by hand`,
    () => "put a programmable timer that counts seconds between them, and name it as the pump's outlet",
  ),
  'tank-below-one-mist': wording<{ pump: string; usable: number; mist: number; seconds: number }>(
    'cannot be done',
    'refusal',
    ({ pump, usable, mist, seconds }) =>
      `the tank of ${pump} gives ${usable} mL above its reserve, and one mist of ${seconds} s takes ${mist} mL`,
    () => 'give it a larger tank',
  ),
  'dripper-bowl': wording<{ dripper: string; runs: number; holds: number; days: number; most: number }>(
    'not safe',
    'refusal',
    ({ dripper, runs, holds, days }) =>
      `${dripper} gives ${runs} mL in the ${days === 1 ? 'day' : `${days} days`} between two emptyings, and its bowl holds ${holds} mL`,
    ({ most }) => `let it run ${most} min a day at most, empty the bowl more often, or give it a larger one`,
  ),
  'dripper-step': wording<{ dripper: string; timer: string; step: string; wanted: string }>(
    'cannot be done',
    'refusal',
    ({ dripper, timer, step, wanted }) =>
      `${timer} switches in steps of ${step}, and ${dripper} is to run ${wanted} at a time`,
    () => 'let it run a whole step, or put it on a finer timer',
  ),
  'dripper-cycle': wording<{ dripper: string; timer: string; on: string; off: string }>(
    'note',
    'note',
    ({ dripper, timer, on, off }) => `set ${timer} to ${on} on and ${off} off for ${dripper}`,
    () => '',
  ),
  'dripper-cycle-range': wording<{ dripper: string; timer: string; on: string; off: string }>(
    'cannot be done',
    'refusal',
    ({ dripper, timer, on, off }) => `${timer} cannot be set to ${on} on and ${off} off, which ${dripper} asks for`,
    () => 'choose lengths that the timer has, or another timer',
  ),
  'rest-outlasts-day': wording<{ pump: string; rest: string }>(
    'cannot be done',
    'refusal',
    ({ pump, rest }) => `${pump} is to rest ${rest} between runs, so it cannot run every day`,
    () => 'correct rest of the pump; minutes are usual',
  ),
  'repeat-cycle-no-fit': wording<{ pump: string; timer: string }>(
    'cannot be done',
    'refusal',
    ({ pump, timer }) =>
      `no time on and off that ${timer} can be set to keeps ${pump} out of the hours in which nothing may be misted; its enclosures are planned by hand`,
    () => 'use a programmable timer for the pump: it knows the time of day',
  ),
  'favour-differs': wording<{ pump: string; first: string; favour: string; other: string; otherFavour: string }>(
    'falls short',
    'warning',
    ({ pump, first, favour, other, otherFavour }) =>
      `${pump} mists ${first} and ${other} at the same times; ${first} favours ${favour} and ${other} ${otherFavour}; taken: ${favour}`,
    () => 'give one of them a pump of its own',
  ),
  'shared-while-ill': wording<{ pump: string; enclosure: string; state: string; from: string; to: string }>(
    'not safe',
    'warning',
    ({ pump, enclosure, state, from, to }) =>
      `${enclosure} is ${stateWords(state)} from ${from} to ${to} and shares ${pump} with other enclosures`,
    () => 'close its nozzle for that time and mist it by hand, last of all',
  ),
  'enclosure-size-odd': wording<{ enclosure: string; volume: string; side: 'small' | 'large' }>(
    'falls short',
    'warning',
    ({ enclosure, volume, side }) =>
      side === 'small'
        ? `${enclosure} holds ${volume}, too small for one temperature and one humidity: read its forecast with doubt`
        : `${enclosure} holds ${volume}; so large a space is not one well-mixed air: read its forecast with doubt`,
    () => 'check its size; a gauge in several places tells more',
  ),
  'water-freezes': wording<{ enclosure: string; temperature: string; months: string }>(
    'not safe',
    'warning',
    ({ enclosure, temperature, months }) =>
      `the air of ${enclosure} falls to ${temperature} (${months}): water in hose and nozzle freezes, and nothing is misted then`,
    () => 'warm the room, or drain the pump for that time',
  ),
  'mist-limit': wording<{ enclosure: string; limit: LimitName; by: string; dates: string; remedy: string }>(
    'falls short',
    'warning',
    ({ enclosure, limit, by, dates }) =>
      `${LIMIT_WORDS[limit](enclosure, by)}${dates}: all limits cannot hold together`,
    ({ remedy }) => remedy,
  ),
  'humidity-short': missedTarget('falls short', 'warning'),
  'out-of-reach': wording<{
    enclosure: string;
    target: string;
    edge: string;
    settles: string;
    wet: 'wet' | 'dry';
    months: string;
    remedy: string;
  }>(
    'falls short',
    'warning',
    ({ enclosure, target, edge, settles, wet, months }) =>
      `${target} of ${enclosure} asks for ${edge}; in this room its air settles at ${settles} ${wet === 'wet' ? 'with every leaf wet' : 'with every leaf dry'} (${months}), whatever is misted`,
    ({ remedy }) => remedy,
  ),
  'humidity-near': missedTarget('note', 'note'),
  'too-humid-unmisted': wording<{
    enclosure: string;
    settles: string;
    room: string;
    months: string;
    remedy: string;
  }>(
    'falls short',
    'warning',
    ({ enclosure, settles, room, months }) =>
      `the air of ${enclosure} settles at ${settles} without a single mist, in a room of ${room} (${months}): above its targets`,
    ({ remedy }) => remedy,
  ),
  'no-water-planned': wording<{ enclosure: string; what: string }>(
    'not safe',
    'warning',
    ({ enclosure, what }) =>
      `${enclosure} ${what} and the file says mist: none; a person gives it water: a chore stands in the plan`,
    () => 'write mist: by-hand or the id of a pump, or a dish and drink: none',
  ),
  'fog-is-no-drink': wording<{ enclosure: string; pump: string }>(
    'not safe',
    'warning',
    ({ enclosure, pump }) =>
      `${enclosure} is to drink from mists and ${pump} is a fogger, whose water stays in the air; a person gives it water: a chore stands in the plan`,
    () => 'add a mist pump or a dripper for the drinking',
  ),
  'mist-sets-too-few': wording<{ enclosure: string; most: number; worst: string; alone: string }>(
    'falls short',
    'warning',
    ({ enclosure, most, worst, alone }) =>
      `with ${most === 1 ? '1 set' : `${most} sets`} of mists the worst days of ${enclosure} ${worst}; with a set of their own they would ${alone}`,
    () => 'raise mist_sets_at_most under plan',
  ),
  'dry-outs-conflict': wording<{ pump: string; enclosures: string }>(
    'falls short',
    'warning',
    ({ pump, enclosures }) =>
      `the leaves of ${enclosures} cannot all dry as long as asked under one pump, ${pump}, though each could by itself`,
    () => 'put a valve before each enclosure, or use two pumps',
  ),
  'leaves-stay-wet': wording<{ enclosure: string; hours: string; months: string }>(
    'not safe',
    'warning',
    ({ enclosure, hours, months }) =>
      `the leaves of ${enclosure} stay dry for ${hours} a day at most (${months}): what never dries grows mould and makes skin ill`,
    () => 'ask for fewer mists, or open more of the mesh',
  ),
};
