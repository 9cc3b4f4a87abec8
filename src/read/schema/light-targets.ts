/** Day length, its place in the day, basking and UV hours. */
import { readDegrees } from '../../basics/coordinates.ts';
import { checked, type Field, foundWords, isRawMap, leaf, list, mapped, optional, pick, record } from '../field.ts';
import type { EdgeWord, ReadDay, ReadEdge, ReadInset, ReadPhotoperiod, ReadTime } from '../targets.ts';
import { bareNumber, choice, clockTime, count, date, spanDays, spanMinutes } from '../values.ts';
import { oneForm } from './forms.ts';
import { said, sourced } from './said.ts';
import { twelve } from './twelve.ts';

const DAY = { least: 0, most: 1440, words: '0 h to 24 h' };
const hours = (example: string): Field<number> => spanMinutes(example, DAY);

const EDGES = ['before_lights_on', 'after_lights_on', 'before_lights_off', 'after_lights_off'] as const;

const edgeSpan = (): Field<number> => spanMinutes('30 min', DAY);
/** One of the four edges, with a span. */
function edge(): Field<ReadEdge> {
  const shape = Object.fromEntries(EDGES.map((key) => [key, optional(edgeSpan())]));
  const keys = record(shape) as unknown as Field<Partial<Record<EdgeWord, number>>>;
  const single = checked(keys, (raw, say) => {
    const found = Object.keys(raw);
    if (found.length !== 1) say('edge-form', { found: found.length === 0 ? 'nothing' : found.join(' and ') });
  });
  return mapped(single, (found) => {
    const of = EDGES.find((key) => found[key] !== undefined) ?? 'after_lights_on';
    return { of, minutes: found[of] ?? 0 };
  });
}

/** A time of day, or an edge. */
export function timeOrEdge(): Field<ReadTime> {
  const time = mapped<number, ReadTime>(clockTime('"18:00"'), (minute) => ({ minute }));
  const moving = edge() as Field<ReadTime>;
  return pick(
    (raw) => (isRawMap(raw) ? moving : time),
    () => [time, moving],
  );
}

const LATITUDE = { least: -90, most: 90, words: 'degrees from -90 to 90, north positive' };
export const latitude = (): Field<number> => bareNumber(LATITUDE, '41.65', (text) => readDegrees(text, 'latitude'));

const where = () => choice(['site', 'native'] as const);
function season(): Field<NonNullable<ReadPhotoperiod['season']>> {
  const moved = record(
    { was: where(), becomes: where(), from: date, over: spanDays('26 weeks', { above: 0, words: 'more than 0 days' }) },
    { was: 'whose year it lived in', becomes: 'whose year it shall live in', over: 'how long the change takes' },
  );
  const word = where() as Field<NonNullable<ReadPhotoperiod['season']>>;
  return pick<NonNullable<ReadPhotoperiod['season']>>(
    (raw) => (isRawMap(raw) ? moved : word),
    () => [word, moved],
  );
}

function latitudeOrSite(): Field<number | 'site'> {
  const degrees: Field<number | 'site'> = latitude();
  const site: Field<number | 'site'> = choice(['site'] as const);
  return pick<number | 'site'>(
    (raw) => (typeof raw === 'string' ? site : degrees),
    () => [degrees, site],
  );
}

/** How long the day is, in one of four forms, and in which season. */
export function photoperiod(): Field<ReadPhotoperiod> {
  const keys = sourced(
    {
      hours: optional(said(hours('12 h'))),
      longest: optional(said(hours('13 h'))),
      shortest: optional(said(hours('11 h'))),
      latitude: optional(said(latitudeOrSite())),
      months: optional(said(twelve(hours('12 h'), '[10 h, 10.5 h, … twelve values]'))),
      at_least: optional(said(hours('10 h'))),
      at_most: optional(said(hours('14 h'))),
      season: optional(said(season())),
    },
    {
      hours: 'the same day length all year',
      longest: 'day length at the summer solstice',
      shortest: 'day length at the winter solstice',
      latitude: 'day length of this latitude (degrees, north positive), or site',
      months: "day length on each month's 15th, January first",
      at_least: 'never shorter than this',
      at_most: 'never longer than this',
      season: 'whose year: site (default) or native, or a change from one to the other',
    },
  );
  return said(
    oneForm<ReadPhotoperiod>('photoperiod', [['hours'], ['longest', 'shortest'], ['latitude'], ['months']], keys),
  );
}

/** Where in the day the light stands. */
export function day(): Field<ReadDay> {
  const keys = sourced(
    {
      midday: optional(said(clockTime('"13:00"'))),
      lights_on: optional(said(clockTime('"07:30"'))),
      lights_off: optional(said(clockTime('"20:00"', true))),
      no_light_before: optional(said(clockTime('"06:30"'))),
      no_light_after: optional(said(clockTime('"22:00"', true))),
    },
    {
      midday: 'the middle of the lit hours stays at this time',
      lights_on: 'lights go on at this time all year',
      lights_off: 'lights go off at this time all year',
      no_light_before: 'no lamp before this time',
      no_light_after: 'no lamp after this time',
    },
  );
  return said(oneForm<ReadDay>('day', [['midday'], ['lights_on'], ['lights_off']], keys, true));
}

const INSET_FORMS = [['after_lights_on', 'before_lights_off'], ['hours'], ['spans']];
const insetKeys = () => ({
  after_lights_on: optional(said(hours('30 min'))),
  before_lights_off: optional(said(hours('60 min'))),
  hours: optional(said(hours('8 h'))),
  spans: optional(
    said(list(record({ at: edge(), for: hours('1 h') }), '[{ at: { after_lights_on: 0 min }, for: 1 h }]')),
  ),
});
const INSET_WORDS = {
  after_lights_on: 'begins so long after the lights go on',
  before_lights_off: 'ends so long before the lights go off',
  hours: 'so long, in the middle of the lit hours',
  spans: 'one or more windows, each from an edge of the lit hours',
};

/** `none` where a household takes a profile's hours away. */
export function basking(): Field<ReadInset | 'none'> {
  return orNone(said(oneForm<ReadInset>('basking', INSET_FORMS, sourced(insetKeys(), INSET_WORDS))));
}

/** When UV is on, and the Ferguson zone; or `none`. */
export function uvb(): Field<(ReadInset & { readonly ferguson_zone?: number }) | 'none'> {
  const keys = sourced(
    { ferguson_zone: optional(said(count(1, 4, '3'))), ...insetKeys() },
    { ferguson_zone: 'Ferguson zone, 1 to 4', ...INSET_WORDS },
  );
  return orNone(said(oneForm<ReadInset & { readonly ferguson_zone?: number }>('uvb', INSET_FORMS, keys, true)));
}

/** A map, or the word `none`. */
export function orNone<T>(field: Field<T>): Field<T | 'none'> {
  const none = said(
    leaf<T | 'none'>(
      (value, say) =>
        value === 'none'
          ? 'none'
          : say('wrong-shape', { wanted: 'a map of keys, or none', found: foundWords(value), example: null }),
      'none',
      () => ({ const: 'none' }),
    ),
  );
  const isNone = (raw: unknown) => typeof raw === 'string' || (isRawMap(raw) && typeof raw.value === 'string');
  return pick<T | 'none'>(
    (raw) => (isNone(raw) ? none : field),
    () => [field, none],
  );
}
