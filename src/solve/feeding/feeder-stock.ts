/** What is known of a feeder as stock, over all enclosures that eat it, and how much of it each day takes. */
import { type EpochDay, epochDay, isoDateOf, WEEKDAYS } from '../../basics/calendar-day.ts';
import type { Weekday } from '../../basics/civil.ts';
import type { Feed } from '../../plan/plan.ts';
import type { Care, Feeder, Path } from '../../resolve/care.ts';

export interface StockFeeder {
  readonly id: string;
  readonly path: Path;
  /** null: the file does not say. */
  readonly shelfLifeDays: number | null;
  /** Share that survives a day. */
  readonly survivesADay: number;
  /** Pieces at hand; null: not counted. */
  readonly inStock: number | null;
  readonly standIn: boolean;
  readonly foods: ReadonlySet<string>;
}

/** Pieces that one day's feeds take. */
export interface Demand {
  readonly day: EpochDay;
  readonly pieces: number;
  /** The last day on which they may be bought: before the feed, and when gut-loading begins. */
  readonly buyBy: EpochDay;
}

/** Returns the feeders by id; of what enclosures say differently the stricter holds, and counts at hand are added. */
export function stockFeeders(care: Care): readonly StockFeeder[] {
  const byId = new Map<string, readonly Feeder[]>();
  for (const feeder of care.enclosures.flatMap(({ feeders }) => feeders))
    byId.set(feeder.id, [...(byId.get(feeder.id) ?? []), feeder]);
  return [...byId]
    .filter(([, each]) => each.every(({ culture }) => culture === null))
    .map(([id, each]) => joined(id, each));
}

function joined(id: string, feeders: readonly Feeder[]): StockFeeder {
  const lives = feeders.flatMap(({ shelfLifeDays }) => shelfLifeDays ?? []);
  const counts = feeders.flatMap(({ inStock }) => inStock ?? []);
  return {
    id,
    path: feeders[0]?.path ?? [],
    shelfLifeDays: lives.length > 0 ? Math.min(...lives) : null,
    survivesADay: (1 - Math.min(0.99, Math.max(...feeders.map(({ lossesPerWeek }) => lossesPerWeek)))) ** (1 / 7),
    inStock: counts.length > 0 ? counts.reduce((all, count) => all + count, 0) : null,
    standIn: feeders.some(({ standIn }) => standIn),
    foods: new Set(feeders.map(({ food }) => food)),
  };
}

/** A feed as the stock sees it. */
export interface EatenFeed {
  readonly day: EpochDay;
  readonly feeder: string;
  readonly food: string;
  readonly pieces: number;
  readonly buyBy: EpochDay;
}

/** Returns the feeds with pieces from a day on; feeds by eye take nothing from a count. */
export function eatenFeeds(feeds: readonly Feed[], from: EpochDay): readonly EatenFeed[] {
  const since = isoDateOf(from);
  return feeds.flatMap(({ date, feeder, food, count, gutLoadFrom }) => {
    if (count === null || count === 0 || date < since) return [];
    const day = epochDay(date);
    return [
      {
        day,
        feeder,
        food,
        pieces: count,
        buyBy: Math.min(day - 1, gutLoadFrom === null ? day : epochDay(gutLoadFrom)),
      },
    ];
  });
}

/** Returns what a feeder's feeds take, by day; the days by which they are bought never fall. */
export function demandsOf(feeds: readonly EatenFeed[], feeder: string): readonly Demand[] {
  const byDay = new Map<EpochDay, Demand>();
  for (const { day, pieces, buyBy, feeder: eaten } of feeds) {
    if (eaten !== feeder) continue;
    const known = byDay.get(day);
    byDay.set(day, { day, pieces: (known?.pieces ?? 0) + pieces, buyBy: Math.min(known?.buyBy ?? buyBy, buyBy) });
  }
  const demands = [...byDay.values()].toSorted((a, b) => a.day - b.day);
  let earliest = Number.POSITIVE_INFINITY;
  return demands
    .toReversed()
    .map((demand) => {
      earliest = Math.min(earliest, demand.buyBy);
      return { ...demand, buyBy: earliest };
    })
    .toReversed();
}

/** Returns the most pieces that the feeders of a stand-in's foods take in any so many days. */
export function mostEatenIn(feeds: readonly EatenFeed[], foods: ReadonlySet<string>, days: number): number {
  const eaten = new Map<EpochDay, number>();
  for (const { day, food, pieces } of feeds) if (foods.has(food)) eaten.set(day, (eaten.get(day) ?? 0) + pieces);
  const sorted = [...eaten].toSorted(([a], [b]) => a - b);
  let [most, sum, first] = [0, 0, 0];
  for (const [day, pieces] of sorted) {
    sum += pieces;
    for (let head = sorted[first]; head && head[0] <= day - days; head = sorted[first]) {
      sum -= head[1];
      first++;
    }
    most = Math.max(most, sum);
  }
  return most;
}

/** Returns the longest distance between shopping days around the week; 7 for one day a week. */
export function longestShoppingGap(days: readonly Weekday[]): number {
  const indexes = WEEKDAYS.map((_, i) => i).filter((i) => days.includes(WEEKDAYS[i] ?? 'mon'));
  return indexes.reduce((most, index, i) => Math.max(most, (indexes[i + 1] ?? (indexes[0] ?? 0) + 7) - index), 0);
}
