/** Reads a species' profile: every problem at once, each with its place. */
import type { Log } from '../diagnostics/log.ts';
import type { PlacedFile } from './placed-file.ts';
import { checkProfileReferences } from './profile-references.ts';
import { readPlaced } from './read-placed.ts';
import { profile } from './schema/profile-schema.ts';
import type { ProfileTree } from './targets.ts';

/** Paths are from the profile's root: `['humidity', 'day']`. */
export interface ReadProfile extends PlacedFile {
  readonly tree: ProfileTree;
}

/** Returns the profile that a text describes, or null where anything in it is wrong; the log gets every problem. */
export function readProfile(file: string, text: string, log: Log): ReadProfile | null {
  return readPlaced(file, text, profile, checkProfileReferences, log);
}
