import { describe, expect, it } from 'vitest';
import { minuteOf } from '../../../../src/basics/minute-of-day.ts';
import {
  type EnclosureDay,
  feedingHours,
  fitsIn,
  nearestShift,
  shiftsThatFit,
} from '../../../../src/solve/feeding/feeding-hours.ts';

const at = minuteOf;

function day(on: string, off: string, baskingOff: string | null = null, summerMinutes = 0): EnclosureDay {
  const offMinute = at(off) < at(on) ? at(off) + 1440 : at(off);
  return {
    lightsOnWallMinute: at(on),
    lightsOffWallMinute: offMinute,
    baskingOffWallMinute: baskingOff === null ? null : at(baskingOff),
    wallLessAnimalMinutes: summerMinutes,
  };
}

const DIURNAL = {
  from: { of: 'after_lights_on', minutes: 60 },
  to: { of: 'before_lights_off', minutes: 240 },
  dryBeforeMistMinutes: 60,
} as const;
const NOCTURNAL = {
  from: { of: 'before_lights_off', minutes: 0 },
  to: { of: 'after_lights_off', minutes: 120 },
  dryBeforeMistMinutes: 60,
} as const;

describe('feeding hours', () => {
  it('count from the lights, and their end from the basking lamp', () => {
    expect(feedingHours(DIURNAL, day('07:30', '18:30'))).toEqual({ fromMinute: at('08:30'), toMinute: at('14:30') });
    expect(feedingHours(DIURNAL, day('07:30', '18:30', '17:00'))).toEqual({
      fromMinute: at('08:30'),
      toMinute: at('13:00'),
    });
  });

  it('of a nocturnal animal follow lights-off, not the basking lamp', () => {
    expect(feedingHours(NOCTURNAL, day('08:00', '19:00'))).toEqual({ fromMinute: at('19:00'), toMinute: at('21:00') });
  });

  it('past midnight are one span, and an hour after midnight lies in it', () => {
    const late = { ...NOCTURNAL, to: { of: 'after_lights_off', minutes: 300 } } as const;
    const hours = feedingHours(late, day('10:00', '23:00'));
    expect(hours).toEqual({ fromMinute: at('23:00'), toMinute: 1440 + at('04:00') });
    expect([at('02:30'), at('04:30'), at('22:30')].map((minute) => fitsIn(hours, minute))).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('a time of day is on the animal’s clock', () => {
    const fixed = { from: { minute: at('09:00') }, to: { minute: at('11:00') }, dryBeforeMistMinutes: 0 };
    expect(feedingHours(fixed, day('07:00', '19:00', null, 60))).toEqual({
      fromMinute: at('10:00'),
      toMinute: at('12:00'),
    });
  });

  it('include both ends', () => {
    const hours = feedingHours(DIURNAL, day('07:30', '18:30'));
    expect(['08:29', '08:30', '14:30', '14:31'].map((time) => fitsIn(hours, at(time)))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('the nearest shift of the lights lies on the step, inside what every date allows', () => {
    const hours = [feedingHours(DIURNAL, day('08:00', '18:00')), feedingHours(DIURNAL, day('07:00', '19:00'))];
    const spans = hours.map((each) => shiftsThatFit(each, at('08:10')));
    const shift = nearestShift(spans, 15);
    expect(shift).toBe(-60);
    for (const { fromMinute, toMinute } of hours)
      expect(fitsIn({ fromMinute: fromMinute - 60, toMinute: toMinute - 60 }, at('08:10'))).toBe(true);
    expect(fitsIn({ fromMinute: (hours[0]?.fromMinute ?? 0) - 45, toMinute: 900 }, at('08:10'))).toBe(false);
  });

  it('no shift fits where the dates ask for opposite ones', () => {
    expect(
      nearestShift(
        [
          [30, 60],
          [-60, -30],
        ],
        15,
      ),
    ).toBeNull();
    expect(nearestShift([[1, 14]], 15)).toBeNull();
    expect(nearestShift([[-100, 100]], 15)).toBe(0);
  });
});
