import { type EpochDay, epochDay } from './calendar-day.ts';
import { utcOffsetMinutes } from './zone.ts';

/** The day a run takes as today: a date, or the clock's instant read in the site's zone. */
export type Today = { readonly date: string } | { readonly nowMs: number };

/** Returns the date on the wall of a zone: the one that was named, else that of the instant. */
export function todayIn(timezone: string, today: Today): EpochDay {
  if ('date' in today) return epochDay(today.date);
  return Math.floor((today.nowMs + utcOffsetMinutes(timezone, today.nowMs) * 60_000) / 86_400_000);
}
