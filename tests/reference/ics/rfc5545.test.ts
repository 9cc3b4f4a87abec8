/**
 * The recurrence examples of RFC 5545 (2009), section 3.8.5.3, with verified erratum EID 3883; the data file names the source and the
 * provenance of each. Exact: the lists are dates.
 */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { expandRecurrence } from '../../../src/basics/recurrence.ts';
import { isoUtcMinuteOf, utcMinuteOfWall } from '../../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import examples from './rfc5545-examples.json' with { type: 'json' };

/** `19970902T090000` as `1997-09-02T09:00`. */
function extended(basic: string): string {
  return basic.replace(/^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})\d{2}Z?$/, '$1-$2-$3T$4:$5');
}

/** The local end of a rule: every UNTIL of the examples lies in UTC, and New York was 4 h behind until 26 October 1997, then 5 h. */
function localUntil(rule: string): string | null {
  const utc = /UNTIL=(\d{8}T\d{6}Z)/.exec(rule)?.[1];
  if (utc === undefined) return null;
  const hours = utc < '19971026T060000Z' ? 4 : 5;
  return new Date(Date.parse(`${extended(utc)}:00Z`) - hours * 3_600_000).toISOString().slice(0, 16);
}

function withoutUntil(rule: string): string {
  return rule.replace(/;UNTIL=[^;]*/, '');
}

const counted = examples.filter((example) => example.starts !== undefined);

describe('recurrence examples of RFC 5545', () => {
  it('has the whole set', () => {
    expect(examples).toHaveLength(14);
    expect(counted).toHaveLength(13);
  });

  it.each(counted)('$id', ({ dtstart, rule, starts, count, last }) => {
    const found = expandRecurrence({
      start: extended(dtstart),
      rule: withoutUntil(rule),
      until: localUntil(rule),
      exdates: [],
    });
    expect(found).toHaveLength(count ?? -1);
    const listed = starts ?? [];
    expect(found.slice(0, listed.length)).toEqual(listed);
    expect(found.at(-1)).toBe(last?.slice(0, 16));
  });

  it('leaves out an excepted start: every Friday the 13th', () => {
    const friday = examples.find(({ id }) => id === 'ICAL-fri13');
    const start = extended(friday?.dtstart ?? '');
    const found = expandRecurrence({
      start,
      rule: friday?.rule ?? '',
      until: '2000-12-31T09:00',
      exdates: [extended(friday?.exdate ?? '')],
    });
    expect(found.map((each) => each.slice(0, 10))).toEqual(friday?.dates);
  });

  it.each(counted)('$id is read alike by the second reader (ical.js)', ({ dtstart, rule, starts }) => {
    const until = localUntil(rule);
    const local = until === null ? '' : `;UNTIL=${until.replaceAll(/[-:]/g, '')}00`;
    const iterator = ICAL.Recur.fromString(withoutUntil(rule) + local).iterator(
      ICAL.Time.fromString(`${extended(dtstart)}:00`, new ICAL.Property('dtstart')),
    );
    const found = (starts ?? []).map(() => iterator.next()?.toString().slice(0, 16));
    expect(found).toEqual(starts);
  });
});

/** RFC 5545 (2009), section 3.3.5, form #3 (opened): a skipped local time is read with the offset before, a repeated one is the first. */
describe('local times that a clock change skips or repeats', () => {
  const newYork = zoneOffsets('America/New_York', epochDay('2007-01-01'), 365);

  it('reads 02:30 of 11 March 2007 in New York as 07:30 UTC', () => {
    expect(isoUtcMinuteOf(utcMinuteOfWall(newYork, epochDay('2007-03-11'), 150))).toBe('2007-03-11T07:30Z');
  });

  it('reads 01:30 of 4 November 2007 in New York as 05:30 UTC', () => {
    expect(isoUtcMinuteOf(utcMinuteOfWall(newYork, epochDay('2007-11-04'), 90))).toBe('2007-11-04T05:30Z');
  });
});
