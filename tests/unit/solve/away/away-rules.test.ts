import { describe, expect, it } from 'vitest';
import { type AwayJob, aroundAbsences } from '../../../../src/solve/away/away-rules.ts';
import { daysThere } from '../../../../src/solve/away/days-there.ts';

/** Days 10 to 19 away; a sitter comes on the days given. */
function away(visits: readonly number[] | null) {
  return daysThere({ away: [{ from: 10, to: 19, sitter: visits ? 'sitter' : null, visits: visits ?? [], path: [] }] });
}

function outcome(dues: readonly number[], leeway: number, job: AwayJob, visits: readonly number[] | null) {
  const inPlan = dues.map((due) => ({
    due,
    days: Array.from({ length: 2 * leeway + 1 }, (_, at) => due - leeway + at).filter((day) => day >= 0 && day <= 40),
  }));
  const { kept, undone } = aroundAbsences(inPlan, job, away(visits), 0, 40);
  return {
    kept: kept.map(({ due, days, isForced }) => [due, days, isForced]),
    undone: undone.map(({ due }) => due),
  };
}

const weekly = (whenAway: AwayJob['whenAway']): AwayJob => ({ whenAway, intervalDays: 7 });

describe('a chore that is due in an absence', () => {
  it('is the sitter’s on a visit within its leeway', () => {
    expect(outcome([12], 2, weekly('sitter'), [11, 13, 17])).toEqual({ kept: [[12, [11, 13], false]], undone: [] });
  });

  it('goes to the nearest visit less than an interval away where its leeway reaches none', () => {
    expect(outcome([12], 1, weekly('sitter'), [15])).toEqual({ kept: [[12, [15], true]], undone: [] });
    expect(outcome([12], 1, { whenAway: 'sitter', intervalDays: 3 }, [15])).toEqual({ kept: [], undone: [12] });
  });

  it('every day is done on the visits and on no other day', () => {
    const daily: AwayJob = { whenAway: 'sitter', intervalDays: 1 };
    expect(outcome([10, 11, 12, 13], 0, daily, [10, 12])).toEqual({
      kept: [
        [10, [10], false],
        [12, [12], false],
      ],
      undone: [11, 13],
    });
  });

  it('every second day is done on the visits between its own days', () => {
    const second: AwayJob = { whenAway: 'sitter', intervalDays: 2 };
    expect(outcome([11, 13, 15], 0, second, [10, 12, 14])).toEqual({
      kept: [
        [11, [10], true],
        [13, [12], true],
        [15, [14], true],
      ],
      undone: [],
    });
  });

  it('is done before, once, however often it is due', () => {
    expect(outcome([11, 18], 1, weekly('before'), null)).toEqual({ kept: [[11, [9], true]], undone: [] });
    expect(outcome([12, 19], 3, weekly('before'), null)).toEqual({ kept: [[12, [9], false]], undone: [] });
  });

  it('is done after, unless it is due again soon after', () => {
    expect(outcome([14, 28], 2, weekly('after'), null)).toEqual({
      kept: [
        [14, [20], true],
        [28, [26, 27, 28, 29, 30], false],
      ],
      undone: [],
    });
    expect(outcome([15, 22], 2, weekly('after'), null)).toEqual({
      kept: [[22, [20, 21, 22, 23, 24], false]],
      undone: [],
    });
  });

  it('is left out where the file says so, and undone where nobody comes', () => {
    expect(outcome([14], 2, weekly('skip'), [14])).toEqual({ kept: [], undone: [] });
    expect(outcome([14], 2, weekly('sitter'), null)).toEqual({ kept: [], undone: [14] });
    expect(outcome([11], 2, weekly('sitter'), null)).toEqual({ kept: [[11, [9], false]], undone: [] });
  });

  it('of water is done on return where nobody came, unless it is due again', () => {
    const water: AwayJob = { whenAway: 'sitter', intervalDays: 7, isVital: true };
    expect(outcome([14, 30], 0, water, null)).toEqual({
      kept: [
        [14, [20], true],
        [30, [30], false],
      ],
      undone: [14],
    });
    expect(outcome([14, 21], 0, water, null)).toEqual({ kept: [[21, [21], false]], undone: [14] });
  });

  it('keeps what is due at home off the days away', () => {
    expect(outcome([8, 21], 3, weekly('sitter'), [11])).toEqual({
      kept: [
        [8, [5, 6, 7, 8, 9], false],
        [21, [20, 21, 22, 23, 24], false],
      ],
      undone: [],
    });
  });
});
