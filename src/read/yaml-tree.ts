/** A file's text as plain data, with the place of each value. */
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import { readAnyYaml } from './any-yaml.ts';
import type { FilePath } from './placed-file.ts';
import { readPlainYaml } from './plain-yaml.ts';
import { LARGEST_FILE_BYTES, type SourceText } from './source-text.ts';
import type { Spot } from './spot.ts';

/** The data of a YAML text, with the place of every value and key. */
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
  const plain = readPlainYaml(source.text);
  if (plain) return new YamlTree(plain.data, plain.spot, source, false);
  const read = readAnyYaml(source, log);
  return read && new YamlTree(read.data, read.spot, source, read.damaged);
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
