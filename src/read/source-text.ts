/** A file's text, line by line: where an offset stands, and what of a line to underline. */

import type { Place } from '../diagnostics/diagnostic.ts';

export const LARGEST_FILE_BYTES = 256 * 1024;

/** The text of a file, in which offsets become places. */
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
