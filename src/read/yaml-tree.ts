/** The one home of `yaml`: a file's text as plain data, with the place of each value. */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { FilePath } from './placed-file.ts';
import { LARGEST_FILE_BYTES, type SourceText } from './source-text.ts';
import { syntaxWords } from './yaml-syntax-words.ts';

/** Deeper than any key of the contract stands. */
const DEEPEST = 24;
const MOST_SYNTAX_ERRORS = 20;

type Span = readonly [from: number, to: number];

/** Where a value stands, and what stands in it. */
interface Spot {
  readonly value: Span;
  readonly key: Span | null;
  readonly children: ReadonlyMap<string | number, Spot>;
}

export class YamlTree {
  readonly data: unknown;
  /** A key stood twice: what was said of the rest holds, but the file cannot be used. */
  readonly damaged: boolean;
  readonly #root: Spot;
  readonly #source: SourceText;

  constructor(data: unknown, root: Spot, source: SourceText, damaged: boolean) {
    this.data = data;
    this.damaged = damaged;
    this.#root = root;
    this.#source = source;
  }

  placeOf(path: FilePath): Place {
    return this.#source.place(...this.#nearest(path).value);
  }

  placeOfKey(path: FilePath): Place {
    const spot = this.#nearest(path);
    return this.#source.place(...(spot.key ?? spot.value));
  }

  /** Returns whether the whole path stands in the file, `{ value: … }` stepped through. */
  stands(path: FilePath): boolean {
    let spot: Spot | undefined = this.#root;
    for (const step of path) spot = spot && childOf(spot, step);
    return spot !== undefined;
  }

  #nearest(path: FilePath): Spot {
    let spot = this.#root;
    for (const step of path) {
      const child = childOf(spot, step);
      if (!child) break;
      spot = child;
    }
    return spot;
  }
}

function childOf(spot: Spot, step: string | number): Spot | undefined {
  return spot.children.get(step) ?? spot.children.get('value')?.children.get(step);
}

/** Returns the tree of a text, or null where it is no usable YAML; reports every fault of form it finds. */
export function readYaml(source: SourceText, log: Log): YamlTree | null {
  if (tooLarge(source, log)) return null;
  const document = parseDocument(source.text, {
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    stringKeys: true,
    merge: false,
    prettyErrors: false,
    logLevel: 'silent',
  });
  const faults = [...document.errors, ...document.warnings].slice(0, MOST_SYNTAX_ERRORS);
  for (const { code, message, pos } of faults) {
    log.report('yaml-form', syntaxWords(code, message), source.place(pos[0], pos[1]));
  }
  if (faults.length > 0) return null;
  if (!document.contents || (isScalar(document.contents) && document.contents.value === null)) {
    log.report('file-empty', {}, source.place(0, 1));
    return null;
  }
  return new Converter(source, log).convert(document.contents);
}

function tooLarge(source: SourceText, log: Log): boolean {
  const bytes = source.text.length > LARGEST_FILE_BYTES / 3 ? new TextEncoder().encode(source.text).length : 0;
  if (bytes <= LARGEST_FILE_BYTES) return false;
  log.report(
    'file-too-large',
    { kib: Math.ceil(bytes / 1024), mostKib: LARGEST_FILE_BYTES / 1024 },
    source.place(0, 1),
  );
  return true;
}

/** Turns nodes into data; keys that stand twice, references and deep nests are reported. */
class Converter {
  readonly #source: SourceText;
  readonly #log: Log;
  #usable = true;
  #damaged = false;

  constructor(source: SourceText, log: Log) {
    this.#source = source;
    this.#log = log;
  }

  convert(root: Node): YamlTree | null {
    const { data, spot } = this.#node(root, null, 0);
    return this.#usable ? new YamlTree(data, spot, this.#source, this.#damaged) : null;
  }

  #node(node: Node | null, key: Span | null, depth: number): { readonly data: unknown; readonly spot: Spot } {
    const children = new Map<string | number, Spot>();
    const spot = { value: this.#span(node, key), key, children };
    if (depth > DEEPEST) return this.#refuse(spot, 'too-deep');
    if (isAlias(node)) return this.#refuse(spot, 'alias-used');
    if (isMap(node)) return { data: this.#map(node.items as Pair<Node, Node | null>[], children, depth), spot };
    if (isSeq(node)) return { data: this.#list(node.items as (Node | null)[], children, depth), spot };
    return { data: isScalar(node) ? node.value : null, spot };
  }

  #map(pairs: readonly Pair<Node, Node | null>[], children: Map<string | number, Spot>, depth: number): unknown {
    const data: Record<string, unknown> = Object.create(null);
    for (const pair of pairs) {
      const name = isScalar(pair.key) ? String(pair.key.value) : '';
      const keySpan = this.#span(pair.key, null);
      const earlier = children.get(name)?.key;
      if (earlier) {
        this.#damaged = true;
        this.#log.report('duplicate-key', { key: name, line: this.#line(earlier) }, this.#source.place(...keySpan));
        continue;
      }
      if (pair.value === null) {
        this.#damaged = true;
        this.#log.report('key-alone', { text: name }, this.#source.place(...keySpan));
        continue;
      }
      const child = this.#node(pair.value, keySpan, depth + 1);
      children.set(name, child.spot);
      data[name] = child.data;
    }
    return data;
  }

  #list(items: readonly (Node | null)[], children: Map<string | number, Spot>, depth: number): unknown {
    return items.map((item, index) => {
      const child = this.#node(item, null, depth + 1);
      children.set(index, child.spot);
      return child.data;
    });
  }

  #refuse(spot: Spot, code: 'too-deep' | 'alias-used'): { readonly data: null; readonly spot: Spot } {
    this.#usable = false;
    this.#log.report(code, { most: DEEPEST }, this.#source.place(...spot.value));
    return { data: null, spot };
  }

  /** A block or an empty value is best shown by its key. */
  #span(node: Node | null, key: Span | null): Span {
    const range = node?.range;
    if (!range) return key ?? [0, 1];
    const shownByKey = range[0] === range[1] || ((isMap(node) || isSeq(node)) && node.flow !== true);
    return shownByKey && key ? key : [range[0], range[1]];
  }

  #line(span: Span): number {
    return this.#source.place(...span).line;
  }
}
