/** When a feed last changed, as its `Last-Modified` says. */
import type { PlanEvent } from '../plan/plan.ts';
import type { FeedState } from './serve-state.ts';

/**
 * Returns the second since 1970: that of the newest stamp, but never after now. Stamps are a day's; a second change on one day comes a second
 * later, so that a client which knows dates alone learns of it too.
 *
 * @param known what was said of the feed before
 */
export function feedModifiedSecond(
  etag: string,
  events: readonly Pick<PlanEvent, 'stamp'>[],
  nowSecond: number,
  known: FeedState | undefined,
): number {
  if (known?.etag === etag) return Math.min(known.modifiedSecond, nowSecond);
  const newest = events.reduce((latest, { stamp }) => Math.max(latest, Date.parse(stamp) / 1000 || 0), 0);
  return Math.min(Math.max(newest, known ? known.modifiedSecond + 1 : 0), nowSecond);
}
