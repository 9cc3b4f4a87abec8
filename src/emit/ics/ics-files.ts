/** The calendar files of a plan: for each person one to subscribe to and one to import. */
import type { Plan } from '../../plan/plan.ts';
import { emitIcs } from './ics.ts';

export interface CalendarFile {
  /** Relative to the household's folder. */
  readonly path: string;
  readonly content: string;
}

/** Returns the files by person, in the plan's order of people; whoever else has an event comes after. */
export function icsFiles(plan: Plan): readonly CalendarFile[] {
  return calendarPeople(plan).flatMap((person) => [
    { path: `calendar/${person}.ics`, content: emitIcs(plan, person, 'subscribe') },
    { path: `calendar/${person}-import.ics`, content: emitIcs(plan, person, 'import') },
  ]);
}

function calendarPeople(plan: Pick<Plan, 'people' | 'events'>): readonly string[] {
  return [...new Set([...plan.people.map(({ id }) => id), ...plan.events.map((event) => event.for)])].filter(
    (id) => id !== '',
  );
}
