/** A plan with feeding alone, as an earlier plan that feeding goes on from. */
import { isoDateOf } from '../../src/basics/calendar-day.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import type { FeedingPlan } from '../../src/solve/feeding/feeding.ts';
import { EMPTY_PLAN } from './plain-plan.ts';

/** Returns a plan of a household that holds the feeding that was solved, and nothing else. */
export function barePlan(
  care: Care,
  { feeding, rotation, stock }: Pick<FeedingPlan, 'feeding' | 'rotation' | 'stock'>,
  made: string,
  digests: Plan['digests'] = {},
): Plan {
  return {
    ...EMPTY_PLAN,
    id: 'bare',
    made,
    digests,
    name: care.name,
    timezone: care.site.timezone,
    from: isoDateOf(care.plan.from),
    to: isoDateOf(care.plan.from + care.plan.days - 1),
    feeding,
    rotation,
    stock,
  };
}
