import { describe, expect, it } from 'vitest';
import { parseCalendarSpan, parseQuantity, unitNames } from '../../../src/basics/quantity.ts';
import { DIMENSIONS, type Dimension, unitsOf } from '../../../src/basics/units.ts';

/**
 * Source: NIST Special Publication 811 (2008), appendix B.8, and NIST Handbook 44, appendix C, from memory: 1 in = 2.54 cm, 1 ft =
 * 30.48 cm, 1 gal (US) = 3.785 411 784 L, 1 fl oz (US) = 29.573 529 562 5 mL, 1 lb = 453.592 37 g, 1 oz = 28.349 523 125 g;
 * °C = (°F − 32)/1.8. The litres of a gallon are the table's, not computed from cubic inches as in the program.
 */
const conversions: readonly (readonly [string, Dimension, number])[] = [
  ['24 in', 'length', 0.6096],
  ['2 ft', 'length', 0.6096],
  ['60 cm', 'length', 0.6],
  ['455 mm', 'length', 0.455],
  ['1.2 m', 'length', 1.2],
  ['78 °F', 'temperature', 25.5555555555556],
  ['-40 °F', 'temperature', -40],
  ['−5 °C', 'temperature', -5],
  ['21°C', 'temperature', 21],
  ['21 C', 'temperature', 21],
  ['72F', 'temperature', 22.2222222222222],
  ['9 °F', 'temperature difference', 5],
  ['4 °C', 'temperature difference', 4],
  ['5 gal', 'volume', 18927.05892],
  ['8 fl oz', 'volume', 236.5882365],
  ['1.5 L', 'volume', 1500],
  ['250 ml', 'volume', 250],
  ['90 mL/min', 'flow', 5400],
  ['2 fl oz/min', 'flow', 3548.8235475],
  ['1 gal/h', 'flow', 3785.411784],
  ['0.5 L/h', 'flow', 500],
  ['6 g/h', 'flow', 6],
  ['3.2 lb', 'mass', 1451.495584],
  ['2 oz', 'mass', 56.69904625],
  ['1.8 kW', 'power', 1800],
  ['90 s', 'time', 90],
  ['15 min', 'time', 900],
  ['1.5 h', 'time', 5400],
  ['2 days', 'time', 172_800],
  ['26 weeks', 'time', 15_724_800],
  ['57 %', 'share', 0.57],
  ['29%', 'share', 0.29],
  ['0.4 g/kg', 'content', 0.4],
  ['120 g/m²', 'film', 120],
  ['120 g/m2', 'film', 120],
  ['1.2 m²', 'area', 1.2],
  ['10 ft²', 'area', 0.9290304],
  ['5 m/h', 'speed', 5],
  ['.5 L', 'volume', 500],
];

describe('a quantity', () => {
  it.each(conversions)('%s (%s) is %d in its base unit', (text, dimension, base) => {
    const read = parseQuantity(text, dimension);
    expect(read.kind).toBe('read');
    if (read.kind === 'read') expect(Math.abs(read.base - base)).toBeLessThanOrEqual(Math.abs(base) * 1e-12);
  });

  it.each([
    ['24', 'length', { kind: 'bare', number: 24 }],
    ['24 °C', 'length', { kind: 'unit', unit: '°C', measures: 'temperature' }],
    ['24 furlongs', 'length', { kind: 'unit', unit: 'furlongs', measures: null }],
    ['15 m', 'time', { kind: 'unit', unit: 'm', measures: 'length' }],
    ['8 oz', 'volume', { kind: 'unit', unit: 'oz', measures: 'mass' }],
    ['about 5 cm', 'length', { kind: 'none' }],
    ['1e3 cm', 'length', { kind: 'unit', unit: 'e3 cm', measures: null }],
    ['', 'length', { kind: 'none' }],
    ['5,5 cm', 'length', { kind: 'unit', unit: ',5 cm', measures: null }],
    ['1 2 cm', 'length', { kind: 'unit', unit: '2 cm', measures: null }],
  ] as const)('%s as %s is told apart from one', (text, dimension, expected) => {
    expect(parseQuantity(text, dimension)).toEqual(expected);
  });

  it('is read alike with any space before its unit and any case of its letters', () => {
    for (const text of ['90 mL/min', '90mL/min', '90\u00a0mL/min', '90  ML/MIN']) {
      expect(parseQuantity(text, 'flow')).toEqual({ kind: 'read', base: 5400 });
    }
  });

  it('reads every percentage of a whole number as the nearest fraction', () => {
    for (let share = 0; share <= 100; share++) {
      expect(parseQuantity(`${share} %`, 'share')).toEqual({ kind: 'read', base: share / 100 });
    }
  });

  it('has no unit that two spellings of one dimension share', () => {
    for (const dimension of DIMENSIONS) {
      const names = unitsOf[dimension].flatMap((unit) => unit.names.map((name) => name.toLowerCase()));
      expect(names.filter((name, index) => names.indexOf(name) !== index).filter((name) => name !== 'mm')).toEqual([]);
      expect(unitNames(dimension).length).toBeGreaterThan(0);
    }
  });
});

describe('a span of the calendar', () => {
  it.each([
    ['1 day', { unit: 'day', count: 1 }],
    ['2 weeks', { unit: 'week', count: 2 }],
    ['12 months', { unit: 'month', count: 12 }],
    ['1 year', { unit: 'month', count: 12 }],
  ] as const)('%s keeps its unit', (text, span) => {
    expect(parseCalendarSpan(text)).toEqual(span);
  });

  it.each(['3', 'monthly', '3 h', '', '2 fortnights', 'constructor'])('%s is none', (text) => {
    expect(parseCalendarSpan(text)).toBeNull();
  });
});
