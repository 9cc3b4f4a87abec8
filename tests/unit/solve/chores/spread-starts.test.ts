import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import type { Job } from '../../../../src/solve/chores/job.ts';
import { withSpreadStarts } from '../../../../src/solve/chores/spread-starts.ts';

const JOB: Job = {
  id: 'gauge',
  kind: 'gauge',
  title: 'Look at the gauge',
  enclosure: null,
  who: 'keeper',
  minutes: 30,
  rhythm: { kind: 'months', every: 1 },
  startAfterDays: 0,
  during: null,
  leewayDays: null,
  gapAtMostDays: null,
  whenAway: 'after',
  isVital: false,
  source: 'practice',
};

function starts(...jobs: readonly Partial<Job>[]): readonly number[] {
  const [first, last] = [epochDay('2027-01-01'), epochDay('2027-12-31')];
  return withSpreadStarts(
    jobs.map((job) => ({ ...JOB, ...job })),
    first,
    last,
  ).map(({ startAfterDays }) => startAfterDays);
}

describe('the first dates of default chores', () => {
  it('take the first of the weeks that are as empty, one chore after the other', () => {
    expect(starts({}, {}, {})).toEqual([0, 7, 14]);
  });

  it('keep out of the weeks that are full', () => {
    expect(starts({ rhythm: { kind: 'dates', dates: [epochDay('2027-01-01'), epochDay('2027-01-09')] } }, {})).toEqual([
      0, 14,
    ]);
  });

  it('wait four weeks a month at most, and half a year', () => {
    const crowd = Array.from({ length: 60 }, () => ({ rhythm: { kind: 'months', every: 12 } }) as const);
    const [most, monthly] = [Math.max(...starts(...crowd)), starts(...Array.from({ length: 9 }, () => ({})))];
    expect(most).toBe(25 * 7);
    expect(Math.max(...monthly)).toBe(3 * 7);
  });

  it('are those of the plan for what is measured at the start, what the household asks for, and what is not by months', () => {
    expect(starts({ kind: 'weigh' }, { kind: 'nozzle-flow' }, {})).toEqual([0, 0, 7]);
    expect(starts({ source: 'household' }, { rhythm: { kind: 'days', every: 7 } })).toEqual([0, 0]);
  });
});
