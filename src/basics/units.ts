/**
 * The units that a file may use, by what they measure. `times / per` turns one into the base unit of its dimension.
 *
 * Source: NIST Special Publication 811 (2008), appendix B.8: inch 25.4 mm, foot 0.3048 m, pound 453.592 37 g, avoirdupois ounce a
 * sixteenth of it; NIST Handbook 44, appendix C: US gallon 231 cubic inches, US quart a quarter and US fluid ounce a 128th of it (all exact by definition;
 * quoted from memory, the cubic inches computed).
 */
export type Dimension =
  | 'length'
  | 'area'
  | 'temperature'
  | 'temperature difference'
  | 'volume'
  | 'flow'
  | 'mass'
  | 'power'
  | 'time'
  | 'share'
  | 'content'
  | 'film'
  | 'speed';

export interface Unit {
  /** As printed; the others are accepted spellings. Letters of either case are taken. */
  readonly names: readonly [string, ...string[]];
  readonly times: number;
  readonly per: number;
  /** Added before scaling: the zero of the scale. */
  readonly zero?: number;
}

const GALLON_ML = 231 * 2.54 ** 3;
const FLUID_OUNCE_ML = GALLON_ML / 128;
const POUND_G = 453.59237;

const unit = (names: readonly [string, ...string[]], times = 1, per = 1, zero = 0): Unit => ({
  names,
  times,
  per,
  zero,
});

/** Base units: m, m², °C, mL, g/h (of water, 1 mL = 1 g), g, W, s, fraction, g/kg, g/m², m/h. */
export const unitsOf: Readonly<Record<Dimension, readonly Unit[]>> = {
  length: [
    unit(['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], 1, 100),
    unit(['m', 'metre', 'metres', 'meter', 'meters']),
    unit(['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], 1, 1000),
    unit(['in', 'inch', 'inches', '"', '″'], 254, 10_000),
    unit(['ft', 'foot', 'feet', "'", '′'], 3048, 10_000),
  ],
  area: [
    unit(['m²', 'm2', 'm^2', 'sq m', 'sqm']),
    unit(['cm²', 'cm2', 'cm^2', 'sq cm'], 1, 10_000),
    unit(['ft²', 'ft2', 'ft^2', 'sq ft', 'sqft'], 3048 ** 2, 10_000 ** 2),
  ],
  temperature: [
    unit(['°C', 'ºC', '℃', 'C', '° C', 'deg C', 'degC', 'celsius']),
    unit(['°F', 'ºF', '℉', 'F', '° F', 'deg F', 'degF', 'fahrenheit'], 5, 9, -32),
  ],
  'temperature difference': [
    unit(['°C', 'ºC', '℃', 'C', '° C', 'deg C', 'degC', 'celsius', 'K']),
    unit(['°F', 'ºF', '℉', 'F', '° F', 'deg F', 'degF', 'fahrenheit'], 5, 9),
  ],
  volume: [
    unit(['mL', 'millilitre', 'millilitres', 'milliliter', 'milliliters']),
    unit(['L', 'litre', 'litres', 'liter', 'liters'], 1000),
    unit(['gal', 'gallon', 'gallons', 'US gal'], GALLON_ML),
    unit(['fl oz', 'floz', 'fl. oz', 'fl. oz.', 'fluid ounce', 'fluid ounces', 'US fl oz'], FLUID_OUNCE_ML),
    unit(['qt', 'quart', 'quarts', 'US qt'], GALLON_ML, 4),
  ],
  flow: [
    unit(['mL/min'], 60),
    unit(['L/h', 'L/hr'], 1000),
    unit(['L/min'], 60_000),
    unit(['mL/h', 'mL/hr']),
    unit(['g/h', 'g/hr']),
    unit(['gal/h', 'gal/hr', 'gph'], GALLON_ML),
    unit(['fl oz/min', 'floz/min', 'fl. oz/min'], FLUID_OUNCE_ML * 60),
  ],
  mass: [
    unit(['g', 'gram', 'grams']),
    unit(['kg', 'kilogram', 'kilograms'], 1000),
    unit(['lb', 'lbs', 'pound', 'pounds'], POUND_G),
    unit(['oz', 'ounce', 'ounces'], POUND_G, 16),
  ],
  power: [unit(['W', 'watt', 'watts']), unit(['kW', 'kilowatt', 'kilowatts'], 1000)],
  time: [
    unit(['s', 'sec', 'secs', 'second', 'seconds']),
    unit(['min', 'mins', 'minute', 'minutes'], 60),
    unit(['h', 'hr', 'hrs', 'hour', 'hours'], 3600),
    unit(['days', 'day', 'd'], 86_400),
    unit(['weeks', 'week', 'wk', 'wks'], 604_800),
  ],
  share: [unit(['%', 'percent', 'per cent'], 1, 100)],
  content: [unit(['g/kg']), unit(['mg/kg', 'ppm'], 1, 1000)],
  film: [unit(['g/m²', 'g/m2', 'g/m^2'])],
  speed: [unit(['m/h', 'm/hr']), unit(['cm/s'], 36), unit(['m/s'], 3600)],
};

export const DIMENSIONS = Object.keys(unitsOf) as readonly Dimension[];
