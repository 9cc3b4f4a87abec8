/** What the reading of every file has in common: text to a checked tree whose values keep their places. */
import type { Log } from '../diagnostics/log.ts';
import { type Field, readWith } from './field.ts';
import type { PlacedFile } from './placed-file.ts';
import { reportProblems } from './report-problems.ts';
import { saidAt } from './schema/said.ts';
import { SourceText } from './source-text.ts';
import { readYaml, type YamlTree } from './yaml-tree.ts';

/**
 * Returns the tree that a text describes, or null where anything in it is wrong.
 * @param file the name for messages
 * @param text UTF-8 as text; a byte-order mark is passed over
 * @param field the schema of the whole file
 * @param referencesHold reports what does not agree between values, and tells whether all does
 * @param log gets every problem, from form to references, at once
 */
export function readPlaced<T>(
  file: string,
  text: string,
  field: Field<T>,
  referencesHold: (yaml: YamlTree, log: Log) => boolean,
  log: Log,
): (PlacedFile & { readonly tree: T }) | null {
  const yaml = readYaml(new SourceText(file, text), log);
  if (!yaml) return null;
  const { found, problems } = readWith(field, yaml.data);
  reportProblems(problems, yaml, log);
  const sound = referencesHold(yaml, log);
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
