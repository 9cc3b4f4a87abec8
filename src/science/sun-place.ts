/**
 * The sun's apparent place, 1990 to 2060. Angles are radians; instants are days since 1970-01-01 00:00, fractions included.
 *
 * Model: the Earth's heliocentric longitude from the leading terms of VSOP87D (equinox of date), turned round, with aberration and the
 * two largest terms of nutation; the sun's latitude (at most 1.2") is left out. Within 0.001° of a full theory. UTC stands for UT1 (less
 * than 1 s apart), and terrestrial time is taken as UTC + 69 s (57 s in 1990, about 90 s in 2060: under 0.0004° of the sun's path).
 * Source: Bretagnon & Francou (1988) Astron. Astrophys. 202:309-315, terms as tabled in Reda & Andreas (2004) Solar Energy 76:577-589,
 * table A4.2; corrections from Meeus (1998) Astronomical Algorithms, 2nd ed., chapters 12, 22 and 25. Written down from memory and held
 * against both works' examples and an ephemeris in tests/reference/sun.
 */
const RAD = Math.PI / 180;
const ARC_SECOND = RAD / 3600;
const TURN = 2 * Math.PI;
/** Days from 1970-01-01 00:00 to 2000-01-01 12:00, the epoch J2000.0. */
const J2000_EPOCH_DAYS = 10_957.5;
const TERRESTRIAL_LEAD_DAYS = 69 / 86_400;

export interface SunPlace {
  /** Apparent ecliptic longitude, [0, 2π). */
  readonly longitude: number;
  readonly declination: number;
  /** Apparent right ascension, (−π, π]. */
  readonly rightAscension: number;
  readonly distanceAu: number;
  /** Equation of the equinoxes: apparent minus mean sidereal time. */
  readonly nutationInRightAscension: number;
}

/** Amplitude (1e-8), phase and speed per thousand years, flat: a sum of amplitude·cos(phase + speed·τ). */
type Series = Float64Array;

const LONGITUDE: readonly Series[] = [
  Float64Array.of(
    ...[3341656, 4.6692568, 6283.07585, 34894, 4.6261, 12566.1517, 3497, 2.7441, 5753.3849, 3418, 2.8289, 3.5231],
    ...[3136, 3.6277, 77713.7715, 2676, 4.4181, 7860.4194, 2343, 6.1352, 3930.2097, 1324, 0.7425, 11506.7698],
    ...[1273, 2.0371, 529.691, 1199, 1.1096, 1577.3435, 990, 5.233, 5884.927, 902, 2.045, 26.298],
    ...[857, 3.508, 398.149, 780, 1.179, 5223.694, 753, 2.533, 5507.553, 505, 4.583, 18849.228],
    ...[492, 4.205, 775.523, 357, 2.92, 0.067, 317, 5.849, 11790.629, 284, 1.899, 796.298],
    ...[271, 0.315, 10977.079, 243, 0.345, 5486.778, 206, 4.806, 2544.314, 205, 1.869, 5573.143],
    ...[202, 2.458, 6069.777, 156, 0.833, 213.299, 132, 3.411, 2942.463, 126, 1.083, 20.775],
  ),
  Float64Array.of(206059, 2.678235, 6283.07585, 4303, 2.6351, 12566.1517, 425, 1.59, 3.523, 119, 5.796, 26.298),
  Float64Array.of(8720, 1.0721, 6283.0758, 309, 0.867, 12566.152),
];
/** The terms without a period, by power of τ. */
const LONGITUDE_CONSTANT = 1.75347046;
const LONGITUDE_SPEED = 6283.31966747;
const LONGITUDE_ACCELERATION = 0.00052919;

const DISTANCE: readonly Series[] = [
  Float64Array.of(
    ...[1670700, 3.0984635, 6283.07585, 13956, 3.05525, 12566.1517, 3084, 5.1985, 77713.7715, 1628, 1.1739, 5753.3849],
    ...[1576, 2.8469, 7860.4194, 925, 5.453, 11506.77, 542, 4.564, 3930.21, 472, 3.661, 5884.927],
  ),
  Float64Array.of(103019, 1.10749, 6283.07585, 1721, 1.0644, 12566.1517),
];

function sumOf(series: Series | undefined, tau: number): number {
  if (series === undefined) return 0;
  let sum = 0;
  for (let i = 0; i < series.length; i += 3) {
    sum += (series[i] ?? 0) * Math.cos((series[i + 1] ?? 0) + (series[i + 2] ?? 0) * tau);
  }
  return sum * 1e-8;
}

/** Returns the Earth's heliocentric longitude, mean equinox of date, not reduced; τ in thousands of Julian years from J2000.0. */
export function earthLongitude(tau: number): number {
  const [l0, l1, l2] = LONGITUDE;
  const slow = LONGITUDE_CONSTANT + tau * (LONGITUDE_SPEED + tau * LONGITUDE_ACCELERATION);
  return slow + sumOf(l0, tau) + tau * (sumOf(l1, tau) + tau * sumOf(l2, tau));
}

/** Returns the Earth's distance from the sun in astronomical units. */
function earthDistance(tau: number): number {
  const [r0, r1] = DISTANCE;
  return 1.00013989 + sumOf(r0, tau) + tau * sumOf(r1, tau);
}

/** Returns the sun's apparent geocentric place at an instant in days since 1970-01-01 00:00 UTC. */
export function sunPlace(epochDays: number): SunPlace {
  return sunPlaceInTerrestrialTime(epochDays + TERRESTRIAL_LEAD_DAYS);
}

/** Returns the sun's apparent geocentric place; the days since 1970-01-01 00:00 are counted in terrestrial time. */
export function sunPlaceInTerrestrialTime(epochDays: number): SunPlace {
  const t = (epochDays - J2000_EPOCH_DAYS) / 36_525;
  const distanceAu = earthDistance(t / 10);
  const { inLongitude, obliquity } = nutation(t);
  const aberration = (-20.4898 * ARC_SECOND) / distanceAu;
  const toFk5 = -0.09033 * ARC_SECOND;
  const longitude = earthLongitude(t / 10) + Math.PI + toFk5 + aberration + inLongitude;
  const sinLongitude = Math.sin(longitude);
  return {
    longitude: longitude - TURN * Math.floor(longitude / TURN),
    declination: Math.asin(Math.sin(obliquity) * sinLongitude),
    rightAscension: Math.atan2(Math.cos(obliquity) * sinLongitude, Math.cos(longitude)),
    distanceAu,
    nutationInRightAscension: inLongitude * Math.cos(obliquity),
  };
}

/** Source: Meeus (1998) p. 144 and equation 22.2. */
function nutation(t: number): { readonly inLongitude: number; readonly obliquity: number } {
  const node = (125.04452 - 1934.136261 * t) * RAD;
  const twiceSun = 2 * (280.4665 + 36_000.7698 * t) * RAD;
  return {
    inLongitude: (-17.2 * Math.sin(node) - 1.32 * Math.sin(twiceSun)) * ARC_SECOND,
    obliquity: (84_381.448 - 46.815 * t + 9.2 * Math.cos(node) + 0.57 * Math.cos(twiceSun)) * ARC_SECOND,
  };
}

/** Returns sin of the sun's apparent ecliptic longitude at 12:00 UTC of a day number: +1 at the June solstice, −1 in December. */
export function sinSolarLongitudeAtNoon(epochDay: number): number {
  return Math.sin(sunPlace(epochDay + 0.5).longitude);
}

/**
 * Returns Greenwich mean sidereal time at an instant in days since 1970-01-01 00:00 UTC, not reduced to one turn.
 * Source: Meeus (1998) equation 12.4.
 */
export function greenwichMeanSiderealTime(epochDays: number): number {
  return (280.46061837 + 360.98564736629 * (epochDays - J2000_EPOCH_DAYS)) * RAD;
}
