import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { type ReadProfile, readProfile } from '../../../src/read/profile.ts';

const TEXT = `format: 1
species: shelf-gecko
name: Shelf gecko
scientific: Gecko inventus
activity: { value: nocturnal, source: baker2001 }
sources:
  baker2001: { cite: "Baker B (2001) Journal of Shelves 1:1-9", read: opened }
  cook2002: { cite: "Cook C (2002) Journal of Shelves 2:1-9", read: memory }
photoperiod:
  value: { longest: 14 h, shortest: { value: 9 h, source: cook2002, also: [{ value: 600 min, source: practice }] } }
  source: baker2001
  also: [{ value: { hours: 12 h }, source: ours }]
basking: none
uvb: { value: none, why: it hides by day, source: practice }
temperature: { day: [72 °F, 80 °F], night: [18 °C, 22 °C], never_below: { value: 10 °C, source: ours }, source: practice }
water:
  drink: none
  no_mist: { value: [{ from: "22:00", to: { before_lights_on: 30 min } }], source: ours }
moist_hide: { humidity: [70 %, 90 %], dampen_every: 3 days, source: practice }
feeding: { from: { value: { before_lights_off: 30 min }, source: cook2002 }, to: { after_lights_off: 1 h }, source: practice }
may_go_without: { adult: 14 days, hatchling: { value: 3 days, source: practice }, source: ours }
stages:
  source: practice
  hatchling: { like: adult }
  adult:
    feeds: { value: [{ food: insects, every: 2 days, portion: { pieces: 5 } }], source: cook2002 }
    dusting: []
    why: as shops advise
`;

function sound(text: string): ReadProfile {
  const log = new Log();
  const profile = readProfile('shelf-gecko.yaml', text, log);
  expect(log.sorted()).toEqual([]);
  if (!profile) throw new Error('not read');
  return profile;
}

const codesOf = (text: string): readonly string[] => {
  const log = new Log();
  readProfile('shelf-gecko.yaml', text, log);
  return log.sorted().map(({ code, place }) => `${place?.line} ${code}`);
};

describe('a profile', () => {
  const profile = sound(TEXT);

  it('is plain values, whoever said them', () => {
    expect(profile.tree).toMatchObject({
      activity: 'nocturnal',
      photoperiod: { longest: 840, shortest: 540 },
      basking: 'none',
      uvb: 'none',
      temperature: { night: [18, 22], never_below: 10 },
      water: { drink: 'none', no_mist: [{ from: { minute: 1320 }, to: { of: 'before_lights_on', minutes: 30 } }] },
      moist_hide: { humidity: [0.7, 0.9], dampen_every: 3 },
      feeding: { from: { of: 'before_lights_off', minutes: 30 }, to: { of: 'after_lights_off', minutes: 60 } },
      stages: {
        hatchling: { like: 'adult' },
        adult: { feeds: [{ food: 'insects', every: 2, portion: { pieces: 5 } }], dusting: [] },
      },
    });
    expect(profile.tree.temperature?.day?.[0]).toBeCloseTo(22.2222, 4);
    expect(profile.tree.may_go_without).toEqual({ adult: 14, hatchling: 3 });
    expect(Object.keys(profile.tree.stages ?? {})).toEqual(['hatchling', 'adult']);
  });

  it.each([
    ['activity', 'baker2001'],
    ['photoperiod.longest', 'baker2001'],
    ['photoperiod.shortest', 'cook2002'],
    ['uvb', 'practice'],
    ['temperature.day', 'practice'],
    ['temperature.never_below', 'ours'],
    ['water.no_mist', 'ours'],
    ['water.no_mist.0.from', 'ours'],
    ['feeding.from', 'cook2002'],
    ['feeding.to', 'practice'],
    ['may_go_without.adult', 'ours'],
    ['may_go_without.hatchling', 'practice'],
    ['stages.hatchling', 'practice'],
    ['stages.adult.feeds', 'cook2002'],
    ['stages.adult.feeds.0.portion', 'cook2002'],
    ['stages.adult.dusting', 'practice'],
    ['basking', null],
  ])('%s is said by %s', (path, source) => {
    const steps = path.split('.').map((step) => (/^\d+$/u.test(step) ? Number(step) : step));
    expect(profile.saidAt(steps).source).toBe(source);
  });

  it('keeps what disagrees, in the same units, at the value that it disagrees with', () => {
    expect(profile.saidAt(['photoperiod', 'shortest']).also).toEqual([{ value: 600, source: 'practice' }]);
    expect(profile.saidAt(['photoperiod']).also).toEqual([{ value: { hours: 720 }, source: 'ours' }]);
    expect(profile.saidAt(['photoperiod', 'longest']).also).toEqual([]);
    expect(profile.saidAt(['stages', 'adult', 'dusting']).why).toBe('as shops advise');
  });

  it('has places below a map that carries its source', () => {
    expect(profile.placeOf(['photoperiod', 'longest'])).toMatchObject({ line: 10, column: 21, length: 4 });
    expect(profile.placeOfKey(['photoperiod', 'shortest'])).toMatchObject({ line: 10, column: 27, length: 8 });
    expect(profile.placeOf(['stages', 'adult', 'feeds', 0, 'food'])).toMatchObject({ line: 26, column: 30, length: 7 });
    expect(profile.stands(['photoperiod', 'longest'])).toBe(true);
    expect(profile.stands(['photoperiod', 'hours'])).toBe(false);
  });

  it.each([
    ['source: baker2001\n', 'source: backer2001\n', '11 source-unknown'],
    ['like: adult', 'like: adlut', '24 unknown-id'],
    ['never_below: { value: 10 °C', 'never_below: { value: 10', '15 needs-unit'],
    ['also: [{ value: 600 min', 'also: [{ value: 600', '10 needs-unit'],
    ['shortest: { value: 9 h', 'shortest: { value: 15 h', '10 lengths-out-of-order'],
    ['basking: none', 'basking: never', '13 wrong-shape'],
    ['name: Shelf gecko\n', '', '1 key-missing'],
    ['after_lights_off: 1 h', 'after_lights_off: -1 h', '20 out-of-bounds'],
    ['dusting: []', 'dusting: [{ id: calcium, every: 2 }]', '27 every-form'],
    ['every: 2 days, portion', 'every: 2 days, per_week: 3, portion', '26 one-of'],
  ])('with %j as %j is refused: %s', (from, to, expected) => {
    expect(TEXT).toContain(from);
    expect(codesOf(TEXT.replace(from, to))).toEqual([expected]);
  });
});
