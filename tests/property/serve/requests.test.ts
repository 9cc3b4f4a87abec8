/** Odd requests: whatever is asked, the server answers with one of its few answers, bounded in size, and goes on. */
import { connect } from 'node:net';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerTo, type Gate } from '../../../src/serve/answer.ts';
import { isUnchanged } from '../../../src/serve/conditional.ts';
import { ownNames } from '../../../src/serve/hosts.ts';
import { httpDate, parseHttpDate } from '../../../src/serve/http-date.ts';
import { type Listening, listen } from '../../../src/serve/http-server.ts';
import { servedFile } from '../../../src/serve/served-file.ts';
import { tokenCheck } from '../../../src/serve/token.ts';

const TOKEN = 'mJ3rYx0h2kQ8vB5nW7tLzA';
const FILE = servedFile('keeper.ics', 'BEGIN:VCALENDAR\r\n', Date.UTC(2027, 0, 1));
const GATE: Gate = {
  names: ownNames('shelf', null),
  isToken: tokenCheck(TOKEN),
  file: (name) => (name === 'keeper.ics' ? FILE : null),
};
const SEED = 20270101;

const piece = fc.constantFrom(
  '/',
  '//',
  '..',
  '.',
  '%2e',
  '%2f',
  '%00',
  '%',
  '\\',
  '?',
  '#',
  ';',
  '*',
  ' ',
  '\n',
  'c',
  TOKEN,
  'keeper.ics',
  'http://',
  '@',
  ':',
);
const target = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.array(fc.oneof(piece, fc.string({ maxLength: 4 })), { maxLength: 12 }).map((parts) => parts.join('')),
  fc.string({ maxLength: 30 }).map((name) => `/c/${TOKEN}/${name}`),
  fc.constant(`/c/${TOKEN}/keeper.ics`),
);
const header = fc.option(
  fc.oneof(fc.string({ unit: 'binary', maxLength: 80 }), fc.constantFrom('localhost', 'shelf:80', FILE.etag, '*')),
  { nil: undefined },
);
const asked = fc.record({
  method: fc.oneof(fc.constantFrom('GET', 'HEAD', 'POST'), fc.string({ maxLength: 10 })),
  target,
  host: header,
  reached: header,
  ifNoneMatch: header,
  ifModifiedSince: header,
});

describe('any request', () => {
  it('gets one of the few answers, and the file only at its own address', () => {
    const counts = new Map<number, number>();
    fc.assert(
      fc.property(asked, (request) => {
        const { status, headers, body } = answerTo(request, GATE);
        counts.set(status, (counts.get(status) ?? 0) + 1);
        expect([200, 304, 400, 404, 405, 421]).toContain(status);
        expect(headers.join('\n')).not.toMatch(/\0|\r|\n\n/);
        expect(headers.join('\n')).not.toContain(TOKEN);
        if (status === 200 || status === 304) expect(request.target).toMatch(/\/c\/mJ3rYx0h2kQ8vB5nW7tLzA\/(k|%6[bB])/);
        if (body !== null && status !== 200) expect(body.length).toBeLessThan(100);
      }),
      { numRuns: 20_000, seed: SEED },
    );
    for (const status of [200, 304, 400, 404, 405, 421])
      expect(counts.get(status) ?? 0, String(status)).toBeGreaterThan(0);
  });

  it('with any tag is unchanged only where the tag stands in it', () => {
    const list = fc.array(
      fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('"', 'W/', ',', '*', ' ', FILE.etag)),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(list, (parts) => {
        const ifNoneMatch = parts.join('');
        const isSame = isUnchanged({ ifNoneMatch, ifModifiedSince: undefined }, FILE);
        if (isSame) expect(ifNoneMatch.trim() === '*' || ifNoneMatch.includes(FILE.etag)).toBe(true);
      }),
      { numRuns: 5000, seed: SEED },
    );
  });

  it('with any second has it read back, and with any text a second or none', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 253_402_300_799 }),
        (second) => parseHttpDate(httpDate(second * 1000)) === second,
      ),
      { numRuns: 2000, seed: SEED },
    );
    fc.assert(
      fc.property(
        fc.string({ maxLength: 40 }),
        (text) => parseHttpDate(text) === null || Number.isInteger(parseHttpDate(text)),
      ),
      { numRuns: 2000, seed: SEED },
    );
  });
});

describe('any bytes on the wire', () => {
  let server: Listening;
  beforeAll(async () => {
    server = await listen(() => GATE, '127.0.0.1', 0);
  });
  afterAll(() => server.close());

  function sent(bytes: Uint8Array): Promise<string> {
    return new Promise((resolve) => {
      let text = '';
      const socket = connect(server.port, '127.0.0.1', () => socket.end(bytes));
      socket.setEncoding('latin1').on('data', (part: string) => (text += part));
      socket.on('error', () => resolve(text)).on('close', () => resolve(text));
    });
  }

  it('get an answer or an end, and the next client is served', async () => {
    const line = fc.tuple(
      fc.constantFrom('GET', 'HEAD', 'POST', 'X', ''),
      target,
      fc.constantFrom('HTTP/1.1', 'HTTP/1.0', 'HTTP/2', ''),
    );
    const message = fc.oneof(
      fc.uint8Array({ maxLength: 400 }),
      line.map((parts) => Buffer.from(`${parts.join(' ')}\r\nHost: localhost\r\nConnection: close\r\n\r\n`, 'latin1')),
    );
    await fc.assert(
      fc.asyncProperty(message, async (bytes) => {
        const text = await sent(bytes);
        if (text !== '') expect(text).toMatch(/^HTTP\/1\.1 (200|304|400|404|405|408|421|431) /);
      }),
      { numRuns: 400, seed: SEED },
    );
    const good = await sent(
      Buffer.from(`GET /c/${TOKEN}/keeper.ics HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`),
    );
    expect(good).toMatch(/^HTTP\/1\.1 200 OK\r\n/);
  });
});
