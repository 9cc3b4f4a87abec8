/** The options of `fit`, each checked before anything is read. */
import { parseQuantity } from '../basics/quantity.ts';
import { columnsByList } from '../fit/columns.ts';
import { type GaugeCorrection, saltTest } from '../fit/gauge.ts';
import { DATE_ORDERS } from '../fit/moments.ts';
import type { LogForm } from '../fit/read-readings.ts';
import { type CommonOptions, UsageError } from './usage.ts';

export interface FitOptions extends CommonOptions {
  readonly out: string;
  readonly enclosure?: string;
  readonly remove?: string;
  readonly dry?: boolean;
  readonly picture?: string;
  readonly salt?: string;
  readonly saltAt: string;
  readonly dates?: string;
  readonly columns?: string;
  readonly clock: 'wall' | 'standard' | 'utc';
  readonly shift?: string;
}

/** Returns how the log is to be read; throws UsageError. */
export function logForm({ dates, columns, clock, shift }: FitOptions): LogForm {
  const list = columns === undefined ? null : columnsByList(columns);
  if (columns !== undefined && !list)
    throw new UsageError(
      `--columns ${columns}: time (or date,clock), humidity, temperature, mist, each once, - for a column to pass over; time and humidity must be there`,
    );
  return {
    dates: DATE_ORDERS.find((order) => order === dates) ?? null,
    columns: list,
    clock,
    shiftMinutes: shift === undefined ? 0 : shiftMinutes(shift),
  };
}

function shiftMinutes(text: string): number {
  const found = /^([+-]?\d{1,4})\s*(min|h)?$/u.exec(text.trim());
  if (!found)
    throw new UsageError(`--shift ${text}: minutes to add to every time of the log, for instance --shift=-60`);
  return Number(found[1]) * (found[2] === 'h' ? 60 : 1);
}

/** Returns the correction of a salt test; throws UsageError. */
export function gaugeCorrection(salt: string, saltAt: string): GaugeCorrection {
  const celsius = parseQuantity(saltAt, 'temperature');
  if (celsius.kind !== 'read' || celsius.base < 10 || celsius.base > 35)
    throw new UsageError(`--salt-at ${saltAt}: the temperature of the test, from 10 °C to 35 °C, for instance "22 °C"`);
  const test = saltTest(salt, celsius.base);
  if (test.ok) return test.correction;
  const why = {
    form: 'two points, each a salt or its humidity in % and what the gauge said, for instance NaCl=72,MgCl2=35 or 75.3=72,33=35',
    'too near':
      'the two points lie within 15 points of humidity; take salts that are farther apart, such as NaCl and MgCl2',
    implausible:
      'a gauge so far off cannot be corrected; leave it two days over each salt and read again, or take another gauge',
  }[test.why];
  throw new UsageError(`--salt ${salt}: ${why}`);
}
