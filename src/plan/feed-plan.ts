/** What a plan says of food: the feeds, the order that they follow, and what is to be bought. */
import type { ClockTime, IsoDate } from '../basics/civil.ts';

export type FoodStream = 'insects' | 'greens' | 'prepared' | 'rodents';

/** One feed of one enclosure. */
export interface Feed {
  readonly date: IsoDate;
  readonly time: ClockTime;
  /** Position of the feed in its rotation's cycle, 0 first. */
  readonly slot: number;
  readonly enclosure: string;
  readonly food: FoodStream;
  readonly feeder: string;
  /** Pieces; null where the portion is not counted. */
  readonly count: number | null;
  readonly portion: string;
  /** Id of the powder; null: plain. */
  readonly dusting: string | null;
  readonly by: string;
  /** null: not gut-loaded. */
  readonly gutLoadFrom: IsoDate | null;
  /** Whether this feeder takes the place of one that is short. */
  readonly standIn: boolean;
  /** A vitamin powder that falls to the sitter: the keeper weighs it out beforehand. */
  readonly preDosed?: true;
  /** Copied from an earlier revision. */
  readonly past?: true;
}

/** Where a rotation stands at the end of what is planned. */
export interface RotationState {
  readonly enclosure: string;
  readonly food: FoodStream;
  readonly cycleFeeds: number;
  readonly nextIndex: number;
  /** Last dates, of `feed` and by powder id. */
  readonly last: Readonly<Record<string, IsoDate>>;
  readonly worstDeviation: number;
  /** The order itself, so that a later plan can go on with it; one entry of `rotation` a stream and stage. */
  readonly order: RotationOrder;
}

/** Feeders and dustings by slot, and what they were chosen from; shares and deviations as [numerator, denominator]. */
export interface RotationOrder {
  readonly stage: string;
  /** The date of slot 0. */
  readonly began: IsoDate;
  /** null: the order runs over the whole plan and does not repeat. */
  readonly cycleWeeks: number | null;
  readonly basis: string;
  readonly feeders: readonly string[];
  /** null: plain. */
  readonly dustings: readonly (string | null)[];
  readonly feederRates: Readonly<Record<string, readonly [number, number]>>;
  /** Of the feeds whose feeder takes dust; `plain` is what no dusting takes. */
  readonly dustingRates: Readonly<Record<string, readonly [number, number]>>;
  /** Deviations that the prefixes went on from, of feeders and dustings; none left out. */
  readonly carried: Readonly<Record<string, readonly [number, number]>>;
}

/** Feeders to buy on a shopping day. */
export interface StockOrder {
  readonly date: IsoDate;
  readonly feeder: string;
  /** Pieces. */
  readonly amount: number;
  readonly why: string;
}
