import { describe, expect, it } from 'vitest';
import { wallEntries } from '../../../../src/solve/mist/wall-entries.ts';
import { autumn, MADRID, spring } from '../../../generated/offsets-of-2027.ts';

const ENTRIES = ['01:30', '02:30', '08:00', '23:30'].map((at) => ({ at, seconds: 60 }));

function startsOn(day: number, clock: 'standard' | 'wall') {
  return wallEntries(ENTRIES, clock, MADRID, day, day)[0]?.entries.map(({ at }) => at);
}

describe('entries on the wall', () => {
  it('come in spans of their own around a change', () => {
    const spans = wallEntries(ENTRIES, 'wall', MADRID, spring - 2, spring + 2);
    expect(spans.map(({ from, to }) => [from, to])).toEqual([
      ['2027-03-26', '2027-03-27'],
      ['2027-03-28', '2027-03-28'],
      ['2027-03-29', '2027-03-30'],
    ]);
  });

  it('of a timer on standard time start an hour later in summer, one of them past midnight', () => {
    expect(startsOn(spring - 1, 'standard')).toEqual(['01:30', '02:30', '08:00', '23:30']);
    expect(startsOn(spring + 1, 'standard')).toEqual(['00:30', '02:30', '03:30', '09:00']);
  });

  it('of a timer on standard time keep their instants on the dates of a change', () => {
    expect(startsOn(spring, 'standard')).toEqual(['01:30', '03:30', '09:00']);
    expect(startsOn(autumn, 'standard')).toEqual(['00:30', '02:30', '02:30', '08:00', '23:30']);
  });

  it('of a timer on wall time stand as set, without those that are skipped', () => {
    expect(startsOn(spring + 1, 'wall')).toEqual(['01:30', '02:30', '08:00', '23:30']);
    expect(startsOn(spring, 'wall')).toEqual(['01:30', '08:00', '23:30']);
    expect(startsOn(autumn, 'wall')).toEqual(['01:30', '02:30', '08:00', '23:30']);
  });

  it('keep their seconds, and none are none', () => {
    expect(wallEntries([{ at: '08:00', seconds: 45 }], 'standard', MADRID, spring + 1, spring + 9)).toEqual([
      { from: '2027-03-29', to: '2027-04-06', entries: [{ at: '09:00', seconds: 45 }] },
    ]);
    expect(wallEntries([], 'standard', MADRID, spring, spring)[0]?.entries).toEqual([]);
  });
});
