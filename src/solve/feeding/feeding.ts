/** What is fed, dusted and bought: from the targets and the keeper's own feeders to one entry a feed. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import { Parts } from '../../plan/parts.ts';
import type { Assumption, Feed, Plan, RotationState, StockOrder } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { solvePart } from '../solve-part.ts';
import { reportAbsences } from './absence-report.ts';
import { calciumAssumptions } from './calcium-advice.ts';
import { type EnclosureHours, enclosureHours } from './enclosure-hours.ts';
import { type EnclosureRotation, type RotationPart, rotateEnclosure } from './enclosure-rotation.ts';
import type { LightsOfDay } from './feeding-hours.ts';
import { feedingInputs, stockInputs } from './feeding-inputs.ts';
import { reportHours } from './hours-report.ts';
import { portionOf } from './portions.ts';
import { reportRotation } from './rotation-report.ts';
import { type HandedFeed, offTheSitter } from './sitter-dustings.ts';
import { withStandIns } from './stand-ins.ts';
import { solveStock } from './stock.ts';
import { feedMinute, whoFeeds } from './who-feeds.ts';

export interface FeedingPlan {
  /** By date, time, enclosure and food; those before the day of the revision are the earlier plan's. */
  readonly feeding: readonly Feed[];
  readonly rotation: readonly RotationState[];
  readonly stock: readonly StockOrder[];
  readonly assumptions: readonly Assumption[];
}

/**
 * Returns the feeds of all enclosures over the plan. With an earlier plan the days before `today` are copied from it and the
 * rotations go on; without one the plan is solved from its first day. Messages: those of the feeding catalogue.
 *
 * @param parts where each enclosure (`feeding.ENCLOSURE`) and the stock note what they were solved from; what stands is copied whole
 */
export function solveFeeding(
  care: Care,
  lights: LightsOfDay,
  earlier: Plan | null,
  today: EpochDay,
  log: Log,
  parts: Parts = new Parts(earlier),
): FeedingPlan {
  const now = momentOf(care, earlier, today);
  const courses = care.enclosures.map((enclosure) => {
    const hours = enclosureHours(care, enclosure, lights);
    const part = `feeding.${enclosure.id}`;
    const stands = parts.stands(part, feedingInputs(care, enclosure, hours)) && earlier !== null;
    const standing = stands ? copied(earlier, enclosure.id) : null;
    const course = solvePart({ care, parts, log }, part, standing, (placed, said) =>
      enclosureCourse(placed, enclosure, hours, now, said),
    );
    const coming = course.feeds.filter(({ past }) => !past);
    reportHours(care, enclosure, hours, coming, log);
    return { ...course, stands };
  });
  const feeding = courses.flatMap(({ feeds }) => feeds).toSorted(byTime);
  const fed = courses.every(({ stands }) => stands);
  const stockStands = parts.stands('stock', stockInputs(care)) && fed && earlier !== null;
  const stock = solvePart({ care, parts, log }, 'stock', stockStands ? earlier.stock : null, (placed, said) => [
    ...pastOrders(now, care.plan),
    ...solveStock(placed, feeding, now.from, said),
  ]);
  return {
    feeding,
    rotation: courses.flatMap(({ rotation }) => rotation),
    stock,
    assumptions: calciumAssumptions(care),
  };
}

/** From when a plan is solved, and what stands before. */
interface Moment {
  readonly earlier: Plan | null;
  readonly from: EpochDay;
}

function momentOf(care: Care, earlier: Plan | null, today: EpochDay): Moment {
  return { earlier, from: earlier ? Math.max(care.plan.from, today) : care.plan.from };
}

interface EnclosureCourse {
  readonly feeds: readonly Feed[];
  readonly rotation: readonly RotationState[];
}

function copied(earlier: Plan, id: string): EnclosureCourse {
  return {
    feeds: earlier.feeding.filter(({ enclosure }) => enclosure === id),
    rotation: earlier.rotation.filter(({ enclosure }) => enclosure === id),
  };
}

function enclosureCourse(
  care: Care,
  enclosure: CareEnclosure,
  hours: EnclosureHours,
  { earlier, from }: Moment,
  log: Log,
): EnclosureCourse {
  const rotated = rotateEnclosure(care, enclosure, earlier, from, care.plan.from + care.plan.days - 1);
  const past = pastFeeds(care, enclosure, earlier, from);
  const handed = handedFeeds(care, enclosure, rotated, past);
  const perDay = new Map<string, number>();
  for (const { day, food } of handed) perDay.set(`${day} ${food}`, (perDay.get(`${day} ${food}`) ?? 0) + 1);
  const feeds = handed.map((feed) => feedOf(care, enclosure, hours, feed, perDay.get(`${feed.day} ${feed.food}`) ?? 1));
  reportRotation(care, enclosure, rotated, handed, log);
  reportAbsences(care, enclosure, rotated, log);
  return {
    feeds: [...past, ...feeds],
    rotation: [
      ...rotated.closed,
      ...rotated.parts.map((part) => ({ ...part.rotated.state, last: lastGiven(rotated, part, feeds) })),
    ],
  };
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

function pastFeeds(care: Care, { id }: CareEnclosure, earlier: Plan | null, from: EpochDay): readonly Feed[] {
  const [since, until] = [isoDateOf(care.plan.from), isoDateOf(Math.min(from, care.plan.from + care.plan.days))];
  return (earlier?.feeding ?? [])
    .filter((feed) => feed.enclosure === id && feed.date >= since && feed.date < until)
    .map((feed) => ({ ...feed, past: true as const }));
}

/**
 * Hands the feeds to whoever is there. A trade with a past feed stands: where the orders, laid from the plan's first day, come to what
 * was really given, they are handed on from there.
 */
function handedFeeds(
  care: Care,
  enclosure: CareEnclosure,
  rotated: EnclosureRotation,
  past: readonly Feed[],
): readonly HandedFeed[] {
  const first = isoDateOf(care.plan.from);
  const all = withStandIns(care, enclosure, [...rotated.pastFeeds, ...rotated.feeds]);
  const beforePlan = rotated.givenBefore.filter(({ day }) => isoDateOf(day) < first);
  const handed = offTheSitter(care, enclosure, all, beforePlan);
  const laid = handed
    .slice(0, rotated.pastFeeds.length)
    .map(({ day, food, dusting }) => [isoDateOf(day), food, dusting].join());
  const given = past.map(({ date, food, dusting }) => [date, food, dusting].join());
  if (laid.toSorted().join(';') === given.toSorted().join(';')) return handed.slice(rotated.pastFeeds.length);
  return offTheSitter(care, enclosure, withStandIns(care, enclosure, rotated.feeds), rotated.givenBefore);
}

function pastOrders({ earlier, from }: Moment, plan: Care['plan']): readonly StockOrder[] {
  const [since, until] = [isoDateOf(plan.from), isoDateOf(Math.min(from, plan.from + plan.days))];
  return (earlier?.stock ?? []).filter(({ date }) => date >= since && date < until);
}

function feedOf(
  care: Care,
  enclosure: CareEnclosure,
  hours: EnclosureHours,
  feed: HandedFeed,
  feedsThatDay: number,
): Feed {
  const { person, minutes } = whoFeeds(care, feed.day);
  const minute = feedMinute(minutes, feed.ordinal, feedsThatDay, hours.firstOn(feed.day), hours.daysInside);
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
