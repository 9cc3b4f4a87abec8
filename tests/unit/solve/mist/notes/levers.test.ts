import { afterEach, describe, expect, it, vi } from 'vitest';
import { PeriodicDay } from '../../../../../src/science/wet-enclosure.ts';
import type { MistCase } from '../../../../../src/solve/mist/day/day-problem.ts';
import type { MistUnit } from '../../../../../src/solve/mist/mist-unit.ts';
import { Levers } from '../../../../../src/solve/mist/notes/levers.ts';
import { caseOf, NO_TARGETS, problemOf } from '../problem-of-tests.ts';

afterEach(() => vi.restoreAllMocks());

const UNIT: MistUnit = {
  means: 'timer',
  pump: null,
  timer: null,
  supply: null,
  clock: 'wall',
  machine: problemOf().machine,
  waterAtMostG: null,
  members: [],
};
const TROUBLE = { tooDry: true, tooHumid: false, peaks: false, exceeded: [] };

/** Two mists at least, so far apart, between 07:30 and 10:00, in a room too dry for its day. */
function shortMorning(gapMinutes: number): MistCase {
  return caseOf({
    targets: { ...NO_TARGETS, day: [0.5, 0.8] },
    dryOut: null,
    drink: null,
    runOffAtMostG: null,
    cadence: { perDay: [2, 3], seconds: [15, 120], gapMinutes },
    forbidden: { starts: [], runs: [], noise: [], noMist: [{ fromMinute: 600, toMinute: 450 }] },
  });
}

describe('levers', () => {
  it('are tried on the model where the clock leaves room for the mists', () => {
    const levers = new Levers(UNIT, [shortMorning(60)], []).thatDo(TROUBLE);
    expect(levers.map(({ kind }) => kind)).toContain('damp-floor');
  });

  it('are not searched where no mists keep the gap, whatever the air', () => {
    const simulated = vi.spyOn(PeriodicDay.prototype, 'simulate');
    expect(new Levers(UNIT, [shortMorning(600)], []).thatDo(TROUBLE)).toEqual([]);
    expect(simulated.mock.calls.length).toBeLessThan(50);
  });
});
