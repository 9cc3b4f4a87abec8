import { createHash } from 'node:crypto';

/** Returns 64 hex digits that stand for a text, or for its bytes in UTF-8. */
export function textDigest(text: string | Uint8Array): string {
  return createHash('sha256').update(text).digest('hex');
}
