/** What a profile asks for and no lamp gives is said once, and only where it matters. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../../src/compile.ts';
import { profileText } from '../../../shipped-profiles.ts';

const CASE = readFileSync(new URL('../../../errors/cases/needs-without-lamp.yaml', import.meta.url), 'utf8');

function lacking(species: string, lamps = ''): string | null {
  const { diagnostics } = compile({
    file: 'home.yaml',
    text: `${CASE.replace('veiled-chameleon', species).trimEnd()}\n${lamps}`,
    profile: (id) => ({ file: `profiles/${id}.yaml`, text: profileText(id) }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  });
  const said = diagnostics.filter(({ code }) => code === 'needs-without-lamp');
  expect(said.length).toBeLessThan(2);
  return said[0]?.because.replace(/^.* asks for (.*), and no lamp.*$/, '$1') ?? null;
}

const BASKING =
  '      - { id: sun, kind: halogen, for: [basking], power: 50 W, outlet: dial, thermostat: dimming, guard: true }\n';
const UV = '      - { id: uv, kind: fluorescent, for: [uvb], power: 24 W, outlet: dial }\n';
const MAT = '      - { id: mat, kind: mat, for: [heat], power: 15 W, outlet: always, thermostat: on-off }\n';

describe('needs that no lamp meets', () => {
  it('are named together, and each alone', () => {
    expect(lacking('bearded-dragon')).toBe('a basking place of 38 to 42 °C and UV of Ferguson zone 3');
    expect(lacking('bearded-dragon', UV)).toBe('a basking place of 38 to 42 °C');
    expect(lacking('bearded-dragon', BASKING)).toBe('UV of Ferguson zone 3');
    expect(lacking('bearded-dragon', BASKING + UV)).toBeNull();
  });

  it('are met by a heat mat where the warm end is to be warm all day, and not where an animal basks', () => {
    expect(lacking('leopard-gecko')).toContain('a basking place');
    expect(lacking('leopard-gecko', MAT)).toBeNull();
    expect(lacking('bearded-dragon', MAT)).toContain('a basking place');
  });

  it('are not told of UV where an animal lives in shade (zone 1)', () => {
    expect(lacking('crested-gecko')).toBeNull();
    expect(lacking('giant-day-gecko', BASKING)).toBe('UV of Ferguson zone 2');
  });
});
