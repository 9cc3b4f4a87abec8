/** Moist air against ASHRAE and CRC tables, published formulas, and psychrolib over a grid. */
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  dewPointC,
  humidityRatio,
  STANDARD_PRESSURE_PA,
  saturationDensityGPerM3,
  saturationPressurePa,
  vapourDensityGPerM3,
} from '../../../src/science/moist-air.ts';
import values from './values.json' with { type: 'json' };

interface Row {
  readonly id: string;
  readonly inputs: unknown;
  readonly expected: unknown;
  readonly source: string;
  readonly provenance: string;
}
const rows = values as readonly Row[];
const starting = (prefix: string) => rows.filter(({ id }) => id.startsWith(prefix));
const numberIn = (row: Row, key: string): number => Number((row.inputs as Record<string, number>)[key]);

describe('saturation pressure', () => {
  // ASHRAE Handbook Fundamentals (2017) ch. 1 table 3 (opened, in the tests of a public psychrometrics library): 300 ppm.
  it.each(starting('PSY-PWS-ASHRAE'))('$id to 300 ppm', (row) => {
    const ours = saturationPressurePa(numberIn(row, 'T_C'));
    expect(Math.abs(ours / Number(row.expected) - 1)).toBeLessThan(3e-4);
  });

  // CRC Handbook 73rd ed. (opened, a secondary copy): 0.06 %; the IAPWS value beside it to 5e-6.
  it.each(starting('PSY-PWS-CRC'))('$id to 0.06 %, its IAPWS value to 5 ppm', (row) => {
    const ours = saturationPressurePa(numberIn(row, 'T_C'));
    expect(Math.abs(ours / (1000 * Number(row.expected)) - 1)).toBeLessThan(6e-4);
    expect(Math.abs(ours / (row as Row & { iapws_Pa: number }).iapws_Pa - 1)).toBeLessThan(5e-6);
  });

  // Magnus forms (coefficients from memory, values computed): their own worst error against IAPWS is known and signed.
  it.each([
    ['PSY-AE96', 0.0026],
    ['PSY-WMO', 0.0031],
    ['PSY-FAO56', 0.0013],
  ] as const)('%s lies below ours by at most %f', (prefix, most) => {
    for (const row of starting(prefix)) {
      const lower = 1 - Number(row.expected) / saturationPressurePa(numberIn(row, 'T_C'));
      expect(lower).toBeGreaterThan(-2e-4);
      expect(lower).toBeLessThan(most);
    }
  });
});

describe('humidity ratio of saturated air', () => {
  // ASHRAE table 2 contains the enhancement factor, which an ideal mixture lacks: 0.4 to 0.6 % below.
  it.each(starting('PSY-WS-ASHRAE'))('$id, 0.3 to 0.65 % below the table', (row) => {
    const ours = humidityRatio(saturationPressurePa(numberIn(row, 'T_C')));
    const below = 1 - ours / Number(row.expected);
    expect(below).toBeGreaterThan(0.003);
    expect(below).toBeLessThan(0.0065);
  });

  it.each(starting('PSY-WS-IDEAL'))('$id to 0.1 %', (row) => {
    const ours = humidityRatio(saturationPressurePa(numberIn(row, 'T_C')));
    expect(Math.abs(ours / Number(row.expected) - 1)).toBeLessThan(1e-3);
  });
});

describe('state points', () => {
  it.each(starting('PSY-STATE'))('$id: ratio to 0.5 %, dew point to 0.05 K, density to 0.3 %', (row) => {
    const expected = row.expected as { W: number; Tdew_C: number; abs_humidity_g_m3: number };
    const vapour = numberIn(row, 'RH') * saturationPressurePa(numberIn(row, 'T_C'));
    expect(Math.abs(humidityRatio(vapour) / expected.W - 1)).toBeLessThan(5e-3);
    expect(Math.abs(dewPointC(vapour) - expected.Tdew_C)).toBeLessThan(0.05);
    expect(Math.abs(vapourDensityGPerM3(vapour, numberIn(row, 'T_C')) / expected.abs_humidity_g_m3 - 1)).toBeLessThan(
      3e-3,
    );
  });

  // Computed (IAPWS): sealed air of 20 °C and 80 %, warmed to 28 °C, its vapour pressure kept.
  it('PSY-CLOSED-BOX to 0.3 points', () => {
    const relative = (80 * saturationPressurePa(20)) / saturationPressurePa(28);
    expect(Math.abs(relative - 49.5)).toBeLessThan(0.3);
  });
});

describe('psychrolib as a second opinion', () => {
  it('agrees over 0 to 50 °C and 5 to 100 %', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const worst = { pressure: 0, ratio: 0, dewPoint: 0 };
    for (let celsius = 1; celsius <= 50; celsius++) {
      const ours = saturationPressurePa(celsius);
      worst.pressure = Math.max(worst.pressure, Math.abs(ours / psychrolib.GetSatVapPres(celsius) - 1));
      for (let percent = 5; percent <= 100; percent += 5) {
        const ratio = psychrolib.GetHumRatioFromRelHum(celsius, percent / 100, STANDARD_PRESSURE_PA);
        worst.ratio = Math.max(worst.ratio, Math.abs(humidityRatio((percent / 100) * ours) / ratio - 1));
        // Below 0 °C psychrolib's dew point is a frost point.
        const dew = dewPointC((percent / 100) * ours);
        if (dew < 0.5) continue;
        const theirs = psychrolib.GetTDewPointFromRelHum(celsius, percent / 100);
        worst.dewPoint = Math.max(worst.dewPoint, Math.abs(dew - theirs));
      }
    }
    console.info('worst against psychrolib', worst);
    expect(worst.pressure).toBeLessThan(4e-4);
    expect(worst.ratio).toBeLessThan(5e-4);
    expect(worst.dewPoint).toBeLessThan(0.02);
  });
});

describe('inverses', () => {
  it('gives back the temperature of a saturation pressure, supercooled water included', () => {
    for (let celsius = -10; celsius <= 60; celsius += 0.5) {
      expect(Math.abs(dewPointC(saturationPressurePa(celsius)) - celsius)).toBeLessThan(1e-8);
    }
  });

  it('has a vapour density that is its pressure by the gas law', () => {
    // Computed: 3169.82 Pa (IAPWS, 25 °C) / (461.523 J/kgK x 298.15 K) = 23.036 g/m³.
    expect(saturationDensityGPerM3(25)).toBeCloseTo(23.036, 3);
  });
});
