/** An enclosure with its lamps, air and animals. */
import { type Field, foundWords, later, leaf, list, named, optional, pick, record } from '../field.ts';
import type { ReadAir, ReadAnimal, ReadEnclosure, ReadLamp } from '../household-tree.ts';
import { plainText } from '../meant.ts';
import {
  bareNumber,
  birth,
  calendarSpan,
  choice,
  count,
  date,
  id,
  percent,
  quantity,
  spanMinutes,
  text,
  yesOrNo,
} from '../values.ts';
import { intervalDays } from './air-targets.ts';
import { lampPower, volume } from './hardware-schema.ts';
import { chore, feeder, rest, state, supplement } from './husbandry-schema.ts';
import { targets } from './profile-schema.ts';

const side = (example: string) =>
  quantity('length', { above: 0, most: 50, words: 'more than 0 cm and at most 50 m' }, example);

/** One enclosure with its animals, lamps and water. */
export function enclosure(): Field<ReadEnclosure> {
  return record(
    {
      id: id('fern'),
      name: optional(text('Fern')),
      species: text('panther-chameleon'),
      stage: stage(),
      animals: optional(animals()),
      size: record({ width: side('50 cm'), depth: side('50 cm'), height: side('90 cm') }),
      open: percent('45 %'),
      planting: optional(choice(['none', 'light', 'medium', 'dense'] as const)),
      floor: optional(choice(['dry', 'damp-below'] as const)),
      tray: optional(record({ holds: volume('4 L'), empty_every: intervalDays('2 days') })),
      where: optional(named(id('food'), text('left drawer'))),
      lamps: optional(
        later(() => list(lamp(), '[{ id: sun, kind: halogen, for: [daylight], power: 50 W, outlet: wall-dial }]', 0)),
      ),
      mist: optional(id('pump')),
      dripper: optional(id('drip')),
      nozzles: optional(
        record(
          { count: optional(count(1, 1000, '1')), hits_lamp: optional(yesOrNo) },
          { count: "of the pump's nozzles", hits_lamp: 'whether spray can reach a hot lamp' },
        ),
      ),
      air: optional(later(air)),
      targets: optional(targets),
      rest: optional(later(rest)),
      states: optional(later(() => list(state(), '[{ is: new, from: 2027-01-01, to: 2027-01-31 }]', 0))),
      last: optional(named(id('feed'), date)),
      supplements: optional(later(() => list(supplement(), '[{ id: calcium, contains: [] }]', 0))),
      feeders: optional(later(() => list(feeder(), '[{ id: cricket, share: 100 % }]', 0))),
      chores: optional(later(() => list(chore(), '[{ id: drip-bowl, title: Empty the drip bowl, every: 2 days }]', 0))),
      defaults: optional(named(id('salt-test'), yesOrNo)),
    },
    WORDS,
  );
}

const WORDS = {
  id: 'how other lines name it',
  name: 'how papers and calendars call it',
  species: 'a profile, or the relative path of a profile file',
  stage: 'adult, juvenile, hatchling, or a list of stages with dates',
  animals: 'how many, or a list of them',
  open: 'share of walls and top that is bare mesh',
  planting: 'none, light, medium or dense',
  floor: 'dry, or damp-below: a deep substrate kept damp underneath',
  tray: 'what catches the run-off',
  where: 'where things are, for the handover',
  mist: 'the id of a pump or fogger; or auto, by-hand, none',
  dripper: 'the id of a dripper',
  air: 'measured or fitted values instead of our estimates',
  targets: "overrides any part of the species' profile",
  rest: 'brumation, cooling or fast: never by default',
  states: 'new, quarantine, gravid, shedding, ill',
  last: 'last dates of feeds and dustings before the plan',
  supplements: 'powders and what their labels say they hold',
  feeders: 'what is fed, and in which shares',
  chores: 'jobs of your own',
  defaults: 'default chores to switch off, by id',
};

function stage(): Field<ReadEnclosure['stage']> {
  const one: Field<ReadEnclosure['stage']> = id('adult');
  const several: Field<ReadEnclosure['stage']> = list(
    record({ from: date, stage: id('adult') }),
    '[{ from: 2026-05-01, stage: juvenile }]',
  );
  return pick(
    (raw) => (Array.isArray(raw) ? several : one),
    () => [one, several],
  );
}

function animals(): Field<number | readonly ReadAnimal[]> {
  const animal = record(
    {
      name: optional(text('Fern')),
      sex: optional(choice(['male', 'female', 'unknown'] as const)),
      born: optional(birth),
      weight: optional(
        quantity('mass', { above: 0, most: 500_000, words: 'more than 0 g and at most 500 kg' }, '140 g'),
      ),
    },
    { born: 'year, year-month or date' },
  );
  const many: Field<number | readonly ReadAnimal[]> = list<ReadAnimal>(animal, '[{ name: Fern }]');
  const number: Field<number | readonly ReadAnimal[]> = count(1, 1000, '1');
  return pick(
    (raw) => (Array.isArray(raw) ? many : number),
    () => [number, many],
  );
}

const LAMP_USES = ['daylight', 'basking', 'uvb', 'plants', 'heat'] as const;
const LAMP_KINDS = ['halogen', 'mercury', 'metal-halide', 'fluorescent', 'led', 'ceramic', 'mat', 'cable'] as const;

function lamp(): Field<ReadLamp> {
  return record(
    {
      id: id('sun'),
      kind: choice(LAMP_KINDS),
      for: list(choice(LAMP_USES), '[daylight]'),
      power: lampPower('75 W'),
      outlet: id('wall-dial'),
      thermostat: optional(choice(['none', 'on-off', 'pulse', 'dimming'] as const)),
      fitted: optional(date),
      replace_after: optional(replaceAfter()),
      guard: optional(yesOrNo),
      warms: optional(quantity('temperature difference', { least: 0, most: 60, words: '0 °C to 60 °C' }, '4 °C')),
    },
    {
      for: 'daylight, basking, uvb, plants, heat',
      outlet: 'a timer, auto (chosen for you) or always (a live outlet)',
      fitted: 'when it was put in',
      replace_after: 'how long it gives its light',
      guard: 'whether a cage keeps the animal off it',
      warms: 'by how much it warms the air',
    },
  );
}

/** Months of life, or hours of light. */
function replaceAfter(): Field<NonNullable<ReadLamp['replace_after']>> {
  const span: Field<NonNullable<ReadLamp['replace_after']>> = calendarSpan('12 months');
  const hours = leaf<NonNullable<ReadLamp['replace_after']>>(
    (value, say) => {
      const number = Number(/^(\d+)/u.exec(plainText(value))?.[1] ?? 0);
      return number > 0
        ? { unit: 'hour', count: number }
        : say('out-of-bounds', { found: foundWords(value), bounds: 'more than 0 h' });
    },
    '3000 h',
    () => ({ type: 'string', pattern: '^\\d+\\s*(h|hours?)$' }),
  );
  return pick(
    (raw) => (typeof raw === 'string' && /^\d+\s*(h|hrs?|hours?)$/u.test(raw.trim()) ? hours : span),
    () => [span, hours],
  );
}

function air(): Field<ReadAir> {
  return record(
    {
      changes_per_hour: optional(bareNumber({ above: 0, most: 1000, words: 'more than 0 and at most 1000' }, '7')),
      wettable_area: optional(quantity('area', { above: 0, most: 1000, words: 'more than 0 m²' })),
      film: optional(quantity('film', { above: 0, most: 10_000, words: 'more than 0 g/m²' })),
      transfer: optional(quantity('speed', { above: 0, most: 1000, words: 'more than 0 m/h' })),
      base_evaporation: optional(quantity('flow', { least: 0, most: 100_000, words: '0 g/h or more' }, '6 g/h')),
      warm_up: optional(spanMinutes('20 min', { least: 0, most: 1440, words: '0 min to 24 h' })),
    },
    {
      changes_per_hour: 'air changes an hour',
      wettable_area: 'leaves and walls that take water',
      film: 'water that they hold',
      transfer: 'how fast a wet surface gives it off',
      base_evaporation: 'from plants, soil and dish',
      warm_up: 'how slowly the air follows the lamps',
    },
  );
}
