/** The citations of all profiles in use in one list; a key that two profiles use for different works is told apart. */
import type { ReadProfile } from '../read/profile.ts';
import type { SourceBook } from './target-records.ts';

export interface SourceShelf {
  /** Citations by the key under which they are listed, in the order of keys. */
  readonly sources: Readonly<Record<string, string>>;
  readonly bookOf: (profile: ReadProfile) => SourceBook;
}

/** Returns the shelf; the first profile by species keeps its key, a later one with another work behind it gets `SPECIES/key`. */
export function sourceShelf(profiles: readonly ReadProfile[]): SourceShelf {
  const cited = new Map<string, string>();
  const books = new Map<ReadProfile, SourceBook>();
  for (const profile of [...profiles].sort((a, b) => (a.tree.species < b.tree.species ? -1 : 1))) {
    const sources = profile.tree.sources ?? {};
    const names = new Map<string, string>();
    for (const [key, { cite }] of Object.entries(sources)) {
      const taken = cited.get(key);
      const name = taken === undefined || taken === cite ? key : `${profile.tree.species}/${key}`;
      cited.set(name, cite);
      names.set(key, name);
    }
    books.set(profile, { sources, listedAs: (key) => names.get(key) ?? key });
  }
  const sources = Object.fromEntries([...cited].sort(([a], [b]) => (a < b ? -1 : 1)));
  return {
    sources,
    bookOf: (profile) => books.get(profile) ?? { sources: profile.tree.sources ?? {}, listedAs: (key) => key },
  };
}
