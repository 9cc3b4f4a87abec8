import { generateHousehold } from '../property/household-generator.ts';
import { KINDS } from '../property/kept-species.ts';
import type { Target } from './campaign.ts';
import { compiledWell, shipped, textOf } from './compile-target.ts';
import { changedYaml, damagedBytes } from './mutations.ts';

const SHORT = { days: 35, enclosures: 1 };
/** Mists take the most time by far: a few households of any species, many of those that are not misted. */
const DRY = { ...SHORT, species: KINDS.filter(({ isMisted }) => !isMisted).map(({ id }) => id) };
const EXAMPLES = ['examples/one-gecko.yaml', 'examples/porch-tortoise.yaml', 'examples/reading-room.yaml'];
const BASES = [
  ...Array.from({ length: 24 }, (_, seed) => generateHousehold(seed + 1, seed % 3 === 0 ? SHORT : DRY)),
  ...EXAMPLES.map((path) => shipped(path).replace(/days: 365/, 'days: 35')),
];
const EVERY_KEY = shipped('tests/unit/read/every-key.yaml');

/** Household files, by bytes and by structure. */
export const households: Target = {
  name: 'household files',
  share: 0.3,
  run: async (draw, index) => {
    const base = draw.one(BASES);
    const way = index % 2 === 0 ? 'bytes' : 'structure';
    const text =
      way === 'bytes'
        ? textOf(damagedBytes(Buffer.from(base), draw))
        : changedYaml(base, draw.chance(0.5) ? EVERY_KEY : draw.one(BASES), draw);
    if (text === null) return `${way}: no text`;
    return `${way}: ${await compiledWell({ text, today: '2027-01-01', pdf: index % 100 === 1 })}`;
  },
};
