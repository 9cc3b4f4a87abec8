import { describe, expect, it } from 'vitest';
import type { DayProblem } from '../../../../../src/solve/mist/day/day-problem.ts';
import { depthIn, runTouches, startGrid } from '../../../../../src/solve/mist/day/start-grid.ts';
import { caseOf, problemOf } from '../problem-of-tests.ts';

const clock = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

function placesOf(favour: DayProblem['rhythm']['favour'], count: number, gapMinutes: number | null = null): string[] {
  const grid = startGrid(problemOf({ rhythm: { favour, gapMinutes } }));
  return grid.places(count).map((position) => clock((position + grid.beginsMinute) % 1440));
}

describe('the places of a rhythm, starts allowed from 07:30 to 17:45', () => {
  it.each([
    ['dawn', 3, null, ['07:30', '09:30', '11:30']],
    ['dawn', 2, 180, ['07:30', '10:30']],
    ['dusk', 3, null, ['13:45', '15:45', '17:45']],
    ['dawn-and-dusk', 1, null, ['07:30']],
    ['dawn-and-dusk', 3, null, ['07:30', '09:30', '17:45']],
    ['dawn-and-dusk', 4, null, ['07:30', '09:30', '15:45', '17:45']],
    ['even', 1, null, ['12:45']],
    // 42 starts of 15 min are 630 min: parts of 315 min, their middles 157.5 and 472.5 min after 07:30.
    ['even', 2, null, ['10:7.5', '15:22.5']],
  ] as const)('%s, %i mists, gap %s', (favour, count, gap, places) => {
    expect(placesOf(favour, count, gap)).toEqual(places);
  });

  it('dusk reaches to the lights-off where nothing forbids it, and not beyond', () => {
    const forbidden = { starts: [], runs: [], noise: [], noMist: [] };
    const grid = startGrid(problemOf({ cases: [caseOf({ forbidden })], rhythm: { favour: 'dusk', gapMinutes: null } }));
    expect(grid.places(1).map((position) => clock((position + grid.beginsMinute) % 1440))).toEqual(['20:00']);
  });
});

describe('the grid', () => {
  it('counts the day from 30 min before the earliest lights-on of all cases', () => {
    const late = caseOf({ air: { ...caseOf().air, lit: { onMinute: 540, minutes: 600 } } });
    expect(startGrid(problemOf({ cases: [late, caseOf()] })).beginsMinute).toBe(450);
  });

  it('is closed where any case is closed', () => {
    const other = caseOf({ forbidden: { ...caseOf().forbidden, noise: [{ fromMinute: 600, toMinute: 660 }] } });
    const grid = startGrid(problemOf({ cases: [caseOf(), other] }));
    expect(grid.allowed.some(({ minute }) => minute >= 600 && minute < 660)).toBe(false);
    expect(grid.slotAt.get(615)?.inNoise).toBe(16);
    expect(grid.slotAt.has(615)).toBe(true);
  });

  it('leaves out for good what safety or feeds forbid', () => {
    const forbidden = { ...caseOf().forbidden, starts: [{ fromMinute: 600, toMinute: 660 }] };
    const grid = startGrid(problemOf({ cases: [caseOf({ forbidden })] }));
    expect(grid.slotAt.has(600)).toBe(false);
    expect(grid.slotAt.has(660)).toBe(true);
  });
});

describe('spans around the day', () => {
  it.each([
    [1380, 61],
    [0, 121],
    [419, 1],
    [420, 0],
    [1319, 0],
    [1320, 1],
  ] as const)('minute %i lies %i deep in 22:00 to 07:00', (minute, depth) => {
    expect(depthIn([{ fromMinute: 1320, toMinute: 420 }], minute)).toBe(depth);
  });

  it('a span of the whole day holds every minute', () => {
    expect(depthIn([{ fromMinute: 0, toMinute: 1440 }], 720)).toBeGreaterThan(0);
    expect(runTouches([{ fromMinute: 0, toMinute: 1440 }], 720, 1)).toBe(true);
  });
});
