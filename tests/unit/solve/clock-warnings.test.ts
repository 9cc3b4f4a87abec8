import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import type { Place } from '../../../src/diagnostics/diagnostic.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import type { PinDial } from '../../../src/hardware/devices.ts';
import type { Care, Path } from '../../../src/resolve/care.ts';
import { warnOfClocks } from '../../../src/solve/clock-warnings.ts';
import { planSite } from '../../../src/solve/plan-site.ts';

function dial(id: string, clock: 'standard' | 'wall'): PinDial {
  const outlets = { outlets: 1, ratingW: null, outlet: 'always' };
  const ring = { stepMinutes: 15, turnsInDays: 1, pins: 'down-is-on' } as const;
  return { id, kind: 'pin-dial', clock, now: null, where: null, path: ['hardware', id], ...outlets, ...ring };
}

/** Where its clocks are lived by, to a degree; else Havana. */
const PLACES: Readonly<Record<string, { readonly latitude: number; readonly longitude: number }>> = {
  'Europe/Madrid': { latitude: 40, longitude: -4 },
  'America/Vancouver': { latitude: 49, longitude: -123 },
  'Asia/Jerusalem': { latitude: 32, longitude: 35 },
  'Australia/Melbourne': { latitude: -38, longitude: -145 },
  'Australia/Sydney': { latitude: 34, longitude: 151 },
};

type Household = Pick<Care, 'site' | 'plan' | 'devices' | 'placeOf'>;

function household(timezone: string, from: string, days: number, devices: Care['devices'] = []): Household {
  const plan = { from: epochDay(from), days };
  const unused = { changeOn: null, settingsAtMost: null, toleranceMinutes: null, jumpAtMostMinutes: null };
  return {
    site: { timezone, ...(PLACES[timezone] ?? { latitude: 23, longitude: -82 }), roomByMonth: [] },
    plan: { ...plan, ...unused, atLeastBetweenDays: 0, mistSetsAtMost: 1 },
    devices,
    placeOf: (path: Path): Place => ({ file: path.join('.'), line: 1, column: 1, length: 1 }),
  };
}

function told(care: Household) {
  const log = new Log();
  warnOfClocks(care, log);
  return log.sorted();
}

describe('clocks that change at midnight', () => {
  it('are told of once for each wall-time timer, at its line', () => {
    const devices = [dial('one', 'wall'), dial('two', 'standard'), dial('three', 'wall')];
    const entries = told(household('America/Havana', '2027-01-01', 365, devices));
    expect(entries.map(({ code, place }) => [code, place?.file])).toEqual([
      ['clocks-change-at-midnight', 'hardware.one.clock'],
      ['clocks-change-at-midnight', 'hardware.three.clock'],
    ]);
    expect(entries[0]?.because).toBe(
      'one shows wall time, and in America/Havana the clocks go from 00:00 to 01:00 on 2027-03-14, when nobody stands at the shelf',
    );
  });

  it('are no matter where they change at 02:00, or in a plan without a change', () => {
    expect(told(household('Europe/Madrid', '2027-01-01', 365, [dial('one', 'wall')]))).toEqual([]);
    expect(told(household('America/Havana', '2027-04-01', 60, [dial('one', 'wall')]))).toEqual([]);
  });
});

describe('tables of zones that part', () => {
  it('are a note where they part for a week', () => {
    const [entry, ...more] = told(household('Asia/Jerusalem', '2028-01-01', 365));
    expect(more).toEqual([]);
    expect(entry).toMatchObject({ code: 'stale-zone-table', weight: 'note' });
    expect(entry?.place?.file).toBe('site.timezone');
    expect(entry?.because).toContain('from 2028-03-24 to 2028-03-31 the one used here says UTC+3, a second one UTC+2');
  });

  it('are a warning where the runtime has the offsets of 2025 for a zone that has moved since', () => {
    const entries = told(household('America/Vancouver', '2027-01-01', 365));
    const winterMinutes = planSite(household('America/Vancouver', '2027-01-01', 1)).offsets[0]?.minutes;
    expect(entries.map(({ code, weight }) => [code, weight])).toEqual(
      winterMinutes === -420 ? [] : [['stale-zone-table', 'warning']],
    );
  });
});

describe('a place that cannot keep its clocks', () => {
  it('is told of at the number that is wrong, with the other sign', () => {
    const [east] = told(household('Australia/Melbourne', '2027-01-01', 30));
    expect([east?.code, east?.place?.file]).toEqual(['longitude-off-zone', 'site.longitude']);
    expect(east?.instead).toContain('145, if that is meant');
    const [north] = told(household('Australia/Sydney', '2027-01-01', 30));
    expect([north?.code, north?.place?.file]).toEqual(['latitude-off-zone', 'site.latitude']);
    expect(north?.instead).toContain('-34, if that is meant');
  });
});

describe('the site of the plan', () => {
  it('has the offset before the plan, the changes in it, and a sun for each date', () => {
    const site = planSite(household('Europe/Madrid', '2027-01-01', 365));
    expect(site.standardOffsetMinutes).toBe(60);
    expect(site.offsets).toEqual([
      { fromUtc: '2026-10-25T01:00Z', minutes: 60 },
      { fromUtc: '2027-03-28T01:00Z', minutes: 120 },
      { fromUtc: '2027-10-31T01:00Z', minutes: 60 },
    ]);
    expect(site.sunMinutes).toHaveLength(365);
    for (const minutes of site.sunMinutes) expect(Math.round(minutes * 10) / 10).toBe(minutes);
  });
});
