/** A value that may carry who said it: `{ value: …, source: …, why: …, also: […] }`, and maps whose `source` and `why` hold for all below. */
import { type Field, isRawMap, list, mapped, optional, pick, record } from '../field.ts';
import type { FilePath, Said } from '../placed-file.ts';
import { text } from '../values.ts';

const sourceKey = text('practice');
const reason = text('common practice, no source');
export const SOURCE_KEYS = { source: optional(sourceKey), why: optional(reason) };
/** For maps whose keys the keeper chooses. */
export const RESERVED_KEYS: Readonly<Record<string, Field<unknown>>> = { source: sourceKey, why: reason };

const SOURCE_WORDS = {
  source: 'who says it: a key of sources, practice (common practice, no source) or ours',
  why: 'the reason, in your words',
};

/** A map of targets with a `source` and `why` of its own. */
export function sourced<S extends Parameters<typeof record>[0]>(
  shape: S,
  words: { readonly [K in keyof S]?: string } = {},
) {
  return record({ ...shape, ...SOURCE_KEYS }, { ...SOURCE_WORDS, ...words } as never);
}

/** What disagrees, in base units, by the map of the file that says it. */
const alsoOf = new WeakMap<object, Said['also']>();

/** Lets a value stand by itself or as `{ value: … }` with its source. */
export function said<T>(field: Field<T>): Field<T> {
  const withSource = () =>
    record(
      {
        value: field,
        ...SOURCE_KEYS,
        also: optional(
          list(
            record({ value: field, source: sourceKey, why: optional(reason) }),
            '[{ value: 12 h, source: practice }]',
          ),
        ),
      },
      { ...SOURCE_WORDS, also: 'what other sources say instead' },
    );
  return pick<T>(
    (raw) => (isRawMap(raw) && Object.hasOwn(raw, 'value') ? unwrapped<T>(raw, withSource()) : field),
    () => [field, withSource() as unknown as Field<T>],
  );
}

interface Wrapped<T> {
  readonly value: T;
  readonly also?: readonly { readonly value: T; readonly source: string }[];
}

function unwrapped<T>(raw: object, wrapper: unknown): Field<T> {
  return mapped(wrapper as Field<Wrapped<T>>, (found) => {
    alsoOf.set(raw, found.also ?? []);
    return found.value;
  });
}

/** Returns who said the value at a path of raw data: the nearest `source` and `why` at or above it, down from `root`. */
export function saidAt(data: unknown, path: FilePath): Said {
  let said: Said = { source: null, why: null, also: [] };
  let here = data;
  for (const step of [null, ...path]) {
    here = step === null ? here : below(here, step);
    if (here === undefined) break;
    said = { ...said, also: [] };
    if (isRawMap(here)) said = heard(here, said);
  }
  return said;
}

/** A map that wraps a map says twice who said it: the inner one is nearer. */
function heard(here: Readonly<Record<string, unknown>>, said: Said): Said {
  const { source, why, value } = here;
  const nearer: Said = {
    source: typeof source === 'string' ? source : said.source,
    why: typeof why === 'string' ? why : said.why,
    also: alsoOf.get(here) ?? said.also,
  };
  return isRawMap(value) ? heard(value, nearer) : nearer;
}

function below(here: unknown, step: string | number): unknown {
  if (Array.isArray(here)) return here[Number(step)];
  if (!isRawMap(here)) return undefined;
  if (Object.hasOwn(here, step)) return here[step];
  const inner = here.value;
  return Array.isArray(inner) || isRawMap(inner) ? below(inner, step) : undefined;
}
