/** Devices, by kind. */
import { nearestSpelling } from '../../basics/nearest-spelling.ts';
import { type Field, foundWords, isRawMap, leaf, optional, pick, record } from '../field.ts';
import type {
  ReadDevice,
  ReadDripper,
  ReadHandSprayer,
  ReadMistPump,
  ReadPinDial,
  ReadProgrammableTimer,
  ReadRepeatCycleTimer,
} from '../household-tree.ts';
import { choice, clockTime, count, id, percent, quantity, spanMinutes, spanSeconds, text, yesOrNo } from '../values.ts';
import { intervalDays } from './air-targets.ts';
import { oneForm } from './forms.ts';

/** Words that stand where an id may stand. */
const OUTLET_WORDS = ['always', 'auto'] as const;
export const MIST_WORDS = ['auto', 'by-hand', 'none'] as const;
const RESERVED = [...OUTLET_WORDS, ...MIST_WORDS];

export const DEVICE_KINDS = [
  'pin-dial',
  'programmable-timer',
  'repeat-cycle-timer',
  'mist-pump',
  'fogger',
  'dripper',
  'hand-sprayer',
] as const;
type DeviceKind = (typeof DEVICE_KINDS)[number];

const outlet = () => id('wall-dial');
const rating = () => quantity('power', { above: 0, most: 20_000, words: 'more than 0 W and at most 20 kW' }, '1800 W');
export const lampPower = (example: string): Field<number> =>
  quantity('power', { least: 0, most: 5000, words: '0 W to 5 kW' }, example);
const flow = (example: string) =>
  quantity('flow', { above: 0, most: 1_000_000, words: 'more than 0 mL/min and at most 1000 L/h' }, example);
export const volume = (example: string): Field<number> =>
  quantity('volume', { above: 0, most: 5_000_000, words: 'more than 0 L and at most 5000 L' }, example);
const seconds = (example: string) =>
  spanSeconds(example, { above: 0, most: 86_400, words: 'more than 0 s and at most 24 h' });
const pause = (example: string) => spanSeconds(example, { least: 0, most: 86_400, words: '0 s to 24 h' });
const minutes = (example: string) =>
  spanMinutes(example, { above: 0, most: 1440, words: 'more than 0 min and at most 24 h' });

const deviceKeys = <K extends DeviceKind>(...kinds: readonly K[]) => ({
  id: id('wall-dial', RESERVED),
  kind: choice<K>(kinds),
  where: optional(text('on the left wall')),
});
const DEVICE_WORDS = {
  id: 'how other lines name it',
  where: 'where it stands, for the handover',
  outlet: 'the timer it hangs on, or always (a live outlet)',
  outlets: 'timed outlets, switched together',
  rating: 'the most that its label allows',
  resolution: 'the finest time it takes',
};
const timerKeys = () => ({
  outlets: optional(count(1, 64, '4')),
  rating: optional(rating()),
  outlet: optional(outlet()),
});

function pinDial(): Field<ReadPinDial> {
  return record(
    {
      ...deviceKeys('pin-dial'),
      ...timerKeys(),
      step: minutes('15 min'),
      turns_in: optional(turn()),
      pins: optional(choice(['down-is-on', 'up-is-on'] as const)),
      clock: optional(choice(['standard', 'wall'] as const)),
      now: optional(
        record({ on: clockTime('"08:00"', true), off: clockTime('"20:00"', true) }, { on: 'on from', off: 'off from' }),
      ),
    },
    {
      ...DEVICE_WORDS,
      step: 'the length of one pin',
      turns_in: '1 day, or 7 days for a week dial',
      pins: 'whether a pin pushed down means on',
      clock: 'standard time all year, or wall time, turned by a person when the clocks change',
      now: 'what stands on it today',
    },
  );
}

function turn(): Field<1 | 7> {
  return leaf<1 | 7>(
    (value, say) => {
      const words = typeof value === 'string' ? value.trim() : '';
      if (/^(1\s*days?|24\s*(h|hours?))$/u.test(words)) return 1;
      if (/^(7\s*days?|1\s*weeks?)$/u.test(words)) return 7;
      return say('not-a-choice', { found: foundWords(value), choices: ['1 day', '7 days'], nearest: null });
    },
    '7 days',
    () => ({ enum: ['1 day', '7 days', '24 h', '1 week'] }),
  );
}

function programmableTimer(): Field<ReadProgrammableTimer> {
  return record(
    {
      ...deviceKeys('programmable-timer'),
      ...timerKeys(),
      entries: count(1, 1000, '12'),
      lines: optional(choice(['start-and-length', 'on-and-off'] as const)),
      resolution: optional(seconds('1 s')),
      shortest: optional(seconds('5 s')),
      clock: optional(choice(['standard', 'wall', 'automatic'] as const)),
      keeps_time: optional(yesOrNo),
    },
    {
      ...DEVICE_WORDS,
      entries: 'how many lines it holds',
      lines: 'what a line holds: a start and a length, or an on and an off time',
      shortest: 'the shortest run it can make',
      clock: 'standard, wall (a person sets it) or automatic (it changes itself)',
      keeps_time: 'whether it keeps the time through a power cut',
    },
  );
}

function repeatCycleTimer(): Field<ReadRepeatCycleTimer> {
  const span = (from: string, to: string) => record({ from: seconds(from), to: seconds(to) });
  return record(
    {
      ...deviceKeys('repeat-cycle-timer'),
      ...timerKeys(),
      on: span('1 s', '10 min'),
      off: span('1 min', '24 h'),
      resolution: optional(seconds('1 s')),
    },
    { ...DEVICE_WORDS, on: 'shortest and longest time on', off: 'shortest and longest time off' },
  );
}

function mistPump(): Field<ReadMistPump> {
  return record(
    {
      ...deviceKeys('mist-pump', 'fogger'),
      outlet: outlet(),
      power: lampPower('30 W'),
      flow: flow('90 mL/min'),
      nozzles: optional(count(1, 1000, '1')),
      lands: optional(percent('60 %')),
      airborne: optional(percent('0 %')),
      lag: optional(pause('3 s')),
      after_drip: optional(quantity('volume', { least: 0, most: 1_000_000, words: '0 mL or more' }, '10 mL')),
      longest_run: optional(seconds('5 min')),
      rest: optional(pause('10 min')),
      duty: optional(quantity('share', { above: 0, most: 1, words: 'more than 0 % and at most 100 %' }, '25 %')),
      start_step: optional(minutes('15 min')),
      length_step: optional(seconds('15 s')),
      tank: optional(
        record(
          {
            holds: volume('15 L'),
            reserve: optional(quantity('volume', { least: 0, words: '0 L or more' }, '2 L')),
            refill_every: optional(intervalDays('7 days')),
          },
          { reserve: 'what the pump cannot draw', refill_every: 'the longest you want between refills' },
        ),
      ),
    },
    {
      ...DEVICE_WORDS,
      flow: 'through each nozzle, better measured',
      lands: 'share that lands on leaves and walls',
      airborne: 'share that evaporates before it lands',
      lag: 'time until water comes out',
      after_drip: 'what drips after each run',
      longest_run: 'the longest run its maker allows',
      rest: 'the pause its maker asks for between runs',
      duty: 'share of any 10 min in which it may run',
      start_step: 'mists start on multiples of this',
      length_step: 'mists last multiples of this',
    },
  );
}

function dripper(): Field<ReadDripper> {
  const every = oneForm<
    { readonly every: number; readonly for: number } | { readonly after_a: 'mist'; readonly for: number }
  >(
    'when it drips',
    [
      ['every', 'for'],
      ['after_a', 'for'],
    ],
    record({
      every: optional(minutes('3 h')),
      after_a: optional(choice(['mist'] as const)),
      for: minutes('20 min'),
    }) as never,
  );
  const always = choice(['always'] as const);
  const runs = pick<ReadDripper['runs']>(
    (raw) => (isRawMap(raw) ? every : always),
    () => [always, every],
  );
  return record(
    {
      ...deviceKeys('dripper'),
      outlet: optional(outlet()),
      power: optional(lampPower('5 W')),
      flow: flow('0.5 mL/min'),
      bowl: optional(record({ holds: volume('1 L'), empty_every: intervalDays('1 day') })),
      runs,
    },
    {
      ...DEVICE_WORDS,
      bowl: 'what catches the drops',
      runs: 'always, { every: 3 h, for: 20 min } or { after_a: mist, for: 20 min }',
    },
  );
}

function handSprayer(): Field<ReadHandSprayer> {
  return record(
    { ...deviceKeys('hand-sprayer'), flow: flow('60 mL/min') },
    { ...DEVICE_WORDS, flow: 'what it sprays' },
  );
}

const byKind: Readonly<Record<DeviceKind, () => Field<ReadDevice>>> = {
  'pin-dial': pinDial,
  'programmable-timer': programmableTimer,
  'repeat-cycle-timer': repeatCycleTimer,
  'mist-pump': mistPump,
  fogger: mistPump,
  dripper,
  'hand-sprayer': handSprayer,
};

/** A device; its kind says which keys it has. */
export function device(): Field<ReadDevice> {
  const built = new Map<DeviceKind, Field<ReadDevice>>();
  const kindless = record({ id: id('wall-dial'), kind: choice(DEVICE_KINDS) }) as unknown as Field<ReadDevice>;
  const ofKind = (kind: DeviceKind): Field<ReadDevice> => {
    const field = built.get(kind) ?? byKind[kind]();
    built.set(kind, field);
    return field;
  };
  return pick<ReadDevice>(
    (raw) => {
      if (!isRawMap(raw)) return kindless;
      const kind = DEVICE_KINDS.find((each) => each === raw.kind);
      return kind ? ofKind(kind) : unknownKind(raw.kind);
    },
    () => DEVICE_KINDS.filter((kind) => kind !== 'fogger').map(ofKind),
  );
}

/** Only the kind is worth a word where it is not known. */
function unknownKind(found: unknown): Field<ReadDevice> {
  return leaf<ReadDevice>(
    (_, say) => {
      if (found === undefined)
        return say('key-missing', { key: 'kind', of: 'a device', example: DEVICE_KINDS.join(' | ') }, ['kind']);
      const nearest = typeof found === 'string' ? nearestSpelling(found, DEVICE_KINDS) : null;
      return say('not-a-choice', { found: foundWords(found), choices: DEVICE_KINDS, nearest }, ['kind']);
    },
    'pin-dial',
    () => ({}),
  );
}
