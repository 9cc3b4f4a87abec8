/**
 * A calendar subscribed to over HTTP on loopback with vdirsyncer: a second run changes nothing, a re-plan changes what it changed and
 * no more, and what vanished goes.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { generatedParts, withEvents } from '../../generated/calendar-plan.ts';
import { FeedServer } from './feed-server.ts';
import { workFolder } from './households.ts';

const folder = join(workFolder, 'vdirsyncer');
const local = join(folder, 'local');
const config = join(folder, 'config');
const server = new FeedServer();

beforeAll(async () => {
  mkdirSync(local, { recursive: true });
  const port = await server.start();
  writeFileSync(
    config,
    `[general]\nstatus_path = "${join(folder, 'status')}"\n[pair care]\na = "feed"\nb = "local"\ncollections = null\nconflict_resolution = "a wins"\n` +
      `[storage feed]\ntype = "http"\nurl = "http://127.0.0.1:${port}${server.path}"\n[storage local]\ntype = "filesystem"\npath = "${local}"\nfileext = ".ics"\n`,
  );
});

afterAll(() => server.stop());

async function vdirsyncer(command: string): Promise<void> {
  await promisify(execFile)('vdirsyncer', ['-c', config, command, ...(command === 'sync' ? ['--force-delete'] : [])], {
    env: { ...process.env, LC_ALL: 'C.UTF-8', LANG: 'C.UTF-8' },
  });
}

/** Inode, time and text of each copy, by its file. vdirsyncer gives a copy from HTTP an identity of its own, made from its content. */
function copies(): ReadonlyMap<string, string> {
  return new Map(
    readdirSync(local).map((name) => {
      const { ino, mtimeNs } = statSync(join(local, name), { bigint: true });
      return [name, `${ino} ${mtimeNs} ${readFileSync(join(local, name), 'utf8')}`];
    }),
  );
}

/** The same, sorted, of the events that a plan has for the keeper. */
function saidBy(plan: Plan): readonly string[] {
  const standing = plan.events.filter((event) => event.for === 'keeper' && event.status === 'CONFIRMED');
  return standing.map(({ start, sequence }) => `${start.replaceAll(/[-:]/g, '').slice(0, 13)} ${sequence}`).sort();
}

/** Start and sequence of each copy, sorted. */
function saidByCopies(all: ReadonlyMap<string, string>): readonly string[] {
  const field = (text: string, name: string): string =>
    new RegExp(`^${name}[^:]*:(.*?)\\r?$`, 'm').exec(text.slice(text.indexOf('BEGIN:VEVENT')))?.[1] ?? '';
  return [...all.values()].map((text) => `${field(text, 'DTSTART').slice(0, 13)} ${field(text, 'SEQUENCE')}`).sort();
}

async function synced(plan: Plan): Promise<ReturnType<typeof copies>> {
  server.text = emitIcs(plan, 'keeper', 'subscribe');
  await vdirsyncer('sync');
  return copies();
}

function difference(
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
): { added: number; gone: number; kept: number } {
  const kept = [...after].filter(([name, copy]) => before.get(name) === copy).length;
  return { added: after.size - kept, gone: before.size - kept, kept };
}

it('keeps a subscription through an unchanged plan, a changed chore, and one that vanishes', async () => {
  const parts = generatedParts(0);
  const first = withEvents(parts, null);
  server.text = emitIcs(first, 'keeper', 'subscribe');
  await vdirsyncer('discover');
  const before = await synced(first);
  expect(saidByCopies(before)).toEqual(saidBy(first));

  expect(await synced(withEvents(parts, first))).toEqual(before);

  const chore = parts.chores[0];
  const longer = parts.chores.map((each) => (each === chore ? { ...each, minutes: each.minutes + 5 } : each));
  const changed = withEvents({ ...parts, revision: 2, chores: longer }, first, '2027-09-01');
  const after = await synced(changed);
  const events = changed.events.filter(({ task }) => task === chore?.id).length;
  expect(events).toBeGreaterThan(0);
  expect(difference(before, after)).toEqual({ added: events, gone: events, kept: before.size - events });
  expect(saidByCopies(after)).toEqual(saidBy(changed));

  const without = withEvents({ ...parts, revision: 3, chores: parts.chores.slice(1) }, changed, '2027-10-01');
  const last = await synced(without);
  expect(difference(after, last)).toEqual({ added: 0, gone: events, kept: before.size - events });
  expect(saidByCopies(last)).toEqual(saidBy(without));
});
