import { describe, expect, it } from 'vitest';
import { keptRevisions, revisionsOf } from '../../../src/plan/kept-revisions.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { steadyYear } from '../../generated/steady-year.ts';

function revision(number: number, made: string, previous: Plan | null): Plan {
  return { ...steadyYear(), revision: number, made, previous };
}

/** Revisions made on these days, each against the one before. */
function madeOn(...days: readonly string[]): Plan {
  const last = days.reduce<Plan | null>(
    (earlier, made, index) => revision(index + 1, made, keptRevisions(earlier, made)),
    null,
  );
  if (!last) throw new Error('none');
  return last;
}

const kept = (plan: Plan) => revisionsOf(plan).map(({ revision: number, made }) => [number, made]);

describe('kept revisions', () => {
  it('are those of earlier days, the newest first', () => {
    expect(kept(madeOn('2027-01-01'))).toEqual([]);
    expect(kept(madeOn('2027-01-01', '2027-02-01', '2027-03-01'))).toEqual([
      [2, '2027-02-01'],
      [1, '2027-01-01'],
    ]);
  });

  it('of one day replace each other', () => {
    expect(kept(madeOn('2027-01-01', '2027-02-01', '2027-02-01', '2027-03-01', '2027-03-01'))).toEqual([
      [3, '2027-02-01'],
      [1, '2027-01-01'],
    ]);
  });

  it('of the first day hold the first, which may hang on the shelf already', () => {
    expect(kept(madeOn('2027-01-01', '2027-01-01'))).toEqual([[1, '2027-01-01']]);
    expect(kept(madeOn('2027-01-01', '2027-01-01', '2027-01-01'))).toEqual([[1, '2027-01-01']]);
    expect(kept(madeOn('2027-01-01', '2027-01-01', '2027-02-01', '2027-02-01'))).toEqual([
      [2, '2027-01-01'],
      [1, '2027-01-01'],
    ]);
  });

  it('are at most six, and survive a clock set back', () => {
    const days = Array.from({ length: 9 }, (_, index) => `2027-0${index + 1}-01`);
    expect(kept(madeOn(...days)).map(([number]) => number)).toEqual([8, 7, 6, 5, 4, 3]);
    expect(kept(madeOn('2027-01-01', '2027-06-01', '2027-03-01'))).toEqual([[1, '2027-01-01']]);
  });

  it('hold the newest whole, and of older ones what is still to come', () => {
    const [whole, old] = revisionsOf(madeOn('2027-01-01', '2027-02-01', '2027-06-01'));
    expect(whole?.feeding).toEqual(steadyYear().feeding);
    const coming = steadyYear().feeding.filter(({ date }) => date >= '2027-06-01');
    expect(old?.feeding).toEqual(coming);
    expect(coming.length).toBeGreaterThan(0);
    expect(old?.lighting.map(({ settings }) => settings.map(({ from, slots }) => [from, slots]))).toEqual(
      steadyYear().lighting.map(({ settings }) => settings.map(({ from, slots }) => [from, slots])),
    );
    expect(JSON.stringify(old).length).toBeLessThan(JSON.stringify(whole).length);
  });
});
