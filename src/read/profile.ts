/** Reads a species' profile: every problem at once, each with its place. */
import type { Log } from '../diagnostics/log.ts';
import { readWith } from './field.ts';
import type { PlacedFile } from './placed-file.ts';
import { checkProfileReferences } from './profile-references.ts';
import { reportProblems } from './report-problems.ts';
import { profile } from './schema/profile-schema.ts';
import { saidAt } from './schema/said.ts';
import { SourceText } from './source-text.ts';
import type { ProfileTree } from './targets.ts';
import { readYaml } from './yaml-tree.ts';

/** Paths are from the profile's root: `['humidity', 'day']`. */
export interface ReadProfile extends PlacedFile {
  readonly tree: ProfileTree;
}

/** Returns the profile that a text describes, or null where anything in it is wrong; the log gets every problem. */
export function readProfile(file: string, text: string, log: Log): ReadProfile | null {
  const yaml = readYaml(new SourceText(file, text), log);
  if (!yaml) return null;
  const { found, problems } = readWith(profile, yaml.data);
  reportProblems(problems, yaml, log);
  const sound = checkProfileReferences(yaml, log);
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
