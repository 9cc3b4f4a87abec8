import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { Lamp } from '../../../../src/resolve/care.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { enclosure, hours, lamp, pinDial, repeatTimer, shelfCare } from '../../../generated/shelf-care.ts';

/** What is said of one lamp on a shelf with a dial and a repeat-cycle timer, and whether it is planned. */
function saidOf(more: Partial<Lamp>): { readonly codes: readonly string[]; readonly isPlanned: boolean } {
  const log = new Log();
  const day = lamp('day', { outlet: 'dial' });
  const care = shelfCare({
    devices: [pinDial('dial'), repeatTimer('pulse')],
    enclosures: [enclosure('fern', hours(720), [day, lamp('tested', { outlet: 'dial', ...more })])],
  });
  const { notPlanned } = solveLighting(care, null, care.plan.from, log);
  const codes = log.sorted().map(({ code }) => code);
  return { codes: [...new Set(codes)].sort(), isPlanned: !notPlanned.some((each) => each.lamp === 'fern/tested') };
}

describe('a lamp', () => {
  it.each<[string, Partial<Lamp>, readonly string[], boolean]>([
    ['that only shines', {}, [], true],
    [
      'that heats without a thermostat',
      { uses: ['heat'], kind: 'mat', outlet: 'always' },
      ['heat-without-thermostat'],
      false,
    ],
    [
      'that heats behind a thermostat on a live outlet',
      { uses: ['heat'], kind: 'mat', outlet: 'always', thermostat: 'pulse' },
      [],
      true,
    ],
    [
      'that heats behind a thermostat on a timer',
      { uses: ['heat'], kind: 'mat', thermostat: 'on-off' },
      ['heat-on-timer'],
      true,
    ],
    [
      'that heats and is left to auto',
      { uses: ['heat'], kind: 'mat', thermostat: 'on-off', outlet: 'auto' },
      ['heat-left-to-auto'],
      false,
    ],
    [
      'for basking without a thermostat',
      { uses: ['daylight', 'basking'], kind: 'halogen' },
      ['basking-unregulated'],
      true,
    ],
    [
      'for basking behind a dimming thermostat',
      { uses: ['daylight', 'basking'], kind: 'halogen', thermostat: 'dimming' },
      [],
      true,
    ],
    [
      'of mercury behind a dimming thermostat',
      { kind: 'mercury', thermostat: 'dimming' },
      ['lamp-behind-regulator'],
      false,
    ],
    [
      'of metal halide behind a pulse thermostat',
      { kind: 'metal-halide', thermostat: 'pulse' },
      ['lamp-behind-regulator'],
      false,
    ],
    [
      'of light-emitting diodes behind a pulse thermostat',
      { kind: 'led', thermostat: 'pulse' },
      ['lamp-behind-regulator'],
      false,
    ],
    [
      'a tube behind a dimming thermostat',
      { kind: 'fluorescent', thermostat: 'dimming' },
      ['lamp-behind-regulator'],
      false,
    ],
    ['of mercury behind an on-off thermostat', { kind: 'mercury', thermostat: 'on-off' }, [], true],
    ['of ceramic for daylight', { kind: 'ceramic' }, ['no-light-from-heater'], false],
    ['a mat for plants', { kind: 'mat', uses: ['plants'] }, ['no-light-from-heater'], false],
    ['a cable for daylight', { kind: 'cable' }, ['no-light-from-heater'], false],
    ['on a timer that repeats', { outlet: 'pulse' }, ['lamp-on-repeat-timer'], false],
    ['on a live outlet', { outlet: 'always' }, ['lamp-never-off'], true],
  ])('%s', (_, more, codes, isPlanned) => {
    expect(saidOf(more)).toEqual({ codes, isPlanned });
  });
});
