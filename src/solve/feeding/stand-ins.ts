/** What is fed in place of a feeder that cannot be had; the rotation goes on underneath. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Care, CareEnclosure, Feeder } from '../../resolve/care.ts';
import type { RotationFeed } from './rotation.ts';

export interface ServedFeed extends RotationFeed {
  readonly standIn: boolean;
  /** A dusting that was lost because the stand-in takes no dust. */
  readonly lostDusting: string | null;
  /** The feeder cannot be had, and nothing stands in for it. */
  readonly unserved: boolean;
}

/** Returns the feeds with stand-ins in the days of a shortage. */
export function withStandIns(
  care: Care,
  enclosure: CareEnclosure,
  feeds: readonly RotationFeed[],
): readonly ServedFeed[] {
  return feeds.map((feed) => serve(care, enclosure, feed));
}

function serve(care: Care, enclosure: CareEnclosure, feed: RotationFeed): ServedFeed {
  const served = { ...feed, standIn: false, lostDusting: null, unserved: false };
  if (!isShort(care, feed.feeder, feed.day)) return served;
  const standIn = standInFor(care, enclosure, feed);
  if (!standIn) return { ...served, unserved: true };
  const keepsDust = feed.dusting === null || standIn.dust;
  return {
    ...served,
    feeder: standIn.id,
    standIn: true,
    dusting: keepsDust ? feed.dusting : null,
    lostDusting: keepsDust ? null : feed.dusting,
  };
}

/** Tells whether the file says that a feeder cannot be had on a day. */
export function isShort(care: Care, feeder: string, day: EpochDay): boolean {
  return care.shortages.some((short) => short.feeder === feeder && short.from <= day && day <= short.to);
}

/** The first stand-in of the same food that is not short itself, else the first other feeder. */
function standInFor(care: Care, enclosure: CareEnclosure, feed: RotationFeed): Feeder | null {
  const others = enclosure.feeders.filter(
    (feeder) => feeder.food === feed.food && feeder.id !== feed.feeder && !isShort(care, feeder.id, feed.day),
  );
  return others.find(({ standIn }) => standIn) ?? others[0] ?? null;
}
