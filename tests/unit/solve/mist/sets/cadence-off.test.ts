import { describe, expect, it } from 'vitest';
import { countOff, lengthOff } from '../../../../../src/solve/mist/sets/cadence-off.ts';

function dayOf(...seconds: readonly number[]) {
  const cadence = { perDay: [2, 3], seconds: [30, 90], gapMinutes: null } as const;
  return { span: { one: { cadence } }, runs: seconds.map((each, i) => ({ startMinute: 480 + 60 * i, seconds: each })) };
}

describe('a cadence that is missed', () => {
  it.each([
    [[60], 1, 0],
    [[60, 60], 0, 0],
    [[60, 60, 60, 60, 60], 0, 2],
  ])('%j are so many mists too few and too many', (seconds, under, over) => {
    expect(countOff(dayOf(...seconds))).toEqual({ under, over });
  });

  it.each([
    [[15, 60], 15, 0],
    [[30, 90], 0, 0],
    [[20, 120], 10, 30],
  ])('%j are so many seconds too short and too long', (seconds, under, over) => {
    expect(lengthOff(dayOf(...seconds))).toEqual({ under, over });
  });

  it('asks for nothing where there is none', () => {
    const free = { ...dayOf(5), span: { one: { cadence: null } } };
    expect([countOff(free), lengthOff(free)]).toEqual([
      { under: 0, over: 0 },
      { under: 0, over: 0 },
    ]);
  });
});
