/** The calendar that goes with a hand-over: everything that is to be done on its dates, whoever does it else. */
import type { IsoDate } from '../../basics/civil.ts';
import { digestOf } from '../../basics/digest.ts';
import { occurrencesOf } from '../../plan/occurrences.ts';
import type { Plan, PlanEvent } from '../../plan/plan.ts';
import { siteOffsets } from '../../plan/site-offsets.ts';
import { words } from '../../plan/words/words.ts';
import { calendarText } from './ics.ts';

/** What concerns the keeper alone: being away, and the list before leaving. */
const KEEPERS_OWN: ReadonlySet<string> = new Set(['away', 'leaving']);

/**
 * Returns a calendar to import with one event a job and date, between two dates, both inclusive; empty but for its name where nothing
 * is to be done. Its identities are its own, so that it stands beside a calendar that the same phone subscribes to.
 */
export function handoverIcs(plan: Plan, from: IsoDate, to: IsoDate): string {
  const jobs = plan.events.filter(({ status, kind }) => status === 'CONFIRMED' && !KEEPERS_OWN.has(kind));
  const events = jobs.flatMap((event) => datesOf(event, from, to).map((start) => single(event, start, plan.id)));
  const name = words(plan.language).calendar.calendarName(plan.name, `${from} – ${to}`);
  return calendarText(name, events.toSorted(byStart), siteOffsets(plan));
}

function datesOf(event: PlanEvent, from: IsoDate, to: IsoDate): readonly string[] {
  if (event.start.slice(0, 10) > to || (event.until ?? event.start).slice(0, 10) < from) return [];
  return occurrencesOf(event).filter((start) => start.slice(0, 10) >= from && start.slice(0, 10) <= to);
}

function single(event: PlanEvent, start: string, planId: string): PlanEvent {
  const uid = `${digestOf([planId, 'handover', event.task, event.slot, event.for, start])}@dewdial`;
  return { ...event, uid, start, rule: null, until: null, exdates: [], alarmMinutes: null };
}

function byStart(a: PlanEvent, b: PlanEvent): number {
  const [one, other] = [a.start + a.uid, b.start + b.uid];
  return one < other ? -1 : one > other ? 1 : 0;
}
