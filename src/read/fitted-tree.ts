/** The file of fitted values: the file's own keys, quantities in base units. */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { Share } from '../basics/units-of-measure.ts';

export interface FittedTree {
  readonly format: 1;
  /** By enclosure. */
  readonly fitted: Readonly<Record<string, ReadFittedAir>>;
}

/** 95 % of such intervals hold the true value. */
export interface ReadInterval {
  readonly best: number;
  readonly low: number;
  readonly high: number;
}

export interface ReadFittedAir {
  readonly readings: string;
  /** Dates of the first and the last reading. */
  readonly from: EpochDay;
  readonly to: EpochDay;
  readonly count: number;
  readonly residual: Share;
  /** Stands for what of the enclosure its air depends on. */
  readonly shape: string;
  readonly log: string;
  readonly changes_per_hour?: ReadInterval;
  /** In g/h. */
  readonly base_evaporation?: ReadInterval;
  /** In m/h. */
  readonly transfer?: ReadInterval;
}
