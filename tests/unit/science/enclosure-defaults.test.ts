import { describe, expect, it } from 'vitest';
import {
  airChangesOfOpenShare,
  openShareOfAirChanges,
  wetEnclosureOf,
} from '../../../src/science/enclosure-defaults.ts';
import { airChangesToHoldDry, airChangesToReach, humidityReach } from '../../../src/science/humidity-reach.ts';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';
import { PeriodicDay } from '../../../src/science/wet-enclosure.ts';

const SHAPE = { widthM: 0.5, depthM: 0.5, heightM: 0.9, openShare: 0.45, planting: 'medium', floor: 'dry' } as const;

describe('the defaults', () => {
  // The design's own rounded figures for the same form.
  it.each([
    [1, 26],
    [0.45, 11],
    [0.33, 8],
    [0.05, 1.3],
  ])('an open share of %f has about %f air changes an hour', (open, changes) => {
    expect(Math.abs(airChangesOfOpenShare(open) / changes - 1)).toBeLessThan(0.03);
  });

  it('gives back the open share of air changes', () => {
    for (const open of [0, 0.05, 0.33, 0.7, 1])
      expect(openShareOfAirChanges(airChangesOfOpenShare(open))).toBeCloseTo(open, 9);
    expect(openShareOfAirChanges(0.1)).toBe(0);
  });

  it('takes area, film and base evaporation from size, planting and floor', () => {
    const { enclosure, assumptions } = wetEnclosureOf(SHAPE);
    expect(enclosure.volumeM3).toBeCloseTo(0.225, 9);
    expect(enclosure.wettableAreaM2).toBeCloseTo(1.2, 9);
    expect(enclosure.filmCapacityG).toBeCloseTo(144, 9);
    expect(enclosure.baseEvaporationGPerHour).toBeCloseTo(6.25, 9);
    expect(wetEnclosureOf({ ...SHAPE, floor: 'damp-below' }).enclosure.baseEvaporationGPerHour).toBeCloseTo(25, 9);
    expect(wetEnclosureOf({ ...SHAPE, planting: 'dense' }).enclosure.wettableAreaM2).toBeCloseTo(1.92, 9);
    expect(assumptions.map(({ field }) => field)).toEqual([
      'wettableAreaM2',
      'airChangesPerHour',
      'filmCapacityG',
      'transferMPerHour',
      'baselineGPerHour',
      'warmUpMinutes',
    ]);
  });

  it('assumes nothing that was measured', () => {
    const measured = {
      airChangesPerHour: 7,
      wettableAreaM2: 1,
      filmGPerM2: 100,
      transferMPerHour: 4,
      baseEvaporationGPerHour: 3,
      warmUpMinutes: 10,
    };
    const { enclosure, assumptions } = wetEnclosureOf(SHAPE, measured);
    expect(assumptions).toEqual([]);
    expect(enclosure.airChangesPerHour).toBe(7);
    expect(enclosure.filmCapacityG).toBe(100);
  });
});

describe('the reach', () => {
  const { enclosure } = wetEnclosureOf(SHAPE);
  const saturation = saturationDensityGPerM3(25);
  const room = 0.3 * saturationDensityGPerM3(21);
  const settled = (runs: readonly { startMinute: number; seconds: number }[], landsShare: number) => {
    const day = new PeriodicDay(
      enclosure,
      { flowGPerHour: 5400, landsShare, airborneShare: 0, lagSeconds: 0, afterDripG: 0 },
      {
        roomVapourGPerM3: room,
        temperatureSteps: [{ fromMinute: 0, celsius: 25 }],
        lit: { onMinute: 0, minutes: 720 },
      },
    );
    day.simulate(runs);
    return day.humidity[day.mesh.count] ?? 0;
  };

  it('is where the simulated air settles under a spray without end, and without any', () => {
    const reach = humidityReach(enclosure, room, saturation);
    expect(settled([{ startMinute: 0, seconds: 86_400 }], 0.6)).toBeCloseTo(reach.wet, 4);
    expect(settled([], 0.6)).toBeCloseTo(reach.dry, 4);
    expect(humidityReach(enclosure, room, saturation, false).wet).toBeCloseTo(reach.dry, 9);
  });

  it('is met exactly with the air changes that it names', () => {
    const wet = airChangesToReach(enclosure, room, saturation, 0.8);
    expect(humidityReach({ ...enclosure, airChangesPerHour: wet }, room, saturation).wet).toBeCloseTo(0.8, 9);
    const dry = airChangesToHoldDry(enclosure, room, saturation, 0.4);
    expect(humidityReach({ ...enclosure, airChangesPerHour: dry }, room, saturation).dry).toBeCloseTo(0.4, 9);
    expect(airChangesToReach(enclosure, room, saturation, 0.2)).toBe(Number.POSITIVE_INFINITY);
  });
});
