/** Simpler published models of the sun and the day, coded apart from the program. Angles in degrees unless said. */
const RAD = Math.PI / 180;

/**
 * Hours of day by the CBM model, with the sun `p` degrees below the horizon at its ends.
 * Source: Forsythe et al. (1995) Ecological Modelling 80:87-95, equations 1 to 3; from memory.
 */
export function cbmHours(dayOfYear: number, latitude: number, p: number): number {
  const theta = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const phi = Math.asin(0.39795 * Math.cos(theta));
  const cosine =
    (Math.sin(p * RAD) + Math.sin(latitude * RAD) * Math.sin(phi)) / (Math.cos(latitude * RAD) * Math.cos(phi));
  return 24 - (24 / Math.PI) * Math.acos(Math.max(-1, Math.min(1, cosine)));
}

/**
 * Minutes of day from the short series for the declination, at noon of the day of the year.
 * Source: Spencer (1971) Search 2(5):172, as used in the short form of the NOAA solar equations; from memory.
 */
export function shortSeriesMinutes(dayOfYear: number, latitude: number): number {
  const g = ((2 * Math.PI) / 365) * (dayOfYear - 1);
  const declination =
    0.006918 -
    0.399912 * Math.cos(g) +
    0.070257 * Math.sin(g) -
    0.006758 * Math.cos(2 * g) +
    0.000907 * Math.sin(2 * g) -
    0.002697 * Math.cos(3 * g) +
    0.00148 * Math.sin(3 * g);
  const cosine =
    Math.cos(90.833 * RAD) / (Math.cos(latitude * RAD) * Math.cos(declination)) -
    Math.tan(latitude * RAD) * Math.tan(declination);
  return (8 / RAD) * Math.acos(Math.max(-1, Math.min(1, cosine)));
}

/**
 * The sun's apparent place by the low-accuracy theory; t in Julian centuries of terrestrial time from J2000.0.
 * Source: Meeus (1998) Astronomical Algorithms, 2nd ed., chapter 25, equations 25.2 to 25.8; from memory.
 */
export function lowAccuracySun(t: number): {
  readonly longitude: number;
  readonly declination: number;
  readonly rightAscension: number;
  readonly distanceAu: number;
} {
  const meanLongitude = 280.46646 + t * (36_000.76983 + 0.0003032 * t);
  const anomaly = (357.52911 + t * (35_999.05029 - 0.0001537 * t)) * RAD;
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const center =
    (1.914602 - t * (0.004817 + 0.000014 * t)) * Math.sin(anomaly) +
    (0.019993 - 0.000101 * t) * Math.sin(2 * anomaly) +
    0.000289 * Math.sin(3 * anomaly);
  const node = (125.04 - 1934.136 * t) * RAD;
  const longitude = meanLongitude + center - 0.00569 - 0.00478 * Math.sin(node);
  const obliquity = (23.439291 - 0.0130042 * t + 0.00256 * Math.cos(node)) * RAD;
  const sine = Math.sin(longitude * RAD);
  return {
    longitude,
    declination: Math.asin(Math.sin(obliquity) * sine) / RAD,
    rightAscension: Math.atan2(Math.cos(obliquity) * sine, Math.cos(longitude * RAD)) / RAD,
    distanceAu: (1.000001018 * (1 - eccentricity ** 2)) / (1 + eccentricity * Math.cos(anomaly + center * RAD)),
  };
}

/** Amplitude (1e-8), phase and speed per thousand years; the periodic terms of L0, L1, L2, L3, then the constant ones of L0 to L4. */
// biome-ignore format: a table
const L0 = [
  3341656, 4.6692568, 6283.07585, 34894, 4.6261, 12566.1517, 3497, 2.7441, 5753.3849, 3418, 2.8289, 3.5231,
  3136, 3.6277, 77713.7715, 2676, 4.4181, 7860.4194, 2343, 6.1352, 3930.2097, 1324, 0.7425, 11506.7698,
  1273, 2.0371, 529.691, 1199, 1.1096, 1577.3435, 990, 5.233, 5884.927, 902, 2.045, 26.298, 857, 3.508, 398.149,
  780, 1.179, 5223.694, 753, 2.533, 5507.553, 505, 4.583, 18849.228, 492, 4.205, 775.523, 357, 2.92, 0.067,
  317, 5.849, 11790.629, 284, 1.899, 796.298, 271, 0.315, 10977.079, 243, 0.345, 5486.778, 206, 4.806, 2544.314,
  205, 1.869, 5573.143, 202, 2.458, 6069.777, 156, 0.833, 213.299, 132, 3.411, 2942.463, 126, 1.083, 20.775,
  115, 0.645, 0.98, 103, 0.636, 4694.003, 102, 0.976, 15720.839, 102, 4.267, 7.114, 99, 6.21, 2146.17,
  98, 0.68, 155.42, 86, 5.98, 161000.69, 85, 1.3, 6275.96, 85, 3.67, 71430.7, 80, 1.81, 17260.15, 79, 3.04, 12036.46,
  75, 1.76, 5088.63, 74, 3.5, 3154.69, 74, 4.68, 801.82, 70, 0.83, 9437.76, 62, 3.98, 8827.39, 61, 1.82, 7084.9,
  57, 2.78, 6286.6, 56, 4.39, 14143.5, 56, 3.47, 6279.55, 52, 0.19, 12139.55, 52, 1.33, 1748.02, 51, 0.28, 5856.48,
  49, 0.49, 1194.45, 41, 5.37, 8429.24, 41, 2.4, 19651.05, 39, 6.17, 10447.39, 37, 6.04, 10213.29, 37, 2.57, 1059.38,
  36, 1.71, 2352.87, 36, 1.78, 6812.77, 33, 0.59, 17789.85, 30, 0.44, 83996.85, 30, 2.74, 1349.87, 25, 3.16, 4690.48,
];
// biome-ignore format: a table
const L1 = [
  206059, 2.678235, 6283.07585, 4303, 2.6351, 12566.1517, 425, 1.59, 3.523, 119, 5.796, 26.298, 109, 2.966, 1577.344,
  93, 2.59, 18849.23, 72, 1.14, 529.69, 68, 1.87, 398.15, 67, 4.41, 5507.55, 59, 2.89, 5223.69, 56, 2.17, 155.42,
  45, 0.4, 796.3, 36, 0.47, 775.52, 29, 2.65, 7.11, 21, 5.34, 0.98, 19, 1.85, 5486.78, 19, 4.97, 213.3,
];
const L2 = [8720, 1.0721, 6283.0758, 309, 0.867, 12566.152, 27, 0.05, 3.52, 16, 5.19, 26.3, 16, 3.68, 155.42];
const L3 = [289, 5.844, 6283.076, 17, 5.49, 12566.15];

function series(terms: readonly number[], tau: number): number {
  let sum = 0;
  for (let i = 0; i + 2 < terms.length; i += 3) {
    sum += (terms[i] ?? 0) * Math.cos((terms[i + 1] ?? 0) + (terms[i + 2] ?? 0) * tau);
  }
  return sum;
}

/**
 * The Earth's heliocentric longitude of date in degrees, all 64 terms of the first order; τ in thousands of Julian years from J2000.0.
 * Source: Reda & Andreas (2004) Solar Energy 76:577-589, table A4.2; from memory.
 */
export function fullSeriesEarthLongitude(tau: number): number {
  const l0 = 175_347_046 + series(L0, tau);
  const l1 = 628_331_966_747 + series(L1, tau);
  const l2 = 52_919 + series(L2, tau);
  return (l0 + tau * (l1 + tau * (l2 + tau * (series(L3, tau) - 114 * tau)))) / 1e8 / RAD;
}
