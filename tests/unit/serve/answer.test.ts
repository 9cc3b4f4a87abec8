import { describe, expect, it } from 'vitest';
import { type Answer, type Asked, answerTo, type Gate } from '../../../src/serve/answer.ts';
import { ownNames } from '../../../src/serve/hosts.ts';
import { servedFile } from '../../../src/serve/served-file.ts';
import { freshToken, isToken, tokenCheck } from '../../../src/serve/token.ts';

const TOKEN = 'AAAAAAAAAAAAAAAAAAAAAA';
const MODIFIED = Date.UTC(2027, 0, 1);
const FILES = new Map([
  ['', servedFile('index.html', '<!doctype html>', MODIFIED, "default-src 'none'")],
  ['keeper.ics', servedFile('keeper.ics', 'BEGIN:VCALENDAR\r\n', MODIFIED)],
  ['dials/wall-dial.svg', servedFile('wall-dial.svg', '<svg/>', MODIFIED)],
  ['care-calendar.pdf', servedFile('care-calendar.pdf', '%PDF', MODIFIED)],
]);
const GATE: Gate = {
  names: ownNames('shelf', null),
  isToken: tokenCheck(TOKEN),
  file: (name) => FILES.get(name) ?? null,
};

function asked(target: string, more: Partial<Asked> = {}): Asked {
  return {
    method: 'GET',
    target,
    host: 'localhost:8710',
    reached: '127.0.0.1',
    ifNoneMatch: undefined,
    ifModifiedSince: undefined,
    ...more,
  };
}

function headersOf({ headers }: Answer): ReadonlyMap<string, string> {
  return new Map(
    Array.from({ length: headers.length / 2 }, (_, i) => [headers[2 * i] ?? '', headers[2 * i + 1] ?? '']),
  );
}

const FEED = `/c/${TOKEN}/keeper.ics`;

describe('a request', () => {
  it.each([
    [FEED, 'text/calendar; charset=utf-8'],
    [`/c/${TOKEN}/`, 'text/html; charset=utf-8'],
    [`/c/${TOKEN}/dials/wall-dial.svg`, 'image/svg+xml'],
    [`/c/${TOKEN}/care-calendar.pdf`, 'application/pdf'],
    [`${FEED}?again=1`, 'text/calendar; charset=utf-8'],
    [`/c/${TOKEN}/%6beeper.ics`, 'text/calendar; charset=utf-8'],
    [`http://localhost:8710${FEED}`, 'text/calendar; charset=utf-8'],
  ])('for %s gets the file', (target, type) => {
    const answer = answerTo(asked(target), GATE);
    expect(answer.status).toBe(200);
    expect(headersOf(answer).get('Content-Type')).toBe(type);
    expect(headersOf(answer).get('Content-Length')).toBe(String(answer.body?.length));
  });

  it.each([
    '/',
    '',
    '*',
    '/c',
    '/c/',
    `/c/${TOKEN}`,
    `/C/${TOKEN}/keeper.ics`,
    `/c//keeper.ics`,
    '/c/BBBBBBBBBBBBBBBBBBBBBB/keeper.ics',
    `/c/${TOKEN}A/keeper.ics`,
    `/c/${TOKEN.slice(1)}/keeper.ics`,
    `/c/${TOKEN.toLowerCase()}/keeper.ics`,
    `/c/${TOKEN}/other.ics`,
    `/c/${TOKEN}/plan.json`,
    `/c/${TOKEN}/../${TOKEN}/keeper.ics`,
    `/c/${TOKEN}/./keeper.ics`,
    `/c/${TOKEN}//keeper.ics`,
    `/c/${TOKEN}/dials/../keeper.ics`,
    `/c/${TOKEN}/%2e%2e/%2e%2e/etc/passwd`,
    `/c/${TOKEN}/..%2f..%2fetc%2fpasswd`,
    `/c/${TOKEN}/..\\..\\etc\\passwd`,
    `/c/${TOKEN}/keeper.ics%00.html`,
    `/c/${TOKEN}/keeper.ics/`,
    `/c/${TOKEN}/%`,
    `/c/${TOKEN}/%ff`,
    `/c/${TOKEN}/%c0%ae%c0%ae/etc/passwd`,
    `/c/%41${TOKEN.slice(1)}/keeper.ics`,
    `//c/${TOKEN}/keeper.ics`,
    `/c/${TOKEN}/__proto__`,
    `/c/${TOKEN}/constructor`,
    `/c/?token=${TOKEN}`,
    `/keeper.ics?token=${TOKEN}`,
    '/favicon.ico',
    '/.well-known/caldav',
  ])('for %j finds nothing', (target) => {
    const answer = answerTo(asked(target), GATE);
    expect(answer.status).toBe(404);
    expect(answer.body?.toString()).toBe('There is nothing at this address.\n');
    expect(answer.headers.join()).not.toContain(TOKEN);
  });

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PROPFIND', 'REPORT', 'TRACE', 'PATCH', 'get'])(
    'with the method %s is told what there is',
    (method) => {
      const answer = answerTo(asked(FEED, { method }), GATE);
      expect(answer.status).toBe(405);
      expect(headersOf(answer).get('Allow')).toBe('GET, HEAD');
    },
  );

  it.each([
    ['localhost', 200],
    ['LOCALHOST:8710', 200],
    ['127.0.0.1:8710', 200],
    ['[::1]:8710', 200],
    ['shelf', 200],
    ['shelf.local:8710', 200],
    ['shelf.local.', 200],
    ['evil.example', 421],
    ['localhost.evil.example', 421],
    ['192.168.1.5:8710', 421],
    ['127.0.0.1.evil.example', 421],
    ['[::2]', 421],
    ['', 400],
    ['local host', 400],
    ['localhost:8710:8710', 400],
    ['localhost, evil.example', 400],
    ['user@localhost', 400],
    [undefined, 400],
  ])('to the host %j gets %i', (host, status) => {
    expect(answerTo(asked(FEED, { host }), GATE).status).toBe(status);
  });

  it('is answered at every address of this machine that it reached', () => {
    const reached = '::ffff:192.168.1.5';
    expect(answerTo(asked(FEED, { host: '192.168.1.5:8710', reached }), GATE).status).toBe(200);
    expect(answerTo(asked(FEED, { host: '192.168.1.6:8710', reached }), GATE).status).toBe(421);
    expect(answerTo(asked(FEED, { host: '[fd00::2]:8710', reached: 'fd00::2' }), GATE).status).toBe(200);
  });

  it('believes the address on the request line more than the header', () => {
    expect(answerTo(asked(`http://evil.example${FEED}`), GATE).status).toBe(421);
  });

  it('for the head gets the same headers and nothing after them', () => {
    for (const target of [FEED, `/c/${TOKEN}/`, '/nothing']) {
      const [get, head] = [answerTo(asked(target), GATE), answerTo(asked(target, { method: 'HEAD' }), GATE)];
      expect(head).toEqual({ ...get, body: null });
    }
  });

  it('for an unchanged file repeats both validators and sends no body', () => {
    const get = headersOf(answerTo(asked(FEED), GATE));
    const etag = get.get('ETag') ?? '';
    const answer = answerTo(asked(FEED, { ifNoneMatch: `"x", W/${etag}` }), GATE);
    expect(answer.status).toBe(304);
    expect(answer.body).toBeNull();
    const headers = headersOf(answer);
    for (const name of ['ETag', 'Last-Modified', 'Cache-Control']) expect(headers.get(name)).toBe(get.get(name));
    expect(headers.has('Content-Length')).toBe(false);
    expect(etag).toMatch(/^"[0-9a-f]{32}"$/);
  });

  it('gets the careful headers with every answer', () => {
    for (const answer of [
      answerTo(asked(FEED), GATE),
      answerTo(asked('/'), GATE),
      answerTo(asked(FEED, { host: 'x' }), GATE),
    ]) {
      const headers = headersOf(answer);
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
      expect(headers.get('Referrer-Policy')).toBe('no-referrer');
      expect(headers.get('Cache-Control')).toBe('private, no-cache');
      expect(headers.get('Content-Security-Policy')).toContain("default-src 'none'");
    }
  });
});

describe('a token', () => {
  it('has 128 bits and is another each time', () => {
    const tokens = new Set(Array.from({ length: 1000 }, freshToken));
    expect(tokens.size).toBe(1000);
    for (const token of tokens) expect(Buffer.from(token, 'base64url')).toHaveLength(16);
    expect([...tokens].every(isToken)).toBe(true);
  });

  it.each([
    ['', false],
    ['AAAAAAAAAAAAAAAAAAAAA', false],
    ['AAAAAAAAAAAAAAAAAAAAAAA', false],
    ['AAAAAAAAAAAAAAAAAAAAA/', false],
    [7, false],
  ])('is not %j', (text, isOne) => {
    expect(isToken(text)).toBe(isOne);
  });
});
