import { expect, test } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { dayLengthsUtc } from '../../../src/science/sun.ts';
import type { DialProblem } from '../../../src/solve/light/dial-problem.ts';
import { solveDial } from '../../../src/solve/light/solve-dial.ts';
import { tries } from '../../tries.ts';
import { type Choice, choicesOf, mixedIntegerOptimum } from './mixed-integer.ts';
import { plainProblem } from './plain-problem.ts';

/** Days between the dates of a year. */
const EVERY_DAYS = tries(28, 12);
const EVERY_INSET_DAYS = tries(40, 18);

/** Every so many days of a year from 1 January 2027, as if each were a date of its own. */
function sampledYear(latitude: number, everyDays: number): Int32Array {
  const minutes = dayLengthsUtc(latitude, 0, epochDay('2027-01-01'), 365);
  return Int32Array.from(
    minutes.filter((_, day) => day % everyDays === 0),
    (each) => Math.round(each * 10),
  );
}

const CASES: readonly (readonly [string, DialProblem])[] = [
  ...[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((settingsAtMost) => {
    const latitude = settingsAtMost % 2 === 0 ? 28 : -33;
    const problem = plainProblem(sampledYear(latitude, EVERY_DAYS), { stepMinutes: 30, settingsAtMost });
    return [`latitude ${latitude}, at most ${settingsAtMost}`, problem] as const;
  }),
  ...[2, 4, 6, 9].map((settingsAtMost) => {
    const changeOnWeekdays = [5, 6];
    const problem = plainProblem(sampledYear(-38, EVERY_DAYS), { stepMinutes: 30, settingsAtMost, changeOnWeekdays });
    return [`changes on two weekdays, at most ${settingsAtMost}`, problem] as const;
  }),
  ['15 min pins', plainProblem(sampledYear(20, EVERY_DAYS), { settingsAtMost: 5 })],
  [
    'far apart',
    plainProblem(sampledYear(38, EVERY_DAYS), { stepMinutes: 30, settingsAtMost: 6, atLeastBetweenDays: 4 }),
  ],
  [
    'small jumps from what stands',
    plainProblem(sampledYear(38, EVERY_DAYS), {
      stepMinutes: 30,
      settingsAtMost: 8,
      jumpAtMostMinutes: 60,
      earlier: { window: { onMinute: 480, lengthMinutes: 720 }, daysSinceChange: null },
    }),
  ],
  [
    'two lamps, and dark from 20:00',
    plainProblem(sampledYear(42, EVERY_DAYS), {
      stepMinutes: 30,
      settingsAtMost: 5,
      highTenths: sampledYear(42, EVERY_DAYS).map((tenths) => Math.max(tenths, 7200)),
      noLightAfterMinute: 1200,
    }),
  ],
];

test.each(CASES)('a dial solved as mixed-integer programs: %s', (_, problem) => {
  const solution = solveDial(problem);
  expect({
    worst: solution.worstErrorTenths,
    sum: solution.sumErrorTenths,
    settings: solution.settings.length,
    pins: solution.pinsMoved,
  }).toEqual(mixedIntegerOptimum(problem, choicesOf(problem), 4));
});

test('an inset dial, its window free to lie anywhere inside the day, has the same errors and settings', () => {
  const day = solveDial(plainProblem(sampledYear(45, EVERY_INSET_DAYS), { stepMinutes: 60, settingsAtMost: 6 }));
  const inside = day.settings.flatMap((setting) =>
    Array.from({ length: setting.toDayIndex - setting.fromDayIndex + 1 }, () => [setting.window]),
  );
  const targets = sampledYear(45, EVERY_INSET_DAYS).map((tenths) => Math.max(0, tenths - 600));
  for (const [settingsAtMost, minute] of [
    [2, 840],
    [3, 1020],
    [5, 780],
  ] as const) {
    const problem = plainProblem(targets, {
      stepMinutes: 60,
      settingsAtMost,
      placement: { kind: 'midday', minute },
      insideByDay: inside,
    });
    const solution = solveDial(problem);
    const optimum = mixedIntegerOptimum(problem, windowsInside(problem), 3);
    expect([solution.worstErrorTenths, solution.sumErrorTenths, solution.settings.length]).toEqual([
      optimum.worst,
      optimum.sum,
      optimum.settings,
    ]);
  }
});

function windowsInside(problem: DialProblem): readonly Choice[] {
  const choices: Choice[] = [];
  for (let onMinute = 0; onMinute < 1440; onMinute += 60) {
    for (let lengthMinutes = 300; onMinute + lengthMinutes <= 1440; lengthMinutes += 60) {
      const fits = (at: number) =>
        problem.insideByDay?.[at]?.every(
          (outer) => outer.onMinute <= onMinute && onMinute + lengthMinutes <= outer.onMinute + outer.lengthMinutes,
        ) ?? true;
      const ever = Array.from({ length: problem.days }, (_, at) => at).some(fits);
      if (ever) choices.push({ onMinute, lengthMinutes, allowed: fits });
    }
  }
  return choices;
}
