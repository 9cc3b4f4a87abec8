/**
 * The zone that a calendar defines gives the plan's own offsets at every change and at noon of every day, as a second reader reads it
 * (ical.js). Regular zones carry yearly rules, others one observance a change.
 */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../src/basics/calendar-day.ts';
import { offsetAt, type UtcOffsets } from '../../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import { vtimezone } from '../../../src/emit/ics/vtimezone.ts';

const FROM = epochDay('2027-01-01');
const DAYS = 730;

function zoneRead(text: string): ICAL.Timezone {
  return new ICAL.Timezone(new ICAL.Component(ICAL.parse(text)));
}

/** Returns the local times, of noon each day and two hours around each change, at which the reader and the plan disagree. */
function disagreements(text: string, offsets: UtcOffsets, from: number, days: number): readonly string[] {
  const zone = zoneRead(text);
  const noons = Array.from({ length: days }, (_, day) => (from + day) * 1440 + 720);
  const around = offsets.spans.slice(1).flatMap(({ fromUtcMinute }) => [fromUtcMinute - 130, fromUtcMinute + 130]);
  const moments = [...noons, ...around].filter((utc) => utc > from * 1440 && utc < (from + days) * 1440);
  return moments.flatMap((utc) => {
    const offset = offsetAt(offsets, utc);
    const local = new Date((utc + offset) * 60_000).toISOString().slice(0, 19);
    const time = ICAL.Time.fromDateTimeString(local, new ICAL.Property('dtstart'));
    return zone.utcOffset(time) === offset * 60 ? [] : [local];
  });
}

const regular = [
  'Europe/Madrid',
  'Europe/Dublin',
  'America/New_York',
  'Australia/Lord_Howe',
  'Asia/Kolkata',
  'Pacific/Auckland',
  'Africa/Cairo',
  'UTC',
];

describe('zones in a calendar', () => {
  it.each(regular)('%s carries its yearly rules', (zone) => {
    const offsets = zoneOffsets(zone, FROM, DAYS);
    const text = vtimezone(offsets, FROM, FROM + DAYS - 1);
    expect(disagreements(text, offsets, FROM, DAYS)).toEqual([]);
    expect(text).toContain(`TZID:${zone}\r\n`);
    if (offsets.spans.length > 1) expect(text).toContain('RRULE:FREQ=YEARLY;BYMONTH=');
  });

  /** In these years the weekday that the law names is not the one that the table's yearly rule names. */
  it.each([
    ['Asia/Jerusalem', '2028-01-01', 1100],
    ['America/Santiago', '2029-01-01', 365 * 3],
    ['Africa/Casablanca', '2027-01-01', 730],
  ])('%s from %s, whose rules are irregular, carries one observance a change', (zone, from, days) => {
    const first = epochDay(from);
    const offsets = zoneOffsets(zone, first, days);
    const text = vtimezone(offsets, first, first + days - 1);
    expect(text).not.toContain('RRULE');
    expect(text.match(/BEGIN:(STANDARD|DAYLIGHT)/g)).toHaveLength(offsets.spans.length);
    expect(disagreements(text, offsets, first, days)).toEqual([]);
  });

  it("writes the plan's offsets where they differ from the table by as little as an hour in one week", () => {
    const right = zoneOffsets('Europe/Madrid', FROM, DAYS);
    const spans = right.spans.map((span, index) =>
      index === 1 ? { ...span, fromUtcMinute: span.fromUtcMinute + 7 * 1440 } : span,
    );
    const text = vtimezone({ ...right, spans }, FROM, FROM + DAYS - 1);
    expect(text).not.toContain('RRULE');
    expect(text.match(/BEGIN:(STANDARD|DAYLIGHT)/g)).toHaveLength(right.spans.length);
    // each begins on the clock that it ends: summer time at 02:00, a week late here, winter time at 03:00
    const starts = [...text.matchAll(/DTSTART:(2027\d+T\d+)/g)].map((match) => match[1]);
    expect(starts).toEqual(['20270404T020000', '20271031T030000']);
    expect(disagreements(text, { ...right, spans }, FROM, DAYS)).toEqual([]);
  });

  it('defines a zone that the table does not know', () => {
    const spans = [
      { fromUtcMinute: (FROM - 100) * 1440, offsetMinutes: -210 },
      { fromUtcMinute: (FROM + 90) * 1440 + 90, offsetMinutes: -150 },
      { fromUtcMinute: (FROM + 300) * 1440 + 30, offsetMinutes: -210 },
    ];
    const offsets = { zone: 'Atlantis/Poseidonis', standardOffsetMinutes: -210, spans };
    const text = vtimezone(offsets, FROM, FROM + 364);
    expect(text).toContain('TZOFFSETTO:-0230\r\n');
    expect(disagreements(text, offsets, FROM, 365)).toEqual([]);
  });

  it('agrees over two years in every zone of the runtime', () => {
    const zones = Intl.supportedValuesOf('timeZone');
    let ruled = 0;
    for (const zone of zones) {
      const offsets = zoneOffsets(zone, FROM, DAYS);
      const text = vtimezone(offsets, FROM, FROM + DAYS - 1);
      const step = Math.floor(DAYS / 12);
      const wrong = Array.from({ length: 12 }, (_, month) => FROM + month * step).flatMap((day) =>
        disagreements(text, offsets, day, 1),
      );
      expect(wrong, `${zone} ${isoDateOf(FROM)}`).toEqual([]);
      if (offsets.spans.length > 1 && text.includes('RRULE')) ruled += 1;
    }
    console.info(`${zones.length} zones, ${ruled} of them with yearly rules`);
    expect(ruled).toBeGreaterThan(100);
  });
});
