/** Small checks of JSON values, put together into the shape of a whole document. Each says what is wrong and where, or null. */
import { parseIsoDate } from '../basics/calendar-day.ts';

/** Returns null where a value is right, else its fault behind a path, for instance `.to is no date`. */
export type Check = (value: unknown) => string | null;

/** Dates that a plan may hold: what is counted from the dates of a file stays well within them. */
const [FIRST, LAST] = ['0001-01-01', '2999-12-31'];

/** Any value; a key that is left out has none. */
export const anything: Check = (value) => (value === undefined ? ' is missing' : null);
export const text: Check = (value) => (typeof value === 'string' ? null : ' is no text');
export const number: Check = (value) => (typeof value === 'number' ? null : ' is no number');
export const integer: Check = (value) => (Number.isSafeInteger(value) ? null : ' is no whole number');
export const truth: Check = (value) => (typeof value === 'boolean' ? null : ' is neither true nor false');

/** A date that exists. */
export const date: Check = (value) =>
  typeof value === 'string' && value >= FIRST && value <= LAST && parseIsoDate(value) !== null ? null : ' is no date';

/** `00:00` to `24:00`. */
export const clock: Check = (value) =>
  typeof value === 'string' && /^(?:[01]\d|2[0-3]):[0-5]\d$|^24:00$/.test(value) ? null : ' is no time of day';

/** A date and a time of day, with or without seconds and `Z`. */
export const utcMoment: Check = (value) =>
  typeof value === 'string' &&
  /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::[0-5]\d)?Z?$/.test(value) &&
  date(value.slice(0, 10)) === null
    ? clock(value.slice(11, 16))
    : ' is no moment';

/** Lets one of some words or numbers stand. */
export function word(...words: readonly (string | number)[]): Check {
  return (value) => (words.includes(value as string) ? null : ` is none of ${words.join(', ')}`);
}

/** Lets null stand, or what another check allows. */
export function orNull(check: Check): Check {
  return (value) => (value === null ? null : check(value));
}

/** A key that may be left out. */
export function maybe(check: Check): Check {
  return (value) => (value === undefined ? null : check(value));
}

/** Lets stand what one of two checks allows; told is what the second found. */
export function either(one: Check, other: Check): Check {
  return (value) => (one(value) === null ? null : other(value));
}

/** @param least fewest items; alone it is the exact number, with `most` the one end */
export function list(check: Check, least?: number, most: number | undefined = least): Check {
  return (value) => {
    if (!Array.isArray(value)) return ' is no list';
    if (least !== undefined && (value.length < least || value.length > (most ?? least)))
      return ` has ${value.length} items`;
    for (let index = 0; index < value.length; index++) {
      const fault = check(value[index]);
      if (fault !== null) return `[${index}]${fault}`;
    }
    return null;
  };
}

/** Lets a list of two stand. */
export function pair(check: Check): Check {
  return list(check, 2);
}

/** A map with any keys. */
export function mapOf(check: Check): Check {
  return (value) => {
    if (!isMap(value)) return ' is no map';
    for (const [key, each] of Object.entries(value)) {
      const fault = check(each);
      if (fault !== null) return `.${key}${fault}`;
    }
    return null;
  };
}

/** A map with the fields of T, each named; what it has besides is let be. */
export function record<T>(fields: { readonly [K in keyof Required<T>]: Check }): Check {
  const checks = Object.entries<Check>(fields);
  return (value) => {
    if (!isMap(value)) return ' is no map';
    for (const [key, check] of checks) {
      const fault = check(Object.hasOwn(value, key) ? value[key] : undefined);
      if (fault !== null) return Object.hasOwn(value, key) ? `.${key}${fault}` : `.${key} is missing`;
    }
    return null;
  };
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
