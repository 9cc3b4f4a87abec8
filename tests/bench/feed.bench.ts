import { Log } from '../../src/diagnostics/log.ts';
import { emitIcs } from '../../src/emit/ics/ics.ts';
import { occurrencesOf } from '../../src/plan/occurrences.ts';
import type { Plan, PlanEvent } from '../../src/plan/plan.ts';
import { identifyEvents } from '../../src/replan/identity.ts';
import { calendarEvents } from '../../src/solve/calendar/events.ts';
import { steadyYear } from '../generated/steady-year.ts';
import { atMost, type Beside, leastMs, median, shown, type Table, times } from './figures.ts';

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

/** A year of three enclosures, for the keeper and the sitter: from the plan's parts to the text of both files. */
export async function run(): Promise<readonly Table[]> {
  const parts = steadyYear();
  const first = once(parts);
  const rounds = Array.from({ length: ROUNDS }, () => once(parts));
  const { plan, text } = first;
  const plain = oneEventADate(plan);
  const write = (written: Plan): string => parts.people.map(({ id }) => emitIcs(written, id, 'subscribe')).join('');
  const [oursMs, plainMs] = [leastMs(() => write(plan), ROUNDS), leastMs(() => write(plain), 5)];
  const [bytes, plainBytes] = [Buffer.byteLength(text), Buffer.byteLength(write(plain))];
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
        ['bytes', String(bytes), ''],
      ],
      targets: [atMost("a year's feed of three enclosures written, first in a process", first.writeMs, 30, 'ms')],
    },
    {
      name: 'The same with one event a date',
      rows: [
        ['events, times as many', (plain.events.length / plan.events.length).toFixed(1), 'x'],
        ['bytes, times as many', (plainBytes / bytes).toFixed(1), 'x'],
        ['writing', ms(plainMs), 'ms'],
      ],
      beside: [
        beside(
          'a year of calendars, events',
          shown(plan.events.length),
          shown(plain.events.length),
          times(plain.events.length, plan.events.length, 'as many'),
        ),
        beside('a year of calendars, bytes', shown(bytes), shown(plainBytes), times(plainBytes, bytes, 'as many')),
        beside(
          'a year of calendars, written (least, warm)',
          `${shown(oursMs)} ms`,
          `${shown(plainMs)} ms`,
          times(plainMs, oursMs),
        ),
      ],
    },
  ];
}

function beside(work: string, ours: string, takes: string, ratio: string): Beside {
  return { work, ours, other: 'ical-generator, one event a date', takes, ratio };
}
