import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { householdSchema, profileSchema } from '../../../src/read/json-schema.ts';
import { SourceText } from '../../../src/read/source-text.ts';
import { readYaml } from '../../../src/read/yaml-tree.ts';

const ROOT = new URL('../../../', import.meta.url);
const ajv = new Ajv({ strict: false, allErrors: true });
const isHousehold = ajv.compile(householdSchema());
const isProfile = ajv.compile(profileSchema());

function dataOf(path: string): unknown {
  return readYaml(new SourceText(path, readFileSync(new URL(path, ROOT), 'utf8')), new Log())?.data;
}

const yamlIn = (folder: string): readonly string[] =>
  readdirSync(new URL(folder, ROOT))
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => `${folder}/${file}`);

describe('the published JSON Schemas', () => {
  it.each(yamlIn('examples'))('accept %s', (path) => {
    expect(isHousehold(dataOf(path)), JSON.stringify(isHousehold.errors?.slice(0, 5))).toBe(true);
  });

  it.each(yamlIn('profiles'))('accept %s', (path) => {
    expect(isProfile(dataOf(path)), JSON.stringify(isProfile.errors?.slice(0, 5))).toBe(true);
  });

  // What a schema can know of a file: its keys, its words, the form of its values.
  it.each([
    'unknown-key',
    'key-missing',
    'value-missing',
    'wrong-shape',
    'needs-unit',
    'wrong-unit',
    'not-a-quantity',
    'decimal-comma',
    'not-a-number',
    'not-a-choice',
    'not-a-time',
    'time-as-number',
    'not-a-date',
    'not-yes-or-no',
    'not-text',
    'id-form',
    'band-form',
    'format-unknown',
    'every-form',
  ])('refuse the gallery file of %s', (code) => {
    expect(isHousehold(dataOf(`tests/errors/cases/${code}.yaml`))).toBe(false);
  });

  it('say which units fit', () => {
    const text = JSON.stringify(householdSchema());
    for (const units of ['cm, m, mm, in, ft', '°C, °F', 'mL, L, gal, fl oz', 'W, kW']) expect(text).toContain(units);
  });

  it('are draft 7 and stay small enough for an editor', () => {
    for (const schema of [householdSchema(), profileSchema()]) {
      expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
      expect(JSON.stringify(schema).length).toBeLessThan(300_000);
    }
  });
});
