import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import type { Photoperiod, Rest, Season } from '../../../../src/resolve/care.ts';
import { dayLengthsUtc } from '../../../../src/science/sun.ts';
import { sinSolarLongitudeAtNoon } from '../../../../src/science/sun-place.ts';
import {
  restShare,
  siteDayLengthMinutes,
  targetDayLengthTenths,
} from '../../../../src/solve/light/target-day-length.ts';

const MADRID = { latitude: 41.65, longitude: -0.89, timezone: 'Europe/Madrid' };
const SYDNEY = { latitude: -33.87, longitude: 151.2, timezone: 'Australia/Sydney' };
const SITE: Season = { kind: 'site' };
const NATIVE: Season = { kind: 'native' };

function photoperiod(form: Photoperiod['form'], more: Partial<Photoperiod> = {}): Photoperiod {
  return { form, season: SITE, atLeastMinutes: null, atMostMinutes: null, ...more };
}

const SEASONAL = { kind: 'seasonal', longestMinutes: 780, shortestMinutes: 660 } as const;
const from = epochDay('2027-01-01');

function tenths(period: Photoperiod, more: { site?: typeof MADRID; range?: number; days?: number; rest?: Rest } = {}) {
  return targetDayLengthTenths(
    period,
    more.rest ?? null,
    more.site ?? MADRID,
    more.range ?? null,
    from,
    more.days ?? 365,
  );
}

function on(values: Int32Array, date: string): number {
  return values[epochDay(date) - from] ?? Number.NaN;
}

describe('hours', () => {
  it('is the same every day', () => {
    expect([...tenths(photoperiod({ kind: 'constant', minutes: 720 }), { days: 3 })]).toEqual([7200, 7200, 7200]);
  });

  it('rounds half up to a tenth of a minute', () => {
    const cases = [720.04, 720.05, 720.0499, 720.25, 0.05, 1440].map((minutes) => {
      return tenths(photoperiod({ kind: 'constant', minutes }), { days: 1 })[0];
    });
    expect(cases).toEqual([7200, 7201, 7200, 7203, 1, 14400]);
  });
});

describe('longest and shortest', () => {
  it('follows the sine of the longitude at 12:00 UTC on every date', () => {
    const values = tenths(photoperiod(SEASONAL));
    values.forEach((value, index) => {
      expect(Math.abs(value / 10 - (720 + 60 * sinSolarLongitudeAtNoon(from + index)))).toBeLessThanOrEqual(0.0501);
    });
  });

  it('is longest around 21 June in the north and shortest in the south', () => {
    const north = tenths(photoperiod(SEASONAL));
    const south = tenths(photoperiod(SEASONAL), { site: SYDNEY });
    expect(on(north, '2027-06-21')).toBe(7800);
    expect(on(north, '2027-12-22')).toBe(6600);
    expect(on(south, '2027-06-21')).toBe(6600);
    expect(on(south, '2027-12-22')).toBe(7800);
    north.forEach((value, index) => {
      expect(Math.abs(value + (south[index] ?? 0) - 14400)).toBeLessThanOrEqual(1);
    });
  });

  it('is in the middle near the equinoxes', () => {
    const north = tenths(photoperiod(SEASONAL));
    expect(Math.abs(on(north, '2027-03-20') - 7200)).toBeLessThan(5);
    expect(Math.abs(on(north, '2027-09-23') - 7200)).toBeLessThan(5);
  });

  it('runs the year of the range where the season is native', () => {
    const native = tenths(photoperiod(SEASONAL, { season: NATIVE }), { range: -15 });
    expect(on(native, '2027-12-22')).toBe(7800);
    expect(on(tenths(photoperiod(SEASONAL, { season: NATIVE }), { range: 5 }), '2027-12-22')).toBe(6600);
  });

  it('counts latitude 0 as north', () => {
    const equator = { ...MADRID, latitude: 0 };
    expect(on(tenths(photoperiod(SEASONAL), { site: equator }), '2027-06-21')).toBe(7800);
    expect(on(tenths(photoperiod(SEASONAL, { season: NATIVE }), { site: SYDNEY, range: 0 }), '2027-06-21')).toBe(7800);
  });

  it('refuses a native season without the latitude of the range', () => {
    expect(() => tenths(photoperiod(SEASONAL, { season: NATIVE }))).toThrow(/native season/);
  });
});

describe('a latitude', () => {
  const at = (latitude: number | 'site', more: Partial<Photoperiod> = {}) =>
    photoperiod({ kind: 'latitude', latitude }, more);

  it('is the sun there, at longitude 0 on the UTC date', () => {
    const values = tenths(at(15));
    const sun = dayLengthsUtc(15, 0, from, 365);
    values.forEach((value, index) => {
      expect(Math.abs(value / 10 - (sun[index] ?? 0))).toBeLessThanOrEqual(0.0501);
    });
    // Computed with two ephemeris programs, see tests/reference/sun: 15° N on 2027-05-01.
    expect(Math.abs(on(values, '2027-05-01') / 10 - 760.24)).toBeLessThan(0.2);
  });

  it('takes its sign from the hemisphere that applies, whatever sign was written', () => {
    expect([...tenths(at(-15))]).toEqual([...tenths(at(15))]);
    const south = tenths(at(15), { site: SYDNEY });
    expect([...tenths(at(-15), { site: SYDNEY })]).toEqual([...south]);
    expect([...tenths(at(15, { season: NATIVE }), { range: -15 })]).toEqual([...south]);
    expect(on(south, '2027-12-21')).toBeGreaterThan(on(tenths(at(15)), '2027-12-21'));
  });

  it('reaches polar day and night', () => {
    const values = tenths(at(70));
    expect(on(values, '2027-06-21')).toBe(14400);
    expect(on(values, '2027-12-21')).toBe(0);
  });

  it('of the site is the site sun on its civil date', () => {
    const values = tenths(at('site'));
    const sun = siteDayLengthMinutes(MADRID, from, 365);
    values.forEach((value, index) => {
      expect(Math.abs(value / 10 - (sun[index] ?? 0))).toBeLessThanOrEqual(0.0501);
    });
  });

  it('of the site in a native season has the mirrored year', () => {
    const values = tenths(at('site', { season: NATIVE }), { range: -15 });
    expect(on(values, '2027-12-21')).toBeGreaterThan(on(tenths(at('site')), '2027-12-21') + 3000);
  });
});

describe("the site's civil date", () => {
  it('holds one whole sun day in Sydney, where the UTC date holds two halves', () => {
    const civil = siteDayLengthMinutes(SYDNEY, from, 365);
    const neighbours = dayLengthsUtc(SYDNEY.latitude, SYDNEY.longitude - 150, from, 365);
    civil.forEach((minutes, index) => {
      expect(Math.abs(minutes - (neighbours[index] ?? 0))).toBeLessThan(1.2);
    });
  });

  it('differs from the UTC date where the sun is up at midnight UTC', () => {
    const [civil = 0] = siteDayLengthMinutes(SYDNEY, epochDay('2027-03-20'), 1);
    const [utc = 0] = dayLengthsUtc(SYDNEY.latitude, SYDNEY.longitude, epochDay('2027-03-20'), 1);
    expect(Math.abs(civil - utc)).toBeGreaterThan(0.3);
  });

  it('is no shorter or longer on the dates of 23 and 25 hours', () => {
    const around = siteDayLengthMinutes(MADRID, epochDay('2027-03-26'), 5);
    const steps = [1, 2, 3, 4].map((index) => (around[index] ?? 0) - (around[index - 1] ?? 0));
    for (const step of steps) expect(Math.abs(step - 2.75)).toBeLessThan(0.1);
  });

  it('counts 1440 minutes at most', () => {
    const pole = { latitude: -90, longitude: 0, timezone: 'Africa/Casablanca' };
    const [dayOf25Hours] = siteDayLengthMinutes(pole, epochDay('2024-03-10'), 1);
    expect(dayOf25Hours).toBe(1440);
  });
});

describe('months', () => {
  const minutes = [600, 630, 690, 720, 750, 780, 780, 750, 720, 690, 630, 600];
  const months = photoperiod({ kind: 'months', minutes });

  it('has each value on the 15th', () => {
    const values = tenths(months);
    minutes.forEach((value, index) => {
      expect(on(values, `2027-${String(index + 1).padStart(2, '0')}-15`)).toBe(value * 10);
    });
  });

  it('is linear between, over the true number of days', () => {
    const values = tenths(months);
    // 15 February to 15 March 2027 is 28 days for 60 min; 15 April to 15 May 30 days for 30 min.
    expect(on(values, '2027-03-01')).toBe(Math.floor((630 + (60 * 14) / 28) * 10 + 0.5));
    expect(on(values, '2027-02-16')).toBe(6321);
    expect(on(values, '2027-05-05')).toBe(7400);
  });

  it('has 29 days between in a leap year', () => {
    const leap = targetDayLengthTenths(months, null, MADRID, null, epochDay('2028-02-29'), 1);
    expect(leap[0]).toBe(Math.floor((630 + (60 * 14) / 29) * 10 + 0.5));
  });

  it('runs on past the year without a seam', () => {
    const turning = photoperiod({
      kind: 'months',
      minutes: [600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 662],
    });
    const values = targetDayLengthTenths(turning, null, MADRID, null, epochDay('2027-12-15'), 32);
    expect([...values]).toEqual(Array.from({ length: 32 }, (_, index) => 6620 - index * 20));
  });

  it('is never mirrored', () => {
    expect([...tenths(months, { site: SYDNEY })]).toEqual([...tenths(months)]);
    expect([...tenths({ ...months, season: NATIVE }, { range: -15 })]).toEqual([...tenths(months)]);
  });

  it('keeps exact ties: a step of 7 min over 28 days gives quarters, rounded up', () => {
    const ties = photoperiod({ kind: 'months', minutes: [600, 600, 607, 600, 600, 600, 600, 600, 600, 600, 600, 600] });
    expect(on(tenths(ties), '2027-02-16')).toBe(6003);
    expect(on(tenths(ties), '2027-02-18')).toBe(6008);
  });
});

describe('at_least and at_most', () => {
  it('clamp every form', () => {
    const clamped = { atLeastMinutes: 660, atMostMinutes: 780 };
    const forms: readonly Photoperiod['form'][] = [
      { kind: 'constant', minutes: 840 },
      { kind: 'seasonal', longestMinutes: 900, shortestMinutes: 500 },
      { kind: 'latitude', latitude: 60 },
      { kind: 'latitude', latitude: 'site' },
      { kind: 'months', minutes: [400, 500, 600, 700, 800, 900, 900, 800, 700, 600, 500, 400] },
    ];
    for (const form of forms) {
      const values = tenths(photoperiod(form, clamped));
      expect(Math.min(...values)).toBe(form.kind === 'constant' ? 7800 : 6600);
      expect(Math.max(...values)).toBe(7800);
    }
  });

  it('hold before a blend: halfway between 6 h clamped to 10 h and 14 h is 12 h', () => {
    const base = photoperiod({ kind: 'constant', minutes: 360 }, { atLeastMinutes: 600 });
    const rest = restOf({ rampWeeks: 2, photoperiod: photoperiod({ kind: 'constant', minutes: 840 }) });
    expect(on(tenths(base, { rest }), '2027-03-08')).toBe(7200);
  });
});

function restOf(more: Partial<Rest>): Rest {
  return {
    kind: 'cooling',
    path: [],
    from: epochDay('2027-03-01'),
    weeks: 10,
    rampWeeks: 4,
    lastFeedDays: 21,
    checkedByVet: null,
    photoperiod: photoperiod({ kind: 'constant', minutes: 600 }),
    temperature: null,
    humidity: null,
    ...more,
  };
}

describe('a rest', () => {
  const base = photoperiod({ kind: 'constant', minutes: 740 });

  it('ramps in over its first weeks, holds, and ramps out over its last', () => {
    const values = tenths(base, { rest: restOf({}) });
    expect(on(values, '2027-02-28')).toBe(7400);
    expect(on(values, '2027-03-01')).toBe(7400);
    expect(on(values, '2027-03-02')).toBe(7350);
    expect(on(values, '2027-03-15')).toBe(6700);
    expect(on(values, '2027-03-29')).toBe(6000);
    expect(on(values, '2027-04-12')).toBe(6000);
    expect(on(values, '2027-04-13')).toBe(6050);
    expect(on(values, '2027-05-09')).toBe(7350);
    expect(on(values, '2027-05-10')).toBe(7400);
  });

  it('keeps a tie a tie: halfway from 600.4 to 600.3 min is 600.35 and goes up', () => {
    const constant = (minutes: number) => photoperiod({ kind: 'constant', minutes });
    const half = (from: number, to: number) =>
      on(tenths(constant(from), { rest: restOf({ rampWeeks: 2, photoperiod: constant(to) }) }), '2027-03-08');
    expect(half(600.4, 600.3)).toBe(6004);
    expect(half(600.3, 600.4)).toBe(6004);
  });

  it('without a ramp stands whole on all its dates', () => {
    const values = tenths(base, { rest: restOf({ rampWeeks: 0 }) });
    expect(on(values, '2027-02-28')).toBe(7400);
    expect(on(values, '2027-03-01')).toBe(6000);
    expect(on(values, '2027-05-09')).toBe(6000);
    expect(on(values, '2027-05-10')).toBe(7400);
  });

  it('whose ramps meet never stands whole', () => {
    const shares = Array.from({ length: 71 }, (_, index) => restShare({ from: 0, weeks: 10, rampWeeks: 6 }, index));
    expect(Math.max(...shares)).toBeCloseTo(35 / 42);
    expect([shares[0], shares[70]]).toEqual([0, 0]);
  });

  it('without a photoperiod of its own leaves the light alone', () => {
    expect([...tenths(base, { rest: restOf({ photoperiod: null }) })]).toEqual([...tenths(base)]);
  });

  it('may have a season of its own', () => {
    const own = photoperiod(SEASONAL, { season: NATIVE });
    const values = tenths(base, { range: -15, rest: restOf({ photoperiod: own, rampWeeks: 0 }) });
    expect(on(values, '2027-04-01')).toBe(on(tenths(own, { range: -15 }), '2027-04-01'));
  });
});

describe('an animal moved across hemispheres', () => {
  const moved: Season = {
    kind: 'moved',
    was: 'native',
    becomes: 'site',
    from: epochDay('2027-02-01'),
    overDays: 182,
  };

  it('has the old year before, the new one after, and a line between', () => {
    const values = tenths(photoperiod(SEASONAL, { season: moved }), { range: -15 });
    const old = tenths(photoperiod(SEASONAL, { season: NATIVE }), { range: -15 });
    const now = tenths(photoperiod(SEASONAL));
    expect(on(values, '2027-01-15')).toBe(on(old, '2027-01-15'));
    expect(on(values, '2027-02-01')).toBe(on(old, '2027-02-01'));
    expect(on(values, '2027-08-02')).toBe(on(now, '2027-08-02'));
    expect(on(values, '2027-12-01')).toBe(on(now, '2027-12-01'));
    const half = (on(old, '2027-05-03') + on(now, '2027-05-03')) / 2;
    expect(Math.abs(on(values, '2027-05-03') - half)).toBeLessThanOrEqual(1);
  });

  it('changes at once where the move takes no time', () => {
    const values = tenths(photoperiod(SEASONAL, { season: { ...moved, overDays: 0 } }), { range: -15 });
    expect(on(values, '2027-02-01')).toBe(on(tenths(photoperiod(SEASONAL)), '2027-02-01'));
  });
});

it('gives nothing for no dates', () => {
  expect(tenths(photoperiod(SEASONAL), { days: 0 })).toHaveLength(0);
  expect(siteDayLengthMinutes(MADRID, from, 0)).toHaveLength(0);
});

it('gives a date the same value whatever plan it lies in', () => {
  const period = photoperiod({ kind: 'latitude', latitude: 'site' });
  const year = tenths(period);
  const later = targetDayLengthTenths(period, null, MADRID, null, from + 200, 10);
  expect([...later]).toEqual([...year.slice(200, 210)]);
});
