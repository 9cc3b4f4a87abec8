import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { zoneDisagreements } from '../../../src/basics/second-zone-table.ts';
import { clockChangesOf, isoUtcMinuteOf } from '../../../src/basics/utc-offsets.ts';
import { utcOffsetMinutes, zoneOffsets } from '../../../src/basics/zone.ts';

interface Change {
  readonly at: string;
  readonly new_utc_offset_h: number;
}
interface Published {
  readonly id: string;
  readonly inputs: { readonly zone: string };
  readonly expected: { readonly transitions: readonly Change[]; readonly fixed_utc_offset_h?: number };
}

const file = new URL('./published-changes.json', import.meta.url);
const published = (JSON.parse(readFileSync(file, 'utf8')) as { readonly values: readonly Published[] }).values;
const from = epochDay('2026-01-01');

describe('changes of 2026 and 2027 (IANA tzdb 2026f, zdump)', () => {
  it.each(published.filter(({ id }) => !id.endsWith('TRAP')))('$id', ({ inputs, expected }) => {
    const offsets = zoneOffsets(inputs.zone, from, 730);
    const found = clockChangesOf(offsets)
      .filter(({ utcMinute }) => utcMinute >= from * 1440 && utcMinute < epochDay('2028-01-01') * 1440)
      .map(({ utcMinute, afterMinutes }) => ({ at: isoUtcMinuteOf(utcMinute), new_utc_offset_h: afterMinutes / 60 }));
    expect(found).toEqual(expected.transitions);
    const fixed = expected.fixed_utc_offset_h;
    if (fixed !== undefined) expect(offsets.spans.map(({ offsetMinutes }) => offsetMinutes / 60)).toEqual([fixed]);
  });
});

/** The published right offset is +00 at 2026-11-25T12:00Z; a runtime with the table of 2025 says +01. */
describe('a runtime with a stale table (TZ-NODE-STALE-TRAP)', () => {
  const instantMs = Date.UTC(2026, 10, 25, 12);

  it.each([
    ['Africa/Casablanca', 0],
    ['America/Vancouver', -420],
    ['America/Edmonton', -360],
  ])(
    '%s: the second table has the right offset, and parts from the runtime exactly where that is wrong',
    (zone, right) => {
      const day = epochDay('2026-11-25');
      const found = zoneDisagreements(zoneOffsets(zone, day, 1), day, 1);
      const runtimeMinutes = utcOffsetMinutes(zone, instantMs);
      const parted = found.map((span) => [span.runtimeMinutes, span.secondMinutes]);
      expect(parted).toEqual(runtimeMinutes === right ? [] : [[runtimeMinutes, right]]);
    },
  );
});
