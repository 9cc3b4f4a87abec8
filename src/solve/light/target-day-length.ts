/**
 * The target day length P(d) of an enclosure, in tenths of a minute for every date of the plan: the form, its season and clamps, a move
 * between hemispheres, and a rest blended over it.
 */
import { civilOf, type EpochDay, epochDayOf } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { utcMinuteOfDateStart } from '../../basics/utc-offsets.ts';
import { zoneOffsets } from '../../basics/zone.ts';
import type { Photoperiod, Rest } from '../../resolve/care.ts';
import { dayLengthsBetween, dayLengthsUtc } from '../../science/sun.ts';
import { sinSolarLongitudeAtNoon } from '../../science/sun-place.ts';

/** The part of the site that the sun depends on. */
export interface SunSite {
  readonly latitude: number;
  readonly longitude: number;
  readonly timezone: string;
}

interface Span {
  readonly site: SunSite;
  readonly rangeLatitude: number | null;
  readonly fromDay: EpochDay;
  readonly days: number;
}

type YearOf = 'site' | 'native';

/**
 * Returns P(d) in tenths of a minute, rounded half up, one a date from `fromDay` on.
 *
 * @param rest null, or the rest whose own photoperiod is blended in; one without a photoperiod changes nothing
 * @param rangeLatitude degrees, of the species; needed only where a season is native
 */
export function targetDayLengthTenths(
  photoperiod: Photoperiod,
  rest: Pick<Rest, 'from' | 'weeks' | 'rampWeeks' | 'photoperiod'> | null,
  site: SunSite,
  rangeLatitude: number | null,
  fromDay: EpochDay,
  days: number,
): Int32Array {
  const span = { site, rangeLatitude, fromDay, days };
  const minutes = seasonedMinutes(photoperiod, span);
  if (rest?.photoperiod) {
    const resting = seasonedMinutes(rest.photoperiod, span);
    blend(minutes, resting, (index) => restShare(rest, fromDay + index));
  }
  return Int32Array.from(minutes, tenthsHalfUp);
}

/**
 * Returns the minutes of each civil date of the site in which the sun's centre stands above −0.833°, not rounded; a date of 25 hours
 * counts 1440 at most.
 */
export function siteDayLengthMinutes(site: SunSite, fromDay: EpochDay, days: number): Float64Array {
  return civilDateDayLengths(site, site.latitude, fromDay, days);
}

/** Returns how much a rest counts on a date, 0 to 1: rising over its first ramp, falling to 0 on the date after its last. */
export function restShare(rest: Pick<Rest, 'from' | 'weeks' | 'rampWeeks'>, day: EpochDay): number {
  const end = rest.from + rest.weeks * 7;
  if (day < rest.from || day >= end) return 0;
  const ramp = rest.rampWeeks * 7;
  return ramp === 0 ? 1 : Math.min(1, (day - rest.from) / ramp, (end - day) / ramp);
}

/** Whole tenths; the 1e-9 keeps a tie a tie where decimal fractions are not exact in binary. */
function tenthsHalfUp(minutes: number): number {
  return Math.floor(minutes * 10 + 0.5 + 1e-9);
}

function seasonedMinutes(photoperiod: Photoperiod, span: Span): Float64Array {
  const { season } = photoperiod;
  if (season.kind !== 'moved') return clampedMinutes(photoperiod, season.kind, span);
  const minutes = clampedMinutes(photoperiod, season.was, span);
  const share = (index: number): number => moveShare(season, span.fromDay + index);
  return blend(minutes, clampedMinutes(photoperiod, season.becomes, span), share);
}

function moveShare(move: { readonly from: EpochDay; readonly overDays: number }, day: EpochDay): number {
  if (day < move.from) return 0;
  return move.overDays === 0 ? 1 : Math.min(1, (day - move.from) / move.overDays);
}

/** Moves `minutes` towards `others` in place by each date's share. */
function blend(minutes: Float64Array, others: Float64Array, share: (index: number) => number): Float64Array {
  for (let i = 0; i < minutes.length; i++) {
    const own = minutes[i] ?? 0;
    minutes[i] = own + ((others[i] ?? 0) - own) * share(i);
  }
  return minutes;
}

function clampedMinutes(photoperiod: Photoperiod, year: YearOf, span: Span): Float64Array {
  const minutes = formMinutes(photoperiod.form, year, span);
  const least = photoperiod.atLeastMinutes ?? 0;
  const most = photoperiod.atMostMinutes ?? DAY_MINUTES;
  for (let i = 0; i < minutes.length; i++) minutes[i] = Math.min(most, Math.max(least, minutes[i] ?? 0));
  return minutes;
}

function formMinutes(form: Photoperiod['form'], year: YearOf, span: Span): Float64Array {
  switch (form.kind) {
    case 'constant':
      return new Float64Array(span.days).fill(form.minutes);
    case 'months':
      return monthMinutes(form.minutes, span.fromDay, span.days);
    case 'seasonal':
      return seasonalMinutes(form.longestMinutes, form.shortestMinutes, hemisphere(year, span), span);
    case 'latitude':
      return latitudeMinutes(form.latitude, hemisphere(year, span), span);
  }
}

/** +1 where the year runs as in the north, latitude 0 included; −1 in the south. */
function hemisphere(year: YearOf, span: Span): 1 | -1 {
  const latitude = year === 'site' ? span.site.latitude : span.rangeLatitude;
  if (latitude === null) throw new Error('a native season without the latitude of the range');
  return latitude < 0 ? -1 : 1;
}

function seasonalMinutes(longest: number, shortest: number, h: 1 | -1, span: Span): Float64Array {
  return Float64Array.from(
    { length: span.days },
    (_, index) => shortest + ((longest - shortest) * (1 + h * sinSolarLongitudeAtNoon(span.fromDay + index))) / 2,
  );
}

function latitudeMinutes(latitude: number | 'site', h: 1 | -1, span: Span): Float64Array {
  if (latitude === 'site') {
    return civilDateDayLengths(span.site, h * Math.abs(span.site.latitude), span.fromDay, span.days);
  }
  return dayLengthsUtc(h * Math.abs(latitude), 0, span.fromDay, span.days);
}

function civilDateDayLengths(site: SunSite, latitude: number, fromDay: EpochDay, days: number): Float64Array {
  const offsets = zoneOffsets(site.timezone, fromDay, days);
  const starts = Float64Array.from(
    { length: days + 1 },
    (_, index) => utcMinuteOfDateStart(offsets, fromDay + index) / DAY_MINUTES,
  );
  return dayLengthsBetween(latitude, site.longitude, starts).map((minutes) => Math.min(DAY_MINUTES, minutes));
}

/** Linear between the 15ths of neighbouring months; one division a date, so that whole minutes leave exact ties. */
function monthMinutes(byMonth: readonly number[], fromDay: EpochDay, days: number): Float64Array {
  const minutes = new Float64Array(days);
  for (let i = 0; i < days; i++) minutes[i] = monthValueOn(byMonth, fromDay + i);
  return minutes;
}

function monthValueOn(byMonth: readonly number[], day: EpochDay): number {
  const { year, month, dayOfMonth } = civilOf(day);
  const first = dayOfMonth >= 15 ? month : month - 1;
  const start = epochDayOf(year, first, 15);
  const length = epochDayOf(year, first + 1, 15) - start;
  const before = byMonth[(first + 11) % 12] ?? 0;
  const after = byMonth[first % 12] ?? 0;
  return (before * (length - (day - start)) + after * (day - start)) / length;
}
