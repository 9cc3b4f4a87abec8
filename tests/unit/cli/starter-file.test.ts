import { describe, expect, it } from 'vitest';
import { type StarterAnswers, starterFile } from '../../../src/cli/starter-file.ts';
import { starterNeeds } from '../../../src/cli/starter-needs.ts';
import { compile } from '../../../src/compile.ts';
import type { Diagnostic } from '../../../src/diagnostics/diagnostic.ts';
import { PROFILE_IDS, profileText, shippedProfile } from '../../shipped-profiles.ts';

const MADRID = { timezone: 'Europe/Madrid', latitude: 41.65, longitude: -0.89 };
const SYDNEY = { timezone: 'Australia/Sydney', latitude: -33.87, longitude: 151.21 };

function answers(species: string, more: Partial<StarterAnswers> = {}): StarterAnswers {
  return {
    name: 'Ours: "the first"',
    species,
    ...MADRID,
    step: '15 min',
    units: 'metric',
    from: '2027-01-01',
    needs: starterNeeds(shippedProfile(species)),
    ...more,
  };
}

function said(text: string): readonly Diagnostic[] {
  return compile({
    file: 'home.yaml',
    text,
    profile: (id) => (PROFILE_IDS.includes(id) ? { file: `profiles/${id}.yaml`, text: profileText(id) } : null),
    profileIds: PROFILE_IDS,
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  }).diagnostics;
}

function faults(text: string): readonly string[] {
  return said(text)
    .filter(({ weight }) => weight !== 'note')
    .map(({ code, because }) => `${code}: ${because}`);
}

/** A hand sprayer gives no peak to three cubic metres of air: a pump is the keeper's to add. */
const EXPECTED: Readonly<Record<string, readonly string[]>> = {
  'green-iguana': [expect.stringContaining('humidity.peaks_per_day')],
};

describe('a starter file', () => {
  it.each(PROFILE_IDS)('of %s has nothing to correct', (species) => {
    expect(faults(starterFile(answers(species)))).toEqual(EXPECTED[species] ?? []);
  });

  it.each(['ball-python', 'bearded-dragon', 'jacksons-chameleon', 'red-eyed-tree-frog'])(
    'of %s in US units, in the south, has nothing to correct',
    (species) => {
      expect(faults(starterFile(answers(species, { ...SYDNEY, units: 'us', step: '30 min' })))).toEqual([]);
    },
  );

  it('holds heat on a thermostat where the room is too cold by night, and none where it is not', () => {
    expect(starterFile(answers('ball-python'))).toContain(
      'for: [heat], power: 60 W, outlet: always, thermostat: pulse',
    );
    expect(starterFile(answers('veiled-chameleon'))).not.toContain('for: [heat]');
  });

  it('names a feeder for each stream that the adult is fed, also where its stage is like another', () => {
    expect(starterFile(answers('hermanns-tortoise'))).toContain('{ id: greens, food: greens, share: 100 %, dust: true');
    expect(starterNeeds(shippedProfile('bearded-dragon')).foods).toEqual(['insects', 'greens']);
  });

  it('can have its commented lamps and its pump uncommented', () => {
    const text = starterFile(answers('panther-chameleon'))
      .replaceAll(/^( +)# - \{ id: (basking|uv|mist-timer|pump)/gm, '$1- { id: $2')
      .replace('mist: by-hand', 'mist: pump');
    expect(text.match(/^ +- \{ id: (basking|uv|mist-timer|pump)/gm)).toHaveLength(4);
    expect(said(text).filter(({ weight }) => weight === 'error' || weight === 'refusal')).toEqual([]);
  });
});
