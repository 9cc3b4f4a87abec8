/** The built program as a server: how it starts, what it refuses, where its token stands, how it ends. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { bench, PROGRAM } from './built.ts';

const { folder } = bench(28);
const state = join(folder, 'state');
cpSync(join(folder, 'one-gecko.yaml'), join(folder, 'home.yaml'));
const running: ChildProcess[] = [];
afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
});

interface Started {
  readonly out: string;
  readonly end: (signal: NodeJS.Signals) => Promise<Ended>;
}

interface Ended {
  readonly exit: number | null;
  readonly out: string;
  readonly said: string;
}

function spawned(args: readonly string[]): {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
  readonly out: () => string;
} {
  const child = spawn(process.execPath, [PROGRAM, 'serve', ...args], {
    cwd: folder,
    env: { ...process.env, XDG_STATE_HOME: state },
  });
  running.push(child);
  let [out, said] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  const ended = new Promise<Ended>((resolve) => child.once('close', (exit) => resolve({ exit, out, said })));
  return { child, ended, out: () => out };
}

/** Runs until it ends by itself. */
function run(...args: readonly string[]): Promise<Ended> {
  return spawned(args).ended;
}

/** Runs until it has said its addresses. */
async function start(...args: readonly string[]): Promise<Started> {
  const { child, ended, out } = spawned(['home.yaml', '--port', '0', '--today', '2027-01-05', ...args]);
  const over = ended.then(() => true);
  while (!/\n$/.test(out())) {
    const isOver = await Promise.race([over, new Promise<false>((resolve) => setTimeout(() => resolve(false), 30))]);
    if (isOver) throw new Error(`ended early: ${(await ended).said}`);
  }
  return {
    out: out(),
    end: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

const pageOf = (out: string): string => /http:\/\/[^\s"]+\/c\/[^/]+\/(?=[\s"])/.exec(out)?.[0] ?? '';
const tokenOf = (out: string): string => /\/c\/([^/]+)\//.exec(out)?.[1] ?? '';

describe('serve', () => {
  let token = '';

  it('answers on this machine alone, and ends when it is told to', async () => {
    const server = await start();
    expect(server.out).toContain('This machine alone reaches it');
    expect(pageOf(server.out)).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/c\/[\w-]{22}\/$/);
    token = tokenOf(server.out);
    const page = await fetch(pageOf(server.out));
    expect(await page.text()).toContain('Today: Tuesday 5 January 2027');
    expect((await fetch(`${pageOf(server.out)}keeper.ics`)).headers.get('content-type')).toBe(
      'text/calendar; charset=utf-8',
    );
    expect((await fetch(`${pageOf(server.out)}plan.json`)).status).toBe(404);
    const { exit, said } = await server.end('SIGTERM');
    expect(exit).toBe(0);
    expect(said).not.toContain(token);
    expect(said).not.toMatch(/ {4}at /);
  });

  it('keeps its token for its owner alone, outside the results, and the same in the next run', async () => {
    const [name = ''] = readdirSync(join(state, 'dewdial'));
    expect(statSync(join(state, 'dewdial')).mode & 0o777).toBe(0o700);
    expect(statSync(join(state, 'dewdial', name)).mode & 0o777).toBe(0o600);
    for (const file of readdirSync(join(folder, 'out/home'), { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    ))
      expect(readFileSync(join(file.parentPath, file.name), 'latin1')).not.toContain(token);
    const server = await start('--json');
    const said: unknown = JSON.parse(server.out);
    expect(said).toMatchObject({ page: expect.stringContaining(`/c/${token}/`), feeds: [{ person: 'keeper' }] });
    expect((await server.end('SIGINT')).exit).toBe(0);
  });

  it('makes another token where it is asked to', async () => {
    const server = await start('--new-token');
    const page = pageOf(server.out);
    expect(tokenOf(server.out)).not.toBe(token);
    expect((await fetch(page.replace(tokenOf(page), token))).status).toBe(404);
    expect((await fetch(page)).status).toBe(200);
    await server.end('SIGTERM');
  });

  it('serves the last plan and says why, where the file cannot be used from the start', async () => {
    const text = readFileSync(join(folder, 'home.yaml'), 'utf8');
    writeFileSync(join(folder, 'home.yaml'), `${text}\nunknown: 1\n`);
    const server = await start();
    expect(await (await fetch(pageOf(server.out))).text()).toContain('role="alert"');
    await server.end('SIGTERM');
    writeFileSync(join(folder, 'home.yaml'), text);
  });

  it('refuses what cannot be served, in a line', async () => {
    writeFileSync(join(folder, 'bad.yaml'), 'format: 1\n');
    const taken = await new Promise<Server>((resolve) => {
      const server = createServer().listen(0, '127.0.0.1', () => resolve(server));
    });
    const address = taken.address();
    const port = typeof address === 'object' && address ? String(address.port) : '';
    const cases: readonly (readonly [readonly string[], number, RegExp])[] = [
      [['none.yaml'], 1, /cannot read none\.yaml: there is no such file/],
      [['bad.yaml'], 1, /cannot be read/],
      [['home.yaml', '--port', 'high'], 2, /--port high: a whole number from 0 to 65535/],
      [['home.yaml', '--port', '65536'], 2, /--port 65536/],
      [['home.yaml', '--today', 'soon'], 2, /dates are written YYYY-MM-DD/],
      [['home.yaml', '--port', port, '--today', '2027-01-05'], 2, /port \d+ is taken by another program/],
      [
        ['home.yaml', '--host', '203.0.113.77', '--today', '2027-01-05'],
        2,
        /--host 203\.0\.113\.77: not an address of this machine/,
      ],
      [[], 2, /FILE is missing/],
    ];
    for (const [args, exit, words] of cases) {
      const ended = await run(...args);
      expect(ended.exit, args.join(' ')).toBe(exit);
      expect(ended.said, args.join(' ')).toMatch(words);
      expect(ended.out, args.join(' ')).toBe('');
      expect(ended.said).not.toMatch(/ {4}at /);
    }
    taken.close();
  });
});
