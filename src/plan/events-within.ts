import type { IsoDate } from '../basics/civil.ts';
import { occurrencesOf } from './occurrences.ts';
import type { PlanEvent } from './plan.ts';

/**
 * Returns a person's events on the dates [from, to], both inclusive. An event that lies there whole stays as it is; of others each date
 * within is an event of its own, with an identity made of the event's and the date.
 */
export function eventsWithin(
  events: readonly PlanEvent[],
  person: string,
  from: IsoDate,
  to: IsoDate,
): readonly PlanEvent[] {
  return events
    .filter((event) => event.for === person && event.status === 'CONFIRMED')
    .flatMap((event) => {
      const all = occurrencesOf(event);
      const within = all.filter((start) => from <= start.slice(0, 10) && start.slice(0, 10) <= to);
      return within.length === all.length ? [event] : within.map((start) => single(event, start));
    });
}

function single(event: PlanEvent, start: string): PlanEvent {
  return {
    ...event,
    uid: `${start.replaceAll(/[-:]/g, '')}-${event.uid}`,
    start,
    rule: null,
    until: null,
    exdates: [],
  };
}
