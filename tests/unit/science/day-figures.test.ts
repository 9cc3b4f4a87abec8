import { describe, expect, it } from 'vitest';
import {
  dayCurve,
  filmAt,
  HumidityCurve,
  hoursAbove,
  longestDryMinutes,
  peakMinutes,
} from '../../../src/science/day-figures.ts';
import type { Run } from '../../../src/science/enclosure-day.ts';
import { wetEnclosureOf } from '../../../src/science/enclosure-defaults.ts';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';
import { PeriodicDay } from '../../../src/science/wet-enclosure.ts';

const shape = { widthM: 0.5, depthM: 0.5, heightM: 0.9, openShare: 0.33, planting: 'medium', floor: 'dry' } as const;

function simulated(
  runs: readonly Run[],
  lit = { onMinute: 480, minutes: 720 },
): { day: PeriodicDay; curve: HumidityCurve } {
  const day = new PeriodicDay(
    wetEnclosureOf(shape).enclosure,
    { flowGPerHour: 5400, landsShare: 0.6, airborneShare: 0, lagSeconds: 3, afterDripG: 10 },
    {
      roomVapourGPerM3: 0.3 * saturationDensityGPerM3(21),
      temperatureSteps: [
        { fromMinute: 480, celsius: 25 },
        { fromMinute: 1200, celsius: 20 },
      ],
      lit,
    },
  );
  const curve = new HumidityCurve();
  day.simulate(runs);
  curve.read(day);
  return { day, curve };
}

const MISTS = [
  { startMinute: 480, seconds: 120 },
  { startMinute: 960, seconds: 90 },
];

describe('means', () => {
  it('the day is its lit and its dark hours', () => {
    const { curve } = simulated(MISTS);
    expect((12 * curve.lit + 12 * curve.dark) / 24).toBeCloseTo(curve.mean, 9);
  });

  it('has no dark mean where it is always lit, no lit one where it never is', () => {
    expect(simulated(MISTS, { onMinute: 0, minutes: 1440 }).curve.dark).toBeNaN();
    expect(simulated(MISTS, { onMinute: 0, minutes: 0 }).curve.lit).toBeNaN();
  });

  it('counts the hours above a level, all day or lit only', () => {
    const { day, curve } = simulated(MISTS);
    const minutes = [...curve.byMinute].map((value, minute) => ({ value, lit: minute >= 480 && minute < 1200 }));
    for (const level of [0.4, 0.5, 0.6, 0.7]) {
      const all = minutes.filter(({ value }) => value > level).length / 60;
      const lit = minutes.filter((one) => one.value > level && one.lit).length / 60;
      expect(Math.abs(hoursAbove(curve, day, level, false) - all)).toBeLessThan(0.1);
      expect(Math.abs(hoursAbove(curve, day, level, true) - lit)).toBeLessThan(0.1);
    }
    expect(hoursAbove(curve, day, 0.99, false)).toBe(0);
  });
});

describe('peaks', () => {
  it('one after each mist that reaches the edge after a fall below the re-arm level', () => {
    const { day, curve } = simulated(MISTS);
    const peaks = peakMinutes(curve, day, MISTS, 0.7, 0.6);
    expect(peaks.length).toBe(2);
    peaks.forEach((peak, i) => {
      expect(peak - (MISTS[i]?.startMinute ?? 0)).toBeGreaterThanOrEqual(-3);
      expect(peak - (MISTS[i]?.startMinute ?? 0)).toBeLessThan(60);
    });
  });

  it('two mists without a fall between them make one', () => {
    const close = [MISTS[0], { startMinute: 510, seconds: 60 }].filter((run) => run !== undefined);
    const { day, curve } = simulated(close);
    expect(peakMinutes(curve, day, close, 0.7, 0.6).length).toBe(1);
  });

  it('a rise by cooling at lights-off is none', () => {
    const { day, curve } = simulated([]);
    const level = (curve.low + curve.high) / 2;
    expect(peakMinutes(curve, day, [], level, level - 0.01)).toEqual([]);
    // A mist hours before has dried off by then.
    const early = [{ startMinute: 0, seconds: 15 }];
    const after = simulated(early);
    const dusk = [...after.curve.byMinute.slice(1200, 1300)];
    const reached = Math.max(...dusk) - 0.005;
    expect(peakMinutes(after.curve, after.day, early, reached, reached - 0.02).every((minute) => minute < 120)).toBe(
      true,
    );
  });
});

describe('dry leaves', () => {
  it('an unmisted enclosure is dry all day, within the hours asked', () => {
    const { day } = simulated([]);
    expect(longestDryMinutes(day, 0.2, 'any')).toBe(1440);
    expect(longestDryMinutes(day, 0.2, 'lit')).toBe(720);
    expect(longestDryMinutes(day, 0.2, 'dark')).toBe(720);
  });

  it('the spell ends where the next mist wets them, past midnight too', () => {
    const { day } = simulated(MISTS);
    const any = longestDryMinutes(day, 0.2, 'any');
    const lit = longestDryMinutes(day, 0.2, 'lit');
    const start = 480 - any;
    expect(filmAt(day, (start + 1440 + 2) % 1440)).toBeLessThan(0.2 * day.enclosure.filmCapacityG);
    expect(filmAt(day, (start + 1440 - 2) % 1440)).toBeGreaterThan(0.2 * day.enclosure.filmCapacityG);
    expect(lit).toBeLessThan(480);
  });
});

describe('the curve', () => {
  it('has a value each step, film as a share of its capacity', () => {
    const { day, curve } = simulated(MISTS);
    const { humidity, leafWetness, temperatureC } = dayCurve(curve, day, 10);
    expect([humidity.length, leafWetness.length, temperatureC.length]).toEqual([144, 144, 144]);
    expect(Math.max(...leafWetness)).toBeLessThanOrEqual(1);
    expect(temperatureC[60]).toBeCloseTo(25, 1);
    expect(temperatureC[40]).toBeCloseTo(20, 1);
  });
});

describe('water', () => {
  it('lag sprays nothing, after-drip is tank water and run-off', () => {
    const { day } = simulated(MISTS);
    expect(day.balance.sprayedG).toBeCloseTo((5400 * (117 + 87)) / 3600, 9);
    expect(day.balance.waterG).toBeCloseTo(day.balance.sprayedG + 20, 9);
    expect(day.balance.runOffG).toBeGreaterThanOrEqual(0.4 * day.balance.sprayedG + 20 - 1e-9);
  });
});
