import { generateHousehold } from '../property/household-generator.ts';
import { KINDS } from '../property/kept-species.ts';
import type { Target } from './campaign.ts';
import { compiledWell, PROFILES, textOf } from './compile-target.ts';
import { changedYaml, damagedBytes } from './mutations.ts';

const BASES = KINDS.map(({ id }, index) => ({
  profile: PROFILES.get(id) ?? '',
  household: generateHousehold(index + 100, { days: 35, enclosures: 1, species: [id] }).replace(
    `species: ${id}`,
    'species: ./own.yaml',
  ),
}));

/** Profiles that a household names by path. */
export const profiles: Target = {
  name: 'profiles',
  share: 0.15,
  run: async (draw, index) => {
    const { profile, household } = draw.one(BASES);
    const way = index % 2 === 0 ? 'bytes' : 'structure';
    const text =
      way === 'bytes'
        ? textOf(damagedBytes(Buffer.from(profile), draw))
        : changedYaml(profile, draw.one(BASES).profile, draw);
    if (text === null) return `${way}: no text`;
    const own = new Map([['./own.yaml', text]]);
    return `${way}: ${await compiledWell({ text: household, own, today: '2027-01-01' })}`;
  },
};
