/** The plan's own table of UTC offsets, for the arithmetic between its wall times and UTC; no zone table of any machine is asked. */
import { epochDay } from '../basics/calendar-day.ts';
import { DAY_MINUTES } from '../basics/minute-of-day.ts';
import { clockChangesOf, type UtcMinute, type UtcOffsets } from '../basics/utc-offsets.ts';
import type { Plan } from './plan.ts';

/** Returns the offsets in force over the plan; one that never changes where the plan names none. */
export function siteOffsets({ timezone, site }: Pick<Plan, 'timezone' | 'site'>): UtcOffsets {
  const spans = site.offsets.map(({ fromUtc, minutes }) => ({
    fromUtcMinute: utcMinuteOf(fromUtc),
    offsetMinutes: minutes,
  }));
  const standard = { fromUtcMinute: 0, offsetMinutes: site.standardOffsetMinutes };
  return {
    zone: timezone,
    standardOffsetMinutes: site.standardOffsetMinutes,
    spans: spans.length === 0 ? [standard] : spans,
  };
}

/** Reads `YYYY-MM-DDTHH:MM` with or without `:SS` and `Z`. */
function utcMinuteOf(text: string): UtcMinute {
  return epochDay(text.slice(0, 10)) * DAY_MINUTES + Number(text.slice(11, 13)) * 60 + Number(text.slice(14, 16));
}

/** Minutes of the local day, both inclusive. */
export interface MinutesOfDay {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** When the clocks change in most zones: here calendars disagree with the standard and with each other. */
const SMALL_HOURS: MinutesOfDay = { fromMinute: 60, toMinute: 179 };

/**
 * Returns the minutes of the day at which no event should stand: 01:00 to 02:59, and every local time that a change of the plan's
 * zone skips or repeats; empty where the clocks do not change.
 */
export function unsafeMinutes(offsets: UtcOffsets): readonly MinutesOfDay[] {
  const changes = clockChangesOf(offsets);
  if (changes.length === 0) return [];
  const touched = changes.flatMap(({ utcMinute, beforeMinutes, afterMinutes }) => {
    const from = utcMinute + Math.min(beforeMinutes, afterMinutes);
    return splitByDay(from, utcMinute + Math.max(beforeMinutes, afterMinutes) - 1);
  });
  return [SMALL_HOURS, ...touched];
}

function splitByDay(from: number, to: number): readonly MinutesOfDay[] {
  const day = Math.floor(from / DAY_MINUTES) * DAY_MINUTES;
  if (to - day < DAY_MINUTES) return [{ fromMinute: from - day, toMinute: to - day }];
  return [
    { fromMinute: from - day, toMinute: DAY_MINUTES - 1 },
    { fromMinute: 0, toMinute: to - day - DAY_MINUTES },
  ];
}
