/** The single values of a file: quantities, times, dates, words, counts. Each says what is wrong with what stands there. */
import {
  type EpochDay,
  epochDayOf,
  FIRST_DATE,
  LAST_DATE,
  parseIsoDate,
  parseNamedDate,
} from '../basics/calendar-day.ts';
import type { Weekday } from '../basics/civil.ts';
import { clockTimeOf, DAY_MINUTES, parseClockTime } from '../basics/minute-of-day.ts';
import { type Dimension, parseCalendarSpan, parseQuantity, splitQuantity, unitNames } from '../basics/quantity.ts';
import { unitsOf } from '../basics/units.ts';
import type { CalendarSpan } from '../basics/units-of-measure.ts';
import { type Field, foundWords, leaf, pick, readBelow, type Say } from './field.ts';
import { choiceMeant, dateMeant, plainText, timeMeant } from './meant.ts';

/** Bounds in the field's own unit, and how they are said: `more than 0 W and at most 5 kW`. */
export interface Bounds {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
  readonly words: string;
  /** Nothing between two whole numbers. */
  readonly whole?: true;
}

const inside = (value: number, { above, least, most, whole }: Bounds): boolean =>
  Number.isFinite(value) &&
  (whole === undefined || Number.isInteger(value)) &&
  (above === undefined || value > above) &&
  (least === undefined || value >= least) &&
  (most === undefined || value <= most);

const DIMENSION_WORDS: Readonly<Record<Dimension, string>> = {
  length: 'a length',
  area: 'an area',
  temperature: 'a temperature',
  'temperature difference': 'a temperature difference',
  volume: 'a volume',
  flow: 'a flow',
  mass: 'a mass',
  power: 'a power',
  time: 'a span of time',
  share: 'a share',
  content: 'a content',
  film: 'a film of water',
  speed: 'a speed',
};

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '60 cm',
  area: '1.2 m²',
  temperature: '24 °C',
  'temperature difference': '4 °C',
  volume: '5 L',
  flow: '90 mL/min',
  mass: '140 g',
  power: '75 W',
  time: '15 min',
  share: '45 %',
  content: '9 g/kg',
  film: '120 g/m²',
  speed: '5 m/h',
};

/** Reads a quantity into its base unit divided by `per` (time: seconds; `per: 60` gives minutes). */
export function quantity(dimension: Dimension, bounds: Bounds, example = EXAMPLES[dimension], per = 1): Field<number> {
  return leaf(
    (value, say) => {
      const base = readQuantity(value, dimension, example, say);
      if (base === undefined) return undefined;
      const found = base / per;
      return inside(found, bounds) ? found : say('out-of-bounds', { found: String(value), bounds: bounds.words });
    },
    example,
    () => quantitySchema(dimension),
  );
}

const seconds = (bounds: Bounds, example: string, per: number) => quantity('time', bounds, example, per);
export const spanSeconds = (example: string, bounds: Bounds): Field<number> => seconds(bounds, example, 1);
export const spanMinutes = (example: string, bounds: Bounds): Field<number> => seconds(bounds, example, 60);
export const spanHours = (example: string, bounds: Bounds): Field<number> => seconds(bounds, example, 3600);
export const spanDays = (example: string, bounds: Bounds): Field<number> => seconds(bounds, example, 86_400);

export const percent = (example = '45 %'): Field<number> =>
  quantity('share', { least: 0, most: 1, words: '0 % to 100 %' }, example);

function readQuantity(value: unknown, dimension: Dimension, example: string, say: Say): number | undefined {
  const units = unitNames(dimension);
  const wanted = DIMENSION_WORDS[dimension];
  if (typeof value === 'number' && Number.isFinite(value)) return say('needs-unit', { number: String(value), units });
  if (typeof value !== 'string') return say('not-a-quantity', { found: foundWords(value), wanted, example, units });
  const read = parseQuantity(value, dimension);
  if (read.kind === 'read') return read.base;
  if (read.kind === 'bare') return say('needs-unit', { number: value.trim(), units });
  if (/^[+-]?\d+,\d/u.test(value.trim())) return say('decimal-comma', { found: value, fixed: value.replace(',', '.') });
  if (read.kind === 'none') return say('not-a-quantity', { found: foundWords(value), wanted, example, units });
  const measures = read.measures === null ? null : DIMENSION_WORDS[read.measures];
  return say('wrong-unit', { unit: foundWords(read.unit), measures, wanted, units });
}

function quantitySchema(dimension: Dimension): Readonly<Record<string, unknown>> {
  const names = unitsOf[dimension].flatMap((unit) => [...unit.names]).sort((a, b) => b.length - a.length);
  const units = names.map((name) => name.replace(/[.*+?^$()|[\]{}\\/]/gu, '\\$&')).join('|');
  return {
    type: 'string',
    pattern: `^[+\\-−]?(\\d+(\\.\\d+)?|\\.\\d+)\\s*(${units})$`,
    description: `${DIMENSION_WORDS[dimension]} with its unit: ${unitNames(dimension).join(', ')}`,
  };
}

/** A number without a unit: a count, degrees of latitude. `meant` reads it in another form, so that it can be proposed. */
export function bareNumber(
  bounds: Bounds,
  example: string,
  meant: (text: string) => number | null = () => null,
): Field<number> {
  return leaf(
    (value, say) => {
      if (typeof value !== 'number' || Number.isNaN(value))
        return say('not-a-number', { found: foundWords(value), example, meant: meant(plainText(value)) });
      return inside(value, bounds) ? value : say('out-of-bounds', { found: foundWords(value), bounds: bounds.words });
    },
    example,
    () => ({
      type: 'number',
      ...(bounds.least === undefined ? {} : { minimum: bounds.least }),
      ...(bounds.above === undefined ? {} : { exclusiveMinimum: bounds.above }),
      ...(bounds.most === undefined ? {} : { maximum: bounds.most }),
    }),
  );
}

/** A whole number from `least` to `most`. */
export function count(least: number, most: number, example: string): Field<number> {
  return leaf(
    (value, say) => {
      if (typeof value !== 'number' || Number.isNaN(value))
        return say('not-a-number', { found: foundWords(value), example, meant: null });
      const fits = Number.isInteger(value) && value >= least && value <= most;
      return fits
        ? value
        : say('out-of-bounds', { found: foundWords(value), bounds: `a whole number from ${least} to ${most}` });
    },
    example,
    () => ({ type: 'integer', minimum: least, maximum: most }),
  );
}

/** Minutes of a key that names its own unit (`minutes: 5`), which may be written with the unit too. */
export function minutesNamed(example: string): Field<number> {
  const bare = count(0, 1440, example);
  const spanned = spanMinutes(`${example} min`, { least: 0, most: 1440, words: '0 min to 24 h' });
  return pick(
    (value) => (typeof value === 'string' ? spanned : bare),
    () => [bare, spanned],
  );
}

/** One of a few words. */
export function choice<W extends string>(words: readonly W[]): Field<W> {
  return leaf<W>(
    (value, say) => {
      const word = words.find((each) => each === value);
      if (word !== undefined) return word;
      const nearest = typeof value === 'string' ? choiceMeant(value, words) : null;
      return say('not-a-choice', { found: foundWords(value), choices: words, nearest });
    },
    words[0] ?? '',
    () => ({ type: 'string', enum: [...words] }),
  );
}

export const yesOrNo: Field<boolean> = leaf<boolean>(
  (value, say) => {
    if (value === true || value === 'yes' || value === 'on') return true;
    if (value === false || value === 'no' || value === 'off') return false;
    return say('not-yes-or-no', { found: foundWords(value) });
  },
  'yes',
  () => ({ enum: [true, false, 'yes', 'no', 'on', 'off'] }),
);

const LONGEST_TEXT = 10_000;

/** Text in the keeper's words. */
export function text(example: string): Field<string> {
  return leaf<string>(
    (value, say) => {
      if (typeof value !== 'string') return say('not-text', { found: foundWords(value) });
      if (value.trim() === '') return say('value-missing', { key: '', example });
      return value.length <= LONGEST_TEXT
        ? value
        : say('text-too-long', { characters: value.length, most: LONGEST_TEXT });
    },
    example,
    () => ({ type: 'string', minLength: 1 }),
  );
}

const ID = /^[a-z][a-z0-9-]*$/u;

/** A name by which other lines refer to this one. */
export function id(example: string, reserved: readonly string[] = []): Field<string> {
  return leaf<string>(
    (value, say) => {
      if (typeof value !== 'string') return say('not-text', { found: foundWords(value) });
      if (reserved.includes(value)) return say('id-reserved', { id: value });
      if (value.length > 64) return say('text-too-long', { characters: value.length, most: 64 });
      return ID.test(value) ? value : say('id-form', { found: foundWords(value), proposal: proposedId(value) });
    },
    example,
    () => ({ type: 'string', pattern: ID.source, maxLength: 64 }),
  );
}

function proposedId(found: string): string | null {
  const plain = found.normalize('NFKD').toLowerCase().replace(/\p{M}/gu, '');
  const proposal = plain
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^[^a-z]+|-+$/gu, '')
    .slice(0, 64);
  return ID.test(proposal) ? proposal : null;
}

/** Reads `7:30` or `07:30` into minutes after 00:00; `24:00` only where a day may end. */
export function clockTime(example: string, endOfDay = false): Field<number> {
  return leaf<number>(
    (value, say) => {
      if (typeof value === 'number' && Number.isFinite(value)) {
        const time = Number.isInteger(value) && value >= 0 && value <= DAY_MINUTES ? clockTimeOf(value) : null;
        return say('time-as-number', { found: value, time: value <= 24 ? timeMeant(String(value)) : time });
      }
      const minute = typeof value === 'string' ? parseClockTime(value.trim()) : null;
      const fits = minute !== null && (endOfDay || minute < DAY_MINUTES);
      return fits ? minute : say('not-a-time', { found: foundWords(value), meant: timeMeant(plainText(value)) });
    },
    example,
    () => ({
      type: 'string',
      pattern: '^([01]?\\d|2[0-4]):[0-5]\\d$',
      description: 'hours and minutes on the 24 h clock, in quotes',
    }),
  );
}

export const date: Field<EpochDay> = leaf<EpochDay>(
  (value, say) => {
    const words = typeof value === 'string' ? value.trim() : '';
    if (parseIsoDate(words) === null) return sayDate(value, say);
    const bounds = `a date from ${FIRST_DATE} to ${LAST_DATE}`;
    return parseNamedDate(words) ?? say('out-of-bounds', { found: words, bounds });
  },
  '2027-01-01',
  () => ({ type: 'string', pattern: '^(19|2[01])\\d{2}-\\d{2}-\\d{2}$', description: 'a date: year-month-day' }),
);

function sayDate(value: unknown, say: Say): undefined {
  const match = typeof value === 'string' ? /^(\d{4})-(\d{2})-(\d{2})$/u.exec(value.trim()) : null;
  if (!match) return say('not-a-date', { found: foundWords(value), meant: dateMeant(plainText(value)) });
  const [year, month] = [Number(match[1]), Number(match[2])];
  const monthDays = month >= 1 && month <= 12 ? epochDayOf(year, month + 1, 1) - epochDayOf(year, month, 1) : null;
  return say('no-such-date', { found: String(value), monthDays, month: `${match[1]}-${match[2]}` });
}

/** A date, or a year, or a year and month. */
export const birth: Field<string> = leaf<string>(
  (value, say) => {
    const words = typeof value === 'number' && Number.isInteger(value) ? String(value) : value;
    if (typeof words !== 'string' || !/^\d{4}(-\d{2}(-\d{2})?)?$/u.test(words))
      return say('not-a-date', { found: foundWords(value), meant: dateMeant(plainText(value)) });
    const whole = `${words}${'-01-01'.slice(words.length - 4)}`;
    return parseIsoDate(whole) === null ? sayDate(whole, say) : words;
  },
  '2025-08',
  () => ({ type: ['string', 'integer'], description: 'year, year-month or year-month-day' }),
);

export const weekday: Field<Weekday> = choice<Weekday>(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']);

/** A span of whole days, weeks or months. */
export function calendarSpan(example: string): Field<CalendarSpan> {
  return leaf<CalendarSpan>(
    (value, say) => {
      const units = ['days', 'weeks', 'months'];
      if (typeof value === 'number' && Number.isFinite(value))
        return say('needs-unit', { number: String(value), units });
      const parts = typeof value === 'string' ? splitQuantity(value) : null;
      if (typeof value !== 'string' || !parts)
        return say('not-a-quantity', {
          found: foundWords(value),
          wanted: 'a span of days, weeks or months',
          example,
          units,
        });
      const span = parseCalendarSpan(value);
      if (!span)
        return say('wrong-unit', {
          unit: foundWords(parts.unit),
          measures: null,
          wanted: 'a span of days, weeks or months',
          units,
        });
      const fits = Number.isInteger(span.count) && span.count >= 1;
      return fits ? span : say('out-of-bounds', { found: value, bounds: 'a whole number, 1 or more' });
    },
    example,
    () => ({
      type: 'string',
      pattern: '^\\d+\\s*(d|days?|weeks?|months?|years?)$',
      description: 'a span of days, weeks or months',
    }),
  );
}

/** A band of two values, low and high. */
export function band(item: Field<number>, example: string): Field<readonly [number, number]> {
  return leaf<readonly [number, number]>(
    (value, say) => {
      if (!Array.isArray(value) || value.length !== 2) return say('band-form', { found: foundWords(value), example });
      const ends = value.map((end, index) => readBelow(item, end, index, say));
      const [low, high] = ends;
      if (low === undefined || high === undefined) return undefined;
      return low <= high ? [low, high] : say('band-order', { low: String(value[0]), high: String(value[1]) });
    },
    example,
    (part) => ({ type: 'array', items: part(item), minItems: 2, maxItems: 2 }),
  );
}
