/** A file's text, line by line: where an offset stands, and what of a line to underline. */

import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';

export const LARGEST_FILE_BYTES = 256 * 1024;

/** Returns the text of UTF-8 bytes without a byte-order mark, or null where they are no UTF-8 (reports `not-utf8`). */
export function textOfBytes(file: string, bytes: Uint8Array, log: Log): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    log.report('not-utf8', { utf16: looksLikeUtf16(bytes) }, { file, line: 1, column: 1, length: 1 });
    return null;
  }
}

function looksLikeUtf16(bytes: Uint8Array): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}

export class SourceText {
  readonly file: string;
  readonly text: string;
  readonly #starts: readonly number[];

  constructor(file: string, text: string) {
    this.file = file;
    this.text = text.replace(/^\ufeff/u, '');
    this.#starts = lineStarts(this.text);
  }

  /** Returns the place from one offset to another (UTF-16 units, exclusive), cut at the end of the first line; at least one long. */
  place(from: number, to: number): Place {
    const index = this.#lineIndex(from);
    const start = this.#starts[index] ?? 0;
    const lineText = this.line(index + 1);
    const end = Math.min(to, start + lineText.trimEnd().length);
    return {
      file: this.file,
      line: index + 1,
      column: codePoints(this.text.slice(start, from)) + 1,
      length: Math.max(1, codePoints(this.text.slice(from, end))),
    };
  }

  /** Returns a line's text, 1 for the first; empty where there is none. */
  line(number: number): string {
    const start = this.#starts[number - 1];
    if (start === undefined) return '';
    return this.text.slice(start, this.#starts[number] ?? this.text.length).replace(/[\r\n]+$/u, '');
  }

  #lineIndex(offset: number): number {
    let [low, high] = [0, this.#starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

function codePoints(text: string): number {
  let count = 0;
  for (const _ of text) count++;
  return count;
}
