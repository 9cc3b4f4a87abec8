/** The server under load on loopback: answers of 304 a second, their median, and whether memory stays where it is. */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import autocannon from 'autocannon';
import { build } from 'esbuild';
import { atLeast, shown, type Table } from './figures.ts';

const SECONDS = 3;
const ROUNDS = 100_000;

interface Server {
  readonly port: number;
  readonly path: string;
  readonly etag: string;
  readonly memory: () => Promise<number>;
  readonly end: () => void;
}

/** A process of its own, so that the load generator's time is not the server's. */
const PROCESS = `
import { HouseholdSite } from './src/serve/household-site.ts';
import { listen } from './src/serve/http-server.ts';
import { ownNames } from './src/serve/hosts.ts';
import { freshToken, tokenCheck } from './src/serve/token.ts';
import { emitIcs } from './src/emit/ics/ics.ts';
import { generatedPlan } from './tests/generated/calendar-plan.ts';
const token = freshToken();
const plan = generatedPlan(0);
const options = { authority: '127.0.0.1', isReachable: false, token, nowMs: () => Date.UTC(2027, 0, 5), today: null };
const feed = Buffer.from(emitIcs(plan, 'keeper', 'subscribe'));
const site = new HouseholdSite(options, { plan, files: new Map([['calendar/keeper.ics', feed]]) }, {});
const gate = { names: ownNames(null, null), isToken: tokenCheck(token), file: (name) => site.file(name) };
const { port } = await listen(() => gate, '127.0.0.1', 0);
process.on('message', () => { globalThis.gc(); globalThis.gc(); process.send({ rss: process.memoryUsage().rss, heap: process.memoryUsage().heapUsed }); });
process.send({ port, path: '/c/' + token + '/keeper.ics', etag: site.file('keeper.ics').etag, bytes: feed.length });
`;

async function started(): Promise<Server & { readonly bytes: number }> {
  const file = join(tmpdir(), `serve-bench-${process.pid}.mjs`);
  const { outputFiles } = await build({
    stdin: { contents: PROCESS, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    write: false,
    banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
    logLevel: 'warning',
  });
  writeFileSync(file, outputFiles[0]?.contents ?? '');
  const child = fork(pathToFileURL(file), { execArgv: ['--expose-gc'] });
  const [hello] = (await once(child, 'message')) as [{ port: number; path: string; etag: string; bytes: number }];
  const memory = async (): Promise<number> => {
    child.send('memory');
    const [{ heap }] = (await once(child, 'message')) as [{ heap: number }];
    return heap;
  };
  return { ...hello, memory, end: () => child.kill() };
}

type Load = Pick<autocannon.Options, 'connections' | 'amount' | 'duration' | 'overallRate' | 'headers' | 'expectBody'>;

function loaded({ port, path, etag }: Server, load: Load, asked = path): Promise<autocannon.Result> {
  return autocannon({ url: `http://127.0.0.1:${port}${asked}`, headers: { 'If-None-Match': etag }, ...load });
}

const MB = 1024 * 1024;

export async function run(): Promise<readonly Table[]> {
  const server = await started();
  try {
    await loaded(server, { connections: 50, duration: 2 });
    const fifty = await loaded(server, { connections: 50, duration: SECONDS });
    const ten = await loaded(server, { connections: 10, duration: SECONDS });
    const whole = await loaded(server, { connections: 10, duration: SECONDS, headers: {} });
    const wrong = await loaded(server, { connections: 50, duration: SECONDS }, '/c/wrong/keeper.ics');
    const flood = await loaded(server, { connections: 20, overallRate: 1000, duration: SECONDS });
    const before = await server.memory();
    const many = await loaded(server, { connections: 50, amount: ROUNDS });
    const after = await server.memory();
    return [
      {
        name: `server: a feed of ${server.bytes} bytes, ${SECONDS} s each`,
        rows: [
          ['304 over 50 kept-alive connections', Math.round(fifty.requests.average), '/s'],
          ['  other answers and errors among them', fifty.errors + fifty['2xx'] + fifty['4xx'] + fifty['5xx'], ''],
          ['304 with 10 connections, median', ten.latency.p50, 'ms'],
          ['304 with 10 connections, a request on average', (10_000 / ten.requests.average).toFixed(3), 'ms'],
          ['304 with 10 connections, 99 of 100 within', ten.latency.p99, 'ms'],
          ['200 with 10 connections', Math.round(whole.requests.average), '/s'],
          ['404 of a wrong token over 50 connections', Math.round(wrong.requests.average), '/s'],
          ['asked 1 000 times a second, median', flood.latency.p50, 'ms'],
          ['  not answered', flood.errors + flood.timeouts, ''],
          [`heap after ${ROUNDS} requests against before`, ((after - before) / MB).toFixed(2), 'MB'],
          ['  of', (before / MB).toFixed(1), 'MB'],
          ['  304 among them', many['3xx'], ''],
        ],
        targets: [
          atLeast('answers of 304 over 50 kept-alive connections', fifty.requests.average, 10_000, 'a second'),
          {
            what: 'their median with 10 connections',
            measured: ten.latency.p50 < 1 ? 'under 1 ms' : `${ten.latency.p50} ms`,
            target: 'under 1 ms',
            share: null,
            isMet: ten.latency.p50 < 1,
          },
          {
            what: `memory over ${shown(ROUNDS)} requests`,
            measured: `${shown(after / MB)} MB after, ${shown(before / MB)} MB before`,
            target: 'flat',
            share: null,
            isMet: after - before < MB,
          },
        ],
      },
    ];
  } finally {
    server.end();
  }
}
