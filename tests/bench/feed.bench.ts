import { Log } from '../../src/diagnostics/log.ts';
import { emitIcs } from '../../src/emit/ics/ics.ts';
import { occurrencesOf } from '../../src/plan/occurrences.ts';
import type { Plan, PlanEvent } from '../../src/plan/plan.ts';
import { identifyEvents } from '../../src/replan/identity.ts';
import { calendarEvents } from '../../src/solve/calendar/events.ts';
import { steadyYear } from '../generated/steady-year.ts';

interface Table {
  readonly name: string;
  readonly rows: readonly (readonly [string, string, string])[];
}

const ROUNDS = 25;
const REVISION = {
  planId: 'steady-year',
  number: 1,
  made: '2027-01-01',
  from: '2027-01-01',
  timezone: steadyYear().timezone,
};

interface Times {
  readonly foldMs: number;
  readonly writeMs: number;
}

function once(parts: Plan): Times & { readonly plan: Plan; readonly text: string } {
  const start = performance.now();
  const plan = { ...parts, events: identifyEvents(calendarEvents(parts, null, new Log()), null, REVISION) };
  const folded = performance.now();
  const text = parts.people.map(({ id }) => emitIcs(plan, id, 'subscribe')).join('');
  return { plan, text, foldMs: folded - start, writeMs: performance.now() - folded };
}

/** Every occurrence as an event of its own, written by the same writer. */
function oneEventADate(plan: Plan): Plan {
  const single = (event: PlanEvent, start: string): PlanEvent => ({
    ...event,
    start,
    rule: null,
    until: null,
    exdates: [],
    uid: `${start} ${event.uid}`,
  });
  return { ...plan, events: plan.events.flatMap((event) => occurrencesOf(event).map((start) => single(event, start))) };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** A year of three enclosures, for the keeper and the sitter: from the plan's parts to the text of both files. */
export async function run(): Promise<readonly Table[]> {
  const parts = steadyYear();
  const first = once(parts);
  const rounds = Array.from({ length: ROUNDS }, () => once(parts));
  const { plan, text } = first;
  const plain = oneEventADate(plan);
  const started = performance.now();
  const plainText = parts.people.map(({ id }) => emitIcs(plain, id, 'subscribe')).join('');
  const plainMs = performance.now() - started;
  const ms = (value: number): string => value.toFixed(1);
  return [
    {
      name: 'A year of calendars for three enclosures',
      rows: [
        ['folding dates and giving identities, first time in a process', ms(first.foldMs), 'ms'],
        ['writing the files, first time in a process', ms(first.writeMs), 'ms'],
        ['folding and identities, median', ms(median(rounds.map(({ foldMs }) => foldMs))), 'ms'],
        ['writing, median', ms(median(rounds.map(({ writeMs }) => writeMs))), 'ms'],
        ['dates', String(plain.events.length), ''],
        ['events', String(plan.events.length), ''],
        ['bytes', String(Buffer.byteLength(text)), ''],
      ],
    },
    {
      name: 'The same with one event a date',
      rows: [
        ['events, times as many', (plain.events.length / plan.events.length).toFixed(1), 'x'],
        ['bytes, times as many', (Buffer.byteLength(plainText) / Buffer.byteLength(text)).toFixed(1), 'x'],
        ['writing', ms(plainMs), 'ms'],
      ],
    },
  ];
}
