/** Which of the shipped species somebody means: by id, by name, by scientific name, by its number in the list, or by a part of one. */
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { Log } from '../diagnostics/log.ts';
import { readProfile } from '../read/profile.ts';
import { loadText, profilePath, shippedProfiles } from './files.ts';
import type { World } from './world.ts';

export interface SpeciesName {
  readonly id: string;
  readonly name: string;
  readonly scientific: string;
}

export type Named = { readonly id: string } | { readonly fault: string };

/** Returns the shipped species with their names, in the order of ids; one that cannot be read is left out. */
export function shippedSpecies(world: World): readonly SpeciesName[] {
  return shippedProfiles(world.disk).flatMap((id) => {
    const path = profilePath(id, '.');
    const loaded = loadText(path, world.disk);
    const profile = loaded.ok ? readProfile(path, loaded.text, new Log()) : null;
    return profile ? [{ id, name: profile.tree.name, scientific: profile.tree.scientific }] : [];
  });
}

/** Returns the id of the species that is meant, or what to say where none or several may be. */
export function speciesNamed(said: string, species: readonly SpeciesName[]): Named {
  const word = folded(said);
  const numbered = /^\d+$/.test(word) ? species[Number(word) - 1] : undefined;
  const exact = species.find((each) => wordsOf(each).includes(word)) ?? numbered;
  if (exact) return { id: exact.id };
  const near = nearestSpelling(
    word,
    species.map(({ id }) => id),
  );
  if (near !== null) return { fault: `did you mean ${near}?` };
  const holding = word === '' ? [] : species.filter((each) => wordsOf(each).some((one) => one.includes(word)));
  if (holding.length === 1) return { fault: `did you mean ${holding[0]?.id}?` };
  if (holding.length > 1) return { fault: `which: ${holding.map(({ id }) => id).join(', ')}?` };
  return { fault: `there is no profile of it; one of ${species.map(({ id }) => id).join(', ')}` };
}

function wordsOf({ id, name, scientific }: SpeciesName): readonly string[] {
  return [id, folded(name), folded(scientific)];
}

/** A wrong case, a space or an apostrophe makes no other word. */
function folded(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/['’]/gu, '')
    .replace(/[\s_]+/gu, '-');
}
