import { connect } from 'node:net';
import { ownNames } from '../../src/serve/hosts.ts';
import { type Listening, listen } from '../../src/serve/http-server.ts';
import { servedFile } from '../../src/serve/served-file.ts';
import { tokenCheck } from '../../src/serve/token.ts';
import type { Draw } from '../property/household-generator.ts';
import type { Target } from './campaign.ts';
import { damagedBytes } from './mutations.ts';

const TOKEN = 'AAAAAAAAAAAAAAAAAAAAAA';
const BODY = 'BEGIN:VCALENDAR\r\n'.repeat(40);
const FILES = ['keeper.ics', 'sitter.ics', ''];
const ANSWER_WITHIN_MS = 2000;

const TARGETS = [
  `/c/${TOKEN}/keeper.ics`,
  `/c/${TOKEN}/`,
  `/c/${TOKEN}/../keeper.ics`,
  `/c/${TOKEN}/%2e%2e%2fplan.json`,
  `/c/${TOKEN}/%ff%fe`,
  `/c/${TOKEN}/keeper.ics?x=1#y`,
  `/c/${'B'.repeat(22)}/keeper.ics`,
  '/c//',
  '/',
  '*',
  'http://127.0.0.1/c/',
  `http://example.org/c/${TOKEN}/keeper.ics`,
  `/${'a'.repeat(4000)}`,
];
const HEADERS = [
  'If-None-Match: *',
  'If-None-Match: W/"a", "b", ,,',
  'If-Modified-Since: Thu, 32 Jan 2027 99:00:00 GMT',
  'If-Modified-Since: Fri, 01 Jan 2027 00:00:00 GMT',
  'Host: example.org',
  'Host: [::1',
  'Host: 127.0.0.1:99999',
  'Content-Length: -1',
  'Content-Length: 10',
  'Transfer-Encoding: chunked',
  'Transfer-Encoding: gzip, chunked',
  'Expect: 100-continue',
  'Upgrade: h2c',
  'Connection: keep-alive, upgrade',
  'Range: bytes=0-1,5-',
  'Accept-Encoding: *',
  ' folded: line',
  'X: \u0000',
  ': no name',
];

let server: Listening | null = null;

async function portOf(): Promise<number> {
  const file = servedFile('keeper.ics', BODY, Date.UTC(2027, 0, 1));
  const gate = {
    names: ownNames(null, null),
    isToken: tokenCheck(TOKEN),
    file: (name: string) => (FILES.includes(name) ? file : null),
  };
  server ??= await listen(() => gate, '127.0.0.1', 0);
  return server.port;
}

/** Bytes on a connection to the server of the feeds. */
export const requests: Target = {
  name: 'HTTP requests',
  share: 0.2,
  prepare: async () => void (await portOf()),
  run: async (draw, index) => {
    const text = requestText(draw);
    const bytes = index % 2 === 0 ? Buffer.from(text, 'latin1') : damagedBytes(Buffer.from(text, 'latin1'), draw);
    const answer = await asked(await portOf(), bytes);
    const status = /^HTTP\/1\.1 (\d{3}) /.exec(answer)?.[1];
    if (answer !== '' && status === undefined) throw new Error(`answered ${JSON.stringify(answer.slice(0, 80))}`);
    if (status?.startsWith('5')) throw new Error(`${status} to ${JSON.stringify(text.slice(0, 200))}`);
    if (/\n {4}at |node:/.test(answer)) throw new Error('a stack trace was sent');
    if (index % 50 === 0) await stillServes(await portOf());
    return status ?? 'closed';
  },
  close: async () => {
    await server?.close();
    server = null;
  },
};

function requestText(draw: Draw): string {
  const method = draw.one(['GET', 'GET', 'GET', 'HEAD', 'POST', 'OPTIONS', 'PROPFIND', 'get', 'TRACE', '']);
  const version = draw.chance(0.9) ? 'HTTP/1.1' : draw.one(['HTTP/1.0', 'HTTP/2.0', 'HTTP/9', '']);
  const host = draw.chance(0.85) ? ['Host: 127.0.0.1'] : [];
  const more = Array.from({ length: draw.whole(0, 2) }, () => draw.one(HEADERS));
  const body = draw.chance(0.1) ? 'x'.repeat(draw.whole(1, 3000)) : '';
  return [`${method} ${draw.one(TARGETS)} ${version}`, ...host, ...more, '', body].join('\r\n');
}

async function stillServes(port: number): Promise<void> {
  const answer = await asked(port, Buffer.from(`GET ${TARGETS[0]} HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n`));
  if (!answer.startsWith('HTTP/1.1 200 ') || !answer.endsWith(BODY)) throw new Error('no longer serves');
}

/** Sends bytes and ends; returns all that comes back until the connection is closed. */
function asked(port: number, bytes: Uint8Array): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    const late = setTimeout(() => {
      socket.destroy();
      reject(new Error(`no end within ${ANSWER_WITHIN_MS} ms`));
    }, ANSWER_WITHIN_MS);
    const socket = connect(port, '127.0.0.1', () => socket.end(bytes));
    socket.setEncoding('latin1').on('data', (part: string) => {
      text += part;
    });
    socket
      .on('error', () => undefined)
      .on('close', () => {
        clearTimeout(late);
        resolve(text);
      });
  });
}
