/** Feeding hours, feeds, dustings, stages, and the chores of a species. */
import { type Field, foundWords, isRawMap, leaf, list, named, optional, pick, record } from '../field.ts';
import type {
  ReadDustingRule,
  ReadFeeding,
  ReadFeedRule,
  ReadPortion,
  ReadProfileChore,
  ReadStage,
} from '../targets.ts';
import {
  bareNumber,
  calendarSpan,
  choice,
  count,
  id,
  minutesNamed,
  spanDays,
  spanHours,
  spanMinutes,
  text,
  weekday,
} from '../values.ts';
import { intervalDays } from './air-targets.ts';
import { oneForm } from './forms.ts';
import { timeOrEdge } from './light-targets.ts';
import { RESERVED_KEYS, said, sourced } from './said.ts';

export const FOODS = ['insects', 'greens', 'prepared', 'rodents'] as const;
export const WHEN_AWAY = ['sitter', 'before', 'after', 'skip'] as const;
const stageName = (): Field<string> => id('adult', ['source', 'why', 'value', 'also']);

/** The hours in which the animal is fed. */
export function feeding(): Field<ReadFeeding> {
  return said(
    sourced(
      {
        from: said(timeOrEdge()),
        to: said(timeOrEdge()),
        dry_before_mist: optional(said(spanMinutes('1 h', { least: 0, most: 1440, words: '0 h to 24 h' }))),
      },
      {
        from: 'feeds from this time on',
        to: 'feeds until this time',
        dry_before_mist: 'no mist for so long after a dusted feed',
      },
    ),
  );
}

/** Days without food that do no harm, by stage. */
export function mayGoWithout(): Field<Readonly<Record<string, number>>> {
  return said(named(stageName(), said(intervalDays('7 days')), RESERVED_KEYS));
}

/** A portion in words, in pieces, or by what is eaten in a time. */
function portion(): Field<ReadPortion> {
  const words: Field<ReadPortion> = text('a shell-sized heap');
  const pieces: Field<ReadPortion> = record({
    pieces: count(1, 10_000, '5'),
    no_longer_than: optional(text('the head is wide')),
  });
  const eaten: Field<ReadPortion> = record({
    as_eaten: spanMinutes('10 min', { above: 0, most: 1440, words: 'more than 0 min' }),
    at_most: optional(count(1, 10_000, '15')),
  });
  return pick<ReadPortion>(
    (raw) => (isRawMap(raw) ? (Object.hasOwn(raw, 'as_eaten') ? eaten : pieces) : words),
    () => [words, pieces, eaten],
  );
}

function feedRule(): Field<ReadFeedRule> {
  const keys = sourced(
    {
      food: said(choice(FOODS)),
      per_week: optional(said(bareNumber({ above: 0, most: 70, words: 'more than 0 and at most 70' }, '3'))),
      every: optional(said(intervalDays('2 days'))),
      days: optional(said(list(weekday, '[mon, thu]'))),
      times_a_day: optional(said(count(1, 10, '2'))),
      portion: said(portion()),
      remove_after: optional(said(spanHours('24 h', { above: 0, words: 'more than 0 h' }))),
    },
    {
      food: 'which stream: insects, greens, prepared, rodents',
      per_week: 'so many feeds a week',
      every: 'a feed every so many days',
      days: 'feeds on these weekdays',
      portion: 'how much: words, { pieces: 5 } or { as_eaten: 10 min }',
      remove_after: 'take out what is left after so long',
    },
  );
  return oneForm<ReadFeedRule>('how often a feed comes', [['per_week'], ['every'], ['days']], keys);
}

/** `every: 2 feeds`. */
const everyFeeds: Field<number> = leaf<number>(
  (value, say) => {
    const match = typeof value === 'string' ? /^(\d+)\s+feeds?$/u.exec(value.trim()) : null;
    const feeds = match ? Number(match[1]) : 0;
    return feeds >= 1 ? feeds : say('every-form', { found: foundWords(value), example: '2 feeds' });
  },
  '2 feeds',
  () => ({ type: 'string', pattern: '^\\d+\\s+feeds?$' }),
);

function dustingRule(): Field<ReadDustingRule> {
  const keys = sourced(
    {
      id: id('calcium'),
      every: optional(said(everyFeeds)),
      times: optional(said(count(1, 1000, '2'))),
      weeks: optional(said(count(1, 52, '4'))),
      at: optional(said(choice(['the rest'] as const))),
    },
    {
      every: 'on every so manieth feed',
      times: 'so often',
      weeks: 'in so many weeks',
      at: 'the rest: all feeds left over',
    },
  );
  return oneForm<ReadDustingRule>('a dusting', [['every'], ['times', 'weeks'], ['at']], keys);
}

function apartRule(): Field<NonNullable<ReadStage['apart']>[number]> {
  const pair = leaf<readonly [string, string]>(
    (value, say) => {
      const [a, b] = Array.isArray(value) ? value : [];
      const isPair = Array.isArray(value) && value.length === 2 && typeof a === 'string' && typeof b === 'string';
      return isPair
        ? [a, b]
        : say('wrong-shape', { wanted: 'a pair of ids or contents', found: 'something else', example: '[d3, d3]' });
    },
    '[d3, d3]',
    () => ({ type: 'array', items: { type: 'string' }, minItems: 2, maxItems: 2 }),
  );
  const days = pick<number>(
    (raw) =>
      typeof raw === 'string'
        ? spanDays('3 days', { least: 0, whole: true, words: 'whole days, 0 or more' })
        : count(0, 365, '3'),
    () => [count(0, 365, '3')],
  );
  return sourced(
    { between: pair, days: said(days) },
    { between: 'two dusting ids or contents (d3, vitamin-a)', days: 'dates at least so many days apart' },
  );
}

/** What each stage of life is fed and dusted with. */
export function stages(): Field<Readonly<Record<string, ReadStage>>> {
  const stage = sourced(
    {
      like: optional(stageName()),
      feeds: optional(said(list(feedRule(), '[{ food: insects, per_week: 3, portion: five small ones }]', 0))),
      dusting: optional(said(list(dustingRule(), '[{ id: calcium, at: the rest }]', 0))),
      apart: optional(said(list(apartRule(), '[{ between: [d3, d3], days: 3 }]', 0))),
    },
    {
      like: 'what is left out is taken from this stage',
      feeds: 'what is fed, how often, how much',
      dusting: 'what powder on which feeds',
    },
  );
  return said(named<ReadStage>(stageName(), said<ReadStage>(stage), RESERVED_KEYS));
}

/** A chore that a species brings along. */
export function profileChore(): Field<ReadProfileChore> {
  return sourced(
    {
      id: id('weigh'),
      title: text('Weigh and note'),
      every: said(calendarSpan('1 month')),
      minutes: optional(said(minutesNamed('5'))),
      leeway: optional(said(spanDays('2 days', { least: 0, whole: true, words: 'whole days, 0 or more' }))),
      when_away: optional(said(choice(WHEN_AWAY))),
    },
    {
      title: 'what to do',
      every: 'how often',
      minutes: 'how long it takes',
      leeway: 'how far it may be moved',
      when_away: 'when its person is away',
    },
  );
}
