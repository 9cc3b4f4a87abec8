/**
 * The kinds of field from which the schemas are built, on the core of `zod` (whose one home this folder is). A field reads one value of
 * the file, says every problem it finds as a code of the catalogue, and knows its JSON Schema.
 */
import * as zod from 'zod/v4/core';
import type { Code, ValuesOf } from '../diagnostics/catalogue.ts';
import type { JsonSchema } from './schema-parts.ts';

// One file is read in a run: compiling the schemas to functions would cost more than it saves.
zod.config({ jitless: true });

export type Field<T> = zod.$ZodType<T>;
export type AnyField = zod.$ZodType;
type Path = readonly (string | number)[];
type Issues = zod.$ZodRawIssue[];

/** Notes a problem of the value, or of what stands at a path below it; returns undefined so that it can be returned in turn. */
export type Say = <C extends Code>(code: C, values: ValuesOf<C>, below?: Path) => undefined;

/** One problem of a file, before it has a place. */
export interface Problem {
  readonly code: Code;
  readonly values: unknown;
  readonly path: Path;
}

/** Returns the JSON Schema of a field that is part of another. */
export type PartOf = (field: AnyField) => JsonSchema;

/** What messages and editors show of a field. */
export interface Shown {
  /** As it would be written in the file. */
  readonly example: string | null;
  readonly schema: (part: PartOf) => JsonSchema;
}
export const shownOf = new WeakMap<object, Shown>();
/** What an editor shows when the pointer rests on a key, by map. */
export const wordsOfKeys = new WeakMap<object, Readonly<Record<string, string>>>();

/** A field made of one function, which gets the value and the list for issues; it never sees a value that is not there. */
function made<T>(shown: Shown, read: (value: unknown, issues: Issues) => T | undefined): Field<T> {
  const field: zod.$ZodTransform = new zod.$ZodTransform({
    type: 'transform',
    transform: (value, payload) => {
      if (value !== undefined) return read(value, payload.issues);
      payload.issues.push({ code: 'invalid_type', expected: 'nonoptional', input: undefined, inst: field } as never);
      return undefined;
    },
  });
  shownOf.set(field, shown);
  return field as unknown as Field<T>;
}

/** A field of one value; `read` returns undefined after it has said what is wrong. Missing and empty values never reach it. */
export function leaf<T>(
  read: (value: unknown, say: Say) => T | undefined,
  example: string,
  schema: (part: PartOf) => JsonSchema,
): Field<T> {
  return made({ example, schema }, (value, issues) => {
    const say = sayInto(issues);
    return value === null ? say('value-missing', { key: '', example }) : read(value, say);
  });
}

/** A field that looks at the raw value and hands it to the one form that it must be meant to have. */
export function pick<T>(
  choose: (value: unknown) => Field<T>,
  forms: () => readonly Field<T>[],
  check?: (value: unknown, say: Say) => void,
  example: string | null = null,
): Field<T> {
  const schema = (part: PartOf): JsonSchema => {
    const schemas = forms().map(part);
    return schemas.length === 1 && schemas[0] ? schemas[0] : { anyOf: schemas };
  };
  const shown: Shown = {
    get example() {
      return example ?? shownOf.get(forms()[0] ?? {})?.example ?? null;
    },
    schema,
  };
  return made(shown, (value, issues) => {
    check?.(value, sayInto(issues));
    return readInto(choose(value), value, issues);
  });
}

/** A field that is built when the file first has a use for it. */
export function later<T>(make: () => Field<T>): Field<T> {
  let field: Field<T> | null = null;
  const built = (): Field<T> => {
    field ??= make();
    return field;
  };
  return pick(built, () => [built()]);
}

/** A field whose value is turned into another. */
export function mapped<A, B>(field: Field<A>, turn: (found: A) => B): Field<B> {
  const example = shownOf.get(field)?.example ?? null;
  return made({ example, schema: (part) => part(field) }, (value, issues) => {
    const before = issues.length;
    const found = readInto(field, value, issues);
    return issues.length > before ? undefined : turn(found as A);
  });
}

/** A field with a check across its keys, which runs on the raw map even where one of the keys is wrong. */
export function checked<T>(field: Field<T>, check: (value: RawMap, say: Say) => void): Field<T> {
  return pick<T>(
    () => field,
    () => [field],
    (value, say) => isRawMap(value) && check(value, say),
  );
}

const nothingElse = new zod.$ZodNever({ type: 'never' });

/** A map with these keys and no others; `words` say what an editor shows when the pointer rests on a key. */
export function record<S extends zod.$ZodLooseShape>(
  shape: S,
  words: { readonly [K in keyof S]?: string } = {},
): zod.$ZodObject<S, zod.$strict> {
  const field = new zod.$ZodObject({ type: 'object', shape, catchall: nothingElse });
  wordsOfKeys.set(field, words as Readonly<Record<string, string>>);
  return field as unknown as zod.$ZodObject<S, zod.$strict>;
}

/** A key that may be left out. */
export function optional<F extends AnyField>(field: F): zod.$ZodExactOptional<F> {
  return new zod.$ZodExactOptional({ type: 'optional', innerType: field }) as unknown as zod.$ZodExactOptional<F>;
}

/** A list; at least one entry unless `least` is 0. */
export function list<T>(item: Field<T>, example: string, least = 1): Field<readonly T[]> {
  const items = new zod.$ZodArray({ type: 'array', element: item }) as unknown as Field<readonly T[]>;
  shownOf.set(items, { example, schema: () => ({}) });
  return pick<readonly T[]>(
    () => items,
    () => [items],
    (value, say) => {
      if (Array.isArray(value) && value.length < least) say('value-missing', { key: '', example });
    },
    example,
  );
}

/** A map whose keys the keeper chooses; `reserved` keys are left to others. */
export function named<T>(
  key: Field<string>,
  item: Field<T>,
  reserved: Readonly<Record<string, Field<unknown>>> = {},
): Field<Readonly<Record<string, T>>> {
  const schema = (part: PartOf): JsonSchema => ({
    type: 'object',
    properties: Object.fromEntries(Object.entries(reserved).map(([name, other]) => [name, part(other)])),
    additionalProperties: part(item),
  });
  return made({ example: null, schema }, (value, issues) => {
    if (!isRawMap(value)) return readInto(record({}), value, issues) as undefined;
    const found: Record<string, T> = {};
    for (const [name, below] of Object.entries(value)) {
      const other = Object.hasOwn(reserved, name) ? reserved[name] : undefined;
      if (other) readInto(other, below, issues, [name]);
      else if (readInto(key, name, issues, [name]) === name) found[name] = readInto(item, below, issues, [name]) as T;
    }
    return found;
  });
}

export type RawMap = Readonly<Record<string, unknown>>;
/** Tells whether a value of the file is a map. */
export function isRawMap(value: unknown): value is RawMap {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Returns what a field makes of a value, or every problem in it. */
export function readWith<T>(
  field: Field<T>,
  value: unknown,
): { readonly found: T | null; readonly problems: readonly Problem[] } {
  const issues: Issues = [];
  const found = readInto(field, value, issues);
  return issues.length === 0
    ? { found: found as T, problems: [] }
    : { found: null, problems: issues.flatMap(problemsOf) };
}

/** Reads a value below the one that `say` speaks for; undefined after its problems were said. */
export function readBelow<T>(field: Field<T>, value: unknown, step: string | number, say: Say): T | undefined {
  const { found, problems } = readWith(field, value);
  for (const { code, values, path } of problems) say(code, values as never, [step, ...path]);
  return found ?? undefined;
}

function sayInto(issues: Issues): Say {
  return (code, values, below = []) => {
    issues.push({ code: 'custom', message: code, params: { values }, path: [...below], input: null });
    return undefined;
  };
}

/** Returns what a field makes of a value; undefined where its issues, with `below` before their paths, were added to the list. */
function readInto<T>(field: Field<T>, value: unknown, issues: Issues, below: Path = []): T | undefined {
  const result = field._zod.run({ value, issues: [] }, { async: false });
  if (result instanceof Promise) throw new Error('a field answered later');
  if (result.issues.length === 0) return result.value as T;
  for (const issue of result.issues) issues.push({ ...issue, path: [...below, ...(issue.path ?? [])] });
  return undefined;
}

function problemsOf(issue: zod.$ZodRawIssue): readonly Problem[] {
  const path = (issue.path ?? []).filter((step) => typeof step !== 'symbol');
  const key = String(path.at(-1) ?? '');
  const of = ofPath(path.slice(0, -1));
  if (issue.code === 'custom') {
    const values = (issue.params?.values ?? {}) as RawMap;
    return [{ code: issue.message as Code, values: values.key === '' ? { ...values, key, of } : values, path }];
  }
  if (issue.code === 'unrecognized_keys') {
    const known = Object.keys((issue.inst as unknown as zod.$ZodObject)._zod.def.shape);
    return (issue.keys as string[]).map((each) => ({
      code: 'unknown-key',
      values: { key: each, of: ofPath(path), known },
      path: [...path, each],
    }));
  }
  const example = shownOf.get(issue.inst as object)?.example ?? null;
  if (issue.input === undefined) return [{ code: 'key-missing', values: { key, of, example }, path }];
  if (issue.input === null) return [{ code: 'value-missing', values: { key, example }, path }];
  const wanted = issue.expected === 'array' ? 'a list' : 'a map of keys';
  return [{ code: 'wrong-shape', values: { wanted, found: foundWords(issue.input), example }, path }];
}

const ENTRY_WORDS: Readonly<Record<string, string>> = {
  people: 'a person',
  hardware: 'a device',
  enclosures: 'an enclosure',
  lamps: 'a lamp',
  feeders: 'a feeder',
  supplements: 'a supplement',
  chores: 'a chore',
  animals: 'an animal',
  states: 'a state',
  away: 'an absence',
  shortage: 'a shortage',
  feeds: 'a feed',
  dusting: 'a dusting',
};

/** Returns what a path stands for in a sentence: `the file`, `site`, `a lamp`. */
function ofPath(path: Path): string {
  const last = path.at(-1);
  if (last === undefined) return 'the file';
  if (typeof last === 'string') return last;
  const of = path.at(-2);
  return ENTRY_WORDS[String(of)] ?? `an entry of ${of}`;
}

/** Returns a raw value in a few words, for messages. */
export function foundWords(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (isRawMap(value)) return 'a map of keys';
  if (value === null) return 'nothing';
  if (typeof value === 'string')
    return value.length > 40 ? `${value.slice(0, 40)}…` : value === '' ? 'an empty text' : value;
  return Number.isNaN(value)
    ? '.nan'
    : value === Number.POSITIVE_INFINITY
      ? '.inf'
      : value === Number.NEGATIVE_INFINITY
        ? '-.inf'
        : String(value);
}
