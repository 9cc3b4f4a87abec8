/** Which profiles a household asks for, and what is said where one is missing. */
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadHousehold } from '../read/household.ts';

export interface ProfileNeed {
  /** As the file writes it; the key under which `resolve` looks the profile up. */
  readonly idOrPath: string;
  /** Where the file first asks for it. */
  readonly place: Place;
}

/** Returns each profile once, in the order of the enclosures. */
export function profilesNeeded(household: ReadHousehold): readonly ProfileNeed[] {
  const needs = new Map<string, ProfileNeed>();
  for (const [index, { species }] of household.tree.enclosures.entries()) {
    if (!needs.has(species))
      needs.set(species, { idOrPath: species, place: household.placeOf(['enclosures', index, 'species']) });
  }
  return [...needs.values()];
}

/** Says that there is no such profile, with the nearest id; `known` are the ids that exist. */
export function reportProfileUnknown(need: ProfileNeed, known: readonly string[], log: Log): void {
  const isPath = /[/\\.]/.test(need.idOrPath);
  const sorted = [...known].sort();
  log.report(
    'profile-unknown',
    {
      species: need.idOrPath,
      nearest: isPath ? null : nearestSpelling(need.idOrPath, sorted),
      known: sorted.join(', '),
      isPath,
    },
    need.place,
  );
}
