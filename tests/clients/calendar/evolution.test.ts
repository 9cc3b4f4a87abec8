/**
 * evolution-data-server subscribes on loopback, without a screen: it reads every occurrence, is told 304 while nothing changes, and
 * after a re-plan has what changed and what is new, and no more what vanished.
 */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { emitIcs } from '../../../src/emit/ics/ics.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { generatedParts, withEvents } from '../../generated/calendar-plan.ts';
import { ownList } from '../../generated/own-list.ts';
import { FeedServer } from './feed-server.ts';
import { workFolder } from './households.ts';

const server = new FeedServer();
let session: ChildProcessWithoutNullStreams;
let answers: AsyncIterator<string>;

beforeAll(async () => {
  const home = join(workFolder, 'evolution');
  const folders = { XDG_CONFIG_HOME: 'config', XDG_DATA_HOME: 'data', XDG_CACHE_HOME: 'cache', XDG_RUNTIME_DIR: 'run' };
  const env = Object.fromEntries(Object.entries(folders).map(([name, folder]) => [name, join(home, folder)]));
  for (const folder of Object.values(env)) mkdirSync(folder, { recursive: true, mode: 0o700 });
  const sources = join(home, 'config/evolution/sources');
  mkdirSync(sources, { recursive: true });
  writeFileSync(join(sources, 'care.source'), sourceOf(await server.start()));
  server.text = keepers(first);
  const reader = fileURLToPath(new URL('read_evolution.py', import.meta.url));
  session = spawn('dbus-run-session', ['--', '/usr/bin/python3', reader], {
    env: { ...process.env, ...env, HOME: home, LC_ALL: 'C.UTF-8' },
  });
  answers = createInterface({ input: session.stdout })[Symbol.asyncIterator]();
});

afterAll(async () => {
  session.stdin.end();
  await new Promise((resolve) => session.once('close', resolve));
  await server.stop();
});

function sourceOf(port: number): string {
  return [
    '[Data Source]\nDisplayName=Care\nEnabled=true\nParent=webcal-stub\n',
    '[Calendar]\nBackendName=webcal\n',
    `[Authentication]\nHost=127.0.0.1\nPort=${port}\nMethod=none\n`,
    '[Security]\nMethod=none\n',
    `[WebDAV Backend]\nResourcePath=${server.path}\n`,
    '[Offline]\nStaySynchronized=true\n',
    '[Refresh]\nEnabled=true\nIntervalMinutes=240\n',
  ].join('\n');
}

async function ask(command: string): Promise<unknown> {
  session.stdin.write(`${command}\n`);
  const { value, done } = await answers.next();
  if (done) throw new Error('the reader has ended');
  return JSON.parse(value);
}

/** Asks again until the answer is as expected; the store works in the background. */
async function settled(command: string, expected: unknown): Promise<unknown> {
  let answer = await ask(command);
  for (let round = 0; round < 40 && JSON.stringify(answer) !== JSON.stringify(expected); round += 1) {
    await new Promise((resolve) => setTimeout(resolve, 500));
    answer = await ask(command);
  }
  return answer;
}

const parts = generatedParts(0);
const first = withEvents(parts, null);

function keepers(plan: Plan): string {
  return emitIcs(plan, 'keeper', 'subscribe');
}

function listed(plan: Plan): readonly (readonly [string, number, string])[] {
  const standing = plan.events.filter((event) => event.for === 'keeper' && event.status === 'CONFIRMED');
  return standing
    .map(({ uid, sequence, title }) => [uid, sequence, title] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

it('reads every event and every occurrence', async () => {
  const own = ownList(first.events.filter((event) => event.for === 'keeper'));
  const rows = own.map(({ start, uid, title }) => `${start} ${uid} ${title}`).sort();
  expect(await settled('list', listed(first))).toEqual(listed(first));
  const read = (await ask(`occurrences ${parts.from} 2031-01-01`)) as readonly (readonly string[])[];
  expect(read.map((row) => row.join(' ')).sort()).toEqual(rows);
  expect(rows.length).toBeGreaterThan(500);
});

it('asks again with the tag it was given, and keeps what it has on a 304', async () => {
  const before = server.answers.length;
  await ask('refresh');
  expect(server.answers.slice(before)).toEqual([304]);
  expect(await ask('list')).toEqual(listed(first));
});

it('takes over a re-plan: one chore longer, one new, one gone', async () => {
  const [longer, gone, ...others] = parts.chores;
  if (!longer || !gone) throw new Error('the generated household has too few chores');
  const added = { ...longer, id: 'shelf/new', title: 'Look behind the shelf', enclosure: null, dates: ['2027-10-03'] };
  const chores = [{ ...longer, title: 'A new title, longer' }, added, ...others];
  const second = withEvents({ ...parts, revision: 2, chores }, first, '2027-08-20');
  server.text = keepers(second);
  await ask('refresh');
  expect(await settled('list', listed(second))).toEqual(listed(second));
  const [before, after] = [new Set(listed(first).map(([uid]) => uid)), new Set(listed(second).map(([uid]) => uid))];
  expect([...before].some((uid) => !after.has(uid))).toBe(true);
  expect([...after].some((uid) => !before.has(uid))).toBe(true);
  expect(listed(second).some(([, sequence]) => sequence === 1)).toBe(true);
});
