/** A log read and fitted as the command does it, without a disk. */
import { epochDay } from '../../src/basics/calendar-day.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import type { Compiled } from '../../src/compile.ts';
import { Log } from '../../src/diagnostics/log.ts';
import { type EnclosureFit, fitEnclosure } from '../../src/fit/fit-enclosure.ts';
import { type GaugeCorrection, UNTESTED } from '../../src/fit/gauge.ts';
import { type LogForm, readReadings } from '../../src/fit/read-readings.ts';
import type { Readings } from '../../src/fit/readings.ts';

export const PLAIN_FORM: LogForm = { dates: null, columns: null, clock: 'wall', shiftMinutes: 0 };

export interface FitOfLog {
  readonly read: Readings | null;
  readonly fitted: EnclosureFit | null;
  readonly log: Log;
}

/** Fits the household's first enclosure to a text. */
export function fitOfLog(
  { plan, care }: Compiled,
  text: string,
  form: LogForm = PLAIN_FORM,
  gauge: GaugeCorrection = UNTESTED,
): FitOfLog {
  const enclosure = care?.enclosures[0];
  if (!plan || !care || !enclosure) throw new Error('the household of the log does not compile');
  const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
  const log = new Log();
  const read = readReadings('gauge.csv', text, form, offsets, epochDay('2027-12-31'), log);
  const fitted = read && fitEnclosure({ care, plan, enclosure, offsets, gauge }, read, log);
  return { read, fitted, log };
}
