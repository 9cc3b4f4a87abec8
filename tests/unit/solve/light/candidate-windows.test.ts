import { expect, test } from 'vitest';
import { candidateWindows, insetCandidates, placeWindow } from '../../../../src/solve/light/candidate-windows.ts';
import type { WindowPlacement } from '../../../../src/solve/light/dial-problem.ts';
import { windowOver } from '../../../reference/dial/every-plan.ts';
import { plainProblem } from '../../../reference/dial/plain-problem.ts';

const noon: WindowPlacement = { kind: 'midday', minute: 780 };
const limits = (placement: WindowPlacement, before: number | null = null, after: number | null = null) => ({
  stepMinutes: 15,
  placement,
  noLightBeforeMinute: before,
  noLightAfterMinute: after,
});

test.each([
  ['the middle at midday', limits(noon), 660, { onMinute: 450, lengthMinutes: 660 }],
  ['half a step goes up', limits(noon), 675, { onMinute: 450, lengthMinutes: 675 }],
  ['a middle on a half minute', limits({ kind: 'midday', minute: 787.5 }), 660, { onMinute: 465, lengthMinutes: 660 }],
  ['lights on is kept', limits({ kind: 'lights-on', minute: 420 }), 675, { onMinute: 420, lengthMinutes: 675 }],
  ['lights off is kept', limits({ kind: 'lights-off', minute: 1200 }), 675, { onMinute: 525, lengthMinutes: 675 }],
  [
    'an edge off the grid goes to the nearest pin',
    limits({ kind: 'lights-on', minute: 428 }),
    60,
    { onMinute: 435, lengthMinutes: 60 },
  ],
  [
    'a middle at night passes midnight',
    limits({ kind: 'midday', minute: 60 }),
    600,
    { onMinute: 1200, lengthMinutes: 600 },
  ],
  ['no window', limits(noon), 0, { onMinute: 0, lengthMinutes: 0 }],
  ['all day', limits(noon), 1440, { onMinute: 0, lengthMinutes: 1440 }],
  ['moved later by no light before', limits(noon, 480), 660, { onMinute: 480, lengthMinutes: 660 }],
  ['moved earlier by no light after', limits(noon, null, 1080), 660, { onMinute: 420, lengthMinutes: 660 }],
  ['limits off the grid close to the next pin', limits(noon, 485, 1175), 660, { onMinute: 495, lengthMinutes: 660 }],
  [
    'a night between its limits',
    limits({ kind: 'midday', minute: 0 }, 1080, 360),
    720,
    { onMinute: 1080, lengthMinutes: 720 },
  ],
] as const)('%s', (_, given, lengthMinutes, window) => {
  expect(placeWindow(given, lengthMinutes)).toEqual(window);
});

test('a length that does not fit between the limits is not allowed', () => {
  expect(placeWindow(limits(noon, 480, 1080), 615)).toBeNull();
  expect(placeWindow(limits(noon, 480, 1080), 600)).toEqual({ onMinute: 480, lengthMinutes: 600 });
  expect(placeWindow(limits(noon, 480), 1440)).toBeNull();
});

test('every length under every hour of the limits lies where pushing it outwards step by step first finds room', () => {
  const placements: readonly WindowPlacement[] = [
    noon,
    { kind: 'lights-on', minute: 1320 },
    { kind: 'lights-off', minute: 425 },
  ];
  const hours = [null, 120, 485, 780, 1080, 1435];
  for (const placement of placements) {
    for (const before of hours) {
      for (const after of hours.filter((hour) => hour === null || hour !== before)) {
        const problem = plainProblem(Int32Array.of(0), { ...limits(placement, before, after), stepMinutes: 60 });
        for (let length = 0; length <= 1440; length += 60) {
          const tried = windowOver(problem, length, 0, 0);
          if (JSON.stringify(placeWindow(problem, length)) !== JSON.stringify(tried))
            expect({ placement, before, after, length, window: placeWindow(problem, length) }).toEqual(tried);
        }
      }
    }
  }
});

test('a dial of 15 min pins has a window for each of its 97 lengths, the shortest first', () => {
  const windows = candidateWindows(plainProblem(Int32Array.of(0), {}));
  expect(windows.map(({ lengthMinutes }) => lengthMinutes)).toEqual(Array.from({ length: 97 }, (_, at) => at * 15));
});

test('an inset is pushed by the fewest steps into the day, and stands there only while a day binds it', () => {
  const inside = [[{ onMinute: 480, lengthMinutes: 600 }], [{ onMinute: 420, lengthMinutes: 720 }]];
  const problem = plainProblem(Int32Array.of(0, 0), { stepMinutes: 60, placement: { kind: 'lights-on', minute: 420 } });
  const { windows, allowed, binding, regimeOfDay } = insetCandidates(problem, inside);
  const ofLength = windows.flatMap((window, c) => (window.lengthMinutes === 300 ? [{ ...window, c }] : []));
  expect(ofLength.map(({ onMinute, pushedSteps }) => [onMinute, pushedSteps])).toEqual([
    [420, 0],
    [480, 1],
  ]);
  const standsOn = (c: number, day: number) => allowed[(regimeOfDay[day] ?? 0) * windows.length + c];
  const bindsOn = (c: number, day: number) => binding[(regimeOfDay[day] ?? 0) * windows.length + c];
  expect(ofLength.map(({ c }) => [standsOn(c, 0), standsOn(c, 1)])).toEqual([
    [0, 1],
    [1, 1],
  ]);
  expect(ofLength.map(({ c }) => [bindsOn(c, 0), bindsOn(c, 1)])).toEqual([
    [0, 0],
    [1, 0],
  ]);
});
