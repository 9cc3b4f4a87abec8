/** A gauge's log once it is read: instants in UTC, humidity as a fraction, °C. */
import type { UtcMinute } from '../basics/utc-offsets.ts';
import type { Place } from '../diagnostics/diagnostic.ts';

export interface GaugeReading {
  /** With fractions of a minute. */
  readonly utcMinute: UtcMinute;
  /** As the gauge said it, 0 to 1. */
  readonly humidity: number;
  readonly celsius: number | null;
  /** Index of its row in the file, for its place. */
  readonly row: number;
}

export interface LoggedMist {
  readonly utcMinute: UtcMinute;
  readonly seconds: number;
}

export interface Readings {
  readonly file: string;
  /** Ascending, no instant twice. */
  readonly readings: readonly GaugeReading[];
  /** null where the log has no column of mists. */
  readonly mists: readonly LoggedMist[] | null;
  /** Rows that hold no humidity that can be used. */
  readonly lost: number;
  readonly placeOfRow: (row: number) => Place;
}
