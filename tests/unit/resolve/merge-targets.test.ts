import { describe, expect, it } from 'vitest';
import { minimalHousehold, resolvedEnclosure, resolveText } from '../../shipped-profiles.ts';

const withTargets = (...lines: readonly string[]) =>
  minimalHousehold({ enclosure: ['targets:', ...lines.map((line) => `  ${line}`)] });

describe('targets of the file over the profile', () => {
  it('keeps what the file does not say, key by key, where the group is merged', () => {
    const { targets } = resolvedEnclosure(withTargets('humidity: { day: [45 %, 60 %], floor: 25 % }'));
    expect(targets.humidity.day).toEqual([0.45, 0.6]);
    expect(targets.humidity.floor).toBe(0.25);
    expect(targets.humidity.night).toEqual([0.7, 0.95]);
    expect(targets.humidity.peaksPerDay).toEqual([1, 3]);
  });

  it.each([
    ['photoperiod', 'photoperiod: { hours: 12 h }', 'photoperiod.longest'],
    ['basking', 'basking: { hours: 6 h }', 'basking.after_lights_on'],
    ['uvb', 'uvb: { hours: 6 h }', 'uvb.ferguson_zone'],
    ['misting', 'misting: { per_day: [1, 1], seconds: [60 s, 60 s] }', 'misting.gap'],
    ['feeding', 'feeding: { from: "09:00", to: "11:00" }', 'feeding.from.after_lights_on'],
    ['day', 'day: { lights_on: "08:00" }', 'day.midday'],
  ])('replaces %s whole', (_, line, gone) => {
    const { targetRecords } = resolvedEnclosure(withTargets(line));
    expect(targetRecords.map(({ path }) => path)).not.toContain(gone);
  });

  it('replaces a stage’s feeds whole and keeps its dusting and spacing', () => {
    const { targets } = resolvedEnclosure(
      withTargets('stages: { adult: { feeds: [{ food: insects, every: 3 days, portion: { pieces: 4 } }] } }'),
    );
    expect(targets.stages.adult?.feeds).toEqual([
      {
        food: 'insects',
        rhythm: { kind: 'every', days: 3 },
        timesADay: 1,
        pieces: 4,
        portion: '4',
        asEatenMinutes: null,
        removeAfterHours: null,
      },
    ]);
    expect(targets.stages.adult?.dusting.map(({ id }) => id)).toEqual(['calcium-d3', 'multivitamin', 'calcium']);
    expect(targets.stages.adult?.apart).toHaveLength(3);
  });

  it('lets the mean of 24 h stand instead of the profile’s day and night, and the other way round', () => {
    const mean = resolvedEnclosure(withTargets('humidity: { mean: [50 %, 70 %] }')).targets.humidity;
    expect([mean.day, mean.night, mean.mean]).toEqual([null, null, [0.5, 0.7]]);
    const day = resolvedEnclosure(
      minimalHousehold({
        species: 'leopard-gecko',
        enclosure: ['mist: none', 'targets: { humidity: { day: [20 %, 40 %] } }'],
      }),
    ).targets.humidity;
    expect([day.day, day.mean]).toEqual([[0.2, 0.4], null]);
  });

  it('takes hours away with none', () => {
    const { targets } = resolvedEnclosure(withTargets('basking: none', 'uvb: none', 'water: { dry_out: none }'));
    expect([targets.basking, targets.uvb, targets.water.dryOut]).toEqual([null, null, null]);
    expect(targets.water.drink).toEqual({ when: 'lit', mists: 1, atLeastSeconds: 120 });
  });

  it('names the line and the reason of the file, and the source, line and citation of the profile', () => {
    const text = withTargets('humidity:', '  floor: { value: 25 %, why: dry room }', '  why: for the whole group');
    const { targetRecords } = resolvedEnclosure(text);
    const floor = targetRecords.find(({ path }) => path === 'humidity.floor');
    const line = text.split('\n').findIndex((content) => content.includes('floor:')) + 1;
    expect(floor).toEqual({
      path: 'humidity.floor',
      value: 0.25,
      unit: '1',
      origin: { kind: 'file', file: 'home.yaml', line, why: 'dry room' },
    });
    const zone = targetRecords.find(({ path }) => path === 'uvb.ferguson_zone');
    expect(zone?.origin).toMatchObject({
      kind: 'profile',
      file: 'profiles/panther-chameleon.yaml',
      source: 'baines2016',
      read: 'memory',
      also: [{ value: 4, source: 'ferguson2021' }],
    });
    expect(zone?.origin.citation).toContain('The UV-Tool');
  });

  it('records what nobody said as a default of this tool', () => {
    const records = resolvedEnclosure(
      withTargets(
        'photoperiod: { hours: 12 h }',
        'misting: { per_day: [1, 2], seconds: [60 s, 90 s] }',
        'day: { no_light_before: "07:00" }',
      ),
    ).targetRecords;
    const defaults = records.filter(({ origin }) => origin.kind === 'default').map(({ path, value }) => [path, value]);
    expect(defaults).toEqual([
      ['day.midday', '13:00'],
      ['misting.favour', 'dawn-and-dusk'],
      ['photoperiod.season', 'site'],
    ]);
  });

  it('finds the place of a target, of its group, and none for a default', () => {
    const text = withTargets('humidity: { floor: 25 % }');
    const { care } = resolveText(text);
    const line = text.split('\n').findIndex((content) => content.includes('floor')) + 1;
    expect(care?.placeOfTarget('home', 'humidity.floor')).toMatchObject({ file: 'home.yaml', line });
    expect(care?.placeOfTarget('home', 'temperature.never_below')?.file).toBe('profiles/panther-chameleon.yaml');
    expect(care?.placeOfTarget('home', 'stages.adult.feeds.0.per_week')?.file).toBe('profiles/panther-chameleon.yaml');
    expect(care?.placeOfTarget('home', 'rest.photoperiod')).toBeNull();
    expect(care?.placeOfTarget('nowhere', 'humidity.floor')).toBeNull();
  });

  it('takes the reason of the file’s own temperatures as leave to pass the limits', () => {
    expect(resolvedEnclosure(minimalHousehold()).targets.temperature.limitsWaivedBecause).toBeNull();
    expect(
      resolvedEnclosure(withTargets('temperature: { never_above: 34 °C }')).targets.temperature.limitsWaivedBecause,
    ).toBeNull();
    const waived = resolvedEnclosure(withTargets('temperature: { never_above: 34 °C, why: the vet agrees }')).targets
      .temperature;
    expect(waived.limitsWaivedBecause).toBe('the vet agrees');
    expect(waived.neverBelowC).toBe(15);
  });
});
