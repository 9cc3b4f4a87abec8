/**
 * A quick reader of the plain part of YAML in which nearly every household is written: indented maps and lists, braces and brackets on
 * one line, plain and quoted text, comments. At the first sign of anything else, or of a fault, it gives up and the full parser reads
 * the file; a test holds the two against each other. It exists because the full parser needs longer than all the rest of a check.
 */
import type { Spot } from './spot.ts';

export interface PlainYaml {
  readonly data: unknown;
  readonly spot: Spot;
}

/** Returns the file's data with the place of each value, or null where the full parser must look. */
export function readPlainYaml(text: string): PlainYaml | null {
  if (UNUSUAL.test(text)) return null;
  try {
    return new PlainReader(text).read();
  } catch (error) {
    if (error === UNSURE) return null;
    throw error;
  }
}

const UNSURE = Symbol('for the full parser');
/** Tabs, control characters, other line ends, directives, document marks. */
const UNUSUAL = /[^\P{Cc}\r\n]|[\u2028\u2029\ufeff]|\r(?!\n)|^(%|---|\.\.\.)/mu;
const KEY = /([A-Za-z_][\w-]*):(?=[ \r\n]|$)/uy;
const PLAIN_IN_BLOCK =
  /[^\s#,[\]{}&*!|>'"%@`?:-](?:[^\r\n:#]|:(?! |\r|\n|$)|(?<! )#)*|-(?=[^\s])(?:[^\r\n:#]|:(?! |\r|\n|$)|(?<! )#)*/uy;
const PLAIN_IN_FLOW =
  /[^\s#,[\]{}&*!|>'"%@`?:-](?:[^\r\n:#,[\]{}]|:(?![ ,[\]{}\r\n]|$)|(?<! )#)*|-(?=[^\s,[\]{}])(?:[^\r\n:#,[\]{}]|:(?![ ,[\]{}\r\n]|$)|(?<! )#)*/uy;
const NUMBER = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/u;
/** Words and numbers with another meaning, left to the full parser. */
const SPECIAL = /^(?:~|null|true|false|[-+]?\.(?:inf|nan)|0[ox][\da-f]+|[-+]?(?:\.\d+|\d+(?:\.\d*)?)e[-+]?\d+)$/iu;
const DEEPEST = 16;

interface Line {
  readonly indent: number;
  /** Of the first character behind the indent. */
  readonly start: number;
}

class PlainReader {
  readonly #text: string;
  readonly #lines: readonly Line[];
  /** The next line to read, and the next character on the present one. */
  #line = 0;
  #at = 0;
  #depth = 0;

  constructor(text: string) {
    this.#text = text;
    this.#lines = contentLines(text);
  }

  read(): PlainYaml {
    if (this.#lines.length === 0 || this.#lines[0]?.indent !== 0) throw UNSURE;
    const read = this.#block(0, null);
    if (this.#line < this.#lines.length) throw UNSURE;
    return read;
  }

  /** Reads what stands at an indent, beginning with the next line. */
  #block(indent: number, key: Spot['key']): PlainYaml {
    if (++this.#depth > DEEPEST) throw UNSURE;
    const line = this.#lines[this.#line];
    if (line?.indent !== indent) throw UNSURE;
    const read = this.#isItem(line.start) ? this.#list(indent, key) : this.#map(indent, line.start, key);
    this.#depth--;
    return read;
  }

  #isItem(at: number): boolean {
    return this.#text[at] === '-' && ' \r\n'.includes(this.#text[at + 1] ?? '\n');
  }

  #list(indent: number, key: Spot['key']): PlainYaml {
    const data: unknown[] = [];
    const children = new Map<string | number, Spot>();
    const first = this.#lines[this.#line]?.start ?? 0;
    for (
      let line = this.#lines[this.#line];
      line?.indent === indent && this.#isItem(line.start);
      line = this.#lines[this.#line]
    ) {
      const item = this.#item(line, indent);
      children.set(data.length, item.spot);
      data.push(item.data);
    }
    return { data, spot: { value: key ?? [first, this.#text.length], key, children } };
  }

  #item(line: Line, indent: number): PlainYaml {
    let at = line.start + 1;
    while (this.#text[at] === ' ') at++;
    if (this.#isItem(at) || this.#isEnd(at)) throw UNSURE;
    KEY.lastIndex = at;
    if (KEY.test(this.#text)) return this.#map(indent + at - line.start, at, null);
    this.#line++;
    return this.#inline(at, indent, null);
  }

  /** Reads a map whose first key stands at `start`, on the line that is next. */
  #map(indent: number, start: number, key: Spot['key']): PlainYaml {
    const data: Record<string, unknown> = Object.create(null);
    const children = new Map<string | number, Spot>();
    let at = start;
    for (;;) {
      KEY.lastIndex = at;
      const name = KEY.exec(this.#text)?.[1];
      if (name === undefined || children.has(name)) throw UNSURE;
      this.#line++;
      const entry = this.#value(at + name.length + 1, indent, [at, at + name.length]);
      children.set(name, entry.spot);
      data[name] = entry.data;
      const next = this.#lines[this.#line];
      if (!next || next.indent < indent) break;
      if (next.indent > indent || this.#isItem(next.start)) throw UNSURE;
      at = next.start;
    }
    return { data, spot: { value: key ?? [start, this.#text.length], key, children } };
  }

  /** Reads what stands behind a key: on its line, or indented below it. */
  #value(from: number, indent: number, key: readonly [number, number]): PlainYaml {
    let at = from;
    while (this.#text[at] === ' ') at++;
    if (!this.#isEnd(at)) return this.#inline(at, indent, key);
    const next = this.#lines[this.#line];
    if (next && next.indent > indent) return this.#block(next.indent, key);
    if (next?.indent === indent && this.#isItem(next.start)) return this.#block(indent, key);
    return { data: null, spot: { value: key, key, children: NO_CHILDREN } };
  }

  /** Reads a value that must end with its line. */
  #inline(at: number, indent: number, key: Spot['key']): PlainYaml {
    this.#at = at;
    const read = this.#one(PLAIN_IN_BLOCK, key);
    this.#skipSpaces();
    const next = this.#lines[this.#line];
    if (!this.#isEnd(this.#at) || (next && next.indent > indent)) throw UNSURE;
    return read;
  }

  /** Whether the line ends here, or only a comment follows. */
  #isEnd(at: number): boolean {
    const character = this.#text[at];
    if (character === '#') return /[ \n]/u.test(this.#text[at - 1] ?? '\n');
    return character === undefined || character === '\n' || character === '\r';
  }

  #one(plain: RegExp, key: Spot['key']): PlainYaml {
    const character = this.#text[this.#at];
    if (character === '{') return this.#flow('}', key);
    if (character === '[') return this.#flow(']', key);
    if (character === '"' || character === "'") return this.#quoted(character, key);
    plain.lastIndex = this.#at;
    const found = plain.exec(this.#text)?.[0].replace(/ +$/u, '');
    if (!found) throw UNSURE;
    const from = this.#at;
    this.#at += found.length;
    return { data: scalar(found), spot: { value: [from, this.#at], key, children: NO_CHILDREN } };
  }

  #quoted(quote: string, key: Spot['key']): PlainYaml {
    const from = this.#at;
    const end = this.#text.indexOf(quote, from + 1);
    const data = this.#text.slice(from + 1, end);
    if (end < 0 || /[\\\n]/u.test(data) || this.#text[end + 1] === quote) throw UNSURE;
    this.#at = end + 1;
    return { data, spot: { value: [from, this.#at], key, children: NO_CHILDREN } };
  }

  #flow(close: string, key: Spot['key']): PlainYaml {
    if (++this.#depth > DEEPEST) throw UNSURE;
    const from = this.#at++;
    const data: unknown[] | Record<string, unknown> = close === ']' ? [] : Object.create(null);
    const children = new Map<string | number, Spot>();
    this.#skipSpaces();
    while (this.#text[this.#at] !== close) {
      if (Array.isArray(data)) this.#flowItem(data, children);
      else this.#flowEntry(data, children);
      this.#skipSpaces();
      if (this.#text[this.#at] === ',') {
        this.#at++;
        this.#skipSpaces();
      } else if (this.#text[this.#at] !== close) throw UNSURE;
    }
    this.#at++;
    this.#depth--;
    return { data, spot: { value: [from, this.#at], key, children } };
  }

  #flowItem(data: unknown[], children: Map<string | number, Spot>): void {
    const item = this.#one(PLAIN_IN_FLOW, null);
    this.#skipSpaces();
    if (this.#text[this.#at] === ':') throw UNSURE;
    children.set(data.length, item.spot);
    data.push(item.data);
  }

  #flowEntry(data: Record<string, unknown>, children: Map<string | number, Spot>): void {
    KEY.lastIndex = this.#at;
    const name = KEY.exec(this.#text)?.[1];
    if (name === undefined || children.has(name)) throw UNSURE;
    const key = [this.#at, this.#at + name.length] as const;
    this.#at += name.length + 1;
    this.#skipSpaces();
    if (/[,}\]]/u.test(this.#text[this.#at] ?? ',')) throw UNSURE;
    const entry = this.#one(PLAIN_IN_FLOW, key);
    children.set(name, entry.spot);
    data[name] = entry.data;
  }

  #skipSpaces(): void {
    while (this.#text[this.#at] === ' ') this.#at++;
  }
}

const NO_CHILDREN: ReadonlyMap<string | number, Spot> = new Map();

function scalar(text: string): unknown {
  if (NUMBER.test(text)) return Number(text);
  if (text === 'true') return true;
  if (text === 'false') return false;
  if (SPECIAL.test(text)) throw UNSURE;
  return text;
}

/** Returns the lines that hold more than space and comment. */
function contentLines(text: string): readonly Line[] {
  const lines: Line[] = [];
  for (let from = 0; from < text.length; ) {
    let at = from;
    while (text[at] === ' ') at++;
    if (!'\r\n#'.includes(text[at] ?? '\n')) lines.push({ indent: at - from, start: at });
    const end = text.indexOf('\n', at);
    from = end < 0 ? text.length : end + 1;
  }
  return lines;
}
