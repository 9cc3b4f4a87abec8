/** Clocks that stand wrong, and clocks that jump between two compiles or within one. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { NEW, newHome, OLD } from './home-of-tests.ts';
import { wholeVersion } from './results.ts';

const { out, compiled, remove } = newHome();
afterAll(remove);
beforeEach(() => rmSync(out, { recursive: true, force: true }));

interface Made {
  readonly name: string;
  readonly made: string;
  readonly revision: number;
  readonly lighting: readonly unknown[];
  readonly misting: readonly unknown[];
  readonly feeding: readonly unknown[];
}

function standing(): Made {
  expect(wholeVersion(out, 'home')).not.toBeNull();
  return JSON.parse(readFileSync(join(out, 'home/plan.json'), 'utf8')) as Made;
}

const MOMENTS = [
  '1969-12-31T23:59:59Z',
  '1970-01-01T00:00:00Z',
  '2000-02-29T12:00:00Z',
  '2027-01-05T12:00:00Z',
  '2027-03-28T01:00:00Z',
  '2038-01-19T03:14:08Z',
  '2100-02-28T23:30:00Z',
  '2100-03-01T00:00:00Z',
];

describe('a clock that is wrong', () => {
  it.each(MOMENTS)('at %s makes the plan of the file all the same', async (moment) => {
    expect(await compiled(NEW)).toBe(0);
    const { lighting, misting, feeding } = standing();
    rmSync(out, { recursive: true });
    expect(await compiled(NEW, { today: () => Date.parse(moment) })).toBe(0);
    expect(standing()).toMatchObject({ lighting, misting, feeding, revision: 1 });
  });
});

describe('a clock that jumps', () => {
  it('while a plan is made is asked once for the day', async () => {
    for (const index of [0, 3, 6]) {
      rmSync(out, { recursive: true, force: true });
      let calls = index;
      const jumping = () => Date.parse(MOMENTS[calls++ % MOMENTS.length] ?? '');
      expect(await compiled(OLD, { today: jumping })).toBe(0);
      const before = standing();
      expect(await compiled(NEW, { today: jumping })).toBe(0);
      const after = standing();
      expect(after).toMatchObject({ name: 'New', revision: 2 });
      expect(after.made >= before.made).toBe(true);
    }
  });

  it('back and forth between compiles never goes back behind the day that was planned for', async () => {
    let made = '';
    for (const [index, moment] of [...MOMENTS, ...MOMENTS.filter((_, index) => index % 3 === 0)].entries()) {
      expect(await compiled(index % 2 === 0 ? OLD : NEW, { today: () => Date.parse(moment) })).toBe(0);
      const now = standing();
      expect(now.revision).toBe(index + 1);
      expect(now.made >= made).toBe(true);
      made = now.made;
    }
  });

  it('set back, changes nothing where nothing changed, and a date that is named is taken at its word', async () => {
    const [from, later] = ['2027-01-01', '2027-01-10'];
    await compiled(OLD, { today: later });
    const before = wholeVersion(out, 'home');
    expect(await compiled(OLD, { today: '2020-01-01' })).toBe(0);
    expect(wholeVersion(out, 'home')).toBe(before);
    expect(await compiled(NEW, { today: '2020-01-01' })).toBe(0);
    expect(standing()).toMatchObject({ revision: 2, made: from });
    expect(await compiled(OLD, { today: later })).toBe(0);
    standing();
  });
});
