/** Vitamin powders that would fall to a sitter are moved to a feed that the household gives itself, where the days apart allow it. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { absenceOn, isWithin, undustedSpans } from './pauses.ts';
import { type ApartRule, apartFromGiven, contentsOf, type Given } from './powders.ts';
import type { ServedFeed } from './stand-ins.ts';

export interface HandedFeed extends ServedFeed {
  /** A vitamin powder that could not be moved: weighed out beforehand for the sitter. */
  readonly preDosed: boolean;
}

/** How far from the absence a dusting may move; ours. */
const MOVE_AT_MOST_DAYS = 14;

/**
 * Returns the feeds with vitamin powders moved off the sitter's days: each trades places with the nearest powder without vitamins (or
 * plain feed) of the household's own, the earlier of equals, if all powders keep their days apart; what cannot move is weighed out.
 */
export function offTheSitter(
  care: Care,
  enclosure: CareEnclosure,
  feeds: readonly ServedFeed[],
  before: readonly Given[],
): readonly HandedFeed[] {
  const handed: HandedFeed[] = feeds.map((feed) => ({ ...feed, preDosed: false }));
  handed.forEach((feed, i) => {
    if (!isSittersVitamin(care, enclosure, feed)) return;
    const other = tradeFor(care, enclosure, handed, i, before);
    const partner = other === null ? undefined : handed[other];
    if (other === null || !partner) {
      handed[i] = { ...feed, preDosed: true };
      return;
    }
    handed[i] = { ...feed, dusting: partner.dusting };
    handed[other] = { ...partner, dusting: feed.dusting };
  });
  return handed;
}

function isSittersVitamin(care: Care, enclosure: CareEnclosure, feed: ServedFeed): boolean {
  return feed.dusting !== null && hasVitamin(enclosure, feed.dusting) && absenceOn(care, feed.day) !== null;
}

function hasVitamin(enclosure: CareEnclosure, dusting: string | null): boolean {
  return dusting !== null && contentsOf(enclosure, dusting).length > 0;
}

function tradeFor(
  care: Care,
  enclosure: CareEnclosure,
  feeds: readonly ServedFeed[],
  at: number,
  before: readonly Given[],
): number | null {
  const feed = feeds[at];
  if (!feed) return null;
  const candidates = feeds
    .map((other, i) => ({ i, days: Math.abs(other.day - feed.day), other }))
    .filter(({ other, days }) => days <= MOVE_AT_MOST_DAYS && mayTake(care, enclosure, feed, other))
    .sort((a, b) => a.days - b.days || a.i - b.i);
  return candidates.find(({ i }) => keepsApart(enclosure, feeds, at, i, before))?.i ?? null;
}

function mayTake(care: Care, enclosure: CareEnclosure, feed: ServedFeed, other: ServedFeed): boolean {
  if (other.stage !== feed.stage || other.food !== feed.food || absenceOn(care, other.day) !== null) return false;
  if (isWithin(undustedSpans(enclosure), other.day)) return false;
  if (other.dusting !== null) return !hasVitamin(enclosure, other.dusting);
  return enclosure.feeders.some(({ id, dust }) => id === other.feeder && dust);
}

/** Whether the powder of one feed, given on the other's day, keeps its days from all others. */
function keepsApart(
  enclosure: CareEnclosure,
  feeds: readonly ServedFeed[],
  from: number,
  to: number,
  before: readonly Given[],
): boolean {
  const [moved, other] = [feeds[from], feeds[to]];
  if (!moved || !other || moved.dusting === null) return false;
  const pairs: readonly (readonly [string, EpochDay])[] = [
    [moved.dusting, other.day],
    ...(other.dusting === null ? [] : [[other.dusting, moved.day] as const]),
  ];
  const rest: readonly (readonly [string, EpochDay])[] = [
    ...feeds.flatMap((feed, i) =>
      i === from || i === to || feed.dusting === null ? [] : [[feed.dusting, feed.day] as const],
    ),
    ...before.map(({ powder, day }) => [powder, day] as const),
  ];
  const rules = rulesOf(enclosure);
  return pairs.every(([powder, day], p) =>
    [...rest, ...pairs.slice(p + 1)].every(
      ([each, on]) => Math.abs(on - day) >= apartFromGiven(enclosure, rules, powder, each),
    ),
  );
}

/** The rules of every stage: a move may cross from one into the next. */
function rulesOf(enclosure: CareEnclosure): readonly ApartRule[] {
  const stages = new Set(enclosure.stages.map(({ stage }) => stage));
  return [...stages].flatMap((stage) => enclosure.targets.stages[stage]?.apart ?? []);
}
