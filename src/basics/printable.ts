/** Text as it may be shown on a terminal: nothing that moves the cursor or turns the line around, and its width in cells. */
import { eastAsianWidth } from 'get-east-asian-width';

/** Control characters, line and paragraph separators, bidirectional overrides and isolates, byte-order marks, lone surrogates. */
const UNPRINTABLE = /[\p{Cc}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffb\p{Cs}]/gu;
const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}\u1160-\u11ff]/u;

/** Returns the text with each unprintable character replaced by U+FFFD, a tab or line break by a space. */
export function printable(text: string): string {
  return text.replace(/[\t\n\r]/gu, ' ').replace(UNPRINTABLE, '\ufffd');
}

/** Returns the columns that a printable text takes: 0 for marks that combine, 2 for wide characters. */
export function cellWidth(text: string): number {
  if (/^[\x20-\x7e]*$/u.test(text)) return text.length;
  let width = 0;
  for (const character of text) {
    width += NO_WIDTH.test(character) ? 0 : eastAsianWidth(character.codePointAt(0) ?? 0);
  }
  return width;
}
