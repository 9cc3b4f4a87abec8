import { describe, expect, it } from 'vitest';
import { PROFILE_WORDS_ES } from '../../../src/resolve/profile-words-es.ts';
import {
  minimalHousehold,
  PROFILE_IDS,
  resolvedEnclosure,
  resolveText,
  shippedProfile,
} from '../../shipped-profiles.ts';

const TIMER = '{ id: seconds, kind: programmable-timer, entries: 8, resolution: 1 s, clock: wall }';
const PUMP =
  '{ id: pump, kind: mist-pump, outlet: seconds, power: 30 W, flow: 90 mL/min, nozzles: 2, longest_run: 5 min, rest: 10 min }';
const codes = (text: string) => resolveText(text).diagnostics.map(({ code }) => code);
const lamp = (kind: string) =>
  `lamps: [{ id: sun, kind: ${kind}, for: [${kind === 'ceramic' ? 'heat' : 'daylight'}], power: 50 W, outlet: dial, thermostat: on-off }]`;

describe('spray beside a hot lamp', () => {
  it.each(['halogen', 'mercury', 'metal-halide', 'ceramic'])('is asked about with a %s lamp', (kind) => {
    const text = (more: readonly string[]) =>
      minimalHousehold({ hardware: [TIMER, PUMP], enclosure: ['mist: pump', lamp(kind), ...more] });
    expect(codes(text([]))).toContain('hot-lamp-and-spray');
    expect(codes(text(['nozzles: { hits_lamp: true }']))).not.toContain('hot-lamp-and-spray');
    expect(codes(text(['nozzles: { count: 1 }']))).toContain('hot-lamp-and-spray');
  });

  it.each(['led', 'fluorescent'])('is not asked about with a %s lamp', (kind) => {
    expect(codes(minimalHousehold({ hardware: [TIMER, PUMP], enclosure: ['mist: pump', lamp(kind)] }))).not.toContain(
      'hot-lamp-and-spray',
    );
  });

  it('is not asked about where nothing is misted by a machine', () => {
    expect(codes(minimalHousehold({ enclosure: ['mist: by-hand', lamp('halogen')] }))).not.toContain(
      'hot-lamp-and-spray',
    );
  });
});

describe('how an enclosure is misted', () => {
  const unsaid = (hardware: readonly string[], species: string) =>
    resolveText(minimalHousehold({ species, hardware }).replace('    mist: by-hand\n', ''));

  it('takes the one pump, the hand or nothing where the file is silent, and says so', () => {
    expect(unsaid([TIMER, PUMP], 'panther-chameleon').care?.enclosures[0]?.mist).toBe('pump');
    const byHand = unsaid([], 'panther-chameleon');
    expect(byHand.care?.enclosures[0]?.mist).toBe('by-hand');
    expect(byHand.diagnostics.map(({ code, weight }) => [code, weight])).toContainEqual(['mist-taken', 'note']);
    const dry = unsaid([TIMER, PUMP], 'leopard-gecko');
    expect(dry.care?.enclosures[0]?.mist).toBe('none');
    expect(dry.diagnostics.map(({ code }) => code)).not.toContain('mist-taken');
  });

  it('gives a lone enclosure all nozzles of its pump, and what is left to those that say no count', () => {
    expect(resolvedEnclosure(minimalHousehold({ hardware: [TIMER, PUMP], enclosure: ['mist: pump'] })).nozzles).toEqual(
      { count: 2, hitsLamp: null },
    );
    const second =
      '  - { id: second, species: panther-chameleon, stage: adult, size: { width: 50 cm, depth: 50 cm, height: 90 cm }, open: 30 %, mist: pump }\n';
    const counts = (first: string) =>
      resolveText(
        minimalHousehold({
          hardware: [TIMER, PUMP.replace('nozzles: 2', 'nozzles: 4')],
          enclosure: ['mist: pump', ...(first === '' ? [] : [first])],
        }) + second,
      );
    expect(counts('nozzles: { count: 3 }').care?.enclosures.map(({ nozzles }) => nozzles.count)).toEqual([3, 1]);
    expect(counts('').care?.enclosures.map(({ nozzles }) => nozzles.count)).toEqual([2, 2]);
    expect(counts('nozzles: { count: 4 }').diagnostics.map(({ code }) => code)).toContain('nozzles-too-many');
  });

  it.each([
    [1, 'write nozzles: 2 on pump if it has them, else let it mist one enclosure fewer'],
    [2, 'write nozzles: 3 on pump if it has them, else let it mist one enclosure fewer'],
    [3, 'write nozzles: 4 on pump if it has them, else let it mist 2 enclosures fewer'],
  ])('says with numbers what helps where %i more enclosures are misted than it was bought for', (more, instead) => {
    const others = Array.from(
      { length: more },
      (_, index) =>
        `  - { id: e${index}, species: panther-chameleon, stage: adult, size: { width: 50 cm, depth: 50 cm, height: 90 cm }, open: 30 %, mist: pump }\n`,
    );
    const has = Math.min(more, 2);
    const pump = PUMP.replace('nozzles: 2', `nozzles: ${has}`);
    const text = minimalHousehold({ hardware: [TIMER, pump], enclosure: ['mist: pump'] }) + others.join('');
    const said = resolveText(text).diagnostics.find(({ code }) => code === 'nozzles-too-many');
    expect(said?.instead).toBe(instead);
  });
});

describe('powders', () => {
  it('takes what the label says, and the name with a warning where nobody does', () => {
    const said = resolvedEnclosure(
      minimalHousehold({
        enclosure: [
          'supplements: [{ id: multivitamin, contains: [vitamin-a], opened: 2026-12-01, good_for: 6 months }]',
        ],
      }),
    ).supplements;
    expect(said.map(({ id, contains, said: isSaid, goodForDays }) => [id, contains, isSaid, goodForDays])).toEqual([
      ['multivitamin', ['vitamin-a'], true, 183],
      ['calcium-d3', ['d3'], false, null],
      ['calcium', [], false, null],
    ]);
    const warning = resolveText(minimalHousehold()).diagnostics.find(({ code }) => code === 'powder-contents-taken');
    expect(warning?.weight).toBe('warning');
    expect(warning?.because).toContain('multivitamin holds vitamin D3 and vitamin A');
    expect(warning?.because).toContain('calcium holds neither vitamin D3 nor vitamin A');
  });

  it('says nothing where all are said, or none is used', () => {
    const all =
      'supplements: [{ id: calcium, contains: [] }, { id: calcium-d3, contains: [d3] }, { id: multivitamin, contains: [d3, vitamin-a] }]';
    expect(codes(minimalHousehold({ enclosure: [all] }))).toEqual([]);
    expect(codes(minimalHousehold({ species: 'ball-python', enclosure: ['mist: none'] }))).toEqual([]);
  });
});

describe('feeders', () => {
  it('shares what is left of a stream evenly among those that say no share', () => {
    const { feeders } = resolvedEnclosure(
      minimalHousehold({
        enclosure: [
          'feeders: [{ id: cricket, share: 50 % }, { id: locust }, { id: roach }, { id: diet, food: prepared }]',
        ],
      }),
    );
    expect(feeders.map(({ id, share }) => [id, share])).toEqual([
      ['cricket', 0.5],
      ['locust', 0.25],
      ['roach', 0.25],
      ['diet', 1],
    ]);
    expect(feeders[0]).toMatchObject({ food: 'insects', dust: false, lossesPerWeek: 0, standIn: false, count: null });
  });
});

describe('chores', () => {
  it('joins the species’ own chores to the file’s, the file’s first and instead of one of the same id', () => {
    const chores = (line: string) =>
      resolvedEnclosure(minimalHousehold({ species: 'ball-python', enclosure: ['mist: none', line] })).chores;
    expect(
      chores('chores: [{ id: glass, title: Wipe, every: 1 week }]').map(({ id, origin, minutes, who }) => [
        id,
        origin,
        minutes,
        who,
      ]),
    ).toEqual([
      ['glass', { kind: 'file', source: 'household' }, 5, 'keeper'],
      ['substrate', { kind: 'profile', source: 'practice' }, 2, 'keeper'],
    ]);
    expect(
      chores('chores: [{ id: substrate, title: My way, every: 2 days, minutes: 4 }]').map(({ title, rhythm }) => [
        title,
        rhythm,
      ]),
    ).toEqual([['My way', { kind: 'days', every: 2 }]]);
    expect(chores('defaults: { salt-test: off, weigh: on }').length).toBe(1);
    expect(
      resolvedEnclosure(minimalHousehold({ enclosure: ['defaults: { salt-test: off, weigh: on }'] })).choresOff,
    ).toEqual(['salt-test']);
  });
});

describe('cautions', () => {
  const cautions = (text: string) => resolvedEnclosure(text).cautions;
  it('stand where they matter and not elsewhere', () => {
    const snake = cautions(
      minimalHousehold({
        species: 'ball-python',
        enclosure: [
          'mist: none',
          'lamps: [{ id: mat, kind: mat, for: [heat], power: 20 W, outlet: always, thermostat: on-off }]',
        ],
      }),
    );
    expect(snake).toContain('salmonella');
    expect(snake).toContain('heat-on-thermostat');
    for (const absent of [
      'vitamins',
      'hot-lamps',
      'pump-can-flood',
      'rest-only-if-checked',
      'lamp-distance',
      'uv-lamps',
    ])
      expect(snake).not.toContain(absent);
    const misted = cautions(
      minimalHousehold({
        hardware: [TIMER, PUMP],
        enclosure: ['mist: pump', lamp('mercury'), 'nozzles: { hits_lamp: false }'],
      }),
    );
    for (const present of [
      'vitamins',
      'hot-lamps',
      'shield-the-lamp',
      'mains-near-water',
      'pump-can-flood',
      'uv-lamps',
      'standing-water',
      'dial-clocks',
    ])
      expect(misted).toContain(present);
    expect(
      cautions(
        minimalHousehold({
          hardware: [TIMER, PUMP],
          enclosure: ['mist: pump', lamp('mercury'), 'nozzles: { hits_lamp: true }'],
        }),
      ),
    ).not.toContain('shield-the-lamp');
  });

  it('have their texts with sources in the household, each once', () => {
    const { care } = resolveText(minimalHousehold());
    const ids = care?.cautions.map(({ id }) => id) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
    expect([...ids].sort()).toEqual([...(care?.enclosures[0]?.cautions ?? [])].sort());
    for (const caution of care?.cautions ?? []) expect(caution.source).not.toBe('');
  });
});

describe('a household in Spanish', () => {
  const spanish = (text: string) => text.replace('name: One enclosure', 'name: Uno\nlanguage: es');
  it('has its cautions and the words of the species in Spanish', () => {
    const { care } = resolveText(spanish(minimalHousehold({ enclosure: ['nozzles: { hits_lamp: true }'] })));
    const english = resolveText(minimalHousehold({ enclosure: ['nozzles: { hits_lamp: true }'] })).care;
    expect(care?.cautions.map(({ id }) => id)).toEqual(english?.cautions.map(({ id }) => id));
    for (const [index, { text }] of (care?.cautions ?? []).entries())
      expect(text).not.toBe(english?.cautions[index]?.text);
    expect(care?.enclosures[0]?.speciesName).toBe('Camaleón pantera');
    expect(care?.enclosures[0]?.targets.stages.adult?.feeds[0]?.portion).toBe(
      '5, no más largos que el ancho de la cabeza',
    );
  });

  it('finds every name, portion and chore of every shipped profile in Spanish', () => {
    for (const species of PROFILE_IDS) {
      const { tree } = shippedProfile(species);
      const portions = Object.values(tree.stages ?? {}).flatMap(({ feeds }) =>
        (feeds ?? []).map(({ portion }) => portion),
      );
      const phrases = portions.flatMap((portion) =>
        typeof portion === 'string' ? [portion] : 'pieces' in portion ? [portion.no_longer_than ?? ''] : [],
      );
      for (const words of [tree.name, ...phrases, ...(tree.chores ?? []).map(({ title }) => title)])
        expect([words, PROFILE_WORDS_ES[words] !== undefined]).toEqual([words, true]);
    }
  });
});
