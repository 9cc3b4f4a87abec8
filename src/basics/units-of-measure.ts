/** The one unit in which each kind of quantity travels once it is read; a number of one of these types has that unit. */
export type Metres = number;
export type SquareMetres = number;
/** A temperature, or (where the field says so) a difference of two. */
export type Celsius = number;
/** Of water: 1 mL weighs 1 g. */
export type Millilitres = number;
/** Of water: 1 mL/h is 1 g/h. */
export type GramsPerHour = number;
export type Grams = number;
export type Watts = number;
export type Seconds = number;
export type Minutes = number;
export type Hours = number;
export type Days = number;
/** A fraction: 0.45 is 45 %. */
export type Share = number;
export type GramsPerKilogram = number;
export type GramsPerSquareMetre = number;
export type MetresPerHour = number;

/** A span of the calendar; months differ in length, so it is not folded into days. */
export interface CalendarSpan {
  readonly unit: 'day' | 'week' | 'month';
  readonly count: number;
}
