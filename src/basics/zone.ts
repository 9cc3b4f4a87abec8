/**
 * The time-zone table of the runtime, asked through luxon (its one home): which names are zones, and the UTC offsets over a span of
 * dates. Everything after that is arithmetic on the offsets, see utc-offsets.ts.
 */
import { IANAZone } from 'luxon';
import { civilOf, type EpochDay, epochDayOf } from './calendar-day.ts';
import { DAY_MINUTES } from './minute-of-day.ts';
import { nearestSpelling } from './nearest-spelling.ts';
import { type OffsetSpan, type UtcMinute, type UtcOffsets, utcMinuteOfDateStart } from './utc-offsets.ts';

const MINUTE_MS = 60_000;
/** Shorter than any regime of a zone since 1990 (the shortest: some 30 days around Ramadan), so that no pair of changes hides between probes. */
const PROBE_MINUTES = 20 * DAY_MINUTES;
const LOOK_BACK_DAYS = 400;
/** Dates after the last that are looked at: a window of the last date may end on the next, in any zone. */
const LOOK_AHEAD_DAYS = 3;

/** Returns whether the runtime's table knows the name as a zone of the IANA database. */
export function isKnownZone(name: string): boolean {
  return /^[A-Za-z]/.test(name) && IANAZone.isValidZone(name);
}

/** Offsets such as `+02:00` and abbreviations are no zones to live in: they know no clock change. */
export const REGION_ZONE = /^([A-Za-z_]+\/[A-Za-z0-9_+/-]+|UTC)$/u;

/** Returns whether a name is a region's zone, or UTC, and known. */
export function isRegionZone(name: string): boolean {
  return REGION_ZONE.test(name) && isKnownZone(name);
}

/** Returns the zone that a city's name or a misspelt zone means, null where none is near. */
export function zoneNamed(name: string): string | null {
  const zones = Intl.supportedValuesOf('timeZone');
  const city = name.trim().toLowerCase().replace(/\s+/gu, '_');
  const ofCity = zones.find((zone) => zone.toLowerCase().endsWith(`/${city}`));
  return ofCity ?? nearestSpelling(name, zones);
}

/** Returns the UTC offset in minutes in force in a zone at an instant in milliseconds since 1970; throws where the name is no zone. */
export function utcOffsetMinutes(zone: string, instantMs: number): number {
  const offset = IANAZone.create(zone).offset(instantMs);
  if (!Number.isFinite(offset)) throw new Error(`not a time zone: ${zone}`);
  return offset;
}

/** Offsets already asked for, by zone; probes stand on one grid, so that neighbouring spans of dates ask for the same instants. */
const known = new Map<string, Map<UtcMinute, number>>();

function zoneOffsetAt(zone: string, utcMinute: UtcMinute): number {
  const ofZone = known.get(zone) ?? new Map<UtcMinute, number>();
  const offset = ofZone.get(utcMinute) ?? utcOffsetMinutes(zone, utcMinute * MINUTE_MS);
  known.set(zone, ofZone.set(utcMinute, offset));
  return offset;
}

/**
 * Returns the offsets of a zone over [fromDay, fromDay + days): the span in force when the first date begins, with its own start where
 * that lies within 400 days, then every change up to three days after the last date.
 */
export function zoneOffsets(zone: string, fromDay: EpochDay, days: number): UtcOffsets {
  const start = (fromDay - 1) * DAY_MINUTES;
  const end = (fromDay + days + LOOK_AHEAD_DAYS) * DAY_MINUTES;
  const earliest = onGrid(start - LOOK_BACK_DAYS * DAY_MINUTES);
  const changes = changesBetween(zone, latestBefore(zone, start, earliest), end);
  const oldest = { fromUtcMinute: earliest, offsetMinutes: zoneOffsetAt(zone, earliest) };
  const spans = [oldest, ...changes.filter(({ fromUtcMinute }) => fromUtcMinute < end)];
  const offsets = { zone, standardOffsetMinutes: standardOffset(zone, fromDay), spans };
  return { ...offsets, spans: spans.slice(inForceAt(spans, utcMinuteOfDateStart(offsets, fromDay))) };
}

/** Index of the last span that begins before an instant. */
function inForceAt(spans: readonly OffsetSpan[], utcMinute: UtcMinute): number {
  return Math.max(
    0,
    spans.findLastIndex(({ fromUtcMinute }) => fromUtcMinute < utcMinute),
  );
}

/** The lesser of the offsets in January and July of the date's year. */
function standardOffset(zone: string, fromDay: EpochDay): number {
  const { januaryMinutes, julyMinutes } = zoneSeasons(zone, civilOf(fromDay).year);
  return Math.min(januaryMinutes, julyMinutes);
}

/** Returns the UTC offsets of a zone at 12:00 UTC on 1 January and 1 July of a year, minutes. */
export function zoneSeasons(
  zone: string,
  year: number,
): { readonly januaryMinutes: number; readonly julyMinutes: number } {
  const noon = (month: number): UtcMinute => epochDayOf(year, month, 1) * DAY_MINUTES + DAY_MINUTES / 2;
  return { januaryMinutes: zoneOffsetAt(zone, noon(1)), julyMinutes: zoneOffsetAt(zone, noon(7)) };
}

function onGrid(utcMinute: UtcMinute): UtcMinute {
  return Math.floor(utcMinute / PROBE_MINUTES) * PROBE_MINUTES;
}

/** The probe just before the change that made the offset in force at `at`; `earliest` where there is none since then. */
function latestBefore(zone: string, at: UtcMinute, earliest: UtcMinute): UtcMinute {
  const offset = zoneOffsetAt(zone, at);
  let probe = onGrid(at);
  while (probe > earliest && zoneOffsetAt(zone, probe) === offset) probe -= PROBE_MINUTES;
  return probe;
}

function changesBetween(zone: string, start: UtcMinute, end: UtcMinute): readonly OffsetSpan[] {
  const changes: OffsetSpan[] = [];
  let offset = zoneOffsetAt(zone, start);
  for (let probe = start; probe < end; probe += PROBE_MINUTES) {
    const next = probe + PROBE_MINUTES;
    const nextOffset = zoneOffsetAt(zone, next);
    if (nextOffset !== offset) {
      changes.push({ fromUtcMinute: firstDifferent(zone, probe, next), offsetMinutes: nextOffset });
    }
    offset = nextOffset;
  }
  return changes;
}

/** The first minute in (before, after] with another offset than at `before`, where one change lies between. */
function firstDifferent(zone: string, before: UtcMinute, after: UtcMinute): UtcMinute {
  const offset = zoneOffsetAt(zone, before);
  let [low, high] = [before, after];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (zoneOffsetAt(zone, middle) === offset) low = middle;
    else high = middle;
  }
  return high;
}
