/** `constructor` is a name that every record of the language has: it must not be taken for something that a file said. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { compile } from '../../../src/compile.ts';
import { profileText } from '../../shipped-profiles.ts';

const TEXT = readFileSync(join(import.meta.dirname, '../../../examples/one-gecko.yaml'), 'utf8').replace(
  'days: 365',
  'days: 12',
);

it.each([
  ['stage: adult', 'stage: constructor', 'stage-unknown'],
  ['species: leopard-gecko', 'species: constructor', 'profile-unknown'],
])('%s may not become %s', (from, to, code) => {
  const text = TEXT.replace(from, to);
  expect(text).not.toBe(TEXT);
  const profile = (id: string) =>
    id === 'leopard-gecko' ? { file: `profiles/${id}.yaml`, text: profileText(id) } : null;
  const today = { date: '2027-01-01' };
  const compiled = compile({ file: 'home.yaml', text, profile, profileIds: [], earlier: null, today, version: 'test' });
  expect(compiled.plan).toBeNull();
  expect(compiled.diagnostics.map((each) => each.code)).toContain(code);
});
