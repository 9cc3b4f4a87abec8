/**
 * The one home of `zod`: the few kinds of field from which the schemas are built. A field reads one value of the file, says every
 * problem it finds as a code of the catalogue, and knows its JSON Schema.
 */
import * as z from 'zod';
import type { Code, ValuesOf } from '../diagnostics/catalogue.ts';
import { type JsonSchema, SchemaParts } from './schema-parts.ts';

// One file is read in a run: compiling the schemas to functions would cost more than it saves.
z.config({ jitless: true });

export type Field<T> = z.ZodType<T>;
type Path = readonly (string | number)[];

/** Notes a problem of the value, or of what stands at a path below it; returns undefined so that it can be returned in turn. */
export type Say = <C extends Code>(code: C, values: ValuesOf<C>, below?: Path) => undefined;

/** One problem of a file, before it has a place. */
export interface Problem {
  readonly code: Code;
  readonly values: unknown;
  readonly path: Path;
}

/** What an editor shows of a field. */
interface Shown {
  /** As it would be written in the file. */
  readonly example?: string;
  readonly schema: (part: PartOf) => JsonSchema;
}
/** Returns the JSON Schema of a field that is part of another. */
export type PartOf = (field: z.core.$ZodType) => JsonSchema;

const shownOf = new WeakMap<object, Shown>();
const wordsOfKeys = new WeakMap<object, Readonly<Record<string, string>>>();
const anything = z.unknown();

/** A field of one value; `read` returns undefined after it has said what is wrong. Missing and empty values never reach it. */
export function leaf<T>(
  read: (value: unknown, say: Say) => T | undefined,
  example: string,
  schema: (part: PartOf) => JsonSchema,
): Field<T> {
  return shownAs(
    anything.transform((value, context) => {
      const say = sayInto(context);
      const found =
        value === undefined
          ? say('key-missing', { key: '', of: '', example })
          : value === null
            ? say('value-missing', { key: '', example })
            : read(value, say);
      return found === undefined ? z.NEVER : found;
    }) as unknown as Field<T>,
    { example, schema },
  );
}

/** A field that looks at the raw value and hands it to the one form that it must be meant to have. */
export function pick<T>(
  choose: (value: unknown) => Field<T>,
  forms: () => readonly Field<T>[],
  check?: (value: unknown, say: Say) => void,
): Field<T> {
  const field = anything.transform((value, context) => {
    check?.(value, sayInto(context));
    return readInto(choose(value), value, context);
  }) as unknown as Field<T>;
  return shownAs(field, {
    schema: (part) => {
      const schemas = forms().map(part);
      return schemas.length === 1 && schemas[0] ? schemas[0] : { anyOf: schemas };
    },
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

/** A map with these keys and no others; `words` say what an editor shows when the pointer rests on a key. */
export function record<S extends z.core.$ZodLooseShape>(
  shape: S,
  words: { readonly [K in keyof S]?: string } = {},
): z.ZodObject<S, z.core.$strict> {
  const field = z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys' ? Object.keys(shape).join(' ') : shapeWords('a map of keys', undefined),
  });
  wordsOfKeys.set(field, words as Readonly<Record<string, string>>);
  return field;
}

/** A key that may be left out. */
export function optional<F extends z.core.$ZodType>(field: F): z.ZodExactOptional<F> {
  return z.exactOptional(field);
}

/** A list; `most` entries at most, at least one unless `least` is 0. */
export function list<T>(item: Field<T>, example: string, least = 1): Field<readonly T[]> {
  const items = z.array(item, { error: () => shapeWords('a list', example) });
  return pick<readonly T[]>(
    () => items,
    () => [items],
    (value, say) => {
      if (Array.isArray(value) && value.length < least) say('value-missing', { key: '', example });
    },
  );
}

/** A map whose keys the keeper chooses; `reserved` keys are left to others. */
export function named<T>(
  key: Field<string>,
  item: Field<T>,
  reserved: Readonly<Record<string, Field<unknown>>> = {},
): Field<Readonly<Record<string, T>>> {
  const field = anything.transform((value, context) => {
    if (!isRawMap(value)) return readInto(record({}) as unknown as Field<unknown>, value, context);
    const found: Record<string, T> = {};
    for (const [name, below] of Object.entries(value)) {
      const other = Object.hasOwn(reserved, name) ? reserved[name] : undefined;
      if (other) readInto(other, below, context, [name]);
      else if (readInto(key, name, context, [name]) === name) {
        const result = readInto(item, below, context, [name]);
        if (result !== z.NEVER) found[name] = result as T;
      }
    }
    return found;
  }) as unknown as Field<Readonly<Record<string, T>>>;
  return shownAs(field, {
    schema: (part) => ({
      type: 'object',
      properties: Object.fromEntries(Object.entries(reserved).map(([name, other]) => [name, part(other)])),
      additionalProperties: part(item),
    }),
  });
}

export type RawMap = Readonly<Record<string, unknown>>;
export function isRawMap(value: unknown): value is RawMap {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Returns what a field makes of a value, or every problem in it. */
export function readWith<T>(
  field: Field<T>,
  value: unknown,
): { readonly found: T | null; readonly problems: readonly Problem[] } {
  const result = field.safeParse(value, { reportInput: true });
  return result.success
    ? { found: result.data, problems: [] }
    : { found: null, problems: result.error.issues.flatMap(problemsOf) };
}

/** Reads a value below the one that `say` speaks for; undefined after its problems were said. */
export function readBelow<T>(field: Field<T>, value: unknown, step: string | number, say: Say): T | undefined {
  const { found, problems } = readWith(field, value);
  for (const { code, values, path } of problems) say(code, values as never, [step, ...path]);
  return found ?? undefined;
}

/** Returns the JSON Schema (draft 7) of what a field takes. */
export function jsonSchemaOf(field: Field<unknown>): JsonSchema {
  const parts = new SchemaParts();
  const part: PartOf = (each) => parts.refer(each, () => converted(each, part));
  return { $schema: 'http://json-schema.org/draft-07/schema#', ...parts.assemble(converted(field, part)) };
}

function converted(field: z.core.$ZodType, part: PartOf): JsonSchema {
  const { $schema: _, ...schema } = z.toJSONSchema(field, {
    target: 'draft-07',
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const shown = shownOf.get(zodSchema);
      if (shown)
        Object.assign(jsonSchema, shown.schema(part), shown.example ? { examples: [yamlValue(shown.example)] } : {});
      const words = wordsOfKeys.get(zodSchema);
      if (words) jsonSchema.properties = describedBy(words, jsonSchema.properties ?? {});
    },
  });
  return schema;
}

type Properties = NonNullable<z.core.JSONSchema.BaseSchema['properties']>;

function describedBy(words: Readonly<Record<string, string>>, properties: Properties): Properties {
  const described = Object.entries(properties).map(([key, schema]) => {
    const description = words[key];
    return [key, description === undefined || typeof schema === 'boolean' ? schema : { ...schema, description }];
  });
  return Object.fromEntries(described) as Properties;
}

function yamlValue(example: string): unknown {
  return /^-?\d+(\.\d+)?$/u.test(example) ? Number(example) : example.replace(/^"(.*)"$/u, '$1');
}

function shownAs<F extends object>(field: F, shown: Shown): F {
  shownOf.set(field, shown);
  return field;
}

type Context = z.core.$RefinementCtx;

function sayInto(context: Context): Say {
  return (code, values, below = []) => {
    context.addIssue({ code: 'custom', message: code, params: { values }, path: [...below] });
    return undefined;
  };
}

function readInto(field: Field<unknown>, value: unknown, context: Context, below: Path = []): unknown {
  const result = field.safeParse(value, { reportInput: true });
  if (result.success) return result.data;
  for (const issue of result.error.issues) {
    context.issues.push({
      ...issue,
      path: [...below, ...issue.path],
      continue: false,
    } as unknown as z.core.$ZodRawIssue);
  }
  return z.NEVER;
}

/** What a list or map says when something else stands there, packed into the message of the issue. */
function shapeWords(wanted: string, example: string | undefined): string {
  return JSON.stringify([wanted, example ?? null]);
}

function problemsOf(issue: z.core.$ZodIssue): readonly Problem[] {
  const path = issue.path.filter((step) => typeof step !== 'symbol');
  if (issue.code === 'custom') {
    const key = String(path.at(-1) ?? '');
    const values = { ...(issue.params?.values as object) };
    const needsKey = 'key' in values && values.key === '';
    return [
      {
        code: issue.message as Code,
        values: needsKey ? { ...values, key, of: ofPath(path.slice(0, -1)) } : values,
        path,
      },
    ];
  }
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      code: 'unknown-key',
      values: { key, of: ofPath(path), known: issue.message.split(' ') },
      path: [...path, key],
    }));
  const [wanted, example] = JSON.parse(issue.message) as readonly [string, string | null];
  const key = String(path.at(-1) ?? '');
  if (issue.input === undefined)
    return [{ code: 'key-missing', values: { key, of: ofPath(path.slice(0, -1)), example }, path }];
  if (issue.input === null) return [{ code: 'value-missing', values: { key, example }, path }];
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
export function ofPath(path: Path): string {
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
