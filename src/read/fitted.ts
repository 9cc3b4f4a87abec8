/** Reads the fitted values that stand beside a household file. */
import type { Log } from '../diagnostics/log.ts';
import { readWith } from './field.ts';
import type { FittedTree } from './fitted-tree.ts';
import type { PlacedFile } from './placed-file.ts';
import { reportProblems } from './report-problems.ts';
import { fitted } from './schema/fitted-schema.ts';
import { saidAt } from './schema/said.ts';
import { SourceText } from './source-text.ts';
import { readYaml } from './yaml-tree.ts';

/** Paths are from the file's root: `['fitted', 'fern', 'transfer']`. */
export interface ReadFitted extends PlacedFile {
  readonly tree: FittedTree;
}

/** Returns the fitted values that a text holds, or null where anything in it is wrong; the log gets every problem. */
export function readFitted(file: string, text: string, log: Log): ReadFitted | null {
  const yaml = readYaml(new SourceText(file, text), log);
  if (!yaml) return null;
  const { found, problems } = readWith(fitted, yaml.data);
  reportProblems(problems, yaml, log);
  if (!found || yaml.damaged) return null;
  return {
    tree: found,
    file,
    placeOf: (path) => yaml.placeOf(path),
    placeOfKey: (path) => yaml.placeOfKey(path),
    stands: (path) => yaml.stands(path),
    saidAt: (path) => saidAt(yaml.data, path),
  };
}
