import { describe, expect, it } from 'vitest';
import { saturationDensityGPerM3 } from '../../../../../src/science/moist-air.ts';
import { judgeMistDay, solveMistDay } from '../../../../../src/solve/mist/day/solve-day.ts';
import { handMachine } from '../../../../../src/solve/mist/mist-machine.ts';
import { caseOf, NO_TARGETS, problemOf } from '../problem-of-tests.ts';

const cadence = { perDay: [2, 4], seconds: [60, 120], gapMinutes: 120 } as const;
const free = { starts: [], runs: [], noise: [], noMist: [] };
const plain = { targets: NO_TARGETS, dryOut: null, drink: null, runOffAtMostG: null };

describe('an ordinary day', () => {
  const solution = solveMistDay(problemOf());

  it('meets all targets with margins, on the places of the rhythm', () => {
    expect(solution.shortfall).toBe(0);
    expect(solution.marginsHold).toBe(true);
    expect(solution.exceeded).toEqual([]);
    expect(solution.entries.map(({ startMinute }) => startMinute)).toEqual(solution.places);
  });

  it('keeps the dry-out with 15 min to spare and has a mist to drink from', () => {
    expect(solution.cases[0]?.figures.dryOutMinutes).toBeGreaterThanOrEqual(195);
    expect(solution.entries.some(({ seconds }) => seconds >= 120)).toBe(true);
  });

  it('changes the entries where a dry-out would hold with less than 15 min to spare', () => {
    const dryMinutes = solution.cases[0]?.figures.dryOutMinutes ?? 0;
    const dryOut = { minutes: dryMinutes - 14, when: 'lit', below: 0.2 } as const;
    const tight = solveMistDay(problemOf({ cases: [caseOf({ dryOut })] }));
    expect(tight.marginsHold).toBe(true);
    expect(tight.cases[0]?.figures.dryOutMinutes).toBeGreaterThanOrEqual(dryMinutes + 1);
    const easy = solveMistDay(problemOf({ cases: [caseOf({ dryOut: { ...dryOut, minutes: dryMinutes - 15 } })] }));
    expect(easy.entries).toEqual(solution.entries);
  });

  it('says what given entries do, and null of entries that cannot be run', () => {
    expect(judgeMistDay(problemOf(), solution.entries)?.levels).toEqual(solution.levels);
    expect(judgeMistDay(problemOf(), [{ startMinute: 480, seconds: 600 }])).toBeNull();
  });

  it('stops at once where a seed meets everything and no more is asked', () => {
    const again = solveMistDay(problemOf(), { seeds: [solution.entries], untilMet: true });
    expect(again.entries).toEqual(solution.entries);
    expect(again.simulations).toBeLessThan(5);
  });
});

describe('a cadence alone', () => {
  const solved = (change: Parameters<typeof caseOf>[0], machine = {}) =>
    solveMistDay(
      problemOf({
        machine,
        cases: [caseOf({ ...plain, cadence, ...change })],
        rhythm: { favour: 'even', gapMinutes: 120 },
      }),
    );

  it('takes the middle of count and length, evenly over the allowed hours', () => {
    const { entries, exceeded } = solved({});
    expect(entries.map(({ seconds }) => seconds)).toEqual([90, 90, 90]);
    expect(entries.map(({ startMinute }) => startMinute)).toEqual([555, 765, 975]);
    expect(exceeded).toEqual([]);
  });

  it('of two equally near takes the less', () => {
    const { entries } = solved({ cadence: { perDay: [2, 3], seconds: [60, 105], gapMinutes: null } });
    expect(entries.map(({ seconds }) => seconds)).toEqual([75, 75]);
  });

  it('bends to what the timer has', () => {
    expect(solved({}, { entriesAtMost: 2 }).entries.length).toBe(2);
    const long = solved({}, { lengthStepSeconds: 60, shortestSeconds: 60 });
    expect(long.entries.map(({ seconds }) => seconds)).toEqual([60, 60, 60]);
  });

  it('gives up the count where the timer has too few entries, and says by how much', () => {
    const { entries, exceeded } = solved({}, { entriesAtMost: 1 });
    expect(entries.length).toBe(1);
    expect(exceeded).toEqual([{ limit: 'count', by: 1, unit: 'mists' }]);
  });
});

describe('limits that cannot all hold', () => {
  it('margins go first', () => {
    const need = 180;
    const solution = solveMistDay(
      problemOf({ waterAtMostG: need, cases: [caseOf({ ...plain, drink: { when: 'lit', mists: 1, seconds: 120 } })] }),
    );
    expect(solution.waterG).toBe(180);
    expect(solution.exceeded).toEqual([]);
    expect(solution.marginsHold).toBe(false);
  });

  it('the tank gives way before the drink, by the least that will do', () => {
    const solution = solveMistDay(problemOf({ waterAtMostG: 50 }));
    expect(solution.exceeded).toEqual([{ limit: 'tank', by: 130, unit: 'g/day' }]);
    expect(solution.entries.map(({ seconds }) => seconds)).toEqual([120]);
  });

  it('a pump that cannot run long enough leaves the drink to a person', () => {
    const solution = solveMistDay(problemOf({ machine: { longestSeconds: 60 } }));
    expect(solution.exceeded).toEqual([{ limit: 'drink', by: 1, unit: 'mists' }]);
  });

  it('never gives up what safety forbids: with every start forbidden nothing is misted', () => {
    const starts = [{ fromMinute: 0, toMinute: 1440 }];
    const solution = solveMistDay(problemOf({ cases: [caseOf({ forbidden: { ...free, starts } })] }));
    expect(solution.entries).toEqual([]);
    expect(solution.exceeded).toEqual([{ limit: 'drink', by: 1, unit: 'mists' }]);
    expect(solution.allowed).toEqual([]);
  });

  it('noise gives way before the drink where no quiet start is left', () => {
    const forbidden = { ...free, noise: [{ fromMinute: 0, toMinute: 1440 }] };
    const solution = solveMistDay(
      problemOf({ cases: [caseOf({ ...plain, forbidden, drink: { when: 'lit', mists: 1, seconds: 60 } })] }),
    );
    expect(solution.exceeded.map(({ limit }) => limit)).toEqual(['noise']);
    expect(solution.entries.length).toBe(1);
  });
});

describe('one set for several', () => {
  const dry = caseOf();
  const damp = caseOf({ air: { ...dry.air, roomVapourGPerM3: 0.5 * saturationDensityGPerM3(21) } });

  it('counts the worst case at every level', () => {
    const both = problemOf({ cases: [dry, damp] });
    const { entries, levels, cases } = solveMistDay(both);
    const alone = [dry, damp].map((one) => judgeMistDay(problemOf({ cases: [one] }), entries));
    expect(cases.length).toBe(2);
    expect(levels[0]).toBe(Math.max(...alone.map((one) => one?.levels[0] ?? -1)));
    expect(levels[1]).toBe(Math.max(...alone.map((one) => one?.levels[1] ?? -1)));
  });

  it('is never better than the worse of them alone', () => {
    const worstAlone = Math.max(...[dry, damp].map((one) => solveMistDay(problemOf({ cases: [one] })).levels[0] ?? 0));
    expect(solveMistDay(problemOf({ cases: [dry, damp] })).levels[0]).toBeGreaterThanOrEqual(worstAlone);
  });
});

describe('other devices', () => {
  it('a dial makes windows of whole steps with a step between', () => {
    const fogger = caseOf({
      ...plain,
      targets: { ...NO_TARGETS, day: [0.55, 0.75] },
      spray: { flowGPerHour: 120, landsShare: 0, airborneShare: 1, lagSeconds: 0, afterDripG: 0 },
    });
    const step = { startStepMinutes: 30, lengthStepSeconds: 1800, shortestSeconds: 1800, restSeconds: 1800 };
    const machine = { pumpFlowGPerHour: 120, longestSeconds: 84_600, entriesAtMost: 24, ...step };
    const solution = solveMistDay(problemOf({ machine, cases: [fogger] }));
    expect(solution.shortfall).toBe(0);
    for (const { startMinute, seconds } of solution.entries) {
      expect(startMinute % 30).toBe(0);
      expect(seconds % 1800).toBe(0);
    }
  });

  it('a person mists at most three times', () => {
    const solution = solveMistDay(
      problemOf({
        machine: handMachine(5400),
        cases: [
          caseOf({ ...plain, forbidden: free, cadence: { perDay: [5, 6], seconds: [30, 60], gapMinutes: null } }),
        ],
      }),
    );
    expect(solution.entries.length).toBe(3);
    expect(solution.exceeded).toEqual([{ limit: 'count', by: 2, unit: 'mists' }]);
  });
});
