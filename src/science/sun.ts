/**
 * The sun's apparent place and the length of its day, for 1990 to 2060. Angles are radians unless the name says degrees; instants are
 * days since 1970-01-01 00:00 UTC, fractions included.
 *
 * Model: the low-accuracy solar theory, good to 0.01° in longitude, with mean nutation and aberration. UTC stands for UT1 (less than 1 s
 * apart) and terrestrial time is taken as UTC + 69 s (57 s in 1990, about 90 s in 2060: under 0.0004° of the sun's path).
 * Source: Meeus (1998) Astronomical Algorithms, 2nd ed., chapters 12, 13, 22, 25 and 28.
 */
const RAD = Math.PI / 180;
const TURN = 2 * Math.PI;
const DAY_MINUTES = 1440;
/** Days from 1970-01-01 00:00 to 2000-01-01 12:00, the epoch J2000.0. */
const J2000_EPOCH_DAYS = 10957.5;
const TERRESTRIAL_LEAD_DAYS = 69 / 86_400;

/**
 * Altitude of the sun's centre at sunrise and sunset: 34' of refraction at the horizon and 16' for the disc.
 * Source: Explanatory Supplement to the Astronomical Almanac (1992) section 9.311, zenith distance 90°50'; here to three decimals.
 */
export const HORIZON_DEGREES = -0.833;

export interface SunPlace {
  /** Apparent ecliptic longitude, [0, 2π). */
  readonly longitude: number;
  readonly declination: number;
  /** Apparent right ascension, (−π, π]. */
  readonly rightAscension: number;
  /** Distance in astronomical units. */
  readonly distanceAu: number;
  /** Equation of the equinoxes: apparent minus mean sidereal time. */
  readonly nutationInRightAscension: number;
}

/** Returns the sun's apparent geocentric place at an instant in days since 1970-01-01 00:00 UTC. */
export function sunPlace(epochDays: number): SunPlace {
  return sunPlaceInTerrestrialTime(epochDays + TERRESTRIAL_LEAD_DAYS);
}

/** Returns the sun's apparent geocentric place; the days since 1970-01-01 00:00 are counted in terrestrial time. */
export function sunPlaceInTerrestrialTime(epochDays: number): SunPlace {
  const t = (epochDays - J2000_EPOCH_DAYS) / 36_525;
  const meanAnomaly = (357.52911 + t * (35_999.05029 - 0.0001537 * t)) * RAD;
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const center = equationOfCenterDegrees(t, meanAnomaly);
  const trueLongitude = 280.46646 + t * (36_000.76983 + 0.0003032 * t) + center;
  const node = (125.04 - 1934.136 * t) * RAD;
  const longitude = (trueLongitude - 0.00569 - 0.00478 * Math.sin(node)) * RAD;
  const obliquity = (23.4392911 - 0.0130042 * t + 0.00256 * Math.cos(node)) * RAD;
  const sinLongitude = Math.sin(longitude);
  return {
    longitude: longitude - TURN * Math.floor(longitude / TURN),
    declination: Math.asin(Math.sin(obliquity) * sinLongitude),
    rightAscension: Math.atan2(Math.cos(obliquity) * sinLongitude, Math.cos(longitude)),
    distanceAu: (1.000001018 * (1 - eccentricity ** 2)) / (1 + eccentricity * Math.cos(meanAnomaly + center * RAD)),
    nutationInRightAscension: -0.00478 * RAD * Math.sin(node) * Math.cos(obliquity),
  };
}

/** Source: Meeus (1998) p. 164. */
function equationOfCenterDegrees(t: number, meanAnomaly: number): number {
  const first = 1.914602 - t * (0.004817 + 0.000014 * t);
  return (
    first * Math.sin(meanAnomaly) +
    (0.019993 - 0.000101 * t) * Math.sin(2 * meanAnomaly) +
    0.000289 * Math.sin(3 * meanAnomaly)
  );
}

/** Returns sin of the sun's apparent ecliptic longitude at 12:00 UTC of a day number: +1 at the June solstice, −1 in December. */
export function sinSolarLongitudeAtNoon(epochDay: number): number {
  return Math.sin(sunPlace(epochDay + 0.5).longitude);
}

/**
 * Returns Greenwich mean sidereal time, not reduced to one turn.
 * Source: Meeus (1998) equation 12.4.
 */
function greenwichMeanSiderealTime(epochDays: number): number {
  return (280.46061837 + 360.98564736629 * (epochDays - J2000_EPOCH_DAYS)) * RAD;
}

/** Hour angle at Greenwich (unwound) and declination as parabolas in x, −1 to 1 over the day around `middle`. */
interface DayPath {
  readonly middle: number;
  readonly declination: readonly [number, number, number];
  readonly hourAngle: readonly [number, number, number];
}

/** Instants and places at the three nodes of a day; consecutive days share one. */
function dayPath(middle: number, before: Node, at: Node, after: Node): DayPath {
  return {
    middle,
    declination: parabola(before.declination, at.declination, after.declination),
    hourAngle: parabola(
      unwind(before.hourAngle, at.hourAngle - Math.PI),
      at.hourAngle,
      unwind(after.hourAngle, at.hourAngle + Math.PI),
    ),
  };
}

interface Node {
  readonly declination: number;
  readonly hourAngle: number;
}

function nodeAt(epochDays: number): Node {
  const place = sunPlace(epochDays);
  const sidereal = greenwichMeanSiderealTime(epochDays) + place.nutationInRightAscension;
  return { declination: place.declination, hourAngle: unwind(sidereal - place.rightAscension, 0) };
}

/** Moves an angle by whole turns to within half a turn of another. */
function unwind(angle: number, near: number): number {
  return angle - TURN * Math.round((angle - near) / TURN);
}

function parabola(before: number, at: number, after: number): readonly [number, number, number] {
  return [at, (after - before) / 2, (after + before) / 2 - at];
}

/** Minutes of each consecutive UTC date in which the sun's centre stands above −0.833°; 0 in polar night, 1440 in polar day. */
export function dayLengthsUtc(latitude: number, longitude: number, fromDay: number, days: number): Float64Array {
  const starts = new Float64Array(days + 1);
  for (let i = 0; i <= days; i++) starts[i] = fromDay + i;
  return dayLengthsBetween(latitude, longitude, starts);
}

/** Minutes of one UTC date in which the sun's centre stands above −0.833°. */
export function dayLengthUtc(latitude: number, longitude: number, epochDay: number): number {
  return dayLengthsUtc(latitude, longitude, epochDay, 1)[0] ?? 0;
}

/**
 * Returns, for each pair of neighbouring instants, the minutes between them in which the sun's centre stands above −0.833°, as seen from
 * sea level without parallax (geocentric, as in the almanacs).
 *
 * @param latitude degrees, −90 to 90, north positive
 * @param longitude degrees, east positive
 * @param starts ascending instants in days since 1970-01-01 00:00 UTC, about one day apart (up to 26 h); one more than values come back
 */
export function dayLengthsBetween(latitude: number, longitude: number, starts: Float64Array): Float64Array {
  const lengths = new Float64Array(Math.max(0, starts.length - 1));
  const place = placeOf(latitude, longitude);
  let after: { readonly at: number; readonly node: Node } | null = null;
  for (let i = 0; i < lengths.length; i++) {
    const from = starts[i] ?? 0;
    const to = starts[i + 1] ?? 0;
    const before: Node = after !== null && after.at === from ? after.node : nodeAt(from);
    after = { at: from + 1, node: nodeAt(from + 1) };
    const path = dayPath(from + 0.5, before, nodeAt(from + 0.5), after.node);
    lengths[i] = minutesAbove(place, path, (from - path.middle) * 2, (to - path.middle) * 2);
  }
  return lengths;
}

interface Observer {
  readonly sinLatitude: number;
  readonly cosLatitude: number;
  readonly longitude: number;
}

const SIN_HORIZON = Math.sin(HORIZON_DEGREES * RAD);

function placeOf(latitude: number, longitude: number): Observer {
  return {
    sinLatitude: Math.sin(latitude * RAD),
    cosLatitude: Math.max(0, Math.cos(latitude * RAD)),
    longitude: longitude * RAD,
  };
}

/** How far the sine of the altitude is above the horizon's at x. */
function heightAt(place: Observer, path: DayPath, x: number): number {
  const [d0, d1, d2] = path.declination;
  const [h0, h1, h2] = path.hourAngle;
  const declination = d0 + x * (d1 + x * d2);
  const hourAngle = h0 + x * (h1 + x * h2) + place.longitude;
  return (
    place.sinLatitude * Math.sin(declination) +
    place.cosLatitude * Math.cos(declination) * Math.cos(hourAngle) -
    SIN_HORIZON
  );
}

/** Between neighbouring turning points the height is monotone, so each stretch has one crossing at most. */
function minutesAbove(place: Observer, path: DayPath, from: number, to: number): number {
  let above = 0;
  let start = from;
  let startHeight = heightAt(place, path, from);
  for (const end of turningPoints(place, path, from, to)) {
    const endHeight = heightAt(place, path, end);
    above += shareAbove(place, path, start, startHeight, end, endHeight);
    start = end;
    startHeight = endHeight;
  }
  return (above * DAY_MINUTES) / 2;
}

/** The x of every culmination, upper and lower, inside (from, to), ascending; then `to`. */
function turningPoints(place: Observer, path: DayPath, from: number, to: number): readonly number[] {
  const [h0, h1, h2] = path.hourAngle;
  const hourAngleAt = (x: number): number => h0 + x * (h1 + x * h2) + place.longitude;
  const points: number[] = [];
  const first = Math.floor(hourAngleAt(from) / Math.PI);
  const last = Math.ceil(hourAngleAt(to) / Math.PI);
  for (let half = first; half <= last; half++) {
    let x = (half * Math.PI - h0 - place.longitude) / h1;
    x -= (hourAngleAt(x) - half * Math.PI) / (h1 + 2 * h2 * x);
    x += culminationShift(place, path, x, half % 2 === 0);
    if (x > from && x < to) points.push(x);
  }
  points.push(to);
  return points;
}

/**
 * How far the highest or lowest point lies from the meridian because the declination moves: about (tan φ − tan δ)·δ'/H'² of x.
 * Within a third of a degree of the poles it is held to 6 h.
 * Source: Meeus (1998) chapter 15, from the derivative of the altitude.
 */
function culminationShift(place: Observer, path: DayPath, x: number, upper: boolean): number {
  const [d0, d1, d2] = path.declination;
  const declination = d0 + x * (d1 + x * d2);
  const drift = d1 + 2 * x * d2;
  const speed = path.hourAngle[1];
  const sign = upper ? 1 : -1;
  const slope = (place.sinLatitude * Math.cos(declination) - sign * place.cosLatitude * Math.sin(declination)) * drift;
  const bend = sign * place.cosLatitude * Math.cos(declination) * speed * speed;
  return Math.abs(slope) >= Math.abs(bend) / 2 ? Math.sign(slope * bend) / 2 : slope / bend;
}

/** The part of [start, end) above the horizon, where the height is monotone between them. */
function shareAbove(
  place: Observer,
  path: DayPath,
  start: number,
  startHeight: number,
  end: number,
  endHeight: number,
): number {
  if (startHeight > 0 === endHeight > 0) return startHeight > 0 ? end - start : 0;
  const crossing = crossingBetween(place, path, start, startHeight, end, endHeight);
  return startHeight > 0 ? crossing - start : end - crossing;
}

/** Regula falsi with the Illinois step; to 1e-9 of half a day, some 40 µs of time. */
function crossingBetween(
  place: Observer,
  path: DayPath,
  start: number,
  startHeight: number,
  end: number,
  endHeight: number,
): number {
  let [a, fa, b, fb] = [start, startHeight, end, endHeight];
  for (let round = 0; round < 60; round++) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const fx = heightAt(place, path, x);
    if (fx > 0 === fb > 0) fa /= 2;
    else [a, fa] = [b, fb];
    [b, fb] = [x, fx];
    if (Math.abs(fx) < 1e-10 || Math.abs(b - a) < 1e-9) return b;
  }
  return b;
}
