import * as Astronomy from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { epochDayOf } from '../../../src/basics/calendar-day.ts';
import { dayLengthsUtc } from '../../../src/science/sun.ts';
import { sunPlace } from '../../../src/science/sun-place.ts';
import { refereeDay, refereeMinutes } from './ephemeris.ts';

/** No edge is left out: the half minute holds where the sun grazes the horizon and at the poles too. */
const TOLERANCE_MINUTES = 0.5;
const FIRST = epochDayOf(1990, 1, 1);
const LAST = epochDayOf(2060, 12, 31);

function worstOver(days: Iterable<number>, latitudes: readonly number[], longitudes: readonly number[]) {
  const worst = { error: 0, where: '' };
  for (const day of days) {
    const referee = refereeDay(day);
    for (const latitude of latitudes) {
      for (const longitude of longitudes) {
        const wanted = refereeMinutes(referee, latitude, longitude);
        const error = Math.abs(wanted - (dayLengthsUtc(latitude, longitude, day, 1)[0] ?? -1));
        if (error > worst.error) {
          worst.error = error;
          worst.where = `day ${day}, ${latitude}° and ${longitude}°: ${wanted.toFixed(1)} min`;
        }
      }
    }
  }
  return worst;
}

function* every(step: number, from: number, to: number): Generator<number> {
  for (let day = from; day <= to; day += step) yield day;
}

describe('day length against an ephemeris (astronomy-engine 2.1.19), half a minute everywhere', () => {
  it('from 1990 to 2060, away from the polar circles', () => {
    const latitudes = [-60, -45, -35, -23.4, -10, 0, 15, 25, 41.65, 52, 60];
    const worst = worstOver(every(181, FIRST, LAST), latitudes, [-170, -0.89, 100]);
    console.info(`worst error up to 60°: ${worst.error.toFixed(4)} min (${worst.where})`);
    expect(worst.error).toBeLessThan(TOLERANCE_MINUTES);
  });

  it('from 1990 to 2060, at the polar circles and the poles', () => {
    const latitudes = [-90, -89.7, -78, -67.4, -66, 65.7, 66.5, 67.4, 70, 78.2, 85, 89.7, 90];
    const worst = worstOver(every(239, FIRST, LAST), latitudes, [0, 179]);
    console.info(`worst error beyond 60°: ${worst.error.toFixed(4)} min (${worst.where})`);
    expect(worst.error).toBeLessThan(TOLERANCE_MINUTES);
  });

  it('on every day of a leap year', () => {
    const latitudes = [-77.8, -66.6, -34, 0, 23, 41.65, 60, 66, 68, 80];
    const worst = worstOver(every(1, epochDayOf(2028, 1, 1), epochDayOf(2028, 12, 31)), latitudes, [20]);
    console.info(`worst error in 2028: ${worst.error.toFixed(4)} min (${worst.where})`);
    expect(worst.error).toBeLessThan(TOLERANCE_MINUTES);
  });

  it("agrees with the engine's own search for sunrise and sunset, which sees the disc from the ground", () => {
    let worst = 0;
    for (const latitude of [-50, -20, 0, 30, 55]) {
      const observer = new Astronomy.Observer(latitude, 0, 0);
      for (const day of every(397, FIRST, LAST)) {
        const start = new Astronomy.AstroTime(day - 10_957.5);
        const rise = Astronomy.SearchRiseSet(Astronomy.Body.Sun, observer, 1, start, 1);
        const set = Astronomy.SearchRiseSet(Astronomy.Body.Sun, observer, -1, start, 1);
        const minutes = ((set?.ut ?? 0) - (rise?.ut ?? 0)) * 1440;
        worst = Math.max(worst, Math.abs(minutes - (dayLengthsUtc(latitude, 0, day, 1)[0] ?? 0)));
      }
    }
    console.info(`worst difference from sunrise to sunset: ${worst.toFixed(3)} min`);
    expect(worst).toBeLessThan(TOLERANCE_MINUTES);
  });

  it('has the apparent longitude to 0.001° from 1990 to 2060', () => {
    let worst = 0;
    for (const day of every(17.3, FIRST, LAST)) {
      const wanted = Astronomy.SunPosition(new Astronomy.AstroTime(day - 10_957.5)).elon;
      const offBy = (sunPlace(day).longitude * 180) / Math.PI - wanted;
      worst = Math.max(worst, Math.abs(offBy - 360 * Math.round(offBy / 360)));
    }
    console.info(`worst error of the longitude: ${worst.toFixed(5)}°`);
    expect(worst).toBeLessThan(0.001);
  });
});
