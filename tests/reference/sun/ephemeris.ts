/**
 * The referee: minutes above the horizon from astronomy-engine's own sun, by walking through the date in steps of one minute and a half.
 * Shares no code with the program, neither for the sun's place nor for finding its rise and set.
 */
import * as Astronomy from 'astronomy-engine';
import { HORIZON_DEGREES } from '../../../src/science/sun.ts';

const RAD = Math.PI / 180;
const TURN = 2 * Math.PI;
const NODES = 48;
const STEPS = 20;
const J2000 = 10_957.5;

/** Declination and Greenwich hour angle, radians, each half hour of a UTC date; the angle runs on without leaps. */
export interface RefereeDay {
  readonly declination: readonly number[];
  readonly hourAngle: readonly number[];
}

export function refereeDay(epochDay: number): RefereeDay {
  const declination: number[] = [];
  const hourAngle: number[] = [];
  for (let node = 0; node <= NODES; node++) {
    const time = new Astronomy.AstroTime(epochDay + node / NODES - J2000);
    const vector = Astronomy.GeoVector(Astronomy.Body.Sun, time, true);
    const place = Astronomy.EquatorFromVector(Astronomy.RotateVector(Astronomy.Rotation_EQJ_EQD(time), vector));
    const angle = (Astronomy.SiderealTime(time) - place.ra) * 15 * RAD;
    const expected = (hourAngle[node - 1] ?? angle - TURN / NODES) + TURN / NODES;
    declination.push(place.dec * RAD);
    hourAngle.push(angle - TURN * Math.round((angle - expected) / TURN));
  }
  return { declination, hourAngle };
}

export function refereeMinutes(day: RefereeDay, latitude: number, longitude: number): number {
  const [sine, cosine] = [Math.sin(latitude * RAD), Math.cos(latitude * RAD)];
  const horizon = Math.sin(HORIZON_DEGREES * RAD);
  const height = (node: number, share: number): number => {
    const mix = (values: readonly number[]): number =>
      (values[node] ?? 0) * (1 - share) + (values[Math.min(NODES, node + 1)] ?? 0) * share;
    const declination = mix(day.declination);
    return (
      sine * Math.sin(declination) +
      cosine * Math.cos(declination) * Math.cos(mix(day.hourAngle) + longitude * RAD) -
      horizon
    );
  };
  let above = 0;
  let before = height(0, 0);
  for (let step = 1; step <= NODES * STEPS; step++) {
    const after = height(Math.floor(step / STEPS), (step % STEPS) / STEPS);
    above += shareAbove(before, after);
    before = after;
  }
  return (above * 1440) / (NODES * STEPS);
}

function shareAbove(before: number, after: number): number {
  if (before > 0 && after > 0) return 1;
  if (before <= 0 && after <= 0) return 0;
  const crossing = before / (before - after);
  return before > 0 ? crossing : 1 - crossing;
}
