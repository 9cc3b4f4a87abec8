/** Half a day is none: what comes again every so many days, or may be moved by so many, is planned in whole dates. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { compiledHousehold } from '../../compiled-household.ts';

const TEXT = readFileSync(join(import.meta.dirname, '../../../examples/reading-room.yaml'), 'utf8').replace(
  'days: 365',
  'days: 35',
);

function codes(from: string, to: string): readonly string[] {
  const text = TEXT.replace(from, to);
  expect(text).not.toBe(TEXT);
  const { diagnostics } = compiledHousehold(text);
  return diagnostics.filter(({ weight }) => weight === 'error').map(({ code }) => code);
}

it.each([
  ['leeway: 5 days', 'leeway: 2.5 days'],
  ['empty_every: 2 days', 'empty_every: 2.5 days'],
  ['empty_every: 1 day ', 'empty_every: 36 h '],
  ['refill_every: 7 days', 'refill_every: 6.5 days'],
  ['at_least_between: 14 days', 'at_least_between: 13.5 days'],
])('%s may not be %s', (from, to) => {
  expect(codes(from, to)).toEqual(['out-of-bounds']);
});

it.each([
  ['empty_every: 2 days', 'empty_every: 48 h'],
  ['shelf_life: 10 days', 'shelf_life: 9.5 days'],
  ['reserve: 14 days', 'reserve: 13.5 days'],
])('%s may be %s', (from, to) => {
  expect(codes(from, to)).toEqual([]);
});
