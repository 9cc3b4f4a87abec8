import { describe, expect, it } from 'vitest';
import type { Run } from '../../../../../src/science/enclosure-day.ts';
import type { MistMachine } from '../../../../../src/solve/mist/day/day-problem.ts';
import { fillPlannedAmounts, machineAllows, tankWaterG } from '../../../../../src/solve/mist/day/hard-limits.ts';
import { startGrid } from '../../../../../src/solve/mist/day/start-grid.ts';
import { caseOf, problemOf } from '../problem-of-tests.ts';

const free = { starts: [], runs: [], noise: [], noMist: [] };
const runs = (...pairs: readonly (readonly [number, number])[]): Run[] =>
  pairs.map(([startMinute, seconds]) => ({ startMinute, seconds }));

function allowed(
  machine: Partial<MistMachine>,
  entries: readonly Run[],
  dry = [{ fromMinute: 0, toMinute: 0 }].slice(1),
): boolean {
  const problem = problemOf({ machine, cases: [caseOf({ forbidden: free })] });
  return machineAllows(problem.machine, entries, startGrid(problem), dry);
}

describe('what pump and timer can run', () => {
  it.each([
    ['a pause of exactly the rest', { restSeconds: 840 }, runs([480, 60], [495, 60]), true],
    ['a pause a second short', { restSeconds: 841 }, runs([480, 60], [495, 60]), false],
    ['a pause past midnight', { restSeconds: 841 }, runs([0, 60], [1425, 60]), false],
    ['one mist with a rest longer than what is left of the day', { restSeconds: 86_341 }, runs([480, 60]), false],
    ['one mist with a rest of the whole of it', { restSeconds: 86_340 }, runs([480, 60]), true],
    ['a length above the longest run', {}, runs([480, 315]), false],
    ['a length under the shortest', { shortestSeconds: 30 }, runs([480, 15]), false],
    ['more entries than the timer has', { entriesAtMost: 1 }, runs([480, 60], [600, 60]), false],
    ['a start off the grid', {}, runs([487, 60]), false],
  ] as const)('%s: %o', (_, machine, entries, expected) => expect(allowed(machine, entries)).toBe(expected));

  // S3 25 % of IEC 60034-1 over 10 min: 150 s of running in any ten minutes.
  it.each([
    ['one run of 150 s', runs([480, 150]), true],
    ['one run of 165 s', runs([480, 165]), false],
    ['two runs of 90 s 5 min apart', runs([480, 90], [485, 90]), false],
    ['two runs of 75 s 5 min apart', runs([480, 75], [485, 75]), true],
    ['two runs of 90 s 10 min apart: 540 s lie between, 150 s fit the window', runs([480, 90], [490, 90]), true],
    ['two runs of 150 s 10 min apart', runs([480, 150], [490, 150]), true],
    ['across midnight', runs([0, 90], [1435, 90]), false],
  ] as const)('a duty of 25 %%, %s', (_, entries, expected) => {
    const machine = { dutyFactor: 0.25, startStepMinutes: 5, restSeconds: 60 };
    expect(allowed(machine, entries)).toBe(expected);
  });

  it('keeps water off a hot lamp: a run may end when the span begins, and begin when it ends', () => {
    const lamp = [{ fromMinute: 481, toMinute: 600 }];
    expect(allowed({}, runs([480, 60]), lamp)).toBe(true);
    expect(allowed({}, runs([480, 75]), lamp)).toBe(false);
    expect(allowed({}, runs([600, 60]), lamp)).toBe(true);
    expect(allowed({}, runs([585, 15]), lamp)).toBe(false);
  });
});

describe('amounts by which a limit is exceeded', () => {
  const amountsOf = (entries: readonly Run[], change: Parameters<typeof problemOf>[0]) => {
    const problem = problemOf(change);
    const amounts = new Float64Array(9);
    fillPlannedAmounts(amounts, problem, startGrid(problem), entries, false);
    return [...amounts];
  };
  const cadence = { perDay: [2, 3], seconds: [60, 120], gapMinutes: 120 } as const;

  it('counts the gap past midnight, missing mists and seconds outside', () => {
    const cases = [caseOf({ cadence, drink: null, forbidden: free })];
    expect(amountsOf(runs([30, 60], [1380, 60]), { cases })).toEqual([30, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(amountsOf(runs([480, 150]), { cases })).toEqual([0, 1, 30, 0, 0, 0, 0, 0, 0]);
  });

  it('counts tank water in tenths of a gram and missing drinks', () => {
    const cases = [caseOf({ drink: { when: 'dark', mists: 2, seconds: 60 }, forbidden: free })];
    expect(amountsOf(runs([480, 60], [1230, 60]), { cases, waterAtMostG: 170.05 })).toEqual([
      0, 0, 0, 0, 10, 0, 0, 0, 1,
    ]);
  });

  it('counts the minutes by which a start lies inside noise and no_mist', () => {
    const forbidden = {
      ...free,
      noise: [{ fromMinute: 1320, toMinute: 420 }],
      noMist: [{ fromMinute: 1080, toMinute: 450 }],
    };
    const cases = [caseOf({ drink: null, forbidden })];
    // 06:45 is 15 min before the end of noise and 45 min before that of no_mist.
    expect(amountsOf(runs([405, 60]), { cases })).toEqual([0, 0, 0, 0, 0, 0, 15, 45, 0]);
  });

  it('takes lag and after-drip into the tank water', () => {
    const { machine } = problemOf({ machine: { lagSeconds: 3, afterDripG: 10 } });
    expect(tankWaterG(machine, runs([480, 63], [600, 2]))).toBeCloseTo(90 + 20, 9);
  });
});
