/** A file as it is served: its bytes with the headers that belong to them, ready before anybody asks. */
import { createHash } from 'node:crypto';
import { httpDate } from './http-date.ts';

export interface ServedFile {
  readonly body: Buffer;
  /** Quoted, strong. */
  readonly etag: string;
  /** When it last changed, in whole seconds since 1970. */
  readonly modifiedSecond: number;
  /** With a body, and without one for an unchanged file, as name and value in turn. */
  readonly headers: readonly string[];
  readonly unchangedHeaders: readonly string[];
}

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  ics: 'text/calendar; charset=utf-8',
  json: 'application/json',
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  txt: 'text/plain; charset=utf-8',
};

/** What every answer says: nobody guesses a type, passes on the address, frames it or runs anything in it. */
export const COMMON_HEADERS: readonly string[] = [
  'X-Content-Type-Options',
  'nosniff',
  'Referrer-Policy',
  'no-referrer',
  'Cache-Control',
  'private, no-cache',
];

/** A reader of PDF files in a browser is a page of its own, which a stricter policy would break. */
const PLAIN_POLICY = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
const PDF_POLICY = "frame-ancestors 'none'";

/** Returns the policy of the page: no script, its one style sheet, pictures from here. */
export function pagePolicy(styleHash: string): string {
  return `default-src 'none'; style-src '${styleHash}'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'`;
}

/** Returns the strong entity tag of some bytes. */
export function etagOf(body: Uint8Array): string {
  return `"${createHash('sha256').update(body).digest('hex').slice(0, 32)}"`;
}

/**
 * Returns a file ready to be served; its type follows from the ending of the name.
 *
 * @param modifiedMs when it last changed, in milliseconds since 1970; never later than now
 * @param policy the content security policy; left out: that of a file which holds nothing active
 */
export function servedFile(
  name: string,
  content: string | Uint8Array,
  modifiedMs: number,
  policy?: string,
): ServedFile {
  const body = Buffer.from(content);
  const ending = name.slice(name.lastIndexOf('.') + 1);
  const etag = etagOf(body);
  const validators = ['ETag', etag, 'Last-Modified', httpDate(modifiedMs)];
  const shared = [
    ...validators,
    ...COMMON_HEADERS,
    'Content-Security-Policy',
    policy ?? (ending === 'pdf' ? PDF_POLICY : PLAIN_POLICY),
  ];
  return {
    body,
    etag,
    modifiedSecond: Math.floor(modifiedMs / 1000),
    headers: [
      ...shared,
      'Content-Type',
      TYPES[ending] ?? 'application/octet-stream',
      'Content-Length',
      String(body.length),
    ],
    unchangedHeaders: shared,
  };
}
