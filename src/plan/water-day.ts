/** What pumps do on one date, by the clock on the wall. */
import type { ClockTime, IsoDate } from '../basics/civil.ts';
import { minuteOf } from '../basics/minute-of-day.ts';
import type { MistSet, Plan } from './plan.ts';

export interface PumpMist {
  readonly at: ClockTime;
  readonly seconds: number;
  readonly pump: string;
  /** Names of the enclosures that are misted. */
  readonly names: readonly string[];
}

export interface MistChange {
  readonly date: IsoDate;
  readonly device: string;
}

/** Returns the mists of all pumps on a date, by time; enclosures on one pump are one mist. */
export function mistsOn(plan: Plan, date: IsoDate): readonly PumpMist[] {
  const mists = new Map<string, PumpMist>();
  for (const { pump, enclosure, sets } of plan.misting) {
    if (pump === null || pump === 'by-hand') continue;
    const name = plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure;
    for (const { at, seconds } of entriesOn(sets, date)) {
      const known = mists.get(`${pump} ${at} ${seconds}`) ?? { at, seconds, pump, names: [] };
      mists.set(`${pump} ${at} ${seconds}`, { ...known, names: [...known.names, name] });
    }
  }
  return [...mists.values()].sort((a, b) => minuteOf(a.at) - minuteOf(b.at) || (a.pump < b.pump ? -1 : 1));
}

function entriesOn(sets: readonly MistSet[], date: IsoDate) {
  return sets
    .flatMap(({ wall }) => wall)
    .filter(({ from, to }) => from <= date && date <= to)
    .flatMap(({ entries }) => entries);
}

/** Returns the days after the plan's first on which new entries are keyed into a timer, in order. */
export function mistChanges({ misting }: Pick<Plan, 'misting'>): readonly MistChange[] {
  const changes = misting.flatMap(({ device, pump, sets }) =>
    device === null || pump === 'by-hand'
      ? []
      : sets.slice(1).flatMap((set, index) => (looksLike(set, sets[index]) ? [] : [{ date: set.from, device }])),
  );
  const seen = new Set<string>();
  return changes
    .filter(({ date, device }) => !seen.has(`${date} ${device}`) && seen.add(`${date} ${device}`))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.device < b.device ? -1 : 1));
}

function looksLike(set: MistSet, before: MistSet | undefined): boolean {
  const told = (each: MistSet | undefined) => JSON.stringify([each?.entries, each?.interval ?? null]);
  return told(set) === told(before);
}
