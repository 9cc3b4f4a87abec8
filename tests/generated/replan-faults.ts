/**
 * What does not hold from one plan to the next, in words, by arithmetic of its own: the past is left as it was, rotations go on, events
 * keep who they are. Nothing where all holds.
 */
import type { DialPlan, Feed, Plan, PlanEvent } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import { type DialRules, faultsOfPlan } from '../examples/check-plan.ts';
import { loopOverDays } from './own-list.ts';

export interface Replan {
  readonly before: Plan;
  readonly after: Plan;
  /** What the later plan was made from. */
  readonly care: Care;
  /** The day of the run, YYYY-MM-DD. */
  readonly today: string;
  readonly rules: DialRules;
}

const DAY_MS = 86_400_000;

/** Returns what does not hold of a re-plan. */
export function faultsOfReplan(replan: Replan): readonly string[] {
  const { after } = replan;
  return [
    ...faultsOfRevision(replan),
    ...faultsOfPlan(after, replan.rules).filter((fault) => !isSeam(fault, replan)),
    ...faultsOfPastSettings(replan),
    ...faultsOfPastMists(replan),
    ...faultsOfPastFeeds(replan),
    ...faultsOfPastChores(replan),
    ...faultsOfRepeats(after),
    ...faultsOfPowders(replan),
    ...faultsOfIdentities(replan),
  ];
}

/** The day of the re-plan is a change date whatever its weekday; what the past has used up cannot be undone, and was asked otherwise. */
function isSeam(fault: string, { after }: Replan): boolean {
  const date = /\d{4}-\d\d-\d\d/.exec(fault)?.[0] ?? after.made;
  if (/by the wall clock|outside the day/.test(fault)) return date < after.made;
  if (/does not lie on steps|are not its windows|changes nothing/.test(fault))
    return after.lighting.some(hasOtherSteps);
  if (/ is a (mon|tue|wed|thu|fri|sat|sun)$/.test(fault)) return date <= after.made;
  if (/beyond the tolerance/.test(fault)) return true;
  if (/jumps by/.test(fault)) return date <= after.made;
  return (
    /too soon|settings, at most/.test(fault) &&
    after.lighting.some(({ settings }) => (settings[0]?.to ?? '') < after.made)
  );
}

/** Another timer has come in its place: what stood on the old one lies between its steps. */
function hasOtherSteps({ settings, stepMinutes }: DialPlan): boolean {
  const isOff = (time: string): boolean => Number(time.slice(3)) % Math.min(60, stepMinutes) !== 0;
  const off = settings.filter(({ windows }) => windows.some(({ on, off: end }) => isOff(on) || isOff(end)));
  return off.length > 0 && off.every(({ past }) => past);
}

function dayBefore(date: string): string {
  return new Date(Date.parse(`${date}T00:00Z`) - DAY_MS).toISOString().slice(0, 10);
}

function daysBetween(a: string, b: string): number {
  return Math.round((Date.parse(`${b}T00:00Z`) - Date.parse(`${a}T00:00Z`)) / DAY_MS);
}

/** The days that both plans cover and that lie before the later one was made: first and last, null where there is none. */
function sharedPast({ before, after }: Replan): { readonly from: string; readonly to: string } | null {
  const [from] = [before.from, after.from].sort().slice(-1);
  const [to] = [before.to, after.to, dayBefore(after.made)].sort();
  return from !== undefined && to !== undefined && from <= to ? { from, to } : null;
}

function faultsOfRevision({ before, after, today }: Replan): readonly string[] {
  if (after === before) return [];
  const made = [today, after.from].sort().at(-1);
  const isOfFirstDay = before.made === after.made && before.previous === null;
  const previous = before.made < after.made || isOfFirstDay ? before : before.previous;
  return [
    ...(after.revision === before.revision + 1 ? [] : [`revision ${after.revision} follows ${before.revision}`]),
    ...(after.made === made ? [] : [`made on ${after.made}, not on ${made}`]),
    ...(after.id === before.id ? [] : [`the id is ${after.id}, and was ${before.id}`]),
    ...((after.previous?.revision ?? null) === (previous?.revision ?? null)
      ? []
      : [`compared with revision ${after.previous?.revision}, not ${previous?.revision}`]),
  ];
}

function faultsOfPastSettings(replan: Replan): readonly string[] {
  const past = sharedPast(replan);
  if (!past) return [];
  return replan.after.lighting.flatMap((dial) => {
    const old = replan.before.lighting.find(({ device }) => device === dial.device);
    if (!old || old.settings.length === 0 || dial.settings.length === 0) return [];
    const of = (plan: DialPlan): string =>
      JSON.stringify(
        plan.settings
          .filter(({ from, to }) => from <= past.to && to >= past.from)
          .map(({ from, windows }) => [from < past.from ? past.from : from, windows]),
      );
    if (of(old) === of(dial)) return [];
    return [`${dial.device}: the settings before ${replan.after.made} were ${of(old)} and are ${of(dial)}`];
  });
}

function faultsOfPastMists(replan: Replan): readonly string[] {
  const past = sharedPast(replan);
  if (!past) return [];
  return replan.after.misting.flatMap((mist) => {
    const old = replan.before.misting.find(({ enclosure }) => enclosure === mist.enclosure);
    if (!old) return [];
    const of = (plan: typeof mist): string =>
      JSON.stringify(
        plan.sets
          .filter(({ from, to }) => from <= past.to && to >= past.from)
          .map(({ from, entries }) => [from < past.from ? past.from : from, entries]),
      );
    return of(old) === of(mist)
      ? []
      : [`mists of ${mist.enclosure} before ${replan.after.made}: ${of(old)}, now ${of(mist)}`];
  });
}

function pastFeeds(plan: Plan, past: { readonly from: string; readonly to: string }): readonly string[] {
  return plan.feeding
    .filter(({ date }) => date >= past.from && date <= past.to)
    .map(({ past: _, ...feed }) => JSON.stringify(feed))
    .sort();
}

function faultsOfPastFeeds(replan: Replan): readonly string[] {
  const past = sharedPast(replan);
  if (!past) return [];
  const kept = replan.after.enclosures.filter(({ id }) => replan.before.enclosures.some((each) => each.id === id));
  return kept.flatMap(({ id }) => {
    const of = (plan: Plan) =>
      pastFeeds({ ...plan, feeding: plan.feeding.filter(({ enclosure }) => enclosure === id) }, past);
    const [old, now] = [of(replan.before), of(replan.after)];
    if (old.join() === now.join()) return [];
    const lost = old.filter((feed) => !now.includes(feed));
    const fresh = now.filter((feed) => !old.includes(feed));
    return [`${id}: past feeds lost ${lost.length}, new ${fresh.length}: ${[...lost, ...fresh].slice(0, 2).join(' ')}`];
  });
}

function faultsOfPastChores(replan: Replan): readonly string[] {
  const past = sharedPast(replan);
  if (!past) return [];
  const datesOf = (plan: Plan): ReadonlyMap<string, readonly string[]> => {
    const byJob = new Map<string, string[]>();
    for (const { id, who, dates } of plan.chores) {
      const job = id.endsWith(`/${who}`) ? id.slice(0, -who.length - 1) : id;
      byJob.set(
        job,
        [...(byJob.get(job) ?? []), ...dates.filter((date) => date >= past.from && date <= past.to)].sort(),
      );
    }
    return byJob;
  };
  const [old, now] = [datesOf(replan.before), datesOf(replan.after)];
  return [...now].flatMap(([job, dates]) => {
    const was = old.get(job);
    if (!was || was.join() === dates.join()) return [];
    return [`chore ${job} before ${replan.after.made}: was ${was.slice(-6).join()}, is ${dates.slice(-6).join()}`];
  });
}

/** No job twice on one day. */
function faultsOfRepeats(plan: Plan): readonly string[] {
  const seen = new Set<string>();
  const faults: string[] = [];
  const see = (key: string): void => {
    if (seen.has(key)) faults.push(`twice: ${key}`);
    seen.add(key);
  };
  for (const { date, time, enclosure, food } of plan.feeding) see(`feed ${enclosure} ${food} ${date} ${time}`);
  for (const { id, who, dates } of plan.chores)
    for (const date of dates) see(`chore ${id.endsWith(`/${who}`) ? id.slice(0, -who.length - 1) : id} ${date}`);
  for (const { date, feeder, amount } of plan.stock) see(`order ${feeder} ${date} ${amount}`);
  for (const event of plan.events.filter(({ status }) => status === 'CONFIRMED'))
    for (const start of loopOverDays(event))
      see(`event ${event.for} ${event.task} ${event.slot} ${event.title} ${start.slice(0, 10)}`);
  return faults.slice(0, 5);
}

/** Dustings of an `apart` pair keep their distance, across the seam too; the past among itself is past. */
function faultsOfPowders({ after, care }: Replan): readonly string[] {
  return care.enclosures.flatMap((enclosure) => {
    const holds = (powder: string, what: string): boolean =>
      powder === what ||
      (enclosure.supplements.find(({ id }) => id === powder)?.contains ?? []).some((each) => each === what);
    const dusted = after.feeding.filter(
      (feed): feed is Feed & { dusting: string } => feed.enclosure === enclosure.id && feed.dusting !== null,
    );
    return dusted.flatMap((feed, at) => {
      if (feed.date < after.made) return [];
      const stage =
        enclosure.stages.findLast(({ from }) => from <= Math.round(Date.parse(`${feed.date}T00:00Z`) / DAY_MS))
          ?.stage ?? '';
      const rules = enclosure.targets.stages[stage]?.apart ?? [];
      return rules.flatMap(({ between: [a, b], days }) =>
        dusted.slice(0, at).flatMap((earlier) => {
          const isPair =
            (holds(feed.dusting, a) && holds(earlier.dusting, b)) ||
            (holds(feed.dusting, b) && holds(earlier.dusting, a));
          const gap = daysBetween(earlier.date, feed.date);
          return isPair && gap < days
            ? [
                `${enclosure.id}: ${earlier.dusting} on ${earlier.date} and ${feed.dusting} on ${feed.date}, ${days} days asked`,
              ]
            : [];
        }),
      );
    });
  });
}

function contentOf({ sequence: _sequence, stamp: _stamp, ...content }: PlanEvent): string {
  return JSON.stringify(content);
}

function faultsOfIdentities({ before, after }: Replan): readonly string[] {
  const known = new Map(before.events.map((event) => [event.uid, event]));
  const moved = before.timezone !== after.timezone;
  const faults = after.events.flatMap((event) => {
    const old = known.get(event.uid);
    if (!old) return event.sequence === 0 ? [] : [`${event.task} is new with sequence ${event.sequence}`];
    if (JSON.stringify([old.task, old.slot, old.for]) !== JSON.stringify([event.task, event.slot, event.for]))
      return [`${event.uid} was ${old.task}, and is ${event.task}`];
    if (event.stamp < old.stamp) return [`the stamp of ${event.task} went back`];
    const same = contentOf(old) === contentOf(event) && !(moved && !event.allDay);
    if (same && (event.sequence !== old.sequence || event.stamp !== old.stamp))
      return [`${event.task} is unchanged, and has sequence ${event.sequence} after ${old.sequence}`];
    if (!same && event.sequence !== old.sequence + 1)
      return [`${event.task} changed, and has sequence ${event.sequence} after ${old.sequence}`];
    return [];
  });
  const kept = new Set(after.events.map(({ uid }) => uid));
  const lost = before.events.filter((event) => {
    const last = loopOverDays(event).at(-1)?.slice(0, 10) ?? '';
    return !kept.has(event.uid) && event.status === 'CONFIRMED' && last >= after.made;
  });
  return [
    ...faults.slice(0, 3),
    ...lost.slice(0, 3).map(({ task, start }) => `${task} from ${start} is lost and not cancelled`),
  ];
}
