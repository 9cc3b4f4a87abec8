/** A look at raw data that may be wrong anywhere: what is not as it should be is passed over, the schemas have said so. */
import { type EpochDay, parseIsoDate } from '../basics/calendar-day.ts';
import { type Dimension, parseQuantity } from '../basics/quantity.ts';
import type { Code, ValuesOf } from '../diagnostics/catalogue.ts';
import type { Log } from '../diagnostics/log.ts';
import { isRawMap } from './field.ts';
import type { FilePath } from './placed-file.ts';
import type { YamlTree } from './yaml-tree.ts';

/** A part of a file as it was written, with its path; asking it for what is not there gives a part that holds nothing. */
export class RawPart {
  readonly data: unknown;
  readonly path: FilePath;

  constructor(data: unknown, path: FilePath = []) {
    this.data = data;
    this.path = path;
  }

  at(key: string): RawPart {
    const data = isRawMap(this.data) && Object.hasOwn(this.data, key) ? this.data[key] : undefined;
    return new RawPart(data, [...this.path, key]);
  }

  get stands(): boolean {
    return this.data !== undefined && this.data !== null;
  }

  /** The entries of a list; of anything else none. */
  get items(): readonly RawPart[] {
    return Array.isArray(this.data) ? this.data.map((item, index) => new RawPart(item, [...this.path, index])) : [];
  }

  /** The keys of a map with what stands behind them. */
  get entries(): readonly (readonly [string, RawPart])[] {
    return isRawMap(this.data) ? Object.keys(this.data).map((key) => [key, this.at(key)] as const) : [];
  }

  get text(): string | null {
    return typeof this.data === 'string' ? this.data : null;
  }

  get date(): EpochDay | null {
    return typeof this.data === 'string' ? parseIsoDate(this.data.trim()) : null;
  }

  get number(): number | null {
    return typeof this.data === 'number' && Number.isFinite(this.data) ? this.data : null;
  }

  /** In the base unit of the dimension. */
  quantity(dimension: Dimension): number | null {
    const read = typeof this.data === 'string' ? parseQuantity(this.data, dimension) : null;
    return read?.kind === 'read' ? read.base : null;
  }
}

/** Reports what a check finds, and remembers whether it found anything. */
export class Findings {
  sound = true;
  readonly #yaml: YamlTree;
  readonly #log: Log;

  constructor(yaml: YamlTree, log: Log) {
    this.#yaml = yaml;
    this.#log = log;
  }

  say<C extends Code>(code: C, values: ValuesOf<C>, path: FilePath): void {
    this.sound = false;
    this.#log.report(code, values, this.#yaml.placeOf(path));
  }

  lineOf(path: FilePath): number {
    return this.#yaml.placeOf(path).line;
  }
}
