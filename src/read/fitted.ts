/** Reads the fitted values that stand beside a household file. */
import type { Log } from '../diagnostics/log.ts';
import type { FittedTree } from './fitted-tree.ts';
import type { PlacedFile } from './placed-file.ts';
import { readPlaced } from './read-placed.ts';
import { fitted } from './schema/fitted-schema.ts';

/** Paths are from the file's root: `['fitted', 'fern', 'transfer']`. */
export interface ReadFitted extends PlacedFile {
  readonly tree: FittedTree;
}

/** Returns the fitted values that a text holds, or null where anything in it is wrong; the log gets every problem. */
export function readFitted(file: string, text: string, log: Log): ReadFitted | null {
  return readPlaced(file, text, fitted, () => true, log);
}
