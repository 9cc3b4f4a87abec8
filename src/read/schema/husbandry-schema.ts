/** Rest, states, supplements, feeders, chores: what a person looks after. */
import { type Field, foundWords, leaf, list, optional, pick, record } from '../field.ts';
import type { ReadChore, ReadFeeder, ReadRest, ReadState, ReadSupplement } from '../household-tree.ts';
import {
  bareNumber,
  calendarSpan,
  choice,
  count,
  date,
  id,
  minutesNamed,
  percent,
  quantity,
  spanDays,
  spanHours,
  text,
  yesOrNo,
} from '../values.ts';
import { intervalDays } from './air-targets.ts';
import { FOODS, WHEN_AWAY } from './feeding-targets.ts';
import { oneForm } from './forms.ts';
import { targets } from './profile-schema.ts';

const ANY_DAYS = { least: 0, most: 400, whole: true, words: 'whole days, 0 to 400' } as const;
const KEEPS = { above: 0, most: 400, words: 'more than 0 days and at most 400' };

/** A rest in winter: its span, its ramps, and the targets in it. */
export function rest(): Field<ReadRest> {
  return record(
    {
      kind: choice(['brumation', 'cooling', 'fast'] as const),
      from: date,
      weeks: count(1, 52, '10'),
      ramp: optional(spanDays('4 weeks', ANY_DAYS)),
      last_feed: optional(spanDays('3 weeks', ANY_DAYS)),
      targets: optional(targets),
      checked_by_vet: optional(date),
    },
    {
      kind: 'brumation, cooling or fast',
      weeks: 'how long, both ramps included',
      ramp: 'how long it takes to wind down, and up again',
      last_feed: 'so long before it begins',
      checked_by_vet: 'the date on which a veterinarian agreed',
    },
  );
}

/** A state of an animal over a span, with what the vet ordered. */
export function state(): Field<ReadState> {
  return record(
    {
      is: choice(['new', 'quarantine', 'gravid', 'shedding', 'ill'] as const),
      from: date,
      to: date,
      vet: optional(text('what was ordered')),
    },
    { is: 'what the animal is', vet: 'what the veterinarian ordered' },
  );
}

/** A powder: what it contains by its label, never how much. */
export function supplement(): Field<ReadSupplement> {
  return record(
    {
      id: id('calcium'),
      contains: optional(list(choice(['d3', 'vitamin-a'] as const), '[d3]', 0)),
      opened: optional(date),
      good_for: optional(calendarSpan('6 months')),
    },
    { contains: 'd3, vitamin-a, both or []: from its label', good_for: 'how long after opening' },
  );
}

/** A food that is bought or bred, and how it keeps. */
export function feeder(): Field<ReadFeeder> {
  const gramsPerKg = (example: string) =>
    quantity('content', { least: 0, most: 1000, words: '0 g/kg to 1000 g/kg' }, example);
  return record(
    {
      id: id('cricket'),
      food: optional(choice(FOODS)),
      share: optional(percent('75 %')),
      count: optional(count(1, 10_000, '5')),
      dust: optional(yesOrNo),
      shelf_life: optional(spanDays('10 days', KEEPS)),
      losses: optional(losses),
      gut_load: optional(spanHours('24 h', { least: 0, most: 240, words: '0 h to 240 h' })),
      in_stock: optional(bareNumber({ least: 0, most: 1_000_000, words: '0 or more' }, '60')),
      stand_in: optional(yesOrNo),
      calcium: optional(gramsPerKg('0.4 g/kg')),
      phosphorus: optional(gramsPerKg('9 g/kg')),
      culture: optional(
        record(
          { first_after: intervalDays('14 days'), lasts: intervalDays('28 days'), keep: count(1, 100, '3') },
          { first_after: 'from start to first harvest', lasts: 'how long it gives', keep: 'how many run at a time' },
        ),
      ),
    },
    {
      food: 'insects (default), greens, prepared, rodents',
      share: 'of the feeds of its stream',
      count: 'pieces a feed',
      dust: 'whether powder may go on it',
      shelf_life: 'how long it keeps',
      losses: 'what dies or spoils',
      gut_load: 'fed up so long before a feed',
      in_stock: 'how many there are now',
      stand_in: 'kept in reserve for weeks without a shop',
      calcium: 'from its label or a table',
      phosphorus: 'from its label or a table',
      culture: 'bred at home',
    },
  );
}

/** `10 % a week`. */
const losses: Field<number> = leaf<number>(
  (value, say) => {
    const match = typeof value === 'string' ? /^(\d+(?:\.\d+)?)\s*%\s*(?:a|per|\/)\s*week$/u.exec(value.trim()) : null;
    const share = match ? Number(match[1]) / 100 : -1;
    return share >= 0 && share < 1 ? share : say('every-form', { found: foundWords(value), example: '10 % a week' });
  },
  '10 % a week',
  () => ({ type: 'string', pattern: '^\\d+(\\.\\d+)?\\s*%\\s*(a|per|/)\\s*week$' }),
);

/** The keeper's own chore. */
export function chore(): Field<ReadChore> {
  const keys = record(
    {
      id: id('drip-bowl'),
      title: text('Empty and scrub the drip bowl'),
      every: optional(calendarSpan('2 days')),
      on: optional(list(date, '[2027-05-01]')),
      lamp_hours: optional(lampHours()),
      minutes: optional(minutesNamed('5')),
      leeway: optional(spanDays('1 day', ANY_DAYS)),
      who: optional(id('keeper')),
      when_away: optional(choice(WHEN_AWAY)),
    },
    {
      title: 'what to do',
      every: 'every so many days, weeks or months',
      on: 'on these dates',
      lamp_hours: 'after so many hours of light',
      minutes: 'how long it takes',
      leeway: 'how far it may be moved',
      who: 'a person of this file',
      when_away: 'when that person is away: sitter, before, after or skip',
    },
  );
  return oneForm<ReadChore>('when a chore is due', [['every'], ['on'], ['lamp_hours']], keys);
}

function lampHours(): Field<number> {
  const bare = bareNumber({ above: 0, most: 100_000, words: 'more than 0 and at most 100000' }, '3000');
  const spanned = spanHours('3000 h', { above: 0, most: 100_000, words: 'more than 0 h and at most 100000 h' });
  return pick(
    (raw) => (typeof raw === 'string' ? spanned : bare),
    () => [bare, spanned],
  );
}
