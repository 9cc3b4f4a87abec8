/** The one home of `yaml`: the full parser, for files that the quick reader leaves to it, and for every fault of form. */
import { createRequire } from 'node:module';
import type * as Yaml from 'yaml';
import type { Node, Pair } from 'yaml';
import type { Log } from '../diagnostics/log.ts';
import { deepNestIn } from './deep-nest.ts';
import type { SourceText } from './source-text.ts';
import type { Span, Spot } from './spot.ts';
import { losesIndent, syntaxWords } from './yaml-syntax-words.ts';

/** Deeper than any key of the contract stands. */
const DEEPEST = 24;
const MOST_SYNTAX_ERRORS = 20;

export interface AnyYaml {
  readonly data: unknown;
  readonly spot: Spot;
  /** A key stood twice, or alone: what is said of the rest holds, but the file cannot be used. */
  readonly damaged: boolean;
}

/** Loaded when a file needs it: most do not, and loading takes longer than reading. */
function parser(): typeof Yaml {
  loaded ??= createRequire(import.meta.url)('yaml') as typeof Yaml;
  return loaded;
}
let loaded: typeof Yaml | null = null;

/** Returns what a text holds, or null where it is no usable YAML; reports every fault of form it finds. */
export function readAnyYaml(source: SourceText, log: Log): AnyYaml | null {
  const deep = deepNestIn(source.text);
  if (deep !== null) {
    log.report('too-deep', { most: DEEPEST }, source.place(deep, deep + 1));
    return null;
  }
  const { isScalar, parseDocument } = parser();
  const document = parseDocument(source.text, {
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    stringKeys: true,
    merge: false,
    prettyErrors: false,
    logLevel: 'silent',
  });
  const found = [...document.errors, ...document.warnings].map((fault) => deeperLine(fault, source.text) ?? fault);
  const faults = withoutConsequences(found).slice(0, MOST_SYNTAX_ERRORS);
  for (const { code, message, pos } of faults) {
    log.report('yaml-form', syntaxWords(code, message), source.place(pos[0], pos[1]));
  }
  if (faults.length > 0) return null;
  if (!document.contents || (isScalar(document.contents) && document.contents.value === null)) {
    log.report('file-empty', {}, source.place(0, 1));
    return null;
  }
  return new Converter(parser(), source, log).convert(document.contents);
}

interface Fault {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [number, number];
}

/** A text that seems to go on over a second colon on the next line: that line is indented too far. null for any other fault. */
function deeperLine({ code, message, pos: [start] }: Fault, text: string): Fault | null {
  const end = text.indexOf('\n', start);
  if (code !== 'BLOCK_AS_IMPLICIT_KEY' || end < 0 || /:(\s|$)/u.test(text.slice(start, end))) return null;
  const next = end + 1 + (/^ */u.exec(text.slice(end + 1))?.[0].length ?? 0);
  return { code: 'BAD_INDENT', message, pos: [next, next + 1] };
}

/** Behind a line whose indent is wrong nothing stands where it belongs: what is found there is no fault of its own, but for tabs. */
function withoutConsequences(faults: readonly Fault[]): readonly Fault[] {
  const first = faults.findIndex(({ code, message }) => losesIndent(code, message));
  return faults.filter(({ code }, index) => first < 0 || index <= first || code === 'TAB_AS_INDENT');
}

/** Turns nodes into data; keys that stand twice, references and deep nests are reported. */
class Converter {
  readonly #yaml: typeof Yaml;
  readonly #source: SourceText;
  readonly #log: Log;
  #usable = true;
  #damaged = false;

  constructor(yaml: typeof Yaml, source: SourceText, log: Log) {
    this.#yaml = yaml;
    this.#source = source;
    this.#log = log;
  }

  convert(root: Node): AnyYaml | null {
    const { data, spot } = this.#node(root, null, 0);
    return this.#usable ? { data, spot, damaged: this.#damaged } : null;
  }

  #node(node: Node | null, key: Span | null, depth: number): { readonly data: unknown; readonly spot: Spot } {
    const children = new Map<string | number, Spot>();
    const spot = { value: this.#span(node, key), key, children };
    if (depth > DEEPEST) return this.#refuse(spot, 'too-deep');
    if (this.#yaml.isAlias(node)) return this.#refuse(spot, 'alias-used');
    if (this.#yaml.isMap(node))
      return { data: this.#map(node.items as Pair<Node, Node | null>[], children, depth), spot };
    if (this.#yaml.isSeq(node)) return { data: this.#list(node.items as (Node | null)[], children, depth), spot };
    return { data: this.#yaml.isScalar(node) ? node.value : null, spot };
  }

  #map(pairs: readonly Pair<Node, Node | null>[], children: Map<string | number, Spot>, depth: number): unknown {
    const data: Record<string, unknown> = Object.create(null);
    for (const pair of pairs) {
      const name = this.#yaml.isScalar(pair.key) ? String(pair.key.value) : '';
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
    const shownByKey =
      range[0] === range[1] || ((this.#yaml.isMap(node) || this.#yaml.isSeq(node)) && node.flow !== true);
    return shownByKey && key ? key : [range[0], range[1]];
  }

  #line(span: Span): number {
    return this.#source.place(...span).line;
  }
}
