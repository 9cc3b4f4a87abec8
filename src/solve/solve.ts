/** Care to Plan: the stages in the order in which each needs the ones before. */
import { type EpochDay, isoDateOf } from '../basics/calendar-day.ts';
import { digestOf } from '../basics/digest.ts';
import type { Log } from '../diagnostics/log.ts';
import { keptRevisions } from '../plan/kept-revisions.ts';
import { Parts } from '../plan/parts.ts';
import type { Plan } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';
import { solveChores } from './chores/chores.ts';
import { warnOfClocks } from './clock-warnings.ts';
import { solveFeeding } from './feeding/feeding.ts';
import { lightsOfDay } from './feeding/lights-of-day.ts';
import { solveLighting } from './lighting.ts';
import { planAbsences, planEnclosures, planHardware, planPeople } from './plan-parts.ts';
import { planSite } from './plan-site.ts';
import { solveWater } from './water.ts';

/**
 * Plans a household from `today` on. Where nothing that a plan is made from has changed, the earlier plan itself comes back; else events
 * and warnings are still empty.
 *
 * @param earlier the plan that stands in the folder; what lies before the new revision's first day is kept from it
 * @param version of the program, noted in the plan
 */
export function solve(care: Care, earlier: Plan | null, today: EpochDay, version: string, log: Log): Plan {
  const begins = Math.max(today, care.plan.from);
  const parts = new Parts(earlier);
  warnOfClocks(care, log);
  const light = solveLighting(care, earlier, today, log, parts);
  const lights = lightsOfDay(care, light.lighting, light.offsets);
  const fed = solveFeeding(care, lights, earlier, today, log, parts);
  const water = solveWater(care, { ...light, feeding: fed.feeding }, earlier, today, log, parts);
  const planned = {
    lighting: water.lighting,
    misting: water.misting,
    feeding: fed.feeding,
    offsets: light.offsets,
  };
  const { chores } = solveChores(water.care, planned, earlier, today, log, parts);
  const auto = [...light.auto, ...water.auto];
  const told = {
    name: care.name,
    timezone: care.site.timezone,
    from: isoDateOf(care.plan.from),
    to: isoDateOf(care.plan.from + care.plan.days - 1),
    units: care.units,
    paper: care.paper,
    language: care.language,
    contacts: care.contacts,
    people: planPeople(care),
    site: planSite(care),
    enclosures: planEnclosures(care),
    hardware: planHardware(care, light.drives),
    cautions: care.cautions,
    sources: care.sources,
    away: planAbsences(care),
  };
  const isToldBefore = parts.stands('told', told);
  if (earlier && isToldBefore && parts.allStand()) return earlier;
  return {
    format: 1,
    id: planId(care, earlier),
    revision: (earlier?.revision ?? 0) + 1,
    made: isoDateOf(begins),
    tool: version,
    digests: parts.digests(),
    said: parts.said(),
    previous: keptRevisions(earlier, isoDateOf(begins)),
    ...told,
    lighting: water.lighting,
    misting: water.misting,
    feeding: fed.feeding,
    rotation: fed.rotation,
    chores,
    stock: fed.stock,
    events: [],
    notPlanned: light.notPlanned,
    ...(auto.length > 0 ? { auto } : {}),
    loads: light.loads,
    assumptions: [...light.assumptions, ...water.assumptions, ...fed.assumptions],
    warnings: [],
  };
}

/** The file's own id, else the earlier plan's, else one made from what seldom changes. */
function planId(care: Care, earlier: Plan | null): string {
  const seldom = [care.name, care.site.timezone, isoDateOf(care.plan.from), care.enclosures.map(({ id }) => id)];
  return care.id ?? earlier?.id ?? digestOf(seldom);
}
