import { expect, test } from 'vitest';
import type { DialProblem } from '../../../../src/solve/light/dial-problem.ts';
import { solveDial } from '../../../../src/solve/light/solve-dial.ts';
import { plainProblem } from '../../../reference/dial/plain-problem.ts';

const YEAR = Int32Array.from({ length: 365 }, (_, day) =>
  Math.round(7200 + 1800 * Math.cos((2 * Math.PI * (day - 171)) / 365)),
);
const solve = (given: Partial<DialProblem>) => solveDial(plainProblem(YEAR, given));

test('settings follow each other without gap from the first day to the last, and neighbours differ', () => {
  const { settings } = solve({ settingsAtMost: 7 });
  expect(settings[0]?.fromDayIndex).toBe(0);
  expect(settings.at(-1)?.toDayIndex).toBe(364);
  settings.slice(1).forEach((setting, at) => {
    expect(setting.fromDayIndex).toBe((settings[at]?.toDayIndex ?? 0) + 1);
    expect(setting.window).not.toEqual(settings[at]?.window);
  });
});

test('without a number and without a tolerance there are at most eight settings', () => {
  expect(solve({}).settings).toHaveLength(8);
});

test('a tolerance alone takes the fewest settings that reach it', () => {
  const { settings, tradeoff, worstErrorTenths, toleranceReached } = solve({ toleranceTenths: 200 });
  const fewest = tradeoff.find((row) => row.worstErrorTenths <= 200);
  expect(toleranceReached).toBe(true);
  expect(worstErrorTenths).toBeLessThanOrEqual(200);
  expect(settings).toHaveLength(fewest?.settings ?? 0);
});

test('a tolerance out of reach is said, with the fewest settings of the least worst error', () => {
  const { settings, tradeoff, toleranceReached } = solve({ toleranceTenths: 40 });
  expect(toleranceReached).toBe(false);
  expect(settings).toHaveLength(tradeoff.length);
});

test('a tolerance out of reach of the number given takes that number', () => {
  const { settings, toleranceReached } = solve({ toleranceTenths: 200, settingsAtMost: 3 });
  expect([settings.length, toleranceReached]).toEqual([3, false]);
});

test('the trade-off falls with every setting and ends where nothing more is won', () => {
  const { tradeoff, leastPossibleWorstTenths } = solve({});
  expect(tradeoff[0]).toMatchObject({ settings: 1, largestJumpMinutes: 0 });
  tradeoff.slice(1).forEach((row, at) => {
    expect(row.settings).toBe(at + 2);
    expect(row.worstErrorTenths).toBeLessThanOrEqual(tradeoff[at]?.worstErrorTenths ?? 0);
  });
  expect(tradeoff.at(-1)?.worstErrorTenths).toBe(leastPossibleWorstTenths);
  expect(tradeoff.at(-2)?.worstErrorTenths).toBeGreaterThan(leastPossibleWorstTenths);
});

test('changes fall on the days that are named and keep their distance, from the first day and an earlier change too', () => {
  const { settings, heldForSpacing } = solve({
    firstWeekday: 4,
    changeOnWeekdays: [5, 6],
    atLeastBetweenDays: 30,
    earlier: { window: { onMinute: 480, lengthMinutes: 600 }, daysSinceChange: 10 },
  });
  expect(heldForSpacing).toBe(true);
  expect(settings[0]?.window).toEqual({ onMinute: 480, lengthMinutes: 600 });
  settings.slice(1).forEach((setting, at) => {
    expect([5, 6]).toContain((4 + setting.fromDayIndex) % 7);
    expect(setting.fromDayIndex - (settings[at]?.fromDayIndex ?? 0)).toBeGreaterThanOrEqual(30);
  });
});

test('a window too far off for the largest jump is left by the least jump that is possible', () => {
  const { jumpKept, largestJumpMinutes, settings } = solve({
    jumpAtMostMinutes: 30,
    noLightBeforeMinute: 480,
    noLightAfterMinute: 1020,
    earlier: { window: { onMinute: 360, lengthMinutes: 780 }, daysSinceChange: null },
  });
  expect([jumpKept, largestJumpMinutes, settings[0]?.window.lengthMinutes]).toEqual([false, 240, 540]);
});

test('a re-plan leaves the past, counts its settings, and may change on its own day', () => {
  const past = {
    settings: [
      { fromDayIndex: 0, window: { onMinute: 540, lengthMinutes: 540 } },
      { fromDayIndex: 60, window: { onMinute: 480, lengthMinutes: 660 } },
    ],
    untilDayIndex: 100,
  };
  const { settings, worstErrorTenths } = solve({ settingsAtMost: 4, past, changeOnWeekdays: [6] });
  expect(settings.slice(0, 2)).toMatchObject([
    { fromDayIndex: 0, toDayIndex: 59, window: { lengthMinutes: 540 } },
    { fromDayIndex: 60, toDayIndex: 99, window: { lengthMinutes: 660 } },
  ]);
  expect(settings).toHaveLength(4);
  expect(settings[2]?.fromDayIndex).toBe(100);
  expect(worstErrorTenths).toBeGreaterThanOrEqual(settings[1]?.worstErrorTenths ?? 0);
});

test('a past that has used up all settings holds the last one, unless it may not stay', () => {
  const past = { settings: [{ fromDayIndex: 0, window: { onMinute: 450, lengthMinutes: 660 } }], untilDayIndex: 50 };
  const held = solve({ settingsAtMost: 1, past });
  expect([held.settings.length, held.beyondSettingsAtMost]).toEqual([1, false]);
  const moved = solve({ settingsAtMost: 1, past, noLightBeforeMinute: 480 });
  expect([moved.settings.length, moved.beyondSettingsAtMost]).toEqual([2, true]);
  expect(moved.settings[1]?.fromDayIndex).toBe(50);
});

test('the trade-off of a re-plan counts the past that is left', () => {
  const past = {
    settings: [{ fromDayIndex: 0, window: { onMinute: 720, lengthMinutes: 120 } }],
    untilDayIndex: 30,
  };
  const { settings, tradeoff, leastPossibleWorstTenths } = solve({ settingsAtMost: 4, past });
  expect(tradeoff.find((row) => row.settings === settings.length)).toMatchObject({
    worstErrorTenths: settings[0]?.worstErrorTenths,
    sumErrorTenths: settings.reduce((sum, each) => sum + each.sumErrorTenths, 0),
  });
  expect(leastPossibleWorstTenths).toBe(settings[0]?.worstErrorTenths);
});

test('an error is the distance to the farther of the longest and the shortest target', () => {
  const low = YEAR.map((tenths, day) => tenths - (day % 3) * 400);
  const { settings } = solve({ lowTenths: low, settingsAtMost: 5 });
  for (const { fromDayIndex, toDayIndex, window, worstErrorTenths, sumErrorTenths } of settings) {
    const days = Array.from({ length: toDayIndex - fromDayIndex + 1 }, (_, index) => fromDayIndex + index);
    const errors = days.map((day) =>
      Math.max(...[YEAR, low].map((target) => Math.abs(window.lengthMinutes * 10 - (target[day] ?? 0)))),
    );
    expect(worstErrorTenths).toBe(Math.max(...errors));
    expect(sumErrorTenths).toBe(errors.reduce((sum, error) => sum + error, 0));
  }
});

test('targets of no light and of light day and night need no window and all of it', () => {
  const targets = Int32Array.of(0, 0, 14_400, 14_400);
  const { settings, worstErrorTenths, pinsMoved } = solveDial(plainProblem(targets, { settingsAtMost: 2 }));
  expect(settings.map(({ window }) => window)).toEqual([
    { onMinute: 0, lengthMinutes: 0 },
    { onMinute: 0, lengthMinutes: 1440 },
  ]);
  expect([worstErrorTenths, pinsMoved]).toEqual([0, 96]);
});

test('the same problem gives the same answer twice', () => {
  expect(solve({ settingsAtMost: 12 })).toEqual(solve({ settingsAtMost: 12 }));
});
