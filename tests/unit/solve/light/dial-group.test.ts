import { expect, it } from 'vitest';
import { stepMinutesOf } from '../../../../src/solve/light/dial-group.ts';
import { pinDial, programmableTimer } from '../../../generated/shelf-care.ts';

it.each([
  [1, 1],
  [60, 1],
  [90, 2],
  [300, 5],
  [420, 8],
  [660, 12],
])(
  'a timer that resolves %i s is set in steps of %i min, which part a day evenly',
  (resolutionSeconds, stepMinutes) => {
    expect(stepMinutesOf(programmableTimer('clock', { resolutionSeconds }))).toBe(stepMinutes);
  },
);

it('a dial is set by its pins', () => expect(stepMinutesOf(pinDial('dial', { stepMinutes: 20 }))).toBe(20));
