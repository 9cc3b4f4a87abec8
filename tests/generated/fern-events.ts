/** The calendar of a plan that holds nothing but what a test puts in. */
import { Log } from '../../src/diagnostics/log.ts';
import type { EventDraft } from '../../src/plan/event-draft.ts';
import type { Feed, Plan } from '../../src/plan/plan.ts';
import { calendarEvents } from '../../src/solve/calendar/events.ts';
import { generatedParts } from './calendar-plan.ts';
import { MADRID_OFFSETS } from './offsets-of-2027.ts';
import { PLAIN_FEED } from './plain-plan.ts';

/** Madrid in 2027, with one enclosure and nothing planned. */
export const fernPlan: Plan = {
  ...generatedParts(0),
  name: 'Reading room',
  language: 'en',
  from: '2027-01-01',
  to: '2027-12-31',
  enclosures: generatedParts(0)
    .enclosures.slice(0, 1)
    .map((enclosure) => ({ ...enclosure, id: 'fern', name: 'Fern' })),
  people: [
    { id: 'keeper', feedsAt: [], reminderMinutes: 15, minutesADay: null },
    { id: 'sitter', feedsAt: [], reminderMinutes: null, minutesADay: null },
  ],
  site: {
    latitude: 41.65,
    longitude: -0.89,
    standardOffsetMinutes: 60,
    offsets: MADRID_OFFSETS,
    sunMinutes: [],
  },
  lighting: [],
  misting: [],
  hardware: [],
  feeding: [],
  chores: [],
  stock: [],
  away: [],
};

export const FERN_FEED: Feed = {
  ...PLAIN_FEED,
  date: '2027-01-01',
  enclosure: 'fern',
  dusting: 'calcium-d3',
  gutLoadFrom: '2026-12-31',
};

/** Returns the events of the plan as changed. */
export function events(change: Partial<Plan>, log = new Log()): readonly EventDraft[] {
  return calendarEvents({ ...fernPlan, ...change }, null, log);
}

/** Returns their titles, in order. */
export function titles(change: Partial<Plan>): readonly string[] {
  return events(change).map(({ title }) => title);
}

/** Returns the codes of what is said while the events are made. */
export function codes(change: Partial<Plan>): readonly string[] {
  const log = new Log();
  events(change, log);
  return log.sorted().map(({ code }) => code);
}

export function fail(): never {
  throw new Error('the generated household lacks it');
}
