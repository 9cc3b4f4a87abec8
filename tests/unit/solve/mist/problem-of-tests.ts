/** An ordinary question of one day, to be varied by the tests. */
import { wetEnclosureOf } from '../../../../src/science/enclosure-defaults.ts';
import { saturationDensityGPerM3 } from '../../../../src/science/moist-air.ts';
import type { DayProblem, MistCase, MistMachine } from '../../../../src/solve/mist/day/day-problem.ts';
import { NO_TARGETS } from '../../../../src/solve/mist/sets/unit-solver.ts';

export { NO_TARGETS };

/** Lit from 08:00 to 20:00, a third of the walls and top open, a room of 30 %; nothing forbidden. */
export function caseOf(change: Partial<MistCase> = {}): MistCase {
  const shape = { widthM: 0.5, depthM: 0.5, heightM: 0.9, openShare: 0.33, planting: 'medium', floor: 'dry' } as const;
  return {
    enclosure: 'fern',
    body: wetEnclosureOf(shape).enclosure,
    spray: { flowGPerHour: 5400, landsShare: 0.6, airborneShare: 0, lagSeconds: 0, afterDripG: 0 },
    air: {
      roomVapourGPerM3: 0.3 * saturationDensityGPerM3(21),
      temperatureSteps: [
        { fromMinute: 480, celsius: 25 },
        { fromMinute: 1200, celsius: 20 },
      ],
      lit: { onMinute: 480, minutes: 720 },
    },
    targets: {
      ...NO_TARGETS,
      day: [0.45, 0.6],
      peak: [0.7, 0.85],
      peaksPerDay: [2, 5],
      floor: 0.25,
      soakedAtMostHours: 2,
    },
    dryOut: { minutes: 180, when: 'lit', below: 0.2 },
    drink: { when: 'lit', mists: 1, seconds: 120 },
    cadence: null,
    runOffAtMostG: 2000,
    forbidden: {
      starts: [],
      runs: [],
      noise: [{ fromMinute: 1320, toMinute: 420 }],
      noMist: [{ fromMinute: 1080, toMinute: 450 }],
    },
    ...change,
  };
}

export function problemOf(
  change: { readonly machine?: Partial<MistMachine>; readonly cases?: readonly MistCase[] } & Partial<
    Pick<DayProblem, 'waterAtMostG' | 'rhythm'>
  > = {},
): DayProblem {
  return {
    machine: {
      entriesAtMost: 12,
      startStepMinutes: 15,
      lengthStepSeconds: 15,
      shortestSeconds: 15,
      longestSeconds: 300,
      restSeconds: 600,
      dutyFactor: null,
      pumpFlowGPerHour: 5400,
      lagSeconds: 0,
      afterDripG: 0,
      ...change.machine,
    },
    cases: change.cases ?? [caseOf()],
    waterAtMostG: change.waterAtMostG ?? null,
    rhythm: change.rhythm ?? { favour: 'dawn-and-dusk', gapMinutes: null },
  };
}
