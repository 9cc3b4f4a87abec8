/** What is fed, dusted and bought: from the targets and the keeper's own feeders to one entry a feed. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Assumption, Feed, Plan, RotationState, StockOrder } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { calciumAssumptions } from './calcium-advice.ts';
import { type EnclosureRotation, type RotationPart, rotateEnclosure } from './enclosure-rotation.ts';
import { feedingHours, type LightsOfDay } from './feeding-hours.ts';
import { reportHours } from './hours-report.ts';
import { portionOf } from './portions.ts';
import { reportRotation } from './rotation-report.ts';
import { type HandedFeed, offTheSitter } from './sitter-dustings.ts';
import { withStandIns } from './stand-ins.ts';
import { type CultureStarts, solveStock } from './stock.ts';
import { feedMinute, whoFeeds } from './who-feeds.ts';

export interface FeedingPlan {
  /** By date, time, enclosure and food; those before the day of the revision are the earlier plan's. */
  readonly feeding: readonly Feed[];
  readonly rotation: readonly RotationState[];
  readonly stock: readonly StockOrder[];
  /** Days on which a culture of feeders is started. */
  readonly cultures: readonly CultureStarts[];
  readonly assumptions: readonly Assumption[];
}

/**
 * Returns the feeds of all enclosures over the plan. With an earlier plan the days before `today` are copied from it and the
 * rotations go on; without one the plan is solved from its first day. Messages: those of the feeding catalogue.
 */
export function solveFeeding(
  care: Care,
  lights: LightsOfDay,
  earlier: Plan | null,
  today: EpochDay,
  log: Log,
): FeedingPlan {
  const first = care.plan.from;
  const last = first + care.plan.days - 1;
  const from = earlier ? Math.max(first, today) : first;
  const feeding: Feed[] = [...pastFeeds(care, earlier, first, from)];
  const rotation: RotationState[] = [];
  for (const enclosure of care.enclosures) {
    const rotated = rotateEnclosure(care, enclosure, earlier, from, last);
    const handed = handedFeeds(care, enclosure, rotated);
    const feeds = handed.map((feed) => feedOf(care, enclosure, lights, feed));
    reportRotation(care, enclosure, rotated, handed, log);
    reportHours(care, enclosure, lights, feeds, log);
    feeding.push(...feeds);
    rotation.push(...rotated.parts.map((part) => ({ ...part.rotated.state, last: lastGiven(rotated, part, feeds) })));
  }
  const sorted = feeding.toSorted(byTime);
  const { orders, cultures } = solveStock(care, sorted, from, log);
  const stock = [...pastOrders(earlier, first, from), ...orders];
  return { feeding: sorted, rotation, stock, cultures, assumptions: calciumAssumptions(care) };
}

function byTime(a: Feed, b: Feed): number {
  return (
    compareText(a.date, b.date) ||
    compareText(a.time, b.time) ||
    compareText(a.enclosure, b.enclosure) ||
    compareText(a.food, b.food) ||
    a.slot - b.slot
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function pastFeeds(care: Care, earlier: Plan | null, first: EpochDay, from: EpochDay): readonly Feed[] {
  const here = new Set(care.enclosures.map(({ id }) => id));
  const [since, until] = [isoDateOf(first), isoDateOf(from)];
  return (earlier?.feeding ?? [])
    .filter((feed) => here.has(feed.enclosure) && feed.date >= since && feed.date < until)
    .map((feed) => ({ ...feed, past: true as const }));
}

function pastOrders(earlier: Plan | null, first: EpochDay, from: EpochDay): readonly StockOrder[] {
  const [since, until] = [isoDateOf(first), isoDateOf(from)];
  return (earlier?.stock ?? []).filter(({ date }) => date >= since && date < until);
}

function handedFeeds(care: Care, enclosure: CareEnclosure, rotated: EnclosureRotation): readonly HandedFeed[] {
  return offTheSitter(care, enclosure, withStandIns(care, enclosure, rotated.feeds), rotated.givenBefore);
}

function feedOf(care: Care, enclosure: CareEnclosure, lights: LightsOfDay, feed: HandedFeed): Feed {
  const { person, minutes } = whoFeeds(care, feed.day);
  const minute = feedMinute(minutes, feed.ordinal, minutes.length > 0 ? 0 : firstHour(enclosure, lights, feed.day));
  const portion = portionOf(enclosure, feed.rule, feed.feeder);
  return {
    date: isoDateOf(feed.day),
    time: clockTimeOf(minute),
    slot: feed.slot,
    enclosure: enclosure.id,
    food: feed.food,
    feeder: feed.feeder,
    count: portion.count,
    portion: portion.words,
    dusting: feed.dusting,
    by: person,
    gutLoadFrom: gutLoadFrom(enclosure, feed, minute),
    standIn: feed.standIn,
    ...(feed.preDosed ? { preDosed: true as const } : {}),
  };
}

/** The first quarter hour at which the animal may be fed, 09:00 where its hours are not known. */
function firstHour(enclosure: CareEnclosure, lights: LightsOfDay, day: EpochDay): number {
  const feeding = enclosure.targets.feeding;
  const lit = feeding && lights(enclosure.id, day);
  if (!feeding || !lit) return 9 * 60;
  return Math.min(1425, Math.ceil(feedingHours(feeding, lit).fromMinute / 15) * 15);
}

function gutLoadFrom(enclosure: CareEnclosure, feed: HandedFeed, minute: number): string | null {
  const hours = enclosure.feeders.find(({ id }) => id === feed.feeder)?.gutLoadHours ?? null;
  return hours === null ? null : isoDateOf(feed.day + Math.floor((minute - hours * 60) / 1440));
}

/** The last dates of a stream when its stage ends: of its feeds and of each powder that was really given. */
function lastGiven(rotated: EnclosureRotation, part: RotationPart, feeds: readonly Feed[]): RotationState['last'] {
  const last = new Map<string, string>();
  const note = (key: string, date: string) =>
    last.set(key, (last.get(key) ?? date) > date ? (last.get(key) ?? date) : date);
  if (part.lastFeedBefore !== null) note('feed', isoDateOf(part.lastFeedBefore));
  if (part.dusted) for (const { powder, day } of rotated.givenBefore) note(powder, isoDateOf(day));
  const end = isoDateOf(part.to);
  for (const { food, date, dusting } of feeds) {
    if (food !== part.food || date > end) continue;
    note('feed', date);
    if (dusting !== null) note(dusting, date);
  }
  return Object.fromEntries([...last].sort(([a], [b]) => compareText(a, b)));
}
