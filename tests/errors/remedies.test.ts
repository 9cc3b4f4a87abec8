/** A remedy that a message names, done in its gallery case, makes the message go. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CASES, saidOf, saidOfText } from './gallery.ts';

type Remedy = readonly [code: string, from: string | RegExp, to: string];

const REMEDIES: readonly Remedy[] = [
  ['day-longer-than-allowed', 'no_light_after: "20:00"', 'no_light_after: "21:00"'],
  ['dripper-step', 'for: 20 min', 'for: 30 min'],
  ['dripper-bowl', 'holds: 1 L', 'holds: 3 L'],
  ['feed-outside-hours', 'mist: by-hand', 'mist: by-hand\n    targets: { day: { midday: "12:45" } }'],
  ['feed-outside-hours', 'feeds_at: "08:15"', 'feeds_at: "08:30"'],
  ['feed-outside-hours', 'feeds_at: "08:15"', 'feeds_at: "14:30"'],
  ['heat-without-thermostat', 'outlet: always }', 'outlet: always, thermostat: on-off }'],
  ['heat-left-to-auto', 'outlet: auto, thermostat', 'outlet: always, thermostat'],
  ['humidity-short', 'open: 45 %', 'open: 30 %'],
  ['humidity-short', 'floor: dry', 'floor: damp-below'],
  ['out-of-reach', 'open: 100 %', 'open: 34 %'],
  ['inset-leaves-nothing', 'before_lights_off: 6 h', 'before_lights_off: 4 h'],
  ['inset-outlasts-day', 'hours: 14 h', 'hours: 9 h'],
  ['no-shopping-day', /$/, 'shopping: { days: [fri] }\n'],
  ['nothing-takes-dust', 'dust: false', 'dust: true'],
  ['outlets-too-few', 'outlets: 1', 'outlets: 2'],
  ['stock-not-counted', 'shelf_life: 14 days', 'shelf_life: 14 days, in_stock: 60'],
  ['stand-in-undusted', 'dust: false', 'dust: true'],
  ['nothing-stands-in', /$/, '      - { id: mealworm, share: 0 %, dust: true, shelf_life: 60 days, stand_in: true }\n'],
  ['tank-below-one-mist', 'holds: 20 mL', 'holds: 5 L'],
  ['too-humid-unmisted', 'humidity: 100 %', 'humidity: 50 %'],
  ['tolerance-out-of-reach', 'settings_at_most: 3', 'settings_at_most: 17'],
  [
    'pump-step',
    'kind: pin-dial, step: 15 min, rating',
    'kind: programmable-timer, entries: 12, resolution: 1 s, rating',
  ],
  ['cadence-too-dense', 'gap: 2 h', 'gap: 110 min'],
  ['jump-costs-light', ', jump_at_most: 15 min', ''],
  ['jump-not-kept', 'jump_at_most: 30 min', 'jump_at_most: 60 min'],
  ['mist-sets-too-few', 'mist_sets_at_most: 1', 'mist_sets_at_most: 4'],
  ['nozzles-too-many', 'nozzles: 3,', 'nozzles: 5,'],
  ['nozzles-too-many', 'count: 3', 'count: 1'],
  ['feeds-at-too-few', 'feeds_at: "11:00"', 'feeds_at: ["11:00", "16:00"]'],
  ['shelf-life-too-short', 'days: [fri]', 'days: [mon, thu]'],
  ['drink-without-misting', 'misting: none', 'water: { drink: none, dish: { change_every: 1 day } }'],
  ['dry-out-outlasts-hours', 'when: lit', 'when: any'],
  ['leaves-stay-wet', 'open: 2 %', 'open: 40 %'],
  ['no-water-planned', 'mist: none', 'mist: by-hand'],
  ['peak-below-day', 'peak: [40 %', 'peak: [50 %'],
  ['water-freezes', 'night: -3 °C', 'night: 6 °C'],
  ['day-too-full', 'minutes_a_day: 20', 'minutes_a_day: 54'],
  ['tank-runs-dry', /holds: [\d.]+ L/, 'holds: 5 L'],
];

describe('a remedy that is done', () => {
  it.each(REMEDIES)('takes %s away (%s)', (code, from, to) => {
    const text = readFileSync(new URL(`${code}.yaml`, CASES), 'utf8');
    const done = text.replace(from, to);
    expect(done).not.toBe(text);
    expect(saidOf(code).diagnostics.map((each) => each.code)).toContain(code);
    const left = saidOfText(`${code}.yaml`, done).diagnostics;
    expect(left.filter((each) => each.code === code || each.weight === 'error')).toEqual([]);
  });

  it('of animals of day and night is one more hour', () => {
    const text = readFileSync(new URL('feed-outside-hours.yaml', CASES), 'utf8').replace('"08:15"', '"10:30"');
    const night = `  - id: dusk
    species: crested-gecko
    stage: adult
    size: { width: 45 cm, depth: 45 cm, height: 60 cm }
    open: 18 %
    lamps: [{ id: day, kind: led, for: [daylight], power: 20 W, outlet: dusk-dial }]
    mist: by-hand
    targets: { day: { lights_off: "19:30", why: one hour all year } }
    supplements: [{ id: calcium, contains: [] }]
    feeders: [{ id: diet, food: prepared, share: 100 %, shelf_life: 180 days }]
`;
    const dial = '  - { id: dusk-dial, kind: pin-dial, step: 15 min, rating: 1800 W, clock: wall }\nenclosures:';
    const both = `${text.trimEnd()}\n${night}`.replace('enclosures:', dial);
    const outside = (household: string) =>
      saidOfText('home.yaml', household).diagnostics.filter(({ code }) => code === 'feed-outside-hours');
    const [said, ...rest] = outside(both);
    expect(rest).toEqual([]);
    const [, hours = ''] = /(feeds_at: \[.*\])/.exec(said?.instead ?? '') ?? [];
    expect(hours).toMatch(/^feeds_at: \["10:30", "(18|19|20):\d\d"\]$/);
    expect(outside(both.replace('feeds_at: "10:30"', hours))).toEqual([]);
  });

  it('comes as near with the settings that small changes need', () => {
    const text = readFileSync(new URL('jump-costs-light.yaml', CASES), 'utf8');
    const before = saidOf('jump-costs-light').diagnostics.find(({ code }) => code === 'jump-costs-light');
    expect(before?.instead).toBe(
      'allow larger changes, or 9 settings, the fewest that come within 30 min all the same',
    );
    const after = saidOfText('home.yaml', text.replace('settings_at_most: 3', 'settings_at_most: 9')).diagnostics;
    expect(after.find(({ code }) => code === 'jump-costs-light')?.because).toMatch(/leave dial 30 min from the target/);
  });
});
