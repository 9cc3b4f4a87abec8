/**
 * The fit on synthetic readings of the second integrator: 3 % RH, a clock within 1 min, 10 % lost.
 */
import { describe, expect, it } from 'vitest';
import { clockOff } from '../../../src/fit/clock-check.ts';
import { AIR_KEYS, type AirFit, fitAir, Sampler } from '../../../src/fit/fit-air.ts';
import { AirHistory } from '../../../src/science/air-history.ts';
import { Choices } from '../../generated/random.ts';
import { TRIES_ALL, tries } from '../../tries.ts';
import { ORDINARY, syntheticLog } from './synthetic-log.ts';

const COUNT = tries(40, 200);
const DAYS = 4;

interface Case {
  readonly fit: AirFit;
  readonly truth: Readonly<Record<(typeof AIR_KEYS)[number], number>>;
}

const choices = new Choices(20_270_301);
const cases: readonly Case[] = Array.from({ length: COUNT }, () => {
  const log = syntheticLog(choices, DAYS, ORDINARY);
  const history = new AirHistory(log.estimate, log.spray, log.history);
  return { fit: fitAir(history, log.readings, log.estimate, AIR_KEYS), truth: log.truth };
});

describe(`${COUNT} fits of synthetic readings`, () => {
  it('hold the truth in between 90 % and 99 % of their 95 % intervals', () => {
    let [held, all] = [0, 0];
    for (const key of AIR_KEYS) {
      let [own, of] = [0, 0];
      let width = 0;
      for (const { fit, truth } of cases) {
        const value = fit.values.find((each) => each.key === key);
        if (!value) continue;
        of++;
        width += Math.log(value.high / value.low) / 2;
        if (value.low <= truth[key] && truth[key] <= value.high) own++;
      }
      console.info(`${key}: ${own} of ${of} intervals hold the truth; half width x ${Math.exp(width / of).toFixed(3)}`);
      held += own;
      all += of;
    }
    const share = held / all;
    console.info(`all: ${held} of ${all}, ${(100 * share).toFixed(1)} %`);
    expect(share).toBeGreaterThanOrEqual(0.9);
    expect(share).toBeLessThanOrEqual(0.99);
  });

  it('give the residual that the readings were made with', () => {
    const residuals = cases.map(({ fit }) => fit.residual);
    console.info(`residual ${Math.min(...residuals).toFixed(4)} to ${Math.max(...residuals).toFixed(4)}`);
    for (const residual of residuals) expect(Math.abs(residual - ORDINARY.noise)).toBeLessThan(0.006);
  });
});

describe('errors that follow one another', () => {
  it('widen the intervals, so that they hold the truth as often', () => {
    const own = new Choices(20_270_303);
    const count = tries(12, 100);
    let [held, all] = [0, 0];
    for (let i = 0; i < count; i++) {
      const log = syntheticLog(own, DAYS, { ...ORDINARY, noise: 0.02, chain: 0.8 });
      const { values } = fitAir(
        new AirHistory(log.estimate, log.spray, log.history),
        log.readings,
        log.estimate,
        AIR_KEYS,
      );
      for (const { key, low, high } of values) {
        all++;
        if (low <= log.truth[key] && log.truth[key] <= high) held++;
      }
    }
    console.info(`chained errors: ${held} of ${all}, ${((100 * held) / all).toFixed(1)} %`);
    expect(held / all).toBeGreaterThanOrEqual(TRIES_ALL ? 0.88 : 0.8);
  });
});

describe('the clock of the gauge', () => {
  const own = new Choices(20_270_302);
  const logs = Array.from({ length: tries(12, 12) }, () => syntheticLog(own, DAYS, ORDINARY));
  const off = (shift: number) =>
    logs.map(({ estimate, spray, history, readings }) => {
      const shifted = readings.map((each) => ({ ...each, minute: each.minute + shift }));
      const sampler = new Sampler(new AirHistory(estimate, spray, history), shifted, ORDINARY.noise);
      return clockOff(sampler, shifted, estimate, history.runs.length);
    });

  it('is never called off where it is right to the minute', () => {
    expect(off(0)).toEqual(logs.map(() => null));
  });

  /** In air that is always damp no rise stands out of 3 % of noise, and nothing is to be said. */
  const swings = logs.map(({ readings }) => {
    const sorted = readings.map(({ humidity }) => humidity).sort((a, b) => a - b);
    return (sorted[Math.floor(0.95 * sorted.length)] ?? 0) - (sorted[Math.floor(0.05 * sorted.length)] ?? 0) > 0.2;
  });

  it.each([-60, 45])('is called off where it is %i min off and the air swings, and by how much to 10 min', (shift) => {
    const found = off(shift);
    const isRight = found.map((each) => each !== null && Math.abs(each - shift) <= 10);
    const wrong = found.filter((each, index) => each !== null && !isRight[index]).length;
    const right = isRight.filter((each, index) => each && swings[index]).length;
    const swinging = swings.filter((each) => each).length;
    console.info(
      `clock off by ${shift} min: right in ${right} of ${swinging} logs of air that swings, wrong in ${wrong}`,
    );
    expect(swinging).toBeGreaterThan(logs.length / 2);
    expect(right).toBeGreaterThanOrEqual(0.85 * swinging);
    expect(wrong).toBe(0);
  });
});
