import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { enclosure, hours, lamp, pinDial, shelfCare } from '../../../generated/shelf-care.ts';

/** What is said where 8 h stand on a dial and so many are wanted. */
function instead(stepMinutes: number, wantedMinutes: number): string {
  const log = new Log();
  const now = { onMinute: 540, offMinute: 1020 };
  const care = shelfCare({
    devices: [pinDial('dial', { stepMinutes, now })],
    enclosures: [enclosure('fern', hours(wantedMinutes), [lamp('day', { outlet: 'dial' })])],
  });
  solveLighting(care, null, care.plan.from, log);
  return log.sorted().find(({ code }) => code === 'jump-large')?.instead ?? 'nothing said';
}

function lengths(said: string): readonly number[] {
  return [...said.matchAll(/(\d\d):(\d\d) to (\d\d):(\d\d)/g)].map(
    ([, onHour, onMinute, offHour, offMinute]) =>
      Number(offHour) * 60 + Number(offMinute) - Number(onHour) * 60 - Number(onMinute),
  );
}

describe('a day that changes by more than an hour at once', () => {
  it.each([
    [15, 660],
    [30, 690],
    [15, 375],
  ])('is bridged in steps of half an hour: pins of %i min, 480 to %i min', (step, wanted) => {
    const steps = [480, ...lengths(instead(step, wanted))];
    expect(steps.at(-1)).toBe(wanted);
    for (const [i, length] of steps.slice(1).entries())
      expect(Math.abs(length - (steps[i] ?? 0))).toBeLessThanOrEqual(30);
    expect(steps.length).toBe(1 + Math.ceil(Math.abs(wanted - 480) / 30));
  });

  it('cannot be bridged where one pin is the whole change', () => {
    expect(instead(120, 600)).toBe('use a timer with pins finer than 120 min: it can change in smaller steps');
  });

  it('of an hour or less is nothing to say', () => expect(instead(15, 540)).toBe('nothing said'));
});
