/** What a file that was read offers beside its tree: where a path stands, and who said it. */
import type { Place } from '../diagnostics/diagnostic.ts';

export type FilePath = readonly (string | number)[];

export interface Said {
  /** A key of `sources`, `practice` or `ours`; of the nearest map that says it, null where none does. */
  readonly source: string | null;
  readonly why: string | null;
  /** Values of other sources that disagree, in the same units. */
  readonly also: readonly { readonly value: unknown; readonly source: string | null }[];
}

export interface PlacedFile {
  readonly file: string;
  /** Place of the value at a path, or of its nearest parent that stands in the file. `{ value: … }` is stepped through. */
  readonly placeOf: (path: FilePath) => Place;
  /** Place of the key that ends a path, or of its nearest parent. */
  readonly placeOfKey: (path: FilePath) => Place;
  /** Whether the file itself says something at the path. */
  readonly stands: (path: FilePath) => boolean;
  readonly saidAt: (path: FilePath) => Said;
}
