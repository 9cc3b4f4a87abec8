/** The wet enclosure against an independent integrator on random enclosures, and its balances. 40 here, 200 with DEWDIAL_ALL_ENCLOSURES. */
import { describe, expect, it } from 'vitest';
import { HumidityCurve, longestDryMinutes, peakMinutes } from '../../../src/science/day-figures.ts';
import { PeriodicDay } from '../../../src/science/wet-enclosure.ts';
import { Choices } from '../../generated/random.ts';
import { tries } from '../../tries.ts';
import { type RandomEnclosure, randomEnclosure } from './random-enclosures.ts';
import { type SecondDay, secondDay, secondDryMinutes, secondPeaks } from './second-integrator.ts';

const COUNT = tries(40, 200);
/** Points of RH, minutes and share that the two may differ by. */
const HUMIDITY = 0.002;
const MINUTES = 3;
const RUN_OFF = 0.01;
const BALANCE = 0.001;

const choices = new Choices(20_270_101);
const drawn = Array.from({ length: COUNT }, () => randomEnclosure(() => choices.share()));

interface Both {
  readonly drawn: RandomEnclosure;
  readonly day: PeriodicDay;
  readonly curve: HumidityCurve;
  readonly second: SecondDay;
}

const both: readonly Both[] = drawn.map((one) => {
  const day = new PeriodicDay(one.body, one.spray, one.air);
  const curve = new HumidityCurve();
  day.simulate(one.runs);
  curve.read(day);
  return { drawn: one, day, curve, second: secondDay(one.body, one.spray, one.air, one.runs) };
});

function worstOf(name: string, difference: (pair: Both) => number): number {
  const worst = Math.max(...both.map(difference));
  console.info(`${name}: worst difference ${worst.toPrecision(3)}`);
  return worst;
}

describe(`${COUNT} random enclosures, a second integrator`, () => {
  it.each(['mean', 'lit', 'dark', 'low', 'high'] as const)('%s humidity agrees to 0.2 points', (figure) => {
    expect(worstOf(figure, ({ curve, second }) => Math.abs(curve[figure] - second[figure]))).toBeLessThan(HUMIDITY);
  });

  it('run-off agrees to 1 %', () => {
    const worst = worstOf('run-off', ({ day, second }) => {
      return Math.abs(day.balance.runOffG - second.runOffG) / Math.max(1, second.runOffG);
    });
    expect(worst).toBeLessThan(RUN_OFF);
  });

  it.each(['lit', 'dark', 'any'] as const)(
    'the dry spell of %s hours agrees to 3 min where no edge is near',
    (when) => {
      let compared = 0;
      worstOf(`dry spell (${when})`, ({ drawn: { body, air }, day, second }) => {
        const { onMinute, minutes } = air.lit;
        const from = when === 'dark' ? (onMinute + minutes) % 1440 : when === 'lit' ? onMinute : 0;
        const length = when === 'any' ? 1440 : when === 'lit' ? minutes : 1440 - minutes;
        const spells = [0.198, 0.2, 0.202].map((below) =>
          secondDryMinutes(second, below * body.filmCapacityG, from, length),
        );
        const [thin = 0, spell = 0, thick = 0] = spells;
        if (Math.max(spell - thin, thick - spell) > MINUTES) return 0;
        compared++;
        const difference = Math.abs(longestDryMinutes(day, 0.2, when) - spell);
        expect(difference).toBeLessThan(MINUTES);
        return difference;
      });
      expect(compared).toBeGreaterThan(COUNT / 2);
    },
  );

  it('peaks agree where no edge is near', () => {
    let [compared, seen] = [0, 0];
    for (const { drawn: one, day, curve, second } of both) {
      for (const [reaches, rearm] of [
        [0.6, 0.5],
        [0.7, 0.6],
        [0.8, 0.7],
        [0.9, 0.8],
      ] as const) {
        const near = [-HUMIDITY, 0, HUMIDITY].flatMap((a) =>
          [-HUMIDITY, 0, HUMIDITY].map((b) => secondPeaks(second, one.runs, reaches + a, rearm + b)),
        );
        if (new Set(near).size > 1) continue;
        compared++;
        seen += near[0] ?? 0;
        expect(peakMinutes(curve, day, one.runs, reaches, rearm).length).toBe(near[0]);
      }
    }
    console.info(`peaks: ${compared} days compared, ${seen} peaks`);
    expect(seen).toBeGreaterThan(COUNT / 2);
  });

  it('condensation agrees to 2 % or 1 g', () => {
    const worst = worstOf('condensed', ({ day, second }) => {
      return Math.abs(day.balance.condensedG - second.condensedG) / Math.max(50, second.condensedG);
    });
    expect(worst).toBeLessThan(0.02);
    expect(both.filter(({ second }) => second.condensedG > 5).length).toBeGreaterThan(3);
  });
});

describe('balances', () => {
  it('water: sprayed + condensed = evaporated + airborne + run-off + change of film, to 0.1 %', () => {
    const worst = worstOf('water balance', ({ drawn: { runs, spray }, day: { balance } }) => {
      const drips = spray.afterDripG * runs.length;
      const out = balance.evaporatedG + balance.airborneG + balance.runOffG - drips + balance.filmChangeG;
      return Math.abs(balance.sprayedG + balance.condensedG - out) / Math.max(1, balance.sprayedG);
    });
    expect(worst).toBeLessThan(BALANCE);
  });

  it('vapour: carried out by air exchange = evaporated + base + airborne - condensed, to 0.1 %', () => {
    const worst = worstOf('vapour balance', ({ day: { balance } }) => {
      const made = balance.evaporatedG + balance.baseG + balance.airborneG - balance.condensedG;
      return Math.abs(balance.carriedOutG - made) / Math.max(1, made);
    });
    expect(worst).toBeLessThan(BALANCE);
  });
});

describe('the periodic day', () => {
  it('ends as it began, to 0.01 % RH and 0.1 % of the film', () => {
    for (const { day } of both) {
      const last = day.mesh.count;
      expect(Math.abs((day.humidity[last] ?? 0) - (day.humidity[0] ?? 0))).toBeLessThan(1e-4);
      expect(Math.abs((day.film[last] ?? 0) - (day.film[0] ?? 0))).toBeLessThan(1e-3 * day.enclosure.filmCapacityG);
    }
  });

  it('changes its mean by less than 0.1 point when the step is halved', () => {
    const worst = worstOf('halved step', ({ drawn: { runs, body, spray, air }, curve }) => {
      const day = new PeriodicDay(body, spray, air);
      const fine = new HumidityCurve();
      day.simulate(runs, 2);
      fine.read(day);
      return Math.abs(fine.mean - curve.mean);
    });
    expect(worst).toBeLessThan(0.001);
  });
});
