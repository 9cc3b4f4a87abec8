/**
 * Who an event is, from one plan to the next: a phone that knows it keeps it, changed or not. An identity is made from the plan's
 * id, the task, the slot and a number of its own within these; never from a date, a time or a title.
 */
import { epochDay } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { digestOf } from '../basics/digest.ts';
import { grouped } from '../basics/grouped.ts';
import type { EventDraft } from '../plan/event-draft.ts';
import type { Plan, PlanEvent } from '../plan/plan.ts';

type Identity = Pick<PlanEvent, 'uid' | 'sequence' | 'stamp' | 'status'>;

export interface Revision {
  readonly planId: string;
  /** 1 for the first plan. */
  readonly number: number;
  /** The day on which it is made. */
  readonly made: IsoDate;
  /** The day from which it holds: what lies before is the past. */
  readonly from: IsoDate;
  /** In which times of day are meant. */
  readonly timezone: string;
}

/** What the plan that stands says of its events. */
export type Standing = Pick<Plan, 'events' | 'made' | 'timezone'>;

const SUFFIX = '@dewdial';
/** A segment that begins so many days from where it did is still the same. */
const NEAREST_DAYS = 21;
/** Numbers that one revision may give out in a task; a later one begins above, so that none is ever given twice. */
const NUMBERS_A_REVISION = 10_000;

/**
 * Returns the events with their identities, by start. One that says what it said keeps sequence and stamp; a changed one has a
 * higher sequence. What has vanished and was still to come is carried as CANCELLED, until a plan of a later day.
 */
export function identifyEvents(
  drafts: readonly EventDraft[],
  standing: Standing | null,
  revision: Revision,
): readonly PlanEvent[] {
  const earlier = standing?.events ?? [];
  const stamp = latest([`${revision.from}T00:00:00Z`, ...earlier.map((event) => event.stamp)]);
  const matches = matchSegments(drafts, earlier);
  const isMoved = standing !== null && standing.timezone !== revision.timezone;
  const taken = new Set(earlier.map(({ uid }) => uid));
  const events = drafts.toSorted(byStart).map((draft) => {
    const match = matches.get(draft);
    if (match) return continued(draft, match, stamp, isMoved);
    return eventOf(draft, { uid: freshUid(draft, revision, taken), sequence: 0, stamp, status: 'CONFIRMED' });
  });
  const kept = new Set(events.map(({ uid }) => uid));
  const gone = earlier
    .filter(({ uid }) => !kept.has(uid))
    .flatMap((event) => vanished(event, standing, revision, stamp));
  return [...events, ...gone].toSorted((a, b) => compare(a.start, b.start) || compare(a.uid, b.uid));
}

/** Numbers are given out in this order, whatever the order of the drafts. */
function byStart(a: EventDraft, b: EventDraft): number {
  const key = ({ task, slot, title, rule }: EventDraft): string => [task, slot, title, rule].join('\u0000');
  return compare(a.start, b.start) || compare(a.for, b.for) || compare(key(a), key(b));
}

/** Returns the identity of a segment: 32 hex digits and a fixed suffix. */
export function eventUid(planId: string, task: string, slot: number, ordinal: number): string {
  return `${digestOf([planId, task, slot, ordinal])}${SUFFIX}`;
}

function freshUid({ task, slot }: EventDraft, revision: Revision, taken: Set<string>): string {
  let ordinal = (revision.number - 1) * NUMBERS_A_REVISION;
  let uid = eventUid(revision.planId, task, slot, ordinal);
  while (taken.has(uid)) {
    ordinal += 1;
    uid = eventUid(revision.planId, task, slot, ordinal);
  }
  taken.add(uid);
  return uid;
}

/** In another zone a time of day is another instant, though it reads the same. */
function continued(draft: EventDraft, earlier: PlanEvent, stamp: string, isMoved: boolean): PlanEvent {
  const { uid, sequence } = earlier;
  const isSame = contentOf(draft) === contentOf(earlier) && !(isMoved && !draft.allDay);
  if (earlier.status === 'CONFIRMED' && isSame) return eventOf(draft, earlier);
  return eventOf(draft, { uid, sequence: sequence + 1, stamp, status: 'CONFIRMED' });
}

/** Returns the event with its fields in one order, so that equal events are equal bytes. */
function eventOf(draft: EventDraft, { uid, sequence, stamp, status }: Identity): PlanEvent {
  const { title, description, category, start, minutes, allDay, rule, until, exdates, alarmMinutes, kind, task, slot } =
    draft;
  const what = { title, description, category, start, minutes, allDay, rule, until, exdates, alarmMinutes };
  return { uid, sequence, stamp, status, ...what, for: draft.for, kind, task, slot };
}

function vanished(
  event: PlanEvent,
  standing: Standing | null,
  revision: Revision,
  stamp: string,
): readonly PlanEvent[] {
  if (event.status === 'CANCELLED') return standing?.made === revision.made ? [event] : [];
  const last = event.until ?? event.start;
  if (last.slice(0, 10) < revision.from) return [];
  return [eventOf(event, { uid: event.uid, sequence: event.sequence + 1, stamp, status: 'CANCELLED' })];
}

/** Everything that a phone shows or acts on. */
function contentOf(event: EventDraft): string {
  const { title, description, category, start, minutes, allDay, rule, until, exdates, alarmMinutes, kind } = event;
  return JSON.stringify([
    title,
    description,
    category,
    start,
    minutes,
    allDay,
    rule,
    until,
    exdates,
    alarmMinutes,
    kind,
  ]);
}

interface Pair {
  readonly draft: EventDraft;
  readonly event: PlanEvent;
  readonly rank: readonly [number, number, number, string, string];
}

/** Pairs segments of one person, task and slot, the nearest starts first; of equally near ones those that say the same. */
function matchSegments(
  drafts: readonly EventDraft[],
  earlier: readonly PlanEvent[],
): ReadonlyMap<EventDraft, PlanEvent> {
  const byJob = grouped(earlier, jobOf);
  const pairs = drafts.flatMap((draft) => (byJob.get(jobOf(draft)) ?? []).flatMap((event) => pairOf(draft, event)));
  const matched = new Map<EventDraft, PlanEvent>();
  const used = new Set<PlanEvent>();
  for (const { draft, event } of pairs.sort((a, b) => compareRanks(a.rank, b.rank))) {
    if (matched.has(draft) || used.has(event)) continue;
    matched.set(draft, event);
    used.add(event);
  }
  return matched;
}

function jobOf({ for: person, task, slot }: EventDraft): string {
  return JSON.stringify([person, task, slot]);
}

function pairOf(draft: EventDraft, event: PlanEvent): readonly Pair[] {
  const days = Math.abs(epochDay(draft.start.slice(0, 10)) - epochDay(event.start.slice(0, 10)));
  if (days > NEAREST_DAYS) return [];
  const cancelled = event.status === 'CANCELLED' ? 1 : 0;
  const differs = contentOf(draft) === contentOf(event) ? 0 : draft.title === event.title ? 1 : 2;
  return [{ draft, event, rank: [cancelled, days, differs, draft.start + draft.title, event.uid] }];
}

function compareRanks(a: Pair['rank'], b: Pair['rank']): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || compare(a[3], b[3]) || compare(a[4], b[4]);
}

function latest(stamps: readonly string[]): string {
  return stamps.toSorted().at(-1) ?? '';
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
