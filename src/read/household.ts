/** Reads a household file: every problem at once, each with its place. */
import type { Log } from '../diagnostics/log.ts';
import { readWith } from './field.ts';
import type { HouseholdTree } from './household-tree.ts';
import type { PlacedFile } from './placed-file.ts';
import { checkHouseholdReferences } from './references.ts';
import { reportProblems } from './report-problems.ts';
import { household } from './schema/household-schema.ts';
import { saidAt } from './schema/said.ts';
import { SourceText } from './source-text.ts';
import { readYaml } from './yaml-tree.ts';

/** Paths are from the file's root: `['enclosures', 0, 'targets', 'humidity', 'day']`. */
export interface ReadHousehold extends PlacedFile {
  readonly tree: HouseholdTree;
}

/**
 * Returns the household that a text describes, or null where anything in it is wrong.
 * @param file the name for messages
 * @param text UTF-8 as text; a byte-order mark is passed over
 * @param log gets every problem, from form to references, at once
 */
export function readHousehold(file: string, text: string, log: Log): ReadHousehold | null {
  const yaml = readYaml(new SourceText(file, text), log);
  if (!yaml) return null;
  const { found, problems } = readWith(household, yaml.data);
  reportProblems(problems, yaml, log);
  const sound = checkHouseholdReferences(yaml, log);
  if (!found || !sound || yaml.damaged) return null;
  return {
    tree: found,
    file,
    placeOf: (path) => yaml.placeOf(path),
    placeOfKey: (path) => yaml.placeOfKey(path),
    stands: (path) => yaml.stands(path),
    saidAt: (path) => saidAt(yaml.data, path),
  };
}
