/** Numbers with their units as loggers write them. */

export interface WrittenNumber {
  readonly value: number;
  /** Empty where none stands; degrees without a blank. */
  readonly unit: string;
}

/** What loggers write where they have nothing: no reading, and no mistake either. */
const NOTHING = /^(|-+|nan|n\/?a|null|none|nil|no data|sin datos|err|error|\.+)$/u;
const NUMBER = /^([+\-−]?)(\d{1,3}(?:[ .,']\d{3})+(?=[.,]\d)|\d+)?(?:([.,])(\d+))?\s*([°º]?\s*[a-z%]*)$/u;

/** Tells whether a cell of a log says that there is no reading. */
export function isNothing(cell: string): boolean {
  return NOTHING.test(cell.trim().toLowerCase());
}

/** Returns the number of a cell, a decimal comma as good as a point; null where the cell is none. */
export function writtenNumber(cell: string): WrittenNumber | null {
  const found = NUMBER.exec(cell.trim().toLowerCase());
  if (!found) return null;
  const [, sign = '', whole = '', , decimals = '', unit = ''] = found;
  if (whole === '' && decimals === '') return null;
  const value = Number(`${whole.replace(/[ .,']/gu, '') || '0'}.${decimals || '0'}`);
  return { value: sign === '' || sign === '+' ? value : -value, unit: unit.replace(/\s/gu, '').replace('º', '°') };
}

/** Returns the seconds of a mist: `90`, `90 s`, `1.5 min`, `1:30`; null where the cell is none. */
export function writtenSeconds(cell: string): number | null {
  const clock = /^(\d{1,2}):(\d{2})$/u.exec(cell.trim());
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const number = writtenNumber(cell);
  if (!number || number.value < 0) return null;
  if (/^(s|sec|secs|second|seconds|seg|segundo|segundos|)$/u.test(number.unit)) return number.value;
  return /^(min|mins|minute|minutes|minuto|minutos)$/u.test(number.unit) ? 60 * number.value : null;
}

/** Returns whether a unit is one of temperature, and which; null where it is something else. */
export function temperatureScale(unit: string): 'c' | 'f' | 'unsaid' | null {
  if (unit === '') return 'unsaid';
  if (/^°?c(elsius)?$/u.test(unit)) return 'c';
  return /^°?f(ahrenheit)?$/u.test(unit) ? 'f' : null;
}
