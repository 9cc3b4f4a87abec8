/** The air over days that differ, against the second integrator. */
import { describe, expect, it } from 'vitest';
import { AirHistory } from '../../../src/science/air-history.ts';
import { Choices } from '../../generated/random.ts';
import { historyOf, LEAD_DAYS } from '../gauge-fit/synthetic-log.ts';
import { randomEnclosure } from './random-enclosures.ts';
import { STEP_SECONDS, secondDays } from './second-integrator.ts';

/** A tenth of what the periodic day is allowed: a fit averages hundreds of readings, so that errors of the method must be small beside theirs. */
const MEAN_WITHIN = 0.0005;
const WORST_WITHIN = 0.01;
const PER_MINUTE = 60 / STEP_SECONDS;

/** A second integrator's step that moves more than this lies across the moment of saturation: there it is no line between two steps. */
const STEEPEST_STEP = 0.01;

/** Linear between steps; not a number outside of the days and where the steps are too far apart. */
function humidityAt(days: readonly Float64Array[], step: number): number {
  const at = (whole: number) =>
    days[Math.floor(whole / (1440 * PER_MINUTE))]?.[whole % (1440 * PER_MINUTE)] ?? Number.NaN;
  const whole = Math.floor(step);
  const share = step - whole;
  if (share === 0) return at(whole);
  const isLine = Math.abs(at(whole + 1) - at(whole)) < STEEPEST_STEP;
  return isLine ? at(whole) * (1 - share) + at(whole + 1) * share : Number.NaN;
}

describe('24 random enclosures over three days that differ, a second integrator', () => {
  const choices = new Choices(20_270_211);
  const differences = Array.from({ length: 24 }, () => {
    const { body, spray, air } = randomEnclosure(() => choices.share());
    const days = Array.from({ length: 3 }, (_, day) => ({
      air: { ...air, roomVapourGPerM3: air.roomVapourGPerM3 * (1 - 0.1 * day) },
      runs: randomEnclosure(() => choices.share()).runs,
    }));
    const second = secondDays(body, spray, days);
    const history = new AirHistory(body, spray, historyOf(days, body.warmUpMinutes));
    history.simulate(body);
    let [sum, worst, count] = [0, 0, 0];
    history.minutes.forEach((minute, node) => {
      const at = humidityAt(second, (minute - LEAD_DAYS * 1440) * PER_MINUTE);
      if (Number.isNaN(at)) return;
      const off = Math.abs((history.humidity[node] ?? 0) - at);
      sum += off;
      worst = Math.max(worst, off);
      count++;
    });
    return { mean: sum / count, worst, nodes: history.minutes.length };
  });

  it('agree on the humidity on average to 0.05 points', () => {
    const mean = Math.max(...differences.map((each) => each.mean));
    console.info(`air over days that differ: mean difference ${mean.toPrecision(3)}`);
    expect(mean).toBeLessThan(MEAN_WITHIN);
  });

  it('agree on the humidity at every node to 1 point, mists included', () => {
    const worst = Math.max(...differences.map((each) => each.worst));
    console.info(`air over days that differ: worst difference ${worst.toPrecision(3)}`);
    expect(worst).toBeLessThan(WORST_WITHIN);
  });
});
