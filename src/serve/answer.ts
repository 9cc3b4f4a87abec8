/** What is answered to a request, from the request alone: no socket, no disk, no clock. */
import { type Conditions, isUnchanged } from './conditional.ts';
import { addressName, hostName } from './hosts.ts';
import { COMMON_HEADERS, type ServedFile } from './served-file.ts';

export interface Asked extends Conditions {
  readonly method: string;
  /** As it stands on the request line. */
  readonly target: string;
  readonly host: string | undefined;
  /** Address of this machine that the client reached. */
  readonly reached: string | undefined;
}

export interface Gate {
  readonly names: ReadonlySet<string>;
  readonly isToken: (text: string) => boolean;
  /** Returns the file of a name below the token, `` for the page; null where there is none. */
  readonly file: (name: string) => ServedFile | null;
}

export interface Answer {
  readonly status: number;
  readonly headers: readonly string[];
  /** null where nothing follows the headers. */
  readonly body: Buffer | null;
}

/** Returns 421 for a foreign host, 405 for another method than GET and HEAD, 404 for all that is not there, else the file or 304. */
export function answerTo(asked: Asked, gate: Gate): Answer {
  const { authority, path } = split(asked.target);
  const host = hostName(authority ?? asked.host);
  if (host === null) return refusal(400, asked);
  if (!gate.names.has(host) && host !== addressName(asked.reached)) return refusal(421, asked);
  if (asked.method !== 'GET' && asked.method !== 'HEAD') return refusal(405, asked);
  const file = fileAt(path, gate);
  if (!file) return refusal(404, asked);
  if (isUnchanged(asked, file)) return { status: 304, headers: file.unchangedHeaders, body: null };
  return { status: 200, headers: file.headers, body: asked.method === 'HEAD' ? null : file.body };
}

/** A target is a path, or a whole address where a client speaks as to a proxy. */
function split(target: string): { readonly authority: string | undefined; readonly path: string } {
  const whole = /^https?:\/\/([^/?#]*)([^?#]*)/i.exec(target);
  if (whole) return { authority: whole[1], path: whole[2] || '/' };
  return { authority: undefined, path: target.split('?', 1)[0] ?? '' };
}

const BELOW_TOKEN = /^\/c\/([^/]*)\/(.*)$/s;

/** Files are looked up by their whole name: there is no folder to leave. */
function fileAt(path: string, gate: Gate): ServedFile | null {
  const [, token, name] = BELOW_TOKEN.exec(path) ?? [];
  const isKnown = gate.isToken(token ?? '');
  const decoded = decodedName(name ?? '');
  return isKnown && name !== undefined && decoded !== null ? gate.file(decoded) : null;
}

function decodedName(name: string): string | null {
  try {
    return decodeURIComponent(name);
  } catch {
    return null;
  }
}

const REASONS = {
  400: 'This request cannot be read.\n',
  404: 'There is nothing at this address.\n',
  405: 'This can only be read.\n',
  421: 'This machine is not known by that name.\n',
} as const;

type Refused = keyof typeof REASONS;

const REFUSALS: Readonly<Record<Refused, Answer>> = {
  400: prepared(400),
  404: prepared(404),
  405: prepared(405),
  421: prepared(421),
};

function prepared(status: Refused): Answer {
  const body = Buffer.from(REASONS[status]);
  const headers = [
    ...COMMON_HEADERS,
    'Content-Security-Policy',
    "default-src 'none'; frame-ancestors 'none'",
    'Content-Type',
    'text/plain; charset=utf-8',
    'Content-Length',
    String(body.length),
    ...(status === 405 ? ['Allow', 'GET, HEAD'] : []),
  ];
  return { status, headers, body };
}

function refusal(status: Refused, { method }: Asked): Answer {
  return method === 'HEAD' ? { ...REFUSALS[status], body: null } : REFUSALS[status];
}
