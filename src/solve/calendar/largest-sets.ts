/** The largest sets of dates that one rule may cover: none lies within another. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { covered, reachesOf, stripOf } from './rule-reach.ts';
import { stepsWithin } from './rule-steps.ts';

/** Returns them as positions in `dates`, larger first; a date that no rule joins to another stands alone. */
export function largestSets(dates: readonly EpochDay[]): readonly (readonly number[])[] {
  const sets = [...reachableSets(dates).values()].sort((a, b) => b.length - a.length || compare(a, b));
  const kept: (readonly number[])[] = [];
  const keptWith = dates.map((): Set<number>[] => []);
  for (const set of sets) {
    const rivals = keptWith[set[0] ?? 0] ?? [];
    if (rivals.some((rival) => set.every((index) => rival.has(index)))) continue;
    kept.push(set);
    const members = new Set(set);
    for (const index of set) keptWith[index]?.push(members);
  }
  return kept;
}

function reachableSets(dates: readonly EpochDay[]): Map<string, readonly number[]> {
  const strip = stripOf(dates);
  const position = new Map(dates.map((day, index) => [day, index]));
  const sets = new Map<string, readonly number[]>(dates.map((_, index) => [String(index), [index]]));
  for (const reach of reachesOf(strip, dates, stepsWithin(strip.last - strip.first))) {
    const set = covered(strip, reach).map((day) => position.get(day) ?? 0);
    sets.set(set.join(), set);
  }
  return sets;
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}
