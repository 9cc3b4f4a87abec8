import { generateHousehold } from '../property/household-generator.ts';
import { KINDS } from '../property/kept-species.ts';
import type { Target } from './campaign.ts';
import { compiledWell, PROFILES, textOf } from './compile-target.ts';
import { damagedBytes, damagedYaml } from './mutations.ts';

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
  share: 0.2,
  run: async (draw, index) => {
    const { profile, household } = draw.one(BASES);
    const text =
      index % 2 === 0
        ? textOf(damagedBytes(Buffer.from(profile), draw))
        : damagedYaml(profile, draw.one(BASES).profile, draw);
    if (text === null) return 'no text';
    return compiledWell({ text: household, own: new Map([['./own.yaml', text]]), today: '2027-01-01' });
  },
};
