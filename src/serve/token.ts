/** The secret part of the address: 128 random bits in the path. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const TOKEN = /^[A-Za-z0-9_-]{22}$/;

/** Returns a new token: 22 letters, digits, `-` and `_`. */
export function freshToken(): string {
  return randomBytes(16).toString('base64url');
}

/** Returns whether a text has the form of a token. */
export function isToken(text: unknown): text is string {
  return typeof text === 'string' && TOKEN.test(text);
}

/** Returns a comparison with the token that takes as long for every text, right or wrong. */
export function tokenCheck(token: string): (text: string) => boolean {
  const wanted = digest(token);
  return (text) => timingSafeEqual(digest(text), wanted);
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
