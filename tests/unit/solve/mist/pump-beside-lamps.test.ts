/** A pump plugged in beside lamps would run for hours whether anything is planned for it or not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../../src/compile.ts';
import { indexHtml } from '../../../../src/emit/html/index-html.ts';
import { settingsText } from '../../../../src/emit/text/settings.ts';
import { profileText } from '../../../shipped-profiles.ts';

const CASE = readFileSync(new URL('../../../errors/cases/pump-beside-lamps.yaml', import.meta.url), 'utf8');

function compiled(text: string) {
  return compile({
    file: 'home.yaml',
    text,
    profile: (id) => ({ file: `profiles/${id}.yaml`, text: profileText(id) }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  });
}

describe('a pump on the dial of lamps', () => {
  it.each([
    ['that is to mist', CASE],
    ['whose animal is never misted', CASE.replace('veiled-chameleon', 'bearded-dragon')],
    ['that mists nothing', CASE.replace('mist: pump', 'mist: by-hand')],
  ])('%s is refused, and the sheets keep its plug out', (_, text) => {
    const { plan, diagnostics } = compiled(text);
    expect(diagnostics.filter(({ code }) => code === 'pump-beside-lamps')).toHaveLength(1);
    if (!plan) throw new Error('no plan');
    const dial = settingsText(plan).split('\n\n')[1] ?? '';
    expect(dial).toContain('On it: fern day 20 W.');
    expect(dial).toContain('Leave the plug of pump out of it');
    expect(indexHtml(plan, [])).toContain('Leave the plug of pump out of it');
  });

  it('is no matter where it hangs on a timer of its own', () => {
    const timer =
      '  - { id: seconds, kind: programmable-timer, entries: 8, resolution: 1 s, shortest: 5 s, clock: standard }\n';
    const { plan, diagnostics } = compiled(
      CASE.replace('outlet: dial, power: 30 W', 'outlet: seconds, power: 30 W').replace(
        '  - { id: pump',
        `${timer}  - { id: pump`,
      ),
    );
    expect(diagnostics.filter(({ code }) => code === 'pump-beside-lamps')).toEqual([]);
    expect(plan && settingsText(plan)).not.toContain('Leave the plug');
  });
});
