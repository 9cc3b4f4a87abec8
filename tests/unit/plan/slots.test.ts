import { expect, test } from 'vitest';
import { pinsToMove, slotDifference, slotRuns } from '../../../src/plan/slots.ts';

test.each([
  [[], 96, []],
  [[5], 96, [{ first: 5, last: 5, count: 1 }]],
  [
    [3, 4, 8],
    96,
    [
      { first: 3, last: 4, count: 2 },
      { first: 8, last: 8, count: 1 },
    ],
  ],
  [[0, 1, 95], 96, [{ first: 95, last: 1, count: 3 }]],
  [
    [0, 4, 47],
    48,
    [
      { first: 4, last: 4, count: 1 },
      { first: 47, last: 0, count: 2 },
    ],
  ],
  [[0, 1, 2, 3], 4, [{ first: 0, last: 3, count: 4 }]],
])('neighbouring slots are one run, past the end of the revolution too', (slots, inAll, runs) => {
  expect(slotRuns(slots, inAll)).toEqual(runs);
});

test('what differs is added or removed', () => {
  expect(slotDifference([1, 2, 3], [2, 3, 4])).toEqual({ added: [4], removed: [1] });
});

test('pins that are down for off move the other way', () => {
  expect(pinsToMove([1, 2], [2, 3], 'down-is-on')).toEqual({ push: [3], lift: [1] });
  expect(pinsToMove([1, 2], [2, 3], 'up-is-on')).toEqual({ push: [1], lift: [3] });
});
