/** The whole household file. */
import { readDegrees } from '../../basics/coordinates.ts';
import { isRegionZone, REGION_ZONE, zoneNamed } from '../../basics/zone.ts';
import {
  type Field,
  foundWords,
  isRawMap,
  later,
  leaf,
  list,
  mapped,
  optional,
  pick,
  readBelow,
  record,
} from '../field.ts';
import type { HouseholdTree, ReadAbsence, ReadPerson, ReadPlan, ReadSite } from '../household-tree.ts';
import {
  bareNumber,
  choice,
  clockTime,
  count,
  date,
  id,
  minutesNamed,
  percent,
  quantity,
  spanDays,
  spanMinutes,
  text,
  weekday,
  yesOrNo,
} from '../values.ts';
import { intervalDays } from './air-targets.ts';
import { enclosure } from './enclosure-schema.ts';
import { format } from './format.ts';
import { oneForm } from './forms.ts';
import { device } from './hardware-schema.ts';
import { latitude } from './light-targets.ts';
import { oneOrTwelve } from './twelve.ts';

const MOST_PLAN_DAYS = 1100;

/** The file's root. */
export const household: Field<HouseholdTree> = later(() => {
  const noise = record(
    { none: list(quietSpan, '[["22:00", "07:00"]]') },
    { none: 'no pump in these hours, wall time' },
  );
  const shopping = record(
    {
      days: list(weekday, '[fri]'),
      reserve: optional(spanDays('14 days', { least: 0, most: 400, words: '0 days to 400 days' })),
    },
    { days: 'days on which you shop', reserve: 'how long the stand-in food must last' },
  );
  return record(
    {
      format: format(),
      id: optional(id('reading-room')),
      name: text('Reading-room enclosures'),
      language: optional(choice(['en', 'es'] as const)),
      units: optional(choice(['metric', 'us'] as const)),
      paper: optional(choice(['a4', 'letter'] as const)),
      contacts: optional(
        record({
          keeper: optional(text('"+34 600 000 000"')),
          vet: optional(text('Exotics clinic, +34 976 000 000')),
          note: optional(text('spare key with the porter')),
        }),
      ),
      site: site(),
      plan: plan(),
      people: optional(later(() => list(person(), '[{ id: keeper }]', 0))),
      noise: optional(noise),
      shopping: optional(shopping),
      hardware: optional(later(() => list(device(), '[{ id: wall-dial, kind: pin-dial, step: 15 min }]', 0))),
      enclosures: list(enclosure(), '[{ id: fern, species: panther-chameleon, … }]'),
      away: optional(later(() => list(absence(), '[{ from: 2027-03-05, to: 2027-03-14, sitter: sitter }]', 0))),
      shortage: optional(
        list(
          record({ from: date, to: date, feeder: id('cricket') }),
          '[{ from: 2027-02-01, to: 2027-02-10, feeder: cricket }]',
          0,
        ),
      ),
    },
    {
      id: 'keeps calendar entries the same when a plan folder is lost',
      name: 'the title of papers and calendars',
      language: 'en or es',
      units: 'how results are shown: metric or us',
      paper: 'a4 or letter',
      contacts: 'phone numbers for the handover',
      site: 'where it stands',
      plan: 'which days, and how often you will change pins',
      people: 'who does what',
      noise: "people's sleep",
      shopping: 'when feeders are bought',
      hardware: 'timers, pumps, drippers, sprayers',
      enclosures: 'one entry an enclosure',
      away: 'when nobody, or a sitter, is there',
      shortage: 'when the shop has none of a feeder',
    },
  );
});

const quietEnd = clockTime('"22:00"', true);
const quietSpan: Field<readonly [number, number]> = leaf<readonly [number, number]>(
  (value, say) => {
    const wrong = () => say('band-form', { found: foundWords(value), example: '["22:00", "07:00"]' });
    if (!Array.isArray(value) || value.length !== 2) return wrong();
    const [from, to] = value.map((end, index) => readBelow(quietEnd, end, index, say));
    return from === undefined || to === undefined ? undefined : [from, to];
  },
  '["22:00", "07:00"]',
  (part) => ({ type: 'array', items: part(quietEnd), minItems: 2, maxItems: 2 }),
);

function site(): Field<ReadSite> {
  const room = (example: string) =>
    quantity('temperature', { least: -20, most: 50, words: '-20 °C to 50 °C' }, example);
  return record(
    {
      timezone: zone,
      latitude: latitude(),
      longitude: bareNumber(
        { least: -180, most: 180, words: 'degrees from -180 to 180, east positive' },
        '-0.89',
        (text) => readDegrees(text, 'longitude'),
      ),
      room: record(
        {
          day: oneOrTwelve(room('21 °C'), '[20 °C, … twelve values]'),
          night: oneOrTwelve(room('18 °C'), '[18 °C, … twelve values]'),
          humidity: oneOrTwelve(percent('45 %'), '[35 %, … twelve values]'),
        },
        { day: 'by day, or by month', night: 'by night, or by month', humidity: 'relative humidity, or by month' },
      ),
    },
    {
      timezone: 'IANA name, for instance Europe/Madrid',
      latitude: 'degrees, north positive',
      longitude: 'degrees, east positive',
      room: 'the air of the room',
    },
  );
}

const zone: Field<string> = leaf<string>(
  (value, say) => {
    if (typeof value !== 'string') return say('not-text', { found: foundWords(value) });
    return isRegionZone(value) ? value : say('zone-unknown', { found: foundWords(value), nearest: zoneNamed(value) });
  },
  'Europe/Madrid',
  () => ({ type: 'string', pattern: REGION_ZONE.source }),
);

function plan(): Field<ReadPlan> {
  const span = (example: string) => spanMinutes(example, { least: 0, most: 1440, words: '0 min to 24 h' });
  return record(
    {
      from: date,
      days: optional(count(1, MOST_PLAN_DAYS, '365')),
      change_on: optional(list(weekday, '[sat, sun]')),
      settings_at_most: optional(count(1, 366, '8')),
      tolerance: optional(span('15 min')),
      at_least_between: optional(intervalDays('14 days')),
      jump_at_most: optional(span('60 min')),
      mist_sets_at_most: optional(count(1, 100, '4')),
    },
    {
      from: 'first day',
      days: `how many days, at most ${MOST_PLAN_DAYS}`,
      change_on: 'weekdays on which you will change pins; left out: any',
      settings_at_most: 'settings of a dial in the plan',
      tolerance: 'the worst error of the day length that you accept',
      at_least_between: 'least time from one setting to the next',
      jump_at_most: 'largest change of the day length from one setting to the next',
      mist_sets_at_most: 'sets of mist entries in the plan',
    },
  );
}

function person(): Field<ReadPerson> {
  const time = clockTime('"08:15"');
  const one = mapped<number, readonly number[]>(time, (minute) => [minute]);
  const several = list(time, '["08:15", "18:30"]');
  const feedsAt = pick<readonly number[]>(
    (raw) => (Array.isArray(raw) || isRawMap(raw) ? several : one),
    () => [time as never, several],
  );
  return record(
    {
      id: id('keeper'),
      chores_on: optional(weekday),
      reminder: optional(spanMinutes('15 min', { least: 0, most: 10_080, words: '0 min to 7 days' })),
      feeds_at: optional(feedsAt),
      minutes_a_day: optional(minutesNamed('30')),
      shops: optional(yesOrNo),
    },
    {
      chores_on: 'the preferred day',
      reminder: 'so long before, on the phone',
      feeds_at: 'wall time; a list where a day has several feeds',
      minutes_a_day: 'time there is for it',
      shops: 'whether this person buys the feeders',
    },
  );
}

type Visits = NonNullable<ReadAbsence['visits']>;

function absence(): Field<ReadAbsence> {
  const every = leaf<Visits>(
    (value, say) => {
      const match =
        typeof value === 'string' ? /^(?:every\s+)?(\d+)\s*(days?|weeks?)$|^every (day)$/u.exec(value.trim()) : null;
      const days = match ? Number(match[1] ?? 1) * (match[2]?.startsWith('week') ? 7 : 1) : 0;
      return days >= 1 ? { every: days } : say('every-form', { found: foundWords(value), example: 'every 1 day' });
    },
    'every 1 day',
    () => ({ type: 'string', pattern: '^(every\\s+)?\\d+\\s*(days?|weeks?)$|^every day$' }),
  );
  const dates = () => list(date, '[2027-03-07, 2027-03-10]');
  const listed = mapped<readonly number[], Visits>(dates(), (found) => ({ dates: found }));
  const inMap = oneForm<Visits>(
    'visits',
    [['dates'], ['every']],
    record({ dates: optional(dates()), every: optional(intervalDays('1 day')) }) as never,
  );
  const visits = pick<Visits>(
    (raw) => (Array.isArray(raw) ? listed : isRawMap(raw) ? inMap : every),
    () => [every, listed as never, inMap],
  );
  const keys = record(
    { from: date, to: date, sitter: optional(id('sitter')), visits: optional(visits), dates: optional(dates()) },
    {
      from: 'first day away',
      to: 'last day away',
      sitter: 'who comes; left out: nobody',
      visits: 'every 1 day, or { dates: […] }',
      dates: 'the dates of the visits',
    },
  );
  const form = oneForm<ReadAbsence & { readonly dates?: readonly number[] }>(
    'when the sitter comes',
    [['visits'], ['dates']],
    keys,
    true,
  );
  return mapped(
    form,
    ({ dates: found, ...kept }): ReadAbsence => (found ? { ...kept, visits: { dates: found } } : kept),
  );
}
