import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { secondOffsets, vtimezoneBlock, zoneDisagreements } from '../../../src/basics/second-zone-table.ts';
import { isoUtcMinuteOf, type UtcOffsets } from '../../../src/basics/utc-offsets.ts';

const DAY = 1440;
const from = epochDay('2027-01-01');

function offsetsOf(zone: string, standard: number, spans: readonly (readonly [string, number])[]): UtcOffsets {
  return {
    zone,
    standardOffsetMinutes: standard,
    spans: spans.map(([iso, offsetMinutes]) => ({
      fromUtcMinute: epochDay(iso.slice(0, 10)) * DAY + Number(iso.slice(11, 13)) * 60 + Number(iso.slice(14, 16)),
      offsetMinutes,
    })),
  };
}

/** The rules before 2026, as an older table has them. */
const OLD_VANCOUVER = offsetsOf('America/Vancouver', -480, [
  ['2026-11-01T09:00', -480],
  ['2027-03-14T10:00', -420],
  ['2027-11-07T09:00', -480],
]);
const MADRID = offsetsOf('Europe/Madrid', 60, [
  ['2026-10-25T01:00', 60],
  ['2027-03-28T01:00', 120],
  ['2027-10-31T01:00', 60],
]);

describe('where two tables part', () => {
  it('says nothing where they agree', () => {
    expect(zoneDisagreements(MADRID, from, 365)).toEqual([]);
  });

  it('names both winters of a zone that has given up its winter time', () => {
    const spans = zoneDisagreements(OLD_VANCOUVER, from, 365).map((span) => ({
      ...span,
      fromUtcMinute: isoUtcMinuteOf(span.fromUtcMinute),
      toUtcMinute: isoUtcMinuteOf(span.toUtcMinute),
    }));
    const parted = { runtimeMinutes: -480, secondMinutes: -420, brief: false };
    expect(spans).toEqual([
      { ...parted, fromUtcMinute: '2027-01-01T08:00Z', toUtcMinute: '2027-03-14T10:00Z' },
      { ...parted, fromUtcMinute: '2027-11-07T09:00Z', toUtcMinute: '2028-01-01T08:00Z' },
    ]);
  });

  it('marks a week between two ways of naming a day of the month as brief', () => {
    const jerusalem = offsetsOf('Asia/Jerusalem', 120, [
      ['2027-10-30T23:00', 120],
      ['2028-03-24T00:00', 180],
      ['2028-10-28T23:00', 120],
    ]);
    const spans = zoneDisagreements(jerusalem, epochDay('2028-01-01'), 366);
    expect(spans).toHaveLength(1);
    expect(spans[0]).toMatchObject({ runtimeMinutes: 180, secondMinutes: 120, brief: true });
  });

  it('looks at the dates of the plan alone', () => {
    expect(zoneDisagreements(OLD_VANCOUVER, epochDay('2027-05-01'), 60)).toEqual([]);
  });
});

describe('the second table', () => {
  it('has the changes of Madrid', () => {
    const spans = secondOffsets(MADRID, from, 365)?.spans ?? [];
    for (const span of MADRID.spans) expect(spans).toContainEqual(span);
  });

  it('has nothing for a name that is no zone', () => {
    expect(vtimezoneBlock('Nowhere/Atoll')).toBeNull();
    expect(secondOffsets({ ...MADRID, zone: 'Nowhere/Atoll' }, from, 365)).toBeNull();
    expect(zoneDisagreements({ ...MADRID, zone: 'Nowhere/Atoll' }, from, 365)).toEqual([]);
  });

  it('gives a whole block', () => {
    const block = vtimezoneBlock('Europe/Madrid') ?? '';
    expect(block.startsWith('BEGIN:VTIMEZONE\r\nTZID:Europe/Madrid\r\n')).toBe(true);
    expect(block.endsWith('END:VTIMEZONE')).toBe(true);
  });
});
