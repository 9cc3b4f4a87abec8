/** A map stands where a word is asked for: it is said to be one, and no fault. */
import { expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { readHousehold } from '../../../src/read/household.ts';
import { readProfile } from '../../../src/read/profile.ts';
import { profileText } from '../../shipped-profiles.ts';

const HOUSEHOLD = `format: 1
name: Home
site: { timezone: Europe/Madrid, latitude: 40.4, longitude: -3.7, room: { day: 22 °C, night: 19 °C, humidity: 45 % } }
plan: { from: 2027-01-01 }
hardware: []
enclosures:
  - id: ochre
    species: leopard-gecko
    stage: adult
    size: { width: 90 cm, depth: 45 cm, height: 45 cm }
    open: 45 %
    feeders: [{ id: cricket, share: 100 %, losses: { a: 1 } }]
`;

it('for the losses of a feeder', () => {
  const log = new Log();
  expect(readHousehold('home.yaml', HOUSEHOLD, log)).toBeNull();
  expect(log.sorted().map(({ because }) => because)).toContain(
    'how often is a count and a word; a map of keys is none',
  );
});

it('for the feeds of a dusting', () => {
  const log = new Log();
  const text = profileText('leopard-gecko').replace('every: 2 feeds', 'every: { a: 1 }');
  expect(readProfile('gecko.yaml', text, log)).toBeNull();
  expect(log.sorted().map(({ because }) => because)).toContain(
    'how often is a count and a word; a map of keys is none',
  );
});
