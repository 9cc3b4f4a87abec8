import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { Care, Lamp, Rest, Targets } from '../../../../src/resolve/care.ts';
import { EnclosureClimate, temperatureBandsOn } from '../../../../src/solve/light/enclosure-temperature.ts';
import { monthWords, temperatureWords } from '../../../../src/solve/light/temperature-check.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { edges, enclosure, hours, lamp, pinDial, shelfCare } from '../../../generated/shelf-care.ts';

const BAND: Targets['temperature'] = {
  dayC: [24, 28],
  nightC: [20, 22],
  baskingC: null,
  neverBelowC: null,
  neverAboveC: null,
  limitsWaivedBecause: null,
};

function shelf(
  lamps: readonly Lamp[],
  temperature: Partial<Targets['temperature']> = {},
  more: { rest?: Rest } = {},
): Care {
  return shelfCare({
    devices: [pinDial('dial'), pinDial('bask-dial', { clock: 'wall' })],
    enclosures: [
      enclosure('fern', hours(720), lamps, { basking: edges(60, 60), temperature: { ...BAND, ...temperature } }, more),
    ],
  });
}

function temperaturesOf(care: Care, date = '2027-01-10') {
  const log = new Log();
  const { lighting, offsets } = solveLighting(care, null, care.plan.from, log);
  const [fern] = care.enclosures;
  if (!fern) throw new Error('no enclosure');
  const found = new EnclosureClimate(care, fern, lighting, offsets).on(epochDay(date));
  const said = log.sorted().filter(({ code }) => code.startsWith('temperature'));
  return { ...found, said: said.map(({ code, weight, because }) => `${code} ${weight}: ${because}`) };
}

const day = lamp('day', { outlet: 'dial', warmsC: 3 });
const sun = lamp('sun', { outlet: 'bask-dial', uses: ['basking'], kind: 'halogen', warmsC: 2, thermostat: 'dimming' });
const mat = lamp('mat', { outlet: 'always', uses: ['heat'], kind: 'mat', thermostat: 'pulse', warmsC: 0 });

describe('the day', () => {
  it('is the room and what the lamps warm that are on at its middle', () => {
    expect(temperaturesOf(shelf([day, sun]))).toMatchObject({ dayC: 26, dayFrom: 'room-and-lamps' });
  });

  it('reads lamps on a dial of another clock at the same moment', () => {
    const late = { ...sun, uses: ['basking' as const] };
    expect(temperaturesOf(shelf([day, late]), '2027-07-10').dayC).toBe(26);
  });

  it('is the middle of the band where a lamp does not say what it warms', () => {
    expect(temperaturesOf(shelf([day, { ...sun, warmsC: null }]))).toMatchObject({ dayC: 26, dayFrom: 'band' });
    expect(temperaturesOf(shelf([{ ...day, warmsC: null }], { dayC: [22, 23] })).dayC).toBe(22.5);
  });

  it('is the room alone where no lamp is on', () => {
    expect(temperaturesOf(shelf([])).dayC).toBe(21);
  });
});

describe('the night', () => {
  it('is the room', () => {
    expect(temperaturesOf(shelf([day]))).toMatchObject({ nightC: 18, nightFrom: 'room' });
  });

  it('is what a heater behind a thermostat holds, where that is more', () => {
    expect(temperaturesOf(shelf([day, mat]))).toMatchObject({ nightC: 21, nightFrom: 'heater' });
    expect(temperaturesOf(shelf([day, mat], { nightC: [14, 16] }))).toMatchObject({ nightC: 18, nightFrom: 'room' });
  });

  it('is the room where the heater hangs on the dial of the day', () => {
    expect(temperaturesOf(shelf([day, { ...mat, outlet: 'dial' }]))).toMatchObject({ nightC: 18, nightFrom: 'room' });
  });
});

describe('what is said', () => {
  it('names limits passed as a refusal, unless the file says why', () => {
    expect(temperaturesOf(shelf([day, mat], { neverAboveC: 23 })).said).toEqual([
      'temperature-limit refusal: fern would stand at 24 °C by day, over its never_above of 23 °C (all year)',
    ]);
    expect(temperaturesOf(shelf([day, mat], { neverAboveC: 23, limitsWaivedBecause: 'gravid' })).said).toEqual([
      'temperature-limit note: fern would stand at 24 °C by day, over its never_above of 23 °C (all year)',
    ]);
    expect(temperaturesOf(shelf([day], { neverBelowC: 19, nightC: null })).said).toEqual([
      'temperature-limit refusal: fern would stand at 18 °C by night, under its never_below of 19 °C (all year)',
    ]);
  });

  it('names bands missed as a warning, the edges being inside', () => {
    expect(temperaturesOf(shelf([day])).said).toEqual([
      'temperature-band warning: fern would stand at 18 °C by night, outside the target, under 20 °C (all year)',
    ]);
    expect(temperaturesOf(shelf([day, mat], { dayC: [20, 24] })).said).toEqual([]);
  });
});

describe('the bands of a rest', () => {
  const rest: Rest = {
    kind: 'cooling',
    path: [],
    from: epochDay('2027-03-01'),
    weeks: 10,
    rampWeeks: 2,
    lastFeedDays: 14,
    checkedByVet: null,
    photoperiod: null,
    temperature: { dayC: [14, 18], nightC: null },
    humidity: null,
  };
  const [fern] = shelf([], {}, { rest }).enclosures;

  it.each([
    ['2027-02-28', [24, 28]],
    ['2027-03-01', [24, 28]],
    ['2027-03-08', [19, 23]],
    ['2027-03-15', [14, 18]],
    ['2027-04-20', [14, 18]],
    ['2027-05-03', [19, 23]],
    ['2027-05-10', [24, 28]],
  ] as const)('on %s', (date, dayC) => {
    if (!fern) throw new Error('no enclosure');
    expect(temperatureBandsOn(fern, epochDay(date))).toEqual({ dayC, nightC: [20, 22] });
  });
});

describe('words', () => {
  it.each([
    [[1], 'January'],
    [[7, 8], 'July to August'],
    [[12, 1, 2], 'December to February'],
    [[3, 6, 7], 'March, June to July'],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], 'all year'],
  ])('months %j', (months, expected) => {
    expect(monthWords(months)).toBe(expected);
  });

  it('temperatures in the household’s unit', () => {
    expect([temperatureWords(21.55, 'metric'), temperatureWords(21, 'us'), temperatureWords(-1.25, 'us')]).toEqual([
      '21.6 °C',
      '69.8 °F',
      '29.8 °F',
    ]);
  });
});
