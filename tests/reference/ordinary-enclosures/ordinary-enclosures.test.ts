import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/compile.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { PROFILE_IDS, profileText } from '../../shipped-profiles.ts';
import { ORDINARY, ordinaryHousehold } from './households.ts';

function planOf(text: string): Plan {
  const { plan, diagnostics } = compile({
    file: 'home.yaml',
    text,
    profile: (id) => (PROFILE_IDS.includes(id) ? { file: `profiles/${id}.yaml`, text: profileText(id) } : null),
    profileIds: PROFILE_IDS,
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  });
  if (!plan) throw new Error(diagnostics.map(({ code, because }) => `${code} ${because}`).join('\n'));
  return plan;
}

describe('every shipped profile in an ordinary room and an ordinary enclosure', () => {
  it('has a household here', () => {
    expect(ORDINARY.map(({ species }) => species).sort()).toEqual(PROFILE_IDS);
  });

  it.each(ORDINARY)('$species has a shortfall of 0 all year', (one) => {
    const [mist] = planOf(ordinaryHousehold(one)).misting;
    const worst = mist?.sets.flatMap(({ conditions }) => conditions.map(({ shortfall }) => shortfall)) ?? [];
    const entries = mist?.sets[0]?.entries.map(({ at, seconds }) => `${at} ${seconds} s`).join(', ');
    const water = mist?.sets[0]?.conditions[0]?.predicted.waterMlPerDay;
    console.info(
      `${one.species}: worst ${Math.max(...worst)}, ${mist?.sets.length} set(s), ${entries}, ${water} mL a day`,
    );
    expect(mist?.sets.flatMap(({ shortfalls }) => shortfalls)).toEqual([]);
    expect(Math.max(...worst)).toBe(0);
  });
});
