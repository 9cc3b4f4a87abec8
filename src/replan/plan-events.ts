/** The calendar of a plan: what its parts ask of people, with the identities that the plan before gave. */
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';
import { calendarEvents } from '../solve/calendar/events.ts';
import { identifyEvents } from './identity.ts';

/**
 * Returns the plan with its events; the earlier plan itself where it is the plan.
 *
 * @param shopper who buys; null: the keeper
 */
export function withPlanEvents(plan: Plan, earlier: Plan | null, shopper: string | null, log: Log): Plan {
  if (plan === earlier) return plan;
  const drafts = calendarEvents(plan, shopper, log);
  const revision = { planId: plan.id, number: plan.revision, made: plan.made, from: plan.made };
  return { ...plan, events: identifyEvents(drafts, earlier, revision) };
}
