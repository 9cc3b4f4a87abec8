/** One wrong indent, one message: what stands behind it is no fault of its own. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { readHousehold } from '../../../src/read/household.ts';

const GECKO = readFileSync(new URL('../../../examples/one-gecko.yaml', import.meta.url), 'utf8');

function said(from: string, to: string): readonly string[] {
  if (!GECKO.includes(from)) throw new Error(`not in the example: ${from}`);
  const log = new Log();
  readHousehold('home.yaml', GECKO.replace(from, to), log);
  return log.sorted().map(({ code, place, because }) => `${place?.line}: ${code}: ${because}`);
}

const LINE = GECKO.split('\n').findIndex((line) => line.includes('stage: adult')) + 1;

describe('a line whose indent is wrong', () => {
  it.each([
    ['a tab', '\tstage: adult', 'a tab stands where the indent is'],
    ['a space too few', '   stage: adult', 'this does not line up with what stands around it'],
    ['a space too many', '     stage: adult', 'this does not line up with what stands around it'],
  ])('by %s is told of once', (_, line, because) => {
    expect(said('    stage: adult', line)).toEqual([`${LINE}: yaml-form: ${because}`]);
  });

  it('leaves another tab its own message', () => {
    const told = said('    stage: adult\n    size', '\tstage: adult\n\tsize');
    expect(told.filter((line) => line.includes('a tab stands')).length).toBeGreaterThan(0);
    expect(told.filter((line) => !line.includes('a tab stands'))).toEqual([]);
  });

  it('hides no fault before it', () => {
    expect(said('name: One gecko', 'name: One: gecko').join()).toContain('a second colon stands on the line');
  });
});

describe('a key that is misspelt', () => {
  it('is not told of as missing too', () => {
    expect(said('    species: leopard-gecko', '    speces: leopard-gecko').map((line) => line.split(': ')[1])).toEqual([
      'unknown-key',
    ]);
    expect(said('latitude: 40.4', 'lat: 40.4')).toHaveLength(1);
  });

  it('hides no other that is missing', () => {
    const told = said('    species: leopard-gecko\n    stage: adult', '    speces: leopard-gecko');
    expect(told.map((line) => line.split(': ')[1]).sort()).toEqual(['key-missing', 'unknown-key']);
  });
});
