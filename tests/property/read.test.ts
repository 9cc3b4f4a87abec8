/** Whatever stands in a file, reading it ends with a household or with messages that have a place; never with a fault of ours. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { isRawMap } from '../../src/read/field.ts';
import { readHousehold } from '../../src/read/household.ts';
import { readProfile } from '../../src/read/profile.ts';
import { SourceText } from '../../src/read/source-text.ts';
import { readYaml } from '../../src/read/yaml-tree.ts';
import { tries } from '../tries.ts';

const ROOT = new URL('../../', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, ROOT), 'utf8');
const households = ['examples/reading-room.yaml', 'examples/porch-tortoise.yaml', 'tests/unit/read/every-key.yaml'].map(
  textOf,
);
const profiles = readdirSync(new URL('profiles', ROOT)).map((file) => textOf(`profiles/${file}`));
const FILE = 'home.yaml';

/** Reads a text as both kinds of file and holds what is said against the rules. */
function checkSaid(text: string, reader: typeof readHousehold | typeof readProfile): void {
  const log = new Log();
  const read = reader(FILE, text, log);
  const diagnostics = log.sorted();
  const lines = text.replace(/^\ufeff/u, '').split('\n');
  expect(read === null).toBe(diagnostics.some(({ weight }) => weight === 'error'));
  for (const { place, because, instead, code } of diagnostics) {
    expect(place?.file).toBe(FILE);
    const { line = 0, column = 0, length = 0 } = place ?? {};
    expect(line, code).toBeGreaterThanOrEqual(1);
    expect(line, code).toBeLessThanOrEqual(lines.length);
    expect(column, code).toBeGreaterThanOrEqual(1);
    expect(column, code).toBeLessThanOrEqual([...(lines[line - 1] ?? '')].length + 1);
    expect(length, code).toBeGreaterThanOrEqual(1);
    expect(because.length, code).toBeGreaterThan(0);
    expect(`${because}${instead}`, code).not.toMatch(/undefined|\[object|NaN/u);
  }
  const shown = renderText(diagnostics, new Map([[FILE, { shown: FILE, text }]]), { columns: 80 });
  expect(shown).not.toMatch(/[^\P{Cc}\n]/u);
}

/** Writes data as YAML in braces and brackets; JSON is YAML. */
const written = (data: unknown): string => JSON.stringify(data, null, 1);

const anyValue = fc.oneof(
  fc.constantFrom(
    null,
    true,
    false,
    0,
    -1,
    1.5,
    450,
    1e21,
    '',
    ' ',
    'yes',
    'none',
    'auto',
    'always',
    '24',
    '24 in',
    '5 %',
    '-5 min',
    '1e9 days',
  ),
  fc.constantFrom(
    '2027-02-30',
    '0000-00-00',
    '9999-12-31',
    '24:00',
    '25:00',
    '7:30',
    '__proto__',
    'constructor',
    '\u202e',
    '\u0000',
    '😀',
    'a'.repeat(300),
  ),
  fc.constantFrom(
    [],
    {},
    [null],
    [[]],
    { value: 1 },
    { value: { value: 1 }, source: 3 },
    { after_lights_on: '0 min' },
    ['1 %', '2 %'],
    Array(13).fill('1 h'),
  ),
  fc.string({ maxLength: 8 }),
);

/** Every path of the data, deepest last. */
function pathsOf(data: unknown, path: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] {
  const below = Array.isArray(data) ? [...data.entries()] : isRawMap(data) ? Object.entries(data) : [];
  return [path, ...below.flatMap(([step, value]) => pathsOf(value, [...path, step]))];
}

/** Returns a copy with what stands at a path exchanged, taken away, or doubled. */
function changed(
  data: unknown,
  path: readonly (string | number)[],
  how: 'put' | 'drop' | 'double',
  value: unknown,
): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(data)) {
    const copy = [...data];
    if (rest.length > 0) copy[Number(step)] = changed(copy[Number(step)], rest, how, value);
    else
      copy.splice(
        Number(step),
        how === 'double' ? 0 : 1,
        ...(how === 'drop' ? [] : [how === 'put' ? value : copy[Number(step)]]),
      );
    return copy;
  }
  const entries = Object.entries(isRawMap(data) ? data : {});
  if (rest.length > 0)
    return Object.fromEntries(
      entries.map(([key, each]) => [key, key === step ? changed(each, rest, how, value) : each]),
    );
  if (how === 'drop') return Object.fromEntries(entries.filter(([key]) => key !== step));
  return Object.fromEntries(
    how === 'put'
      ? entries.map(([key, each]) => [key, key === step ? value : each])
      : [...entries, [`${step}s`, value]],
  );
}

const dataOf = (text: string): unknown => readYaml(new SourceText(FILE, text), new Log())?.data;
const edits = fc.array(fc.tuple(fc.nat(), fc.constantFrom('put', 'drop', 'double'), anyValue), {
  minLength: 1,
  maxLength: 3,
});

function edited(text: string, changes: readonly (readonly [number, 'put' | 'drop' | 'double', unknown])[]): string {
  let data = dataOf(text);
  for (const [pick, how, value] of changes) {
    const paths = pathsOf(data);
    data = changed(data, paths[pick % paths.length] ?? [], how, value);
  }
  return written(data);
}

describe('reading', () => {
  it('bears any change of the bytes', () => {
    const edit = fc.tuple(fc.nat(9000), fc.nat(4), fc.uint8Array({ maxLength: 3 }));
    fc.assert(
      fc.property(fc.constantFrom(...households), fc.array(edit, { minLength: 1, maxLength: 4 }), (text, changes) => {
        let bytes = Buffer.from(text);
        for (const [at, gone, put] of changes) {
          const from = at % (bytes.length + 1);
          bytes = Buffer.concat([bytes.subarray(0, from), put, bytes.subarray(from + gone)]);
        }
        checkSaid(new TextDecoder().decode(bytes), readHousehold);
      }),
      { seed: 20270103, numRuns: tries(150, 3000) },
    );
  });

  it('bears any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        checkSaid(text, readHousehold);
        checkSaid(text, readProfile);
      }),
      { seed: 20270104, numRuns: tries(250, 5000) },
    );
  });

  it('bears any change of what a household says', () => {
    fc.assert(
      fc.property(fc.constantFrom(...households), edits, (text, changes) =>
        checkSaid(edited(text, changes), readHousehold),
      ),
      { seed: 20270105, numRuns: tries(200, 4000) },
    );
  });

  it('bears any change of what a profile says', () => {
    fc.assert(
      fc.property(fc.constantFrom(...profiles), edits, (text, changes) =>
        checkSaid(edited(text, changes), readProfile),
      ),
      { seed: 20270106, numRuns: tries(150, 3000) },
    );
  });

  it('reads the same household from the same data in another dress', () => {
    for (const text of households) {
      const [plain, braces] = [text, written(dataOf(text))].map((each) => readHousehold(FILE, each, new Log())?.tree);
      expect(plain).toBeDefined();
      expect(braces).toEqual(plain);
    }
  });

  it('ends in good time on long files of one kind', () => {
    for (const line of ['a: ', '"', 'x: [1, 2]\n', '- {a: 1}\n', '# c\n', 'é', "'", '&a ', '| \n', 'a:\n']) {
      checkSaid(line.repeat(Math.floor(20_000 / line.length)), readHousehold);
    }
    checkSaid(Array.from({ length: 3000 }, (_, index) => `k${index}: 1`).join('\n'), readHousehold);
  });

  // The full parser calls itself for each level; near the end of the stack the runtime would end the whole process.
  it.each(['- ', '{', '[', '? ', '- [', '{a: ', '[{a: '])('refuses a file of nothing but %s', (line) => {
    const text = line.repeat(Math.floor(250_000 / line.length));
    const log = new Log();
    expect(readHousehold(FILE, text, log)).toBeNull();
    expect(log.sorted().map(({ code }) => code)).toEqual(['too-deep']);
  });

  it.each(['a:', '-'])('reads 700 levels of %s without a fault', (mark) => {
    checkSaid(Array.from({ length: 700 }, (_, level) => `${' '.repeat(level)}${mark}`).join('\n'), readHousehold);
  });
});
