/** Generated households on disk, with their own lists of occurrences. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { compile } from '../../../src/compile.ts';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { generatedPlan } from '../../generated/calendar-plan.ts';
import { type Occurrence, ownList } from '../../generated/own-list.ts';

export interface Household {
  readonly household: string;
  /** Of the household and the person. */
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
process.once('exit', () => rmSync(workFolder, { recursive: true, force: true }));

/** Writes the keeper's and the sitter's calendar of each generated household, then everybody's of each example. */
export function writeHouseholds(): readonly Household[] {
  const generated = Array.from({ length: ALL }, (_, seed) => [String(seed), generatedPlan(seed)] as const);
  return [...generated, ...examplePlans()].flatMap(([household, plan]) =>
    plan.people.map(({ id }) => {
      const name = `${household}-${id}`;
      const file = join(workFolder, `${name}.ics`);
      writeFileSync(file, emitIcs(plan, id, 'subscribe'));
      const events = plan.events.filter((event) => event.for === id);
      const long = events.filter(({ allDay, minutes }) => allDay && minutes > 1440);
      const days = new Map(long.map(({ uid, minutes }) => [uid, minutes / 1440]));
      return { household, name, zone: plan.timezone, from: plan.from, to: plan.to, file, own: ownList(events), days };
    }),
  );
}

function examplePlans(): readonly (readonly [string, Plan])[] {
  const names = readdirSync('examples').filter((name) => name.endsWith('.yaml'));
  return names.map((name) => [name, examplePlan(`examples/${name}`)] as const);
}

function examplePlan(file: string): Plan {
  const { plan, diagnostics } = compile({
    file,
    text: readFileSync(file, 'utf8'),
    profile: (id) => ({ file: `profiles/${id}.yaml`, text: readFileSync(`profiles/${id}.yaml`, 'utf8') }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  });
  if (!plan) throw new Error(`${file}: ${diagnostics[0]?.because ?? 'no plan'}`);
  return plan;
}

/** `start uid title`, sorted: what two lists are compared by. */
export function rowsOf(list: readonly Occurrence[]): readonly string[] {
  return list.map(({ start, uid, title }) => `${start} ${uid} ${title}`).sort();
}
