/** A file and a command may name dates that a plan can count from; beyond them dates would run out of their four digits. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { checkNamedDate } from '../../../src/cli/named-date.ts';
import { compile } from '../../../src/compile.ts';
import { emitAll } from '../../../src/emit/emitters.ts';
import { readPlan } from '../../../src/plan/read-plan.ts';
import { profileText } from '../../shipped-profiles.ts';

const TEXT = readFileSync(join(import.meta.dirname, '../../../examples/one-gecko.yaml'), 'utf8').replace(
  'days: 365',
  'days: 12',
);

function compiledFrom(from: string) {
  const text = TEXT.replace(/from: \d{4}-\d\d-\d\d/, `from: ${from}`);
  expect(text).not.toBe(TEXT);
  const profile = (id: string) => ({ file: `profiles/${id}.yaml`, text: profileText(id) });
  const today = { date: '2027-01-01' };
  return compile({ file: 'home.yaml', text, profile, profileIds: [], earlier: null, today, version: 'test' });
}

it.each(['9999-12-31', '2200-01-01', '1899-12-31', '0001-01-01'])('no plan begins on %s', (from) => {
  const { plan, diagnostics } = compiledFrom(from);
  expect(plan).toBeNull();
  expect(diagnostics.map(({ code }) => code)).toEqual(['out-of-bounds']);
  expect(() => checkNamedDate('--today', from)).toThrow(/lie from 1900-01-01 to 2199-12-31/);
});

it.each(['1900-01-01', '1969-12-31', '2038-01-19', '2099-12-31', '2199-12-31'])(
  'a plan that begins on %s is made, written and read again',
  async (from) => {
    const { plan } = compiledFrom(from);
    if (!plan) throw new Error('no plan');
    expect(plan.from).toBe(from);
    const products = await emitAll(plan, { pdf: false });
    const json = products.find(({ path }) => path === 'plan.json')?.content;
    expect(readPlan(String(json)).ok).toBe(true);
    expect(() => checkNamedDate('--today', from)).not.toThrow();
  },
);

it('a plan that names a day of the year 9999 is damaged', async () => {
  const { plan } = compiledFrom('2038-01-19');
  const read = readPlan(JSON.stringify({ ...plan, made: '9999-12-31' }));
  expect(read).toEqual({ ok: false, reason: 'it is damaged: made is no date' });
});
