/** Generated households on disk, with their own lists of occurrences. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import { generatedPlan } from '../../generated/calendar-plan.ts';
import { type Occurrence, ownList } from '../../generated/own-list.ts';

export interface Household {
  readonly name: string;
  readonly zone: string;
  readonly from: string;
  readonly to: string;
  readonly file: string;
  readonly own: readonly Occurrence[];
  /** Whole days that an event lasts, by its uid, where more than one. */
  readonly days: ReadonlyMap<string, number>;
}

const ALL = 300;
/** Programs that start once a household read so many, all with `--all`. */
export const SLOW_HOUSEHOLDS = process.env.CLIENTS_ALL === '1' ? ALL : 40;

export const workFolder = mkdtempSync(join(tmpdir(), 'calendar-clients-'));

/** Writes the keeper's and the sitter's calendar of each household. */
export function writeHouseholds(): readonly Household[] {
  return Array.from({ length: ALL }, (_, seed) => seed).flatMap((seed) => {
    const plan = generatedPlan(seed);
    return plan.people.map(({ id }) => {
      const name = `${seed}-${id}`;
      const file = join(workFolder, `${name}.ics`);
      writeFileSync(file, emitIcs(plan, id, 'subscribe'));
      const events = plan.events.filter((event) => event.for === id);
      const long = events.filter(({ allDay, minutes }) => allDay && minutes > 1440);
      const days = new Map(long.map(({ uid, minutes }) => [uid, minutes / 1440]));
      return { name, zone: plan.timezone, from: plan.from, to: plan.to, file, own: ownList(events), days };
    });
  });
}

/** `start uid title`, sorted: what two lists are compared by. */
export function rowsOf(list: readonly Occurrence[]): readonly string[] {
  return list.map(({ start, uid, title }) => `${start} ${uid} ${title}`).sort();
}
