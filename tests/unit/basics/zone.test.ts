import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { isoUtcMinuteOf } from '../../../src/basics/utc-offsets.ts';
import { isKnownZone, utcOffsetMinutes, zoneOffsets } from '../../../src/basics/zone.ts';

const from = epochDay('2027-01-01');

function spansOf(zone: string, fromDay = from, days = 365): readonly string[] {
  return zoneOffsets(zone, fromDay, days).spans.map(
    ({ fromUtcMinute, offsetMinutes }) => `${isoUtcMinuteOf(fromUtcMinute)} ${offsetMinutes}`,
  );
}

describe('names of zones', () => {
  it.each(['Europe/Madrid', 'America/Argentina/Buenos_Aires', 'UTC', 'Etc/GMT+3', 'Europe/Kiev'])(
    'knows %s',
    (name) => {
      expect(isKnownZone(name)).toBe(true);
    },
  );

  it.each(['Europe/Madird', '', 'local', '+02:00', 'UTC+2', ' Europe/Madrid', 'system'])(
    'does not know "%s"',
    (name) => {
      expect(isKnownZone(name)).toBe(false);
    },
  );

  it('throws for the offset of a name that is none', () => {
    expect(() => utcOffsetMinutes('Nowhere/Atoll', 0)).toThrow(/not a time zone/);
  });
});

describe('offsets over a plan', () => {
  it('begin with the span in force and its own start, then every change', () => {
    expect(spansOf('Europe/Madrid')).toEqual(['2026-10-25T01:00Z 60', '2027-03-28T01:00Z 120', '2027-10-31T01:00Z 60']);
  });

  it('hold one span where the clocks never change, from before the plan', () => {
    const spans = spansOf('Asia/Kathmandu');
    expect(spans).toHaveLength(1);
    expect(spans[0]).toMatch(/^2025-1\d-.* 345$/);
  });

  it('find half an hour, negative offsets and change on other dates', () => {
    expect(spansOf('Australia/Lord_Howe')).toEqual([
      '2026-10-03T15:30Z 660',
      '2027-04-03T15:00Z 630',
      '2027-10-02T15:30Z 660',
    ]);
    expect(spansOf('America/Santiago', epochDay('2026-01-01'))).toEqual([
      '2025-09-07T04:00Z -180',
      '2026-04-05T03:00Z -240',
      '2026-09-06T04:00Z -180',
    ]);
  });

  it('hold a change on the first and on the last date', () => {
    expect(spansOf('Europe/Madrid', epochDay('2027-03-28'), 1)).toEqual([
      '2026-10-25T01:00Z 60',
      '2027-03-28T01:00Z 120',
    ]);
    expect(spansOf('Europe/Madrid', epochDay('2027-03-29'), 1)[0]).toBe('2027-03-28T01:00Z 120');
  });

  it('find the month of Ramadan, the shortest span of all', () => {
    const spans = spansOf('Africa/Casablanca', epochDay('2024-01-01'), 365);
    expect(spans).toContain('2024-03-10T02:00Z 0');
    expect(spans).toContain('2024-04-14T02:00Z 60');
  });

  it('are the same however the span of dates is cut', () => {
    const whole = spansOf('America/New_York', from, 1100);
    for (let cut = 0; cut < 1000; cut += 37) {
      for (const span of spansOf('America/New_York', from + cut, 60)) expect(whole).toContain(span);
    }
  });
});

describe('zones of irregular rules, asked day by day from 2019 to 2028', () => {
  it.each([
    'Africa/Casablanca',
    'Africa/Cairo',
    'Asia/Gaza',
    'Asia/Tehran',
    'Asia/Amman',
    'America/Asuncion',
    'America/Sao_Paulo',
    'America/Nuuk',
    'Pacific/Fiji',
    'Pacific/Apia',
    'Europe/Volgograd',
    'Antarctica/Troll',
  ])('%s: no change hides between two probes', (zone) => {
    const [first, last] = [epochDay('2019-01-01'), epochDay('2028-12-31')];
    const daily: number[] = [];
    for (let day = first; day <= last; day++) {
      const minutes = utcOffsetMinutes(zone, day * 86_400_000);
      if (minutes !== daily.at(-1)) daily.push(minutes);
    }
    for (let year = 0; year < 8; year++) {
      const fromDay = first + year * 365 + 11;
      const offsets = zoneOffsets(zone, fromDay, 700);
      const found = offsets.spans.map(({ offsetMinutes }) => offsetMinutes).join(' ');
      expect(daily.join(' ')).toContain(found);
    }
    const whole = zoneOffsets(zone, first, last - first);
    expect(whole.spans.map(({ offsetMinutes }) => offsetMinutes)).toEqual(daily);
  });
});

describe('the standard offset', () => {
  it.each([
    ['Europe/Madrid', 60],
    ['America/Denver', -420],
    ['Australia/Sydney', 600],
    ['Australia/Lord_Howe', 630],
    ['America/Phoenix', -420],
    ['Asia/Kathmandu', 345],
    ['Europe/Dublin', 0],
    ['America/Santiago', -240],
  ])('of %s is %i min, the lesser of January and July', (zone, minutes) => {
    expect(zoneOffsets(zone, from, 30).standardOffsetMinutes).toBe(minutes);
  });

  it('is that of the first year, so that a winter time below it is negative', () => {
    const offsets = zoneOffsets('Africa/Casablanca', epochDay('2024-01-01'), 365);
    expect(offsets.standardOffsetMinutes).toBe(60);
    expect(offsets.spans.map(({ offsetMinutes }) => offsetMinutes)).toContain(0);
  });
});
