/** What no timer switches stands on the sheet too, so that nobody seeks it on a dial; what is refused does not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../../src/compile.ts';
import { settingsText } from '../../../../src/emit/text/settings.ts';
import { profileText } from '../../../shipped-profiles.ts';

const CASE = readFileSync(new URL('../../../errors/cases/needs-without-lamp.yaml', import.meta.url), 'utf8').trimEnd();

function sheet(lamp: string, language = 'en'): string {
  const { plan } = compile({
    file: 'home.yaml',
    text: `${CASE.replace('format: 1', `format: 1\nlanguage: ${language}`)}\n      - ${lamp}\n`,
    profile: (id) => ({ file: `profiles/${id}.yaml`, text: profileText(id) }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-01-01' },
    version: '1.0.0',
  });
  if (!plan) throw new Error('no plan');
  return settingsText(plan);
}

const MAT = '{ id: mat, kind: mat, for: [heat], power: 15 W, outlet: always, thermostat: on-off }';

describe('lamps and heaters on live sockets', () => {
  it('have a section of their own behind the dials', () => {
    const text = sheet(MAT);
    expect(text).toContain(
      '\nOn live sockets\n---------------\nFern mat, 15 W: always plugged in, its thermostat between the socket and it; no timer.\n',
    );
    expect(text.indexOf('On live sockets')).toBeGreaterThan(text.indexOf('\ndial\n'));
    expect(sheet(MAT, 'es')).toContain('En enchufes con corriente permanente');
  });

  it('are not told to be plugged in where they are refused, and there is no section where there are none', () => {
    expect(sheet(MAT.replace(', thermostat: on-off', ''))).not.toContain('On live sockets');
    expect(sheet(MAT.replace('always', 'dial'))).not.toContain('On live sockets');
  });
});
