/**
 * Household and profiles into Care: no shorthand, no gaps, one unit a quantity, each target with its origin. Whatever is wrong is
 * reported, all at once; what is left unsaid is taken from the figures that stand as constants beside each part.
 */
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadFitted } from '../read/fitted.ts';
import type { ReadHousehold } from '../read/household.ts';
import type { ReadProfile } from '../read/profile.ts';
import type { Care } from './care.ts';
import { cautionTexts } from './cautions-of.ts';
import { devicesOf } from './devices-of.ts';
import { enclosureOf } from './enclosure-of.ts';
import { type EnclosureInput, type EnclosureTargets, enclosureTargets } from './enclosure-targets.ts';
import { fittedOf, reportFittedUnknown } from './fitted-of.ts';
import { absencesOf, noiseOf, peopleOf, planOf, shoppingOf, siteOf } from './household-of.ts';
import { mistOf, nozzleCounts } from './nozzle-counts.ts';
import { sourceShelf } from './source-books.ts';

export { type ProfileNeed, profilesNeeded, reportProfileUnknown } from './profiles-needed.ts';

/**
 * Returns the household without gaps; null where a profile is missing from the map (whoever loads them says so) or an enclosure has no
 * day length. `profiles` has the keys that `profilesNeeded` gave; `fitted` is what stands beside the household file.
 */
export function resolve(
  household: ReadHousehold,
  profiles: ReadonlyMap<string, ReadProfile>,
  log: Log,
  fitted: ReadFitted | null = null,
): Care | null {
  const { tree } = household;
  const devices = devicesOf(household, log);
  const people = peopleOf(household);
  const shelf = sourceShelf([...profiles.values()]);
  const parts = targetsOfAll(household, profiles, shelf, log);
  if (parts === null) return null;
  const mists = parts.map(({ input, resolved }, index) =>
    mistOf(input.said, index, resolved.targets, household, devices, log),
  );
  const nozzles = nozzleCounts(household, mists, devices, log);
  reportFittedUnknown(
    tree.enclosures.map(({ id }) => id),
    fitted,
    log,
  );
  const who = people[0]?.id ?? 'keeper';
  const enclosures = parts.map(({ input, resolved }, index) =>
    enclosureOf(input, resolved, {
      devices,
      mist: mists[index] ?? 'none',
      fitted: fittedOf(input.said, fitted, log),
      nozzles: nozzles.get(input.said.id) ?? input.said.nozzles?.count ?? 1,
      who,
    }),
  );
  return {
    placeOf: household.placeOf,
    placeOfTarget: placeFinder(parts),
    id: tree.id ?? null,
    name: tree.name,
    language: tree.language ?? 'en',
    units: tree.units ?? 'metric',
    paper: tree.paper ?? 'a4',
    contacts: tree.contacts ?? {},
    site: siteOf(household),
    plan: planOf(household),
    people,
    noise: noiseOf(household),
    shopping: shoppingOf(household),
    devices,
    enclosures,
    away: absencesOf(household, log),
    shortages: (tree.shortage ?? []).map((shortage, index) => ({ ...shortage, path: ['shortage', index] })),
    sources: shelf.sources,
    cautions: cautionTexts(
      enclosures.flatMap(({ cautions }) => cautions),
      tree.language ?? 'en',
    ),
  };
}

interface Part {
  readonly input: EnclosureInput;
  readonly resolved: EnclosureTargets;
}

function targetsOfAll(
  household: ReadHousehold,
  profiles: ReadonlyMap<string, ReadProfile>,
  shelf: ReturnType<typeof sourceShelf>,
  log: Log,
): readonly Part[] | null {
  const parts = household.tree.enclosures.map((said, index): Part | null => {
    const profile = profiles.get(said.species);
    if (!profile) return null;
    const input = { said, path: ['enclosures', index], household, profile, book: shelf.bookOf(profile), log };
    const resolved = enclosureTargets(input);
    return resolved && { input, resolved };
  });
  const found = parts.filter((part) => part !== null);
  return found.length === parts.length ? found : null;
}

function placeFinder(parts: readonly Part[]): (enclosure: string, targetPath: string) => Place | null {
  const finders = new Map(parts.map(({ input, resolved }) => [input.said.id, resolved.placeOfTarget]));
  return (enclosure, targetPath) => finders.get(enclosure)?.(targetPath) ?? null;
}
