/** The site as the plan tells it: where, the UTC offsets in force, and its own sun. */
import { isoUtcMinuteOf } from '../basics/utc-offsets.ts';
import { zoneOffsets } from '../basics/zone.ts';
import type { PlanSite } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';
import { siteDayLengthMinutes } from './light/target-day-length.ts';

/** Returns the site of the plan; the sun's minutes are rounded half up to 0.1 min, one a civil date. */
export function planSite({ site, plan }: Pick<Care, 'site' | 'plan'>): PlanSite {
  const offsets = zoneOffsets(site.timezone, plan.from, plan.days);
  return {
    latitude: site.latitude,
    longitude: site.longitude,
    standardOffsetMinutes: offsets.standardOffsetMinutes,
    offsets: offsets.spans.map(({ fromUtcMinute, offsetMinutes }) => ({
      fromUtc: isoUtcMinuteOf(fromUtcMinute),
      minutes: offsetMinutes,
    })),
    sunMinutes: Array.from(
      siteDayLengthMinutes(site, plan.from, plan.days),
      (minutes) => Math.floor(minutes * 10 + 0.5) / 10,
    ),
  };
}
