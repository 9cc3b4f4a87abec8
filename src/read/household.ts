/** Reads a household file: every problem at once, each with its place. */
import type { Log } from '../diagnostics/log.ts';
import type { HouseholdTree } from './household-tree.ts';
import type { PlacedFile } from './placed-file.ts';
import { readPlaced } from './read-placed.ts';
import { checkHouseholdReferences } from './references.ts';
import { household } from './schema/household-schema.ts';

/** Paths are from the file's root: `['enclosures', 0, 'targets', 'humidity', 'day']`. */
export interface ReadHousehold extends PlacedFile {
  readonly tree: HouseholdTree;
}

/** Returns the household that a text describes, or null where anything in it is wrong; the log gets every problem. */
export function readHousehold(file: string, text: string, log: Log): ReadHousehold | null {
  return readPlaced(file, text, household, checkHouseholdReferences, log);
}
