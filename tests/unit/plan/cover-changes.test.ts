import { describe, expect, it } from 'vitest';
import { changesText } from '../../../src/emit/text/changes.ts';
import { changeSheet, isEmptySheet } from '../../../src/plan/change-sheet.ts';
import { coverChanges } from '../../../src/plan/cover-changes.ts';
import { keptRevisions } from '../../../src/plan/kept-revisions.ts';
import type { MistAdvice, Plan } from '../../../src/plan/plan.ts';
import { compiled, HOUSEHOLDS } from '../../examples/every-household.ts';

const COVER = { enclosure: 'fern', open: '20 %', now: '33 %', water: '3 L', nowWater: '5 L' };
const cover = (values: Partial<typeof COVER> = {}): MistAdvice => ({
  code: 'cover-mesh',
  message: 'as it was said',
  values: { ...COVER, ...values },
});
const until = (on: string, off: string): MistAdvice => ({
  code: 'cover-until',
  message: 'as it was said',
  values: { enclosure: 'fern', on, off, open: '20 %' },
});

function planWith(advice: readonly MistAdvice[], made: string): Plan {
  const household = HOUSEHOLDS.find(({ name }) => name === 'reading-room');
  const plan = household && compiled(household).plan;
  if (!plan) throw new Error('no plan of the reading-room');
  const misting = plan.misting.map((mist) => (mist.enclosure === 'fern' ? { ...mist, advice } : mist));
  return { ...plan, made, misting };
}

describe('coverings of the mesh', () => {
  const bare = planWith([], '2027-01-01');
  const covered = planWith([cover(), until('2027-05-01', '2027-10-01')], '2027-02-01');

  it('stand on the sheet when they are new, other than before, or no longer advised', () => {
    expect(changesText(covered, bare, '2027-02-01')).toContain(
      [
        'Coverings of the mesh',
        '  With 20 % of Fern open instead of 33 %, all targets are met, with 3 L of water a week instead of 5 L. That is the least covering that does it.',
        '  Fern needs that covering from 2027-05-01; from 2027-10-01 its targets are met without it: take it off again then.',
      ].join('\n'),
    );
    expect(changesText(bare, covered, '2027-02-01')).toContain(
      'Coverings of the mesh\n  Fern: the covering that was advised is not needed any more',
    );
    expect(isEmptySheet(changeSheet(bare, covered, '2027-02-01'))).toBe(false);
  });

  it('stay away where nothing is to be covered otherwise', () => {
    const drier = planWith([cover({ water: '3.1 L' }), until('2027-05-01', '2027-10-01')], '2027-02-01');
    expect(coverChanges(covered, drier, '2027-02-01')).toEqual([]);
    expect(coverChanges(planWith([until('2027-05-01', '2027-06-01')], '2027-01-01'), bare, '2027-07-01')).toEqual([]);
  });

  it('are kept with older revisions, for the sheet that reaches back', () => {
    const kept = keptRevisions({ ...planWith([], '2027-03-01'), previous: covered }, '2027-04-01');
    expect(kept?.previous?.made).toBe('2027-02-01');
    expect(kept?.previous?.misting.find(({ enclosure }) => enclosure === 'fern')?.advice).toHaveLength(2);
  });
});
