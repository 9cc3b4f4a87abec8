/** The real server on loopback, asked as a hostile client would: each attack is bounded in count and time. */
import { Agent, request } from 'node:http';
import { connect, type Socket } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ownNames } from '../../../src/serve/hosts.ts';
import { type Listening, listen } from '../../../src/serve/http-server.ts';
import { servedFile } from '../../../src/serve/served-file.ts';
import { tokenCheck } from '../../../src/serve/token.ts';

const TOKEN = 'AAAAAAAAAAAAAAAAAAAAAA';
const FEED = `/c/${TOKEN}/keeper.ics`;
const FILE = servedFile('keeper.ics', 'BEGIN:VCALENDAR\r\n'.repeat(500), Date.UTC(2027, 0, 1));
let server: Listening;
beforeAll(async () => {
  const gate = {
    names: ownNames(null, null),
    isToken: tokenCheck(TOKEN),
    file: (name: string) => (name === 'keeper.ics' ? FILE : null),
  };
  server = await listen(() => gate, '127.0.0.1', 0);
});
afterAll(() => server.close());

interface Got {
  readonly status: number;
  readonly body: string;
}

function get(
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
  agent: Agent | false = false,
): Promise<Got> {
  return new Promise((resolve, reject) => {
    const asked = request({ port: server.port, host: '127.0.0.1', path, method, headers, agent }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (part: string) => (body += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body }));
    });
    asked.on('error', reject).end();
  });
}

/** Sends raw bytes, returns what comes back until the connection is closed. */
function raw(...parts: readonly string[]): Promise<string> {
  return new Promise((resolve) => {
    let text = '';
    const socket = connect(server.port, '127.0.0.1', () => {
      for (const part of parts) socket.write(part);
    });
    socket.setEncoding('latin1').on('data', (part: string) => (text += part));
    socket.on('error', () => resolve(text)).on('close', () => resolve(text));
  });
}

async function expectAlive(): Promise<void> {
  expect(await get(FEED)).toEqual({ status: 200, body: FILE.body.toString() });
}

const statusOf = (text: string): number => Number(/^HTTP\/1\.1 (\d{3})/.exec(text)?.[1] ?? 0);

describe('the server', () => {
  it('serves, and 304 carries no body', async () => {
    await expectAlive();
    expect(await get(FEED, { 'If-None-Match': FILE.etag })).toEqual({ status: 304, body: '' });
    expect(await get(FEED, {}, 'HEAD')).toEqual({ status: 200, body: '' });
  });

  it('answers many requests on one connection, one after the other and piped', async () => {
    const one = `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nIf-None-Match: ${FILE.etag}\r\n\r\n`;
    const last = one.replace('\r\n\r\n', '\r\nConnection: close\r\n\r\n');
    const text = await raw(one.repeat(99) + last);
    expect(text.match(/HTTP\/1\.1 304/g)).toHaveLength(100);
  });

  it.each([
    ['a header of 20 kB', `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, 431],
    ['a path of 20 kB', `GET /${'x'.repeat(20_000)} HTTP/1.1\r\nHost: localhost\r\n\r\n`, 431],
    [
      '3 000 headers',
      `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\n${'X: y\r\n'.repeat(3000)}Connection: close\r\n\r\n`,
      200,
    ],
    ['no host', `GET ${FEED} HTTP/1.1\r\n\r\n`, 400],
    ['two hosts', `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nHost: evil.example\r\nConnection: close\r\n\r\n`, 400],
    ['no words', '\u0000\u0001\u0002\r\n\r\n', 400],
    ['another protocol', 'SSH-2.0-client\r\n', 400],
    ['a secure greeting', '\u0016\u0003\u0001\u0002\u0000\u0001\u0000\u0001\u00fc', 400],
    ['a version that is none', `GET ${FEED} HTTP/9.9\r\nHost: localhost\r\n\r\n`, 400],
    ['two lengths', `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\nx`, 400],
    [
      'a length and chunks',
      `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`,
      400,
    ],
    ['a header line folded', `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nX: a\r\n b\r\n\r\n`, 400],
    [
      'a body that is never read',
      `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9999999\r\n\r\n${'x'.repeat(1000)}`,
      200,
    ],
    ['a method of its own', 'FETCH / HTTP/1.1\r\nHost: localhost\r\n\r\n', 400],
    ['a tunnel', 'CONNECT localhost:22 HTTP/1.1\r\nHost: localhost\r\n\r\n', 0],
    [
      'another protocol to change to',
      `GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nUpgrade: websocket\r\nConnection: Upgrade, close\r\n\r\n`,
      200,
    ],
  ])('stays up with %s', async (_what, text, status) => {
    expect(statusOf(await raw(text))).toBe(status);
    await expectAlive();
  });

  it('ends the connection of a client that sends a body along', async () => {
    const body = await raw(`GET ${FEED} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\n\r\nbody`);
    expect(body).toMatch(/^HTTP\/1\.1 200 OK[\s\S]*\r\nConnection: close\r\n/);
  });

  it('closes on who sends headers too slowly, and serves others meanwhile', async () => {
    const slow = Array.from({ length: 60 }, () => raw('GET / HTTP/1.1\r\nHost: loc'));
    for (let times = 0; times < 5; times++) await expectAlive();
    const answers = await Promise.all(slow);
    expect(answers.map(statusOf)).toEqual(answers.map(() => 408));
    await expectAlive();
  });

  it('answers three thousand hostile requests as fast as they come', async () => {
    const asked: readonly (readonly [path: string, headers: Record<string, string>, status: number])[] = [
      [FEED, { 'If-None-Match': FILE.etag }, 304],
      ['/c/BBBBBBBBBBBBBBBBBBBBBB/keeper.ics', {}, 404],
      [`/c/${TOKEN}/..%2f..%2fetc%2fpasswd`, {}, 404],
      [FEED, { Host: 'evil.example' }, 421],
      [FEED, { 'If-None-Match': `${'W/"x", '.repeat(1500)}"y"` }, 200],
    ];
    const agent = new Agent({ keepAlive: true, maxSockets: 20 });
    const wrong: number[] = [];
    const one = async (index: number): Promise<void> => {
      const [path, headers, status] = asked[index % asked.length] ?? [FEED, {}, 200];
      const got = await get(path, headers, 'GET', agent);
      if (got.status !== status) wrong.push(got.status);
    };
    for (let index = 0; index < 3000; index += 100)
      await Promise.all(Array.from({ length: 100 }, (_, each) => one(index + each)));
    agent.destroy();
    expect(wrong).toEqual([]);
    await expectAlive();
  });

  it('takes so many connections of one address and no more, and is there again afterwards', async () => {
    const sockets = await Promise.all(
      Array.from(
        { length: 200 },
        () =>
          new Promise<Socket>((resolve) => {
            const socket = connect(server.port, '127.0.0.1', () => resolve(socket));
            socket.on('error', () => resolve(socket));
          }),
      ),
    );
    await new Promise((resolve) => setTimeout(resolve, 200));
    const open = sockets.filter((socket) => !socket.destroyed && !socket.readableEnded).length;
    expect(open).toBeLessThanOrEqual(128);
    expect(open).toBeGreaterThan(0);
    for (const socket of sockets) socket.destroy();
    await new Promise((resolve) => setTimeout(resolve, 200));
    await expectAlive();
  });

  it('lets a client go that never reads', async () => {
    const socket = connect(server.port, '127.0.0.1');
    socket.on('error', () => undefined).pause();
    for (let times = 0; times < 200; times++) socket.write(`GET ${FEED} HTTP/1.1\r\nHost: localhost\r\n\r\n`);
    await expectAlive();
    socket.destroy();
  });

  it('ends while a client holds its connection open', async () => {
    const gate = { names: ownNames(null, null), isToken: tokenCheck(TOKEN), file: () => FILE };
    const other = await listen(() => gate, '127.0.0.1', 0);
    const socket = connect(other.port, '127.0.0.1', () => socket.write('GET / HT'));
    await new Promise((resolve) => socket.once('ready', resolve));
    const closed = new Promise((resolve) => socket.on('error', () => undefined).on('close', resolve));
    const soon = new Promise((resolve) => setTimeout(resolve, 4000, 'still open').unref());
    expect(await Promise.race([other.close(), soon])).toBeUndefined();
    await closed;
    await expect(listen(() => gate, '127.0.0.1', server.port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
