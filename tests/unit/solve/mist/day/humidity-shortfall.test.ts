import { describe, expect, it } from 'vitest';
import type { CaseFigures, HumidityTargets } from '../../../../../src/solve/mist/day/day-problem.ts';
import {
  peakLevels,
  shortfallOf,
  targetMisses,
  withMargins,
} from '../../../../../src/solve/mist/day/humidity-shortfall.ts';
import { NO_TARGETS } from '../problem-of-tests.ts';

const figures: CaseFigures = {
  dayHumidity: 0.5,
  nightHumidity: 0.7,
  meanHumidity: 0.6,
  lowHumidity: 0.3,
  highHumidity: 0.9,
  peaks: 2,
  peakMinutes: [480, 900],
  hoursSoaked: 2.5,
  dryOutMinutes: 200,
  waterG: 300,
  runOffG: 100,
};

describe('the shortfall', () => {
  it.each<[string, Partial<HumidityTargets>, number]>([
    ['nothing asked', {}, 0],
    ['a day mean below its band by 5 points', { day: [0.55, 0.7] }, 0.5],
    ['a night above its band by 10 points', { night: [0.4, 0.6] }, 1],
    ['a mean inside', { mean: [0.5, 0.6] }, 0],
    ['a floor missed by 5 points', { floor: 0.35 }, 0.5],
    ['a ceiling passed by 5 points', { ceiling: 0.85 }, 0.5],
    ['half an hour too long soaked', { peak: [0.7, 0.8], soakedAtMostHours: 2 }, 0.5],
    ['soaked without a peak band adds nothing', { soakedAtMostHours: 2 }, 0],
    ['a peak too few', { peak: [0.7, 0.8], peaksPerDay: [3, 4] }, 0.3],
    ['two peaks too many', { peak: [0.7, 0.8], peaksPerDay: [0, 0] }, 0.6],
    ['several at once', { day: [0.55, 0.7], floor: 0.35, peak: [0.7, 0.8], peaksPerDay: [3, 4] }, 1.3],
  ])('%s', (_, targets, shortfall) => {
    expect(shortfallOf(targetMisses({ ...NO_TARGETS, ...targets }, figures))).toBeCloseTo(shortfall, 9);
  });

  it('has no night to miss where it is never dark', () => {
    const bright = { ...figures, nightHumidity: Number.NaN };
    expect(targetMisses({ ...NO_TARGETS, night: [0.8, 0.9] }, bright)).toEqual([]);
  });
});

describe('margins', () => {
  it('lie half a point inside every edge, 0 and 100 % stay', () => {
    const inside = withMargins({ ...NO_TARGETS, day: [0.4, 0.6], night: [0, 1], floor: 0.25, ceiling: 0.9 });
    expect(inside.day?.[0]).toBeCloseTo(0.405, 9);
    expect(inside.day?.[1]).toBeCloseTo(0.595, 9);
    expect(inside.night).toEqual([0, 1]);
    expect(inside.floor).toBeCloseTo(0.255, 9);
    expect(inside.ceiling).toBeCloseTo(0.895, 9);
  });

  it('leave the middle of a band that is narrower than they are', () => {
    expect(withMargins({ ...NO_TARGETS, mean: [0.5, 0.508] }).mean).toEqual([0.504, 0.504]);
  });
});

describe('the levels of a peak', () => {
  it.each([
    ['the day band, where it lies 5 points below', { day: [0.4, 0.6] as const, peak: [0.7, 0.8] as const }, 0.6],
    ['else 5 points below the peak band', { day: [0.4, 0.68] as const, peak: [0.7, 0.8] as const }, 0.65],
    ['the mean band without a day band', { mean: [0.4, 0.55] as const, peak: [0.7, 0.8] as const }, 0.55],
    ['5 points below without either', { peak: [0.7, 0.8] as const }, 0.65],
  ])('re-arm at %s', (_, targets, rearm) => {
    expect(peakLevels({ ...NO_TARGETS, ...targets })?.rearm).toBeCloseTo(rearm, 9);
    expect(peakLevels({ ...NO_TARGETS, ...targets })?.reaches).toBe(0.7);
  });
});
