/** A plan with feeding alone, as an earlier plan that feeding goes on from. */
import { isoDateOf } from '../../src/basics/calendar-day.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import type { FeedingPlan } from '../../src/solve/feeding/feeding.ts';

/** Returns a plan of a household that holds the feeding that was solved, and nothing else. */
export function barePlan(
  care: Care,
  { feeding, rotation, stock }: Pick<FeedingPlan, 'feeding' | 'rotation' | 'stock'>,
  made: string,
  digests: Plan['digests'] = {},
): Plan {
  return {
    format: 1,
    id: 'bare',
    revision: 1,
    made,
    tool: '1.0.0',
    digests,
    previous: null,
    name: care.name,
    timezone: care.site.timezone,
    from: isoDateOf(care.plan.from),
    to: isoDateOf(care.plan.from + care.plan.days - 1),
    units: 'metric',
    paper: 'a4',
    language: 'en',
    contacts: {},
    people: [],
    site: { latitude: 0, longitude: 0, standardOffsetMinutes: 0, offsets: [], sunMinutes: [] },
    enclosures: [],
    hardware: [],
    cautions: [],
    sources: {},
    lighting: [],
    misting: [],
    feeding,
    rotation,
    chores: [],
    stock,
    away: [],
    events: [],
    notPlanned: [],
    loads: [],
    assumptions: [],
    warnings: [],
  };
}
