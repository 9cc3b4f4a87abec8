/** A message about one of several stands on the line of that one. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CASES, saidOfText } from './gallery.ts';

const CASE = readFileSync(new URL('stock-not-counted.yaml', CASES), 'utf8').trimEnd();
const CRICKETS = '      - { id: cricket, share: 100 %, dust: true, shelf_life: 14 days }';
const COUNTED = '{ id: fruit-fly, share: 50 %, dust: true, shelf_life: 20 days, in_stock: 500 }';
const MOSS = CASE.slice(CASE.indexOf('  - id: fern'))
  .replace('id: fern', 'id: moss')
  .replaceAll('outlet: dial', 'outlet: always');

/** The lines that a text has, on which the message stands. */
function linesOf(text: string): readonly (string | undefined)[] {
  const { diagnostics } = saidOfText('home.yaml', `${text}\n`);
  const lines = text.split('\n');
  return diagnostics
    .filter(({ code }) => code === 'stock-not-counted')
    .map(({ place }) => (place === null ? undefined : lines[place.line - 1]));
}

describe('a feeder that is not counted', () => {
  it('is pointed at behind one that is', () => {
    const half = CRICKETS.replace('100 %', '50 %');
    expect(linesOf(CASE.replace(CRICKETS, `      - ${COUNTED}\n${half}`))).toEqual([half]);
  });

  it('is pointed at in another enclosure than one that is', () => {
    const flies = CRICKETS.replace('cricket', 'fruit-fly').replace('14 days', '20 days, in_stock: 500');
    expect(linesOf(`${CASE.replace(CRICKETS, flies)}\n${MOSS}`)).toEqual([CRICKETS]);
  });
});
