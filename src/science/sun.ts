/**
 * The length of the sun's day for any place and date, 1990 to 2060. Angles are radians unless the name says degrees; instants are days
 * since 1970-01-01 00:00 UTC, fractions included.
 *
 * The height of the sun is followed through the date: between its turning points it is monotone, so each stretch has one crossing of the
 * horizon at most. That holds at any longitude (the sun may be up at both ends of a UTC date), in polar day and night, and at the poles.
 */
import { greenwichMeanSiderealTime, sunPlace } from './sun-place.ts';

const RAD = Math.PI / 180;
const TURN = 2 * Math.PI;
const DAY_MINUTES = 1440;

/**
 * Altitude of the sun's centre at sunrise and sunset: 34' of refraction at the horizon and 16' for the disc.
 * Source: the almanacs' zenith distance of 90°50' (US Naval Observatory, definitions of rise and set; from memory), here to
 * three decimals.
 */
export const HORIZON_DEGREES = -0.833;
const SIN_HORIZON = Math.sin(HORIZON_DEGREES * RAD);

/** Declination and hour angle as parabolas c0 + c1·x + c2·x² in days x from `noon`, a 12:00 UTC. */
interface Path {
  noon: number;
  d0: number;
  d1: number;
  d2: number;
  h0: number;
  h1: number;
  h2: number;
}

/** In radians. */
interface Noon {
  readonly declination: number;
  readonly hourAngle: number;
}

interface Observer {
  readonly sinLatitude: number;
  readonly cosLatitude: number;
  readonly longitude: number;
}

/**
 * Returns, for each pair of neighbouring instants, the minutes between them in which the sun's centre stands above −0.833°, as seen from
 * sea level without parallax, as in the almanacs.
 *
 * @param latitude degrees, −90 to 90, north positive
 * @param longitude degrees, east positive
 * @param starts ascending instants in days since 1970-01-01 00:00 UTC, some 23 to 25 h apart; one more than values come back
 */
export function dayLengthsBetween(latitude: number, longitude: number, starts: Float64Array): Float64Array {
  const lengths = new Float64Array(Math.max(0, starts.length - 1));
  const observer = observerAt(latitude, longitude);
  const noons = new Map<number, Noon>();
  for (let i = 0; i < lengths.length; i++) {
    const from = starts[i] ?? 0;
    const to = starts[i + 1] ?? 0;
    const day = Math.floor((from + to) / 2);
    const path = pathAround(day, noons, observer);
    noons.delete(day - 1);
    lengths[i] = DAY_MINUTES * daysAbove(observer, path, from - path.noon, to - path.noon);
  }
  return lengths;
}

/** Minutes of each consecutive UTC date in which the sun's centre stands above −0.833°; 0 in polar night, 1440 in polar day. */
export function dayLengthsUtc(latitude: number, longitude: number, fromDay: number, days: number): Float64Array {
  const starts = Float64Array.from({ length: days + 1 }, (_, index) => fromDay + index);
  return dayLengthsBetween(latitude, longitude, starts);
}

function observerAt(latitude: number, longitude: number): Observer {
  return {
    sinLatitude: Math.sin(latitude * RAD),
    cosLatitude: Math.cos(latitude * RAD),
    longitude: longitude * RAD,
  };
}

function pathAround(day: number, noons: Map<number, Noon>, observer: Observer): Path {
  const before = noonOf(day - 1, noons);
  const at = noonOf(day, noons);
  const after = noonOf(day + 1, noons);
  const back = nearest(before.hourAngle, at.hourAngle - TURN);
  const ahead = nearest(after.hourAngle, at.hourAngle + TURN);
  return {
    noon: day + 0.5,
    d0: at.declination,
    d1: (after.declination - before.declination) / 2,
    d2: (after.declination + before.declination) / 2 - at.declination,
    h0: at.hourAngle + observer.longitude,
    h1: (ahead - back) / 2,
    h2: (ahead + back) / 2 - at.hourAngle,
  };
}

function noonOf(day: number, noons: Map<number, Noon>): Noon {
  const known = noons.get(day);
  if (known !== undefined) return known;
  const place = sunPlace(day + 0.5);
  const sidereal = greenwichMeanSiderealTime(day + 0.5) + place.nutationInRightAscension;
  const noon = { declination: place.declination, hourAngle: nearest(sidereal - place.rightAscension, 0) };
  noons.set(day, noon);
  return noon;
}

/** Moves an angle by whole turns to within half a turn of another. */
function nearest(angle: number, other: number): number {
  return angle - TURN * Math.round((angle - other) / TURN);
}

/** How far the sine of the sun's altitude stands above the horizon's. */
function heightAt(observer: Observer, path: Path, x: number): number {
  const declination = path.d0 + x * (path.d1 + x * path.d2);
  const hourAngle = path.h0 + x * (path.h1 + x * path.h2);
  const { sinLatitude, cosLatitude } = observer;
  return sinLatitude * Math.sin(declination) + cosLatitude * Math.cos(declination) * Math.cos(hourAngle) - SIN_HORIZON;
}

function daysAbove(observer: Observer, path: Path, from: number, to: number): number {
  let above = 0;
  let start = from;
  let startHeight = heightAt(observer, path, from);
  const stop = (end: number): void => {
    const endHeight = heightAt(observer, path, end);
    above += shareAbove(observer, path, start, startHeight, end, endHeight);
    start = end;
    startHeight = endHeight;
  };
  forEachTurningPoint(observer, path, from, to, stop);
  stop(to);
  return above;
}

/** Visits the highest and lowest points of the sun inside (from, to), in order: the meridian passages, moved as the declination drifts. */
function forEachTurningPoint(
  observer: Observer,
  path: Path,
  from: number,
  to: number,
  visit: (x: number) => void,
): void {
  const first = Math.floor((path.h0 + from * path.h1) / Math.PI);
  const last = Math.ceil((path.h0 + to * path.h1) / Math.PI);
  for (let half = first; half <= last; half++) {
    const x = meridianPassage(path, half * Math.PI);
    const turn = x + driftShift(observer, path, x, half % 2 === 0 ? 1 : -1);
    if (turn > from && turn < to) visit(turn);
  }
}

/** The x at which the hour angle is the given one; two Newton steps leave far less than a second. */
function meridianPassage(path: Path, hourAngle: number): number {
  let x = (hourAngle - path.h0) / path.h1;
  x -= (path.h0 + x * (path.h1 + x * path.h2) - hourAngle) / path.h1;
  x -= (path.h0 + x * (path.h1 + x * path.h2) - hourAngle) / path.h1;
  return x;
}

/**
 * How far the turning point lies from the meridian because the declination drifts, in days: the slope of the height on the meridian over
 * its bend, held to 6 h where the drift is as strong as the day itself (within half a degree of the poles).
 *
 * @param side 1 for the upper passage, −1 for the lower
 */
function driftShift(observer: Observer, path: Path, x: number, side: 1 | -1): number {
  const declination = path.d0 + x * (path.d1 + x * path.d2);
  const drift = path.d1 + 2 * x * path.d2;
  const cosDeclination = Math.cos(declination);
  const slope = (observer.sinLatitude * cosDeclination - side * observer.cosLatitude * Math.sin(declination)) * drift;
  const bend = side * observer.cosLatitude * cosDeclination * path.h1 * path.h1;
  return Math.abs(slope) * 4 >= Math.abs(bend) ? Math.sign(slope) * Math.sign(bend) * 0.25 : slope / bend;
}

/** The part of [start, end) above the horizon, where the height is monotone between them. */
function shareAbove(
  observer: Observer,
  path: Path,
  start: number,
  startHeight: number,
  end: number,
  endHeight: number,
): number {
  if (startHeight > 0 === endHeight > 0) return startHeight > 0 ? end - start : 0;
  const crossing = crossingBetween(observer, path, start, startHeight, end, endHeight);
  return startHeight > 0 ? crossing - start : end - crossing;
}

/** Regula falsi with the Illinois step, to 1e-9 of a day or 1e-11 of the sine. */
function crossingBetween(
  observer: Observer,
  path: Path,
  start: number,
  startHeight: number,
  end: number,
  endHeight: number,
): number {
  let a = start;
  let b = end;
  let fa = startHeight;
  let fb = endHeight;
  for (let round = 0; round < 60 && Math.abs(b - a) > 1e-9; round++) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const fx = heightAt(observer, path, x);
    if (fx > 0 === fb > 0) fa /= 2;
    else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = fx;
    if (Math.abs(fx) < 1e-11) break;
  }
  return b;
}
