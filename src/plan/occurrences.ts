/** The plan's own list of what its events come to: every date of every rule, written out. */
import { expandRecurrence } from '../basics/recurrence.ts';
import type { PlanEvent } from './plan.ts';

/** What an occurrence list needs of an event. */
export type Recurring = Pick<PlanEvent, 'start' | 'rule' | 'until' | 'exdates'>;

/** Returns the starts of an event in order: `YYYY-MM-DDTHH:MM` in the plan's zone, `YYYY-MM-DD` where all day. */
export function occurrencesOf(event: Recurring): readonly string[] {
  return expandRecurrence(event);
}
