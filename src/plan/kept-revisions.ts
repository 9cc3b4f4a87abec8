/** The revisions that a plan keeps under `previous`: the newest of an earlier day (or the first there was) whole, older ones for the change sheet alone. */
import type { IsoDate } from '../basics/civil.ts';
import { coverAdvice } from './cover-changes.ts';
import type { Plan } from './plan.ts';

/** Older revisions kept behind the whole one; each is some tens of kilobytes. */
const OLDER_AT_MOST = 5;

/**
 * Returns what a revision made on a day keeps of those before: the newest made on an earlier day, for revisions of one day replace each other,
 * with some older ones behind it. On the first day of all it is the first revision, which may stand on the shelf already. null where there
 * is none.
 */
export function keptRevisions(earlier: Plan | null, made: IsoDate): Plan | null {
  if (!earlier) return null;
  const first = earlier.made === made && !earlier.previous ? earlier : null;
  const newest = first ?? (earlier.made < made ? earlier : earlier.previous);
  return newest && { ...newest, previous: older(newest.previous, made, OLDER_AT_MOST) };
}

/** Returns all revisions that a plan keeps, newest first. */
export function revisionsOf(plan: Plan): readonly Plan[] {
  return plan.previous ? [plan.previous, ...revisionsOf(plan.previous)] : [];
}

function older(plan: Plan | null, made: IsoDate, most: number): Plan | null {
  return plan === null || most === 0
    ? null
    : { ...forTheSheet(plan, made), previous: older(plan.previous, made, most - 1) };
}

/** Leaves what a change sheet of `made` or a later day compares. */
function forTheSheet(plan: Plan, made: IsoDate): Plan {
  return {
    ...plan,
    digests: {},
    said: {},
    site: { ...plan.site, sunMinutes: [] },
    enclosures: plan.enclosures.map((enclosure) => ({ ...enclosure, targets: [], cautions: [], spans: [], where: {} })),
    cautions: [],
    sources: {},
    lighting: plan.lighting.map((dial) => ({
      ...dial,
      lamps: [],
      settings: dial.settings.map((setting) => ({ ...setting, wall: [] })),
      targetHighMinutes: [],
      targetLowMinutes: [],
      targetMinutes: [],
      tradeoff: [],
    })),
    misting: plan.misting.map((mist) => ({
      ...mist,
      sets: mist.sets.map((set) => ({ ...set, wall: [], conditions: [], allowed: [], shortfalls: [] })),
      advice: coverAdvice(mist),
    })),
    feeding: plan.feeding.filter(({ date }) => date >= made),
    rotation: [],
    chores: plan.chores.map((chore) => ({ ...chore, dates: chore.dates.filter((date) => date >= made), moved: [] })),
    stock: [],
    events: [],
    notPlanned: [],
    auto: [],
    loads: [],
    assumptions: [],
    warnings: [],
  };
}
