import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import { type ReadHousehold, readHousehold } from '../../../src/read/household.ts';

const EVERY_KEY = readFileSync(new URL('./every-key.yaml', import.meta.url), 'utf8');
const SMALL = readFileSync(new URL('../../../examples/one-gecko.yaml', import.meta.url), 'utf8');

function read(text: string): {
  readonly household: ReadHousehold | null;
  readonly codes: readonly string[];
  readonly log: Log;
} {
  const log = new Log();
  const household = readHousehold('home.yaml', text, log);
  return { household, codes: log.sorted().map(({ code, place }) => `${place?.line}:${place?.column} ${code}`), log };
}

function sound(text: string): ReadHousehold {
  const { household, codes } = read(text);
  expect(codes).toEqual([]);
  if (!household) throw new Error('not read');
  return household;
}

describe('a household with every key there is', () => {
  const { tree } = sound(EVERY_KEY);
  const [fern] = tree.enclosures;

  it('keeps the order and the words of the file', () => {
    expect(Object.keys(tree)).toEqual([
      'format',
      'id',
      'name',
      'language',
      'units',
      'paper',
      'contacts',
      'site',
      'plan',
      'people',
      'noise',
      'shopping',
      'hardware',
      'enclosures',
      'away',
      'shortage',
    ]);
    expect(tree.hardware?.map((device) => device.kind)).toEqual([
      'pin-dial',
      'pin-dial',
      'programmable-timer',
      'programmable-timer',
      'mist-pump',
      'fogger',
      'dripper',
      'dripper',
      'dripper',
      'repeat-cycle-timer',
      'hand-sprayer',
    ]);
  });

  it('has site, room and plan in base units', () => {
    expect(tree.site).toMatchObject({ latitude: 41.65, longitude: -0.89, room: { day: 21, night: 18 } });
    expect(tree.site.room.humidity).toEqual([0.35, 0.36, 0.37, 0.4, 0.42, 0.45, 0.45, 0.45, 0.44, 0.42, 0.4, 0.36]);
    expect(tree.plan).toEqual({
      from: epochDay('2027-01-01'),
      days: 365,
      change_on: ['sat', 'sun'],
      settings_at_most: 8,
      tolerance: 15,
      at_least_between: 14,
      jump_at_most: 60,
      mist_sets_at_most: 4,
    });
    expect(tree.noise).toEqual({ none: [[1320, 420]] });
  });

  it('has people with one feeding time or several, in minutes', () => {
    expect(tree.people?.[0]).toEqual({
      id: 'keeper',
      chores_on: 'sat',
      reminder: 15,
      feeds_at: [495],
      minutes_a_day: 30,
      shops: true,
    });
    expect(tree.people?.[1]).toEqual({ id: 'sitter', feeds_at: [495, 1110] });
  });

  it('has devices in minutes, seconds, watts and grams an hour', () => {
    expect(tree.hardware?.[0]).toMatchObject({ step: 15, outlets: 4, rating: 1800, now: { on: 480, off: 1200 } });
    expect(tree.hardware?.[1]).toMatchObject({ step: 120, turns_in: 7 });
    expect(tree.hardware?.[2]).toMatchObject({ entries: 12, resolution: 1, shortest: 5, keeps_time: true });
    expect(tree.hardware?.[4]).toMatchObject({
      flow: 5400,
      longest_run: 300,
      rest: 600,
      duty: 0.25,
      start_step: 15,
      length_step: 15,
      lag: 3,
      after_drip: 10,
      lands: 0.6,
      tank: { holds: 15_000, reserve: 2000, refill_every: 7 },
    });
    expect(tree.hardware?.slice(6, 9).map((device) => 'runs' in device && device.runs)).toEqual([
      'always',
      { every: 180, for: 20 },
      { after_a: 'mist', for: 20 },
    ]);
    expect(tree.hardware?.[9]).toMatchObject({ on: { from: 1, to: 600 }, off: { from: 60, to: 86_400 } });
  });

  it('has the enclosure in metres, shares and days', () => {
    expect(fern).toMatchObject({
      size: { width: 0.5, depth: 0.5, height: 0.9 },
      open: 0.45,
      tray: { holds: 4000, empty_every: 2 },
      stage: [
        { from: epochDay('2026-05-01'), stage: 'juvenile' },
        { from: epochDay('2027-04-15'), stage: 'adult' },
      ],
      animals: [{ name: 'Fern', sex: 'male', born: '2025-08', weight: 140 }],
      air: { changes_per_hour: 7, wettable_area: 1.2, film: 120, transfer: 5, base_evaporation: 6, warm_up: 20 },
      nozzles: { count: 1, hits_lamp: false },
      defaults: { 'salt-test': false },
      last: { feed: epochDay('2026-12-30'), 'calcium-d3': epochDay('2026-12-20') },
    });
    expect(fern?.lamps?.[0]).toMatchObject({
      power: 75,
      replace_after: { unit: 'month', count: 12 },
      guard: true,
      warms: 4,
    });
    expect(fern?.lamps?.[1]).toMatchObject({ replace_after: { unit: 'hour', count: 3000 } });
  });

  it('has feeders, chores, rest and states', () => {
    expect(fern?.feeders?.[0]).toEqual({
      id: 'cricket',
      food: 'insects',
      share: 0.75,
      count: 5,
      dust: true,
      shelf_life: 10,
      losses: 0.1,
      gut_load: 24,
      in_stock: 60,
      stand_in: false,
      calcium: 0.4,
      phosphorus: 9,
      culture: { first_after: 14, lasts: 28, keep: 3 },
    });
    expect(fern?.chores?.map(({ every, on, lamp_hours }) => every ?? on ?? lamp_hours)).toEqual([
      { unit: 'day', count: 2 },
      [epochDay('2027-05-01')],
      3000,
    ]);
    expect(fern?.rest).toMatchObject({ weeks: 10, ramp: 28, last_feed: 21, targets: { photoperiod: { hours: 600 } } });
    expect(fern?.supplements).toEqual([
      {
        id: 'multivitamin',
        contains: ['d3', 'vitamin-a'],
        opened: epochDay('2026-12-01'),
        good_for: { unit: 'month', count: 6 },
      },
      { id: 'calcium', contains: [] },
    ]);
  });

  it('has absences with visits in either form', () => {
    expect(tree.away?.map(({ sitter, visits }) => [sitter, visits])).toEqual([
      ['sitter', { every: 1 }],
      ['sitter', { dates: [epochDay('2027-05-03'), epochDay('2027-05-06')] }],
      ['sitter', { dates: [epochDay('2027-06-02')] }],
      [undefined, undefined],
    ]);
  });
});

describe('places', () => {
  const household = sound(EVERY_KEY);
  const lineAt = (text: string, line: number) => text.split('\n')[line - 1] ?? '';
  const underlined = (path: readonly (string | number)[], key = false): string => {
    const place = key ? household.placeOfKey(path) : household.placeOf(path);
    return [...lineAt(EVERY_KEY, place.line)].slice(place.column - 1, place.column - 1 + place.length).join('');
  };

  it('are those of the value, of its key, or of the nearest parent', () => {
    expect(underlined(['site', 'latitude'])).toBe('41.65');
    expect(underlined(['site', 'latitude'], true)).toBe('latitude');
    expect(underlined(['site'])).toBe('site');
    expect(underlined(['hardware', 0, 'nonsense', 3])).toBe('id: wall-dial');
    expect(underlined(['nowhere'])).toBe('format: 1');
    expect(household.stands(['site', 'latitude'])).toBe(true);
    expect(household.stands(['site', 'altitude'])).toBe(false);
  });

  it('step through a value that carries its source', () => {
    const path = ['enclosures', 0, 'targets', 'humidity', 'floor'];
    expect(household.tree.enclosures[0]?.targets?.humidity?.floor).toBe(0.25);
    expect(household.saidAt(path)).toEqual({
      source: 'practice',
      why: "dry room, vet's advice",
      also: [{ value: 0.3, source: 'ours' }],
    });
    expect(household.saidAt(['enclosures', 0, 'targets', 'humidity', 'day'])).toEqual({
      source: null,
      why: "dry room, vet's advice",
      also: [],
    });
  });

  it('count characters, not bytes or code units, and know every line end', () => {
    for (const end of ['\n', '\r\n']) {
      const text = `\ufeff${['format: 1', 'name: "😀 日本"', 'units: imperial'].join(end)}${end}`;
      expect(read(text).codes).toContain('3:8 not-a-choice');
    }
    expect(read('name: { "😀": 1 }\n').log.sorted()[0]?.place).toMatchObject({ line: 1 });
    expect(read('contacts: { keeper: "😀😀", vat: x }\n').codes).toContain('1:27 unknown-key');
  });
});

describe('problems', () => {
  it('are all said at once: form, values and references, by place', () => {
    const text = SMALL.replace('latitude: 40.4', 'latitude: 404')
      .replace('{ day: 22 °C', '{ day: 22')
      .replace('outlet: dial', 'outlet: dail')
      .replace('species:', 'spezies:')
      .replace('step: 15 min', 'step: 25 min');
    expect(read(text).codes.map((code) => code.split(' ')[1])).toEqual([
      'out-of-bounds',
      'needs-unit',
      'step-form',
      'unknown-key',
      'unknown-id',
    ]);
  });

  it('do not follow from one another: a list that is none has no unknown entries', () => {
    expect(read(SMALL.replace(/hardware:\n.*\n/u, 'hardware: dial\n')).codes).toHaveLength(1);
    expect(read(SMALL.replace('kind: pin-dial', 'kind: pin-dail')).codes).toHaveLength(1);
  });

  it.each([
    ['feeds_at: 7:30', true],
    ['feeds_at: "07:30"', true],
    ['feeds_at: 450', false],
    ['feeds_at: "24:00"', false],
    ['feeds_at: 07:60', false],
  ])('people: %s is %s', (feeds, good) => {
    expect(read(`${SMALL}people: [{ id: keeper, ${feeds} }]\n`).household !== null).toBe(good);
  });

  it.each(['.nan', '.inf', '-.inf', '1e400', '0x10000', '~', 'true'])(
    'latitude: %s is refused with a place',
    (value) => {
      expect(
        read(SMALL.replace('latitude: 40.4', `latitude: ${value}`)).codes.map((code) => code.split(':')[0]),
      ).toEqual(['6']);
    },
  );

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])('%s is a key like any other', (key) => {
    expect(read(`${SMALL}${key}: 1\n`).codes.map((code) => code.split(' ')[1])).toEqual(['unknown-key']);
    expect(
      read(SMALL.replace('species: leopard-gecko', `species: leopard-gecko\n    defaults: { ${key}: off }`)).codes,
    ).toHaveLength(/^[a-z]+$/u.test(key) ? 0 : 1);
  });

  it('keeps a plan within 1100 days', () => {
    expect(read(SMALL.replace('{ from: 2027-01-01 }', '{ from: 2027-01-01, days: 1100 }')).household).not.toBeNull();
    expect(read(SMALL.replace('{ from: 2027-01-01 }', '{ from: 2027-01-01, days: 1101 }')).codes).toHaveLength(1);
  });

  it('take no text that is nested, aliased or tagged beyond what the contract has', () => {
    expect(read(`x: ${'['.repeat(20_000)}`).household).toBeNull();
    expect(read(`x: ${'- '.repeat(20_000)}`).codes.length).toBeGreaterThan(0);
    expect(read(`a: &a [1]\nb: *a\n`).codes.some((code) => code.endsWith('alias-used'))).toBe(true);
    expect(read(`a: !!binary aGk=\n`).codes.length).toBeGreaterThan(0);
  });
});
