/** The quick reader of plain YAML against the full parser: whatever it reads, both read alike, places included. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Log } from '../../src/diagnostics/log.ts';
import { readAnyYaml } from '../../src/read/any-yaml.ts';
import { isRawMap } from '../../src/read/field.ts';
import type { FilePath } from '../../src/read/placed-file.ts';
import { readPlainYaml } from '../../src/read/plain-yaml.ts';
import { SourceText } from '../../src/read/source-text.ts';
import { YamlTree } from '../../src/read/yaml-tree.ts';

const ROOT = new URL('../../', import.meta.url);
const textsIn = (folder: string): readonly (readonly [string, string])[] =>
  readdirSync(new URL(folder, ROOT))
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => [`${folder}${file}`, readFileSync(new URL(`${folder}${file}`, ROOT), 'utf8')] as const);
const shipped = [...textsIn('examples/'), ...textsIn('profiles/')];
const gallery = textsIn('tests/errors/cases/');

function pathsOf(data: unknown, path: FilePath = []): readonly FilePath[] {
  const below = Array.isArray(data) ? [...data.entries()] : isRawMap(data) ? Object.entries(data) : [];
  return [path, ...below.flatMap(([step, value]) => pathsOf(value, [...path, step]))];
}

/** Returns what both readers make of a text, or null where the quick one leaves it to the full one. */
function both(text: string): readonly [unknown, unknown] | null {
  const source = new SourceText('home.yaml', text);
  const plain = readPlainYaml(source.text);
  if (!plain) return null;
  const quick = new YamlTree(plain.data, plain.spot, source, false);
  const log = new Log();
  const any = readAnyYaml(source, log);
  const full = any && new YamlTree(any.data, any.spot, source, any.damaged);
  const told = (tree: YamlTree | null) =>
    tree && {
      data: JSON.stringify(tree.data),
      places: pathsOf(tree.data).map((path) => [path.join('.'), tree.placeOf(path), tree.placeOfKey(path)]),
      faults: 0,
    };
  return [told(quick), { ...told(full), faults: log.sorted().length }];
}

describe('the quick reader of plain YAML', () => {
  it.each(shipped)('reads %s by itself, as the full parser does', (_, text) => {
    const read = both(text);
    expect(read).not.toBeNull();
    expect(read?.[0]).toEqual(read?.[1]);
  });

  it.each(gallery)('agrees on %s, or leaves it', (_, text) => {
    const read = both(text);
    expect(read?.[0]).toEqual(read?.[1]);
  });

  const pieces = fc.constantFrom(
    ...[
      'a',
      'b: 1',
      'c: [x, y]',
      '- ',
      'd:',
      '{ e: f }',
      ' ',
      '  ',
      '\n',
      '\n  ',
      '\n- ',
      ': ',
      '#',
      ' # no',
      '"',
      "'",
      ',',
      '\r\n',
    ],
    ...[
      '1.50',
      '5.',
      '+.5',
      '-.5',
      '00',
      '1.5e-2',
      '0o17',
      'NULL',
      'TRUE',
      '-.inf',
      '.5.',
      '1_000',
      '0x1F',
      '1e3',
      '.5',
      '-3',
      '+4',
      '~',
      'null',
      'True',
      'false',
      '.nan',
      '{',
      '}',
      '[',
      ']',
      '&x',
      '*x',
      '|',
      '>',
      '!t',
    ],
    ...[
      'é',
      '\u00a0',
      '\u2028',
      '?',
      '<<: x',
      '---',
      '%',
      '\t',
      'x:y',
      'http://a',
      "vet's",
      '-',
      '007',
      '12:30',
      'a b#c',
      '日本',
      '😀',
    ],
  );

  it('agrees on texts pieced together, or leaves them', () => {
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 14 }), (parts) => {
        const read = both(parts.join(''));
        expect(read?.[0]).toEqual(read?.[1]);
      }),
      { seed: 20270101, numRuns: 6000 },
    );
  });

  it('agrees on shipped files with a few characters changed, or leaves them', () => {
    const edit = fc.tuple(fc.nat(7000), fc.nat(3), pieces);
    fc.assert(
      fc.property(fc.constantFrom(...shipped), fc.array(edit, { minLength: 1, maxLength: 3 }), ([, text], edits) => {
        let changed = text;
        for (const [at, gone, put] of edits) {
          const from = at % (changed.length + 1);
          changed = changed.slice(0, from) + put + changed.slice(from + gone);
        }
        const read = both(changed);
        expect(read?.[0]).toEqual(read?.[1]);
      }),
      { seed: 20270102, numRuns: 150 },
    );
  });
});
