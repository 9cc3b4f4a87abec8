import { describe, expect, it } from 'vitest';
import { epochDay, epochDayOf } from '../../../src/basics/calendar-day.ts';
import { dayLengthsBetween, dayLengthsUtc } from '../../../src/science/sun.ts';
import {
  earthLongitude,
  greenwichMeanSiderealTime,
  type SunPlace,
  sunPlace,
  sunPlaceInTerrestrialTime,
} from '../../../src/science/sun-place.ts';
import { family, neverAsked, numberIn, numberOf, one, textIn } from './published.ts';
import { cbmHours, fullSeriesEarthLongitude, lowAccuracySun, shortSeriesMinutes } from './second-opinions.ts';

const RAD = Math.PI / 180;
const J2000 = 10_957.5;

/** Seconds of the UTC day at which the sun rises and sets, from the minutes before and after noon by local mean time. */
function riseAndSet(day: number, latitude: number, longitude: number): { readonly rise: number; readonly set: number } {
  const noon = day + 0.5 - longitude / 360;
  const [morning, evening] = dayLengthsBetween(latitude, longitude, Float64Array.of(noon - 0.5, noon, noon + 0.5));
  const seconds = (noon - day) * 86_400;
  return { rise: seconds - (morning ?? 0) * 60, set: seconds + (evening ?? 0) * 60 };
}

function secondsOf(clock: string): number {
  const [hours = 0, minutes = 0, seconds = 0] = clock.split(':').map(Number);
  return hours * 3600 + minutes * 60 + seconds;
}

/** Apparent minus mean solar time, minutes. Source: Meeus (1998) equation 28.1. */
function equationOfTime(place: SunPlace, terrestrialDays: number): number {
  const t = (terrestrialDays - J2000) / 365_250;
  const mean = 280.4664567 + t * (360_007.6982779 + t * 0.03032028) - 0.0057183;
  const degrees = mean + place.nutationInRightAscension / RAD - place.rightAscension / RAD;
  return (degrees - 360 * Math.round(degrees / 360)) * 4;
}

describe("the solar position algorithm's worked example, 2003-10-17 (Reda & Andreas 2004)", () => {
  const instant = epochDay('2003-10-17') + (19.5 + 30 / 3600) / 24;
  const terrestrial = instant + 67 / 86_400;
  const place = sunPlaceInTerrestrialTime(terrestrial);

  it('has the longitude of the Earth by the full series to 1e-5°, by ours within what it claims', () => {
    const tau = (terrestrial - J2000) / 365_250;
    const expected = numberOf(one('SUN-SPA-heliocentric_L').expected);
    const full = fullSeriesEarthLongitude(tau);
    expect(Math.abs(full - 360 * Math.floor(full / 360) - expected)).toBeLessThan(1e-5);
    const ours = earthLongitude(tau) / RAD;
    expect(Math.abs(ours - 360 * Math.floor(ours / 360) - expected)).toBeLessThan(0.0005);
  });

  it('has the distance', () => {
    const distanceError = Math.abs(place.distanceAu - numberOf(one('SUN-SPA-R').expected));
    expect(distanceError).toBeLessThan(1e-6);
  });

  it('has the declination', () => {
    const error = Math.abs(place.declination / RAD - numberOf(one('SUN-SPA-geocentric_declination').expected));
    expect(error).toBeLessThan(0.001);
  });

  it('puts the sun at the zenith distance and azimuth seen from the ground, with simple refraction', () => {
    const latitude = 39.742476 * RAD;
    const sidereal = greenwichMeanSiderealTime(instant) + place.nutationInRightAscension;
    const hourAngle = sidereal - 105.1786 * RAD - place.rightAscension;
    const height = Math.asin(
      Math.sin(latitude) * Math.sin(place.declination) +
        Math.cos(latitude) * Math.cos(place.declination) * Math.cos(hourAngle),
    );
    const parallax = 0.00244 * Math.cos(height);
    const refraction = (0.0167 / Math.tan(height)) * (820 / 1010) * (283 / 284);
    const azimuth =
      180 +
      Math.atan2(
        Math.sin(hourAngle),
        Math.cos(hourAngle) * Math.sin(latitude) - Math.tan(place.declination) * Math.cos(latitude),
      ) /
        RAD;
    const zenith = 90 - (height / RAD - parallax + refraction);
    expect(Math.abs(zenith - numberOf(one('SUN-SPA-topocentric_zenith').expected))).toBeLessThan(0.05);
    expect(Math.abs(azimuth - numberOf(one('SUN-SPA-azimuth_(from_N)').expected))).toBeLessThan(0.1);
  });

  it('rises and sets at the published times; the printed 17:20:19 is the sunset of the day before', () => {
    const zone = 7 * 3600;
    const { rise, set } = riseAndSet(epochDay('2003-10-17'), 39.742476, -105.1786);
    const dayBefore = riseAndSet(epochDay('2003-10-16'), 39.742476, -105.1786);
    expect(Math.abs(rise - zone - secondsOf(String(one('SUN-SPA-sunrise').expected)))).toBeLessThan(15);
    expect(Math.abs(set - zone - secondsOf(String(one('SUN-golden-sunset-17oct').expected)))).toBeLessThan(20);
    const trap = secondsOf(String(one('SUN-SPA-sunset-TRAP').expected));
    expect(Math.abs(dayBefore.set - zone - trap)).toBeLessThan(15);
    expect(Math.abs(set - zone - trap)).toBeGreaterThan(60);
  });
});

describe('the worked examples of Meeus (1998), 1992-10-13 00:00 TD', () => {
  const day = epochDay('1992-10-13');
  const place = sunPlaceInTerrestrialTime(day);
  const low = lowAccuracySun((day - J2000) / 36_525);

  it('has the low-accuracy example 25.a from the low-accuracy theory', () => {
    expect(Math.abs(low.distanceAu - numberOf(one('SUN-MEEUS25a-R').expected))).toBeLessThan(1e-5);
    expect(Math.abs(low.declination - numberOf(one('SUN-MEEUS25a-dec').expected))).toBeLessThan(1e-4);
    expect(String(one('SUN-MEEUS25a-ra').expected)).toContain('198.38083 deg');
    expect(Math.abs(low.rightAscension + 360 - 198.38083)).toBeLessThan(0.1 / 240);
  });

  it('has the high-accuracy declination −7°47\'01.74" of example 25.b, given in the provenance of 25.a', () => {
    expect(one('SUN-MEEUS25a-dec').provenance).toContain('-7d47m01.74s');
    const error = Math.abs(place.declination / RAD + (7 + 47 / 60 + 1.74 / 3600));
    console.info(`declination off by ${(error * 3600).toFixed(2)}"`);
    expect(error).toBeLessThan(0.0005);
  });

  it('has the equation of time of example 28.b', () => {
    expect(String(one('SUN-MEEUS28b-eot').expected)).toContain('13.711 min');
    expect(Math.abs(equationOfTime(place, day) - 13.711)).toBeLessThan(0.01);
  });

  it('agrees with the full series to the 0.001° it claims, from 1990 to 2060', () => {
    let worst = 0;
    for (let at = epochDayOf(1990, 1, 1); at < epochDayOf(2061, 1, 1); at += 1.7) {
      const tau = (at - J2000) / 365_250;
      worst = Math.max(worst, Math.abs(earthLongitude(tau) / RAD - fullSeriesEarthLongitude(tau)));
    }
    console.info(`longitude within ${worst.toFixed(5)}° of the full series`);
    expect(worst).toBeLessThan(0.001);
  });

  it('agrees with the low-accuracy theory to 0.011° from 1990 to 2060', () => {
    for (let at = epochDayOf(1990, 1, 1); at < epochDayOf(2061, 1, 1); at += 13) {
      const other = lowAccuracySun((at - J2000) / 36_525);
      const difference = sunPlaceInTerrestrialTime(at).longitude / RAD - other.longitude;
      expect(Math.abs(difference - 360 * Math.round(difference / 360))).toBeLessThan(0.011);
    }
  });
});

describe('rise and set from tables', () => {
  it.each(family('SUN-USNO-'))('$id: to the minute (US Naval Observatory)', ({ inputs, expected }) => {
    const shift = numberIn(inputs, 'utc_offset_h') * 3600;
    const day = epochDay(textIn(inputs, 'date'));
    const { rise, set } = riseAndSet(day, numberIn(inputs, 'lat'), numberIn(inputs, 'lon'));
    expect(Math.abs(rise + shift - secondsOf(textIn(expected, 'sunrise')))).toBeLessThanOrEqual(60);
    expect(Math.abs(set + shift - secondsOf(textIn(expected, 'sunset')))).toBeLessThanOrEqual(60);
  });

  it.each(family('SUN-GRW-'))('$id: to 5 s at Greenwich', ({ inputs, expected }) => {
    const day = epochDay(textIn(inputs, 'date'));
    const { rise, set } = riseAndSet(day, numberIn(inputs, 'lat'), numberIn(inputs, 'lon'));
    expect(Math.abs(rise - secondsOf(textIn(expected, 'sunrise')))).toBeLessThan(5);
    expect(Math.abs(set - secondsOf(textIn(expected, 'sunset')))).toBeLessThan(5);
  });
});

describe('day lengths of two ephemeris programs', () => {
  let worst = 0;
  const wanted = (expected: unknown): number => {
    if (typeof expected === 'number') return expected;
    return String(expected).startsWith('24 h') ? 1440 : 0;
  };

  it.each(family('SUN-DL-'))('$id', ({ inputs, expected }) => {
    const day = epochDay(textIn(inputs, 'date'));
    const [minutes = -1] = dayLengthsUtc(numberIn(inputs, 'lat'), numberIn(inputs, 'lon'), day, 1);
    const error = Math.abs(minutes - wanted(expected));
    worst = Math.max(worst, error);
    expect(error).toBeLessThan(typeof expected === 'number' ? 0.5 : 1e-9);
  });

  it('stays well inside the half minute', () => {
    console.info(`worst error against the 40 published day lengths: ${worst.toFixed(3)} min`);
    expect(worst).toBeLessThan(0.1);
  });
});

describe('declination and equation of time at noon of eight dates', () => {
  it.each(family('SUN-DECEOT-'))('$id', ({ inputs, expected }) => {
    const day = epochDay(textIn(inputs, 'utc').slice(0, 10)) + 0.5;
    const place = sunPlace(day);
    expect(Math.abs(place.declination / RAD - numberIn(expected, 'declination_deg'))).toBeLessThan(0.005);
    const minutes = equationOfTime(place, day + 69 / 86_400);
    expect(Math.abs(minutes - numberIn(expected, 'equation_of_time_min'))).toBeLessThan(0.02);
  });
});

describe('the year of 2027', () => {
  it.each([
    ['mar_equinox', 0],
    ['jun_solstice', 90],
    ['sep_equinox', 180],
    ['dec_solstice', 270],
  ])('%s: the longitude is %i° to 2 min', (name, degrees) => {
    const iso = textIn(one('SUN-SEASONS-2027').expected, name);
    const instant = epochDay(iso.slice(0, 10)) + secondsOf(iso.slice(11, 16)) / 86_400;
    const offBy = sunPlace(instant).longitude / RAD - degrees;
    const minutesOff = ((offBy - 360 * Math.round(offBy / 360)) / 360) * 365.2422 * 1440;
    console.info(`${name}: ${minutesOff.toFixed(2)} min`);
    expect(Math.abs(minutesOff)).toBeLessThan(2);
  });
});

describe('polar day and night at 70° N in 2026', () => {
  const lengths = dayLengthsUtc(70, 0, epochDay('2026-01-01'), 365);
  const expected = one('SUN-POLAR-70').expected;

  it('has the midnight sun from 16 May to 26 July, to a day at each end', () => {
    const up = [...lengths.keys()].filter((index) => lengths[index] === 1440);
    const [first, last] = textIn(expected, 'always_up').split('..').map(epochDay);
    const start = epochDay('2026-01-01');
    expect(Math.abs(start + (up[0] ?? 0) - (first ?? 0))).toBeLessThanOrEqual(1);
    expect(Math.abs(start + (up.at(-1) ?? 0) - (last ?? 0))).toBeLessThanOrEqual(1);
    expect(Math.abs(up.length - numberIn(expected, 'days_up'))).toBeLessThanOrEqual(2);
  });

  it('has no sun on some 51 days', () => {
    const down = [...lengths].filter((minutes) => minutes === 0).length;
    expect(Math.abs(down - numberIn(expected, 'days_down'))).toBeLessThanOrEqual(2);
  });

  it('has midnight sun but no polar night at 66.5° N, the disc being lifted by refraction', () => {
    const arctic = dayLengthsUtc(66.5, 0, epochDay('2026-01-01'), 365);
    expect(Math.max(...arctic)).toBe(1440);
    expect(Math.min(...arctic)).toBeGreaterThan(0);
  });
});

describe('the CBM model as a second opinion (Forsythe et al. 1995)', () => {
  it.each(family('SUN-CBM-J'))('$id: the coded model is the published one', ({ inputs, expected }) => {
    const hours = cbmHours(numberIn(inputs, 'day_of_year'), numberIn(inputs, 'lat'), numberIn(inputs, 'p'));
    expect(Math.abs(hours - numberOf(expected))).toBeLessThan(0.001);
  });

  it.each(family('SUN-CBM-p'))('$id: for other ends of the day', ({ inputs, expected }) => {
    const { day_of_year, lats, p } = inputs as { day_of_year: number; lats: readonly number[]; p: number };
    lats.forEach((latitude, index) => {
      const hours = (expected as readonly number[])[index];
      expect(Math.abs(cbmHours(day_of_year, latitude, p) - numberOf(hours))).toBeLessThan(0.001);
    });
  });

  it.each(family('SUN-ERR-'))('$id: the simple models miss our day length by what they are known to miss', (value) => {
    const latitude = numberIn(value.inputs, 'lat');
    let [cbm, short] = [0, 0];
    for (const year of [2026, 2027, 2028, 2029]) {
      const start = epochDayOf(year, 1, 1);
      dayLengthsUtc(latitude, 0, start, epochDayOf(year + 1, 1, 1) - start).forEach((minutes, index) => {
        cbm = Math.max(cbm, Math.abs(minutes - 60 * cbmHours(index + 1, latitude, 0.8333)));
        short = Math.max(short, Math.abs(minutes - shortSeriesMinutes(index + 1, latitude)));
      });
    }
    expect(Math.abs(cbm - numberIn(value.expected, 'CBM_max_abs_error'))).toBeLessThan(0.3);
    expect(Math.abs(short - numberIn(value.expected, 'NOAA_short_max_abs_error'))).toBeLessThan(0.3);
  });
});

it('looks at every published value', () => {
  expect(neverAsked()).toEqual([]);
});
