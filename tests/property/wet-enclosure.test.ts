/** The wet enclosure and the mist solver over everything that a household file may say, sizes from a litre to 50 m³, frost to heat. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HumidityCurve, longestDryMinutes } from '../../src/science/day-figures.ts';
import { saturationDensityGPerM3 } from '../../src/science/moist-air.ts';
import { PeriodicDay } from '../../src/science/wet-enclosure.ts';
import type { MistCase } from '../../src/solve/mist/day/day-problem.ts';
import { solveMistDay } from '../../src/solve/mist/day/solve-day.ts';
import { caseOf, problemOf } from '../unit/solve/mist/problem-of-tests.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const bodies = fc.record({
  volumeM3: number(0.001, 50),
  airChangesPerHour: number(0.02, 200),
  wettableAreaM2: number(0, 100),
  filmCapacityG: fc.oneof(fc.constant(0), number(1, 5000)),
  transferMPerHour: number(0, 30),
  baseEvaporationGPerHour: number(0, 200),
  warmUpMinutes: number(0, 300),
});

const sprays = fc
  .record({
    flowGPerHour: number(0, 50_000),
    lands: number(0, 1),
    airborne: number(0, 1),
    lagSeconds: number(0, 30),
    afterDripG: number(0, 50),
  })
  .map(({ lands, airborne, ...rest }) => ({ ...rest, landsShare: lands * (1 - airborne), airborneShare: airborne }));

const airs = fc
  .record({
    on: fc.integer({ min: 0, max: 1439 }),
    minutes: fc.integer({ min: 0, max: 1440 }),
    day: number(-15, 45),
    night: number(-15, 45),
    room: number(0, 1),
  })
  .map(({ on, minutes, day, night, room }) => ({
    roomVapourGPerM3: room * saturationDensityGPerM3(day),
    temperatureSteps: [
      { fromMinute: on, celsius: day },
      { fromMinute: (on + minutes) % 1440, celsius: night },
    ],
    lit: { onMinute: on, minutes },
  }));

const runLists = fc
  .uniqueArray(fc.integer({ min: 0, max: 287 }), { maxLength: 12 })
  .chain((starts) =>
    fc
      .array(fc.integer({ min: 1, max: 300 }), { minLength: starts.length, maxLength: starts.length })
      .map((seconds) =>
        [...starts].sort((a, b) => a - b).map((start, i) => ({ startMinute: 5 * start, seconds: seconds[i] ?? 1 })),
      ),
  );

describe('any enclosure', () => {
  it('stays between 0 and saturation, holds no more than its film, and keeps its water', () => {
    fc.assert(
      fc.property(bodies, sprays, airs, runLists, (body, spray, air, runs) => {
        const day = new PeriodicDay(body, spray, air);
        const curve = new HumidityCurve();
        day.simulate(runs);
        curve.read(day);
        const nodes = day.mesh.count + 1;
        const [humidity, film] = [day.humidity.subarray(0, nodes), day.film.subarray(0, nodes)];
        expect(Math.min(...humidity)).toBeGreaterThanOrEqual(-1e-12);
        expect(Math.max(...humidity)).toBeLessThanOrEqual(1 + 1e-9);
        expect(Math.min(...film)).toBeGreaterThanOrEqual(-1e-12);
        expect(Math.max(...film)).toBeLessThanOrEqual(body.filmCapacityG + 1e-9);
        expect(Math.abs((humidity.at(-1) ?? 1) - (humidity[0] ?? 0))).toBeLessThan(1e-4);
        expect(Math.abs((film.at(-1) ?? 1) - (film[0] ?? 0))).toBeLessThanOrEqual(1e-3 * body.filmCapacityG);
        const { balance } = day;
        const drips = spray.afterDripG * runs.length;
        const out = balance.evaporatedG + balance.airborneG + balance.runOffG - drips + balance.filmChangeG;
        const scale = Math.max(1, balance.sprayedG + balance.condensedG);
        expect(Math.abs(balance.sprayedG + balance.condensedG - out) / scale).toBeLessThan(1e-3);
        expect(curve.low).toBeLessThanOrEqual(curve.high + 1e-9);
        expect(longestDryMinutes(day, 0.2, 'any')).toBeLessThanOrEqual(1440);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  it('is at no minute drier when a mist is longer', () => {
    fc.assert(
      fc.property(bodies, sprays, airs, runLists, fc.nat(11), (body, spray, air, runs, which) => {
        fc.pre(runs.length > 0);
        const index = which % runs.length;
        const longer = runs.map((run, i) => (i === index ? { ...run, seconds: run.seconds + 15 } : run));
        const [before, after] = [runs, longer].map((entries) => {
          const day = new PeriodicDay(body, spray, air);
          const curve = new HumidityCurve();
          day.simulate(entries);
          curve.read(day);
          return curve;
        });
        expect((after?.mean ?? 0) - (before?.mean ?? 1)).toBeGreaterThan(-1e-3);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('any question of a day', () => {
  const machines = fc.record({
    entriesAtMost: fc.integer({ min: 0, max: 12 }),
    startStepMinutes: fc.constantFrom(7, 15, 30, 60),
    lengthStepSeconds: fc.constantFrom(1, 15, 60, 900),
    longestSeconds: fc.constantFrom(5, 60, 300, 900),
    restSeconds: fc.constantFrom(0, 600, 86_400, 100_000),
    dutyFactor: fc.constantFrom(null, 0.05, 0.25),
  });
  const changes: fc.Arbitrary<Partial<MistCase>> = fc.record({
    dryOut: fc.constantFrom(
      null,
      { minutes: 180, when: 'lit', below: 0.2 } as const,
      { minutes: 1500, when: 'any', below: 0.2 } as const,
    ),
    drink: fc.constantFrom(null, { when: 'lit', mists: 2, seconds: 120 } as const),
    cadence: fc.constantFrom(null, { perDay: [2, 4], seconds: [60, 120], gapMinutes: 300 } as const),
    runOffAtMostG: fc.constantFrom(null, 0, 100),
    air: airs,
  });

  it('has entries that pump and timer can run, with what gives way named', () => {
    fc.assert(
      fc.property(machines, changes, fc.constantFrom(null, 0, 200), (machine, change, waterAtMostG) => {
        const solution = solveMistDay(problemOf({ machine, cases: [caseOf(change)], waterAtMostG }));
        expect(solution.entries.length).toBeLessThanOrEqual(machine.entriesAtMost);
        expect(solution.shortfall).toBeGreaterThanOrEqual(0);
        for (const { startMinute, seconds } of solution.entries) {
          expect(startMinute % machine.startStepMinutes).toBe(0);
          expect(seconds % machine.lengthStepSeconds).toBe(0);
          expect(seconds).toBeLessThanOrEqual(machine.longestSeconds);
        }
        for (const { by } of solution.exceeded) expect(by).toBeGreaterThan(0);
      }),
      { seed: 6, numRuns: 25 },
    );
  });
});
