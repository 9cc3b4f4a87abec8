/** Whether a client holds the newest copy already. Source: RFC 9110, sections 13.1.2, 13.1.3 and 13.2.2. */
import { parseHttpDate } from './http-date.ts';
import type { ServedFile } from './served-file.ts';

export interface Conditions {
  readonly ifNoneMatch: string | undefined;
  readonly ifModifiedSince: string | undefined;
}

/** Returns whether 304 is the answer: by entity tags where the client sends any, else by date; a date that is none counts for nothing. */
export function isUnchanged(
  { ifNoneMatch, ifModifiedSince }: Conditions,
  file: Pick<ServedFile, 'etag' | 'modifiedSecond'>,
): boolean {
  if (ifNoneMatch !== undefined) return matches(ifNoneMatch, file.etag);
  if (ifModifiedSince === undefined) return false;
  const since = parseHttpDate(ifModifiedSince.trim());
  return since !== null && file.modifiedSecond <= since;
}

/** A tag may hold commas and spaces, so that a list is read tag by tag. Weak comparison: `W/` counts for nothing. */
const TAG = /(?:W\/)?("[\x21\x23-\x7e\x80-\xff]*")/gy;
const BETWEEN = /[ \t,]*/gy;

function matches(header: string, etag: string): boolean {
  const text = header.trim();
  if (text === '*') return true;
  let at = skip(BETWEEN, text, 0);
  while (at < text.length) {
    TAG.lastIndex = at;
    const tag = TAG.exec(text);
    if (!tag) return false;
    if (tag[1] === etag) return true;
    at = skip(BETWEEN, text, TAG.lastIndex);
  }
  return false;
}

function skip(pattern: RegExp, text: string, from: number): number {
  pattern.lastIndex = from;
  pattern.exec(text);
  return pattern.lastIndex;
}
