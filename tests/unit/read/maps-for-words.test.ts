/** A map stands where a word is asked for: it is said to be one, and no fault. */
import { expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { readHousehold } from '../../../src/read/household.ts';

const HOUSEHOLD = (what: string) => `format: 1
name: Home
site: { timezone: Europe/Madrid, latitude: 40.4, longitude: -3.7, room: { day: 22 °C, night: 19 °C, humidity: 45 % } }
plan: { from: 2027-01-01 }
hardware:
  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W }
enclosures:
  - id: ochre
    species: leopard-gecko
    stage: adult
    size: { width: 90 cm, depth: 45 cm, height: 45 cm }
    open: 45 %
${what}
`;

it.each([
  ['the losses of a feeder', '    feeders: [{ id: cricket, share: 100 %, losses: { a: 1 } }]'],
  [
    'when a lamp is replaced',
    '    lamps: [{ id: day, kind: led, for: [daylight], power: 10 W, outlet: dial, replace_after: { a: 1 } }]',
  ],
  ['the feeds of a dusting', '    targets: { dust: [{ with: calcium, every: { a: 1 } }] }'],
  ['basking', '    targets: { basking: { hours: [1, { a: 1 }] } }'],
])('for %s', (_, what) => {
  const log = new Log();
  expect(readHousehold('home.yaml', HOUSEHOLD(what), log)).toBeNull();
  const said = log.sorted().map(({ because }) => because);
  expect(said.length).toBeGreaterThan(0);
  expect(said.join()).not.toMatch(/undefined|\[object/);
});
