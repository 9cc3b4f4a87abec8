import { type EpochDay, epochDay, isoDateOf } from '../basics/calendar-day.ts';
import { type Today, todayIn } from '../basics/today.ts';
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';

/**
 * Returns the day from which a plan may be made anew. Where a clock says an earlier day than the one on which the plan that stands was made,
 * that one is taken: what has been done since must not be planned a second time. A date that somebody names is taken at their word. Both are
 * reported (`clock-set-back`); a plan made before it began is of its first day, and tells nothing of the clock.
 */
export function planningDay(timezone: string, today: Today, earlier: Plan | null, log: Log): EpochDay {
  const day = todayIn(timezone, today);
  if (!earlier || earlier.made <= earlier.from || isoDateOf(day) >= earlier.made) return day;
  const taken = 'date' in today ? day : epochDay(earlier.made);
  log.report('clock-set-back', { today: isoDateOf(day), made: earlier.made, taken: isoDateOf(taken) }, null);
  return taken;
}
