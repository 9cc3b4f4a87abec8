/** Questions of one day drawn at random: coarse ones that can be tried out, fine ones as households have them. */
import { wetEnclosureOf } from '../../../src/science/enclosure-defaults.ts';
import { saturationDensityGPerM3 } from '../../../src/science/moist-air.ts';
import type { DayProblem, MistCase } from '../../../src/solve/mist/day/day-problem.ts';
import type { Choices } from '../../generated/random.ts';

function pick(choices: Choices, low: number, high: number): number {
  return low + (high - low) * choices.share();
}

/** A band of humidity on whole percents. */
function band(choices: Choices, low: number, high: number): readonly [number, number] {
  const from = choices.between(low, high);
  return [from / 100, (from + choices.between(10, 25)) / 100];
}

function randomTargets(choices: Choices): MistCase['targets'] {
  const lit = band(choices, 35, 60);
  const whole = choices.chance(0.3);
  const withNight = !whole && choices.chance(0.6);
  const peakFrom = Math.min(0.9, lit[1] + choices.between(5, 20) / 100);
  const peaked = choices.chance(0.8);
  return {
    day: whole ? null : lit,
    night: withNight ? band(choices, 45, 70) : null,
    mean: whole ? lit : null,
    peak: peaked ? [peakFrom, Math.min(1, peakFrom + choices.between(5, 15) / 100)] : null,
    peaksPerDay: peaked ? [choices.between(1, 2), choices.between(2, 4)] : null,
    floor: choices.chance(0.6) ? choices.between(20, 40) / 100 : null,
    ceiling: choices.chance(0.3) ? choices.between(85, 100) / 100 : null,
    soakedAtMostHours: choices.chance(0.5) ? choices.between(1, 4) : null,
  };
}

interface Grid {
  readonly startStepMinutes: number;
  readonly lengthStepSeconds: number;
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
  readonly entriesAtMost: number;
}

function randomProblem(
  choices: Choices,
  grid: Grid,
  open: (on: number, lit: number) => MistCase['forbidden'],
): DayProblem {
  const on = 60 * choices.between(6, 9);
  const lit = 60 * choices.between(10, 13);
  const size = { widthM: pick(choices, 0.4, 1.2), depthM: pick(choices, 0.4, 0.7), heightM: pick(choices, 0.5, 1.2) };
  const { enclosure } = wetEnclosureOf({
    ...size,
    openShare: pick(choices, 0.03, 0.7),
    planting: choices.oneOf(['light', 'medium', 'dense'] as const),
    floor: 'dry',
  });
  const flow = pick(choices, 2000, 7000);
  const room = pick(choices, 18, 23);
  const spray = {
    flowGPerHour: flow,
    landsShare: 0.6,
    airborneShare: 0,
    lagSeconds: choices.oneOf([0, 3]),
    afterDripG: 0,
  };
  const one: MistCase = {
    enclosure: 'one',
    body: enclosure,
    spray,
    air: {
      roomVapourGPerM3: pick(choices, 0.2, 0.6) * saturationDensityGPerM3(room),
      temperatureSteps: [
        { fromMinute: on, celsius: room + pick(choices, 2, 7) },
        { fromMinute: on + lit, celsius: room - pick(choices, 0, 3) },
      ],
      lit: { onMinute: on, minutes: lit },
    },
    targets: randomTargets(choices),
    dryOut: choices.chance(0.6)
      ? { minutes: 60 * choices.between(1, 6), when: choices.oneOf(['lit', 'dark', 'any']), below: 0.2 }
      : null,
    drink: choices.chance(0.5)
      ? { when: choices.oneOf(['lit', 'any']), mists: choices.between(1, 2), seconds: choices.oneOf([60, 120]) }
      : null,
    cadence: choices.chance(0.4)
      ? {
          perDay: [choices.between(1, 2), choices.between(2, 3)],
          seconds: [30, 120],
          gapMinutes: choices.oneOf([null, 120, 180]),
        }
      : null,
    runOffAtMostG: choices.chance(0.4) ? pick(choices, 30, 400) : null,
    forbidden: open(on, lit),
  };
  const other: MistCase = { ...one, air: { ...one.air, roomVapourGPerM3: 0.8 * one.air.roomVapourGPerM3 } };
  return {
    machine: {
      ...grid,
      restSeconds: choices.oneOf([300, 600, 5400]),
      dutyFactor: null,
      pumpFlowGPerHour: flow,
      lagSeconds: spray.lagSeconds,
      afterDripG: 0,
    },
    cases: choices.chance(0.25) ? [one, other] : [one],
    waterAtMostG: choices.chance(0.5) ? pick(choices, 80, 600) : null,
    rhythm: {
      favour: choices.oneOf(['dawn', 'dusk', 'dawn-and-dusk', 'even'] as const),
      gapMinutes: one.cadence?.gapMinutes ?? null,
    },
  };
}

/** Lengths of the coarse instances. */
export const COARSE_LENGTHS = [60, 120, 180];

/** Up to three entries, ten hourly starts, three lengths; some of the starts in noise. */
export function coarseProblem(choices: Choices): DayProblem {
  const grid = {
    startStepMinutes: 60,
    lengthStepSeconds: 60,
    shortestSeconds: 60,
    longestSeconds: 180,
    entriesAtMost: choices.between(2, 3),
  };
  return randomProblem(choices, grid, (on) => {
    const from = on - 60 + 60 * choices.between(0, 2);
    const noise = choices.chance(0.3) ? [{ fromMinute: from, toMinute: from + 180 }] : [];
    return { starts: [{ fromMinute: (from + 600) % 1440, toMinute: from }], runs: [], noise, noMist: [] };
  });
}

/** Lengths of the larger coarse instances. */
export const LARGER_LENGTHS = [45, 90, 135, 180];

/** Up to three entries, fourteen hourly starts, four lengths: some 25 000 sets, more than the solver tries one by one. */
export function largerProblem(choices: Choices): DayProblem {
  const grid = {
    startStepMinutes: 60,
    lengthStepSeconds: 45,
    shortestSeconds: 45,
    longestSeconds: 180,
    entriesAtMost: 3,
  };
  return randomProblem(choices, grid, (on) => {
    const starts = [{ fromMinute: (on + 780) % 1440, toMinute: on - 60 }];
    return { starts, runs: [], noise: [], noMist: [] };
  });
}

export function fineProblem(choices: Choices): DayProblem {
  const grid = {
    startStepMinutes: 15,
    lengthStepSeconds: 15,
    shortestSeconds: 15,
    longestSeconds: 300,
    entriesAtMost: choices.between(3, 12),
  };
  return randomProblem(choices, grid, (on, lit) => ({
    starts: [{ fromMinute: on + 120, toMinute: on + 210 }],
    runs: choices.chance(0.3) ? [{ fromMinute: on + 65, toMinute: on + lit - 45 }] : [],
    noise: [{ fromMinute: 1320, toMinute: 420 }],
    noMist: [{ fromMinute: (on + lit - 90) % 1440, toMinute: on - 30 }],
  }));
}
