/** Which timers and lamps are alike, so that a search need not try both ways round. */

import type { Seats } from './seats.ts';
import type { ShelfCosts } from './shelf-costs.ts';

export interface Likeness {
  /** For each timer the timer before it that is the same in everything and drives nothing by name, or -1. */
  readonly timerBefore: readonly number[];
  /** For each lamp the nearest lamp before it, in the search's order, that asks for the same and draws the same; or -1. */
  readonly lampBefore: readonly number[];
  readonly timerClass: readonly number[];
  readonly lampClass: readonly number[];
}

/** Returns what is alike. Lamps of different watts are alike where no timer has a rating that could bind. */
export function likenessOf(seats: Seats, costs: ShelfCosts, order: readonly number[]): Likeness {
  const timerClass = classes(
    seats.timers.map(({ timer, fixed, freeOutlets, freeWatts }, index) =>
      fixed.length > 0 ? `own ${index}` : JSON.stringify([costs.timerKey(timer), freeOutlets, freeWatts, timer.kind]),
    ),
  );
  const bindsWatts = seats.timers.some(({ freeWatts }) => freeWatts !== null && freeWatts < totalWatts(seats));
  const lampClass = classes(
    seats.lamps.map((lamp) => {
      const place = lamp.target.kind === 'day' ? '' : lamp.enclosure.id;
      return `${costs.lampKey(lamp)} ${place} ${bindsWatts ? lamp.lamp.powerW : ''}`;
    }),
  );
  return {
    timerClass,
    lampClass,
    timerBefore: timerClass.map((name, index) => timerClass.slice(0, index).lastIndexOf(name)),
    lampBefore: seats.lamps.map((_, lamp) => {
      const earlier = order.slice(0, order.indexOf(lamp));
      return earlier.findLast((other) => lampClass[other] === lampClass[lamp]) ?? -1;
    }),
  };
}

function totalWatts(seats: Seats): number {
  return seats.lamps.reduce((sum, { lamp }) => sum + lamp.powerW, 0);
}

function classes(keys: readonly string[]): readonly number[] {
  const known = [...new Set(keys)];
  return keys.map((key) => known.indexOf(key));
}

/** Returns the arrangement, alike timers and lamps exchanged, that comes first in the file's order; left-out lamps count as the last timer. */
export function firstOfAlike(arrangement: readonly number[], { timerClass, lampClass }: Likeness): readonly number[] {
  const options = permutationsWithin(timerClass).map((timerAs) =>
    sortedLamps(
      arrangement.map((at) => (at < 0 ? at : (timerAs[at] ?? at))),
      lampClass,
    ),
  );
  return options.reduce((first, next) => (compareArrangements(next, first) < 0 ? next : first));
}

/** Compares by file order: the first lamp that differs, the earlier timer first, left out last. */
export function compareArrangements(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((at, lamp) => at !== b[lamp]);
  return index < 0 ? 0 : rank(a[index]) - rank(b[index]);
}

function rank(at: number | undefined): number {
  return at === undefined || at < 0 ? Number.MAX_SAFE_INTEGER : at;
}

function sortedLamps(arrangement: readonly number[], lampClass: readonly number[]): readonly number[] {
  const result = [...arrangement];
  for (const name of new Set(lampClass)) {
    const lamps = lampClass.flatMap((each, lamp) => (each === name ? [lamp] : []));
    const timers = lamps.map((lamp) => arrangement[lamp] ?? -1).sort((x, y) => rank(x) - rank(y));
    lamps.forEach((lamp, index) => {
      result[lamp] = timers[index] ?? -1;
    });
  }
  return result;
}

/** Orders of alike timers that are tried; beyond them the order found stands. */
const MOST_ORDERS = 15_000;

function permutationsWithin(timerClass: readonly number[]): readonly (readonly number[])[] {
  const identity = timerClass.map((_, index) => index);
  return [...new Set(timerClass)].reduce<readonly (readonly number[])[]>(
    (maps, name) => {
      const members = timerClass.flatMap((each, index) => (each === name ? [index] : []));
      if (members.length === 1 || maps.length * factorial(members.length) > MOST_ORDERS) return maps;
      return maps.flatMap((map) =>
        permutations(members).map((permuted) =>
          map.map((to, index) => (members.includes(index) ? (permuted[members.indexOf(index)] ?? to) : to)),
        ),
      );
    },
    [identity],
  );
}

function factorial(count: number): number {
  return count <= 1 ? 1 : count * factorial(count - 1);
}

function permutations(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length <= 1) return [items];
  return items.flatMap((item, index) => permutations(items.toSpliced(index, 1)).map((rest) => [item, ...rest]));
}
