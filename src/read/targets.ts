/**
 * What a profile, or the `targets` of an enclosure, says: the file's own keys, quantities in base units, what is not said left out.
 * Who said it is not in this tree: ask `saidAt(path)` of the file that was read.
 */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { Weekday } from '../basics/civil.ts';
import type { CalendarSpan, Celsius, Days, Hours, Minutes, Seconds, Share } from '../basics/units-of-measure.ts';

/** Low and high, both included. */
export type Band = readonly [number, number];
export type FoodWord = 'insects' | 'greens' | 'prepared' | 'rodents';
export type ActivityWord = 'diurnal' | 'nocturnal' | 'crepuscular';

export type EdgeWord = 'before_lights_on' | 'after_lights_on' | 'before_lights_off' | 'after_lights_off';
export interface ReadEdge {
  readonly of: EdgeWord;
  /** At least 0. */
  readonly minutes: Minutes;
}
/** A time of day on the animal's clock, or a time that moves with the lights. */
export type ReadTime = { readonly minute: Minutes } | ReadEdge;

export interface ReadTargets {
  readonly activity?: ActivityWord;
  readonly range?: { readonly latitude: number };
  readonly photoperiod?: ReadPhotoperiod;
  readonly day?: ReadDay;
  readonly basking?: ReadInset | 'none';
  readonly uvb?: (ReadInset & { readonly ferguson_zone?: number }) | 'none';
  readonly temperature?: ReadTemperature;
  readonly humidity?: ReadHumidity;
  readonly water?: ReadWater;
  readonly misting?: ReadMisting | 'none';
  readonly moist_hide?: { readonly humidity: Band; readonly dampen_every: Days } | 'none';
  readonly feeding?: ReadFeeding;
  /** By stage. */
  readonly may_go_without?: Readonly<Record<string, Days>>;
  readonly stages?: Readonly<Record<string, ReadStage>>;
  readonly chores?: readonly ReadProfileChore[];
  /** Literature by key, for `source`. */
  readonly sources?: Readonly<Record<string, ReadSource>>;
}

/** Exactly one form: `hours`; `longest` with `shortest`; `latitude`; `months`. */
export interface ReadPhotoperiod {
  readonly hours?: Minutes;
  readonly longest?: Minutes;
  readonly shortest?: Minutes;
  readonly latitude?: number | 'site';
  /** Twelve, January first. */
  readonly months?: readonly Minutes[];
  readonly at_least?: Minutes;
  readonly at_most?: Minutes;
  readonly season?: 'site' | 'native' | ReadMovedSeason;
}
export interface ReadMovedSeason {
  readonly was: 'site' | 'native';
  readonly becomes: 'site' | 'native';
  readonly from: EpochDay;
  readonly over: Days;
}

/** At most one of `midday`, `lights_on`, `lights_off`; minutes on the animal's clock. */
export interface ReadDay {
  readonly midday?: Minutes;
  readonly lights_on?: Minutes;
  readonly lights_off?: Minutes;
  readonly no_light_before?: Minutes;
  readonly no_light_after?: Minutes;
}

/** At most one form: the two edges; `hours`; `spans`. A `uvb` may have none of them, beside its zone. */
export interface ReadInset {
  readonly after_lights_on?: Minutes;
  readonly before_lights_off?: Minutes;
  readonly hours?: Minutes;
  readonly spans?: readonly { readonly at: ReadEdge; readonly for: Minutes }[];
}

export interface ReadTemperature {
  readonly day?: readonly [Celsius, Celsius];
  readonly night?: readonly [Celsius, Celsius];
  readonly basking?: readonly [Celsius, Celsius];
  readonly never_below?: Celsius;
  readonly never_above?: Celsius;
}

export interface ReadHumidity {
  readonly day?: readonly [Share, Share];
  readonly night?: readonly [Share, Share];
  readonly mean?: readonly [Share, Share];
  readonly peak?: readonly [Share, Share];
  readonly peaks_per_day?: Band;
  readonly floor?: Share;
  readonly ceiling?: Share;
  readonly soaked_at_most?: Hours;
}

export type LightHoursWord = 'lit' | 'dark' | 'any';

export interface ReadWater {
  readonly drink?: { readonly when?: LightHoursWord; readonly mists: number; readonly at_least: Seconds } | 'none';
  readonly dish?: { readonly change_every: Days } | 'none';
  readonly soak?: { readonly minutes: Minutes; readonly per_week: number } | 'none';
  readonly dry_out?: { readonly at_least: Minutes; readonly when?: LightHoursWord; readonly below?: Share } | 'none';
  readonly no_mist?: readonly { readonly from: ReadTime; readonly to: ReadTime }[];
}

export interface ReadMisting {
  readonly per_day: Band;
  readonly seconds: readonly [Seconds, Seconds];
  /** Start to start. */
  readonly gap?: Minutes;
  readonly favour?: 'dawn' | 'dusk' | 'dawn-and-dusk' | 'even';
}

export interface ReadFeeding {
  readonly from: ReadTime;
  readonly to: ReadTime;
  readonly dry_before_mist?: Minutes;
}

/** With `like`, what is left out is taken from the stage of that name. */
export interface ReadStage {
  readonly like?: string;
  readonly feeds?: readonly ReadFeedRule[];
  readonly dusting?: readonly ReadDustingRule[];
  readonly apart?: readonly { readonly between: readonly [string, string]; readonly days: Days }[];
}

/** Exactly one of `per_week`, `every`, `days`. */
export interface ReadFeedRule {
  readonly food: FoodWord;
  readonly per_week?: number;
  readonly every?: Days;
  readonly days?: readonly Weekday[];
  readonly times_a_day?: number;
  readonly portion: ReadPortion;
  readonly remove_after?: Hours;
}

/** In words; or pieces of a size; or what is eaten in a time, with a most. */
export type ReadPortion =
  | string
  | { readonly pieces: number; readonly no_longer_than?: string }
  | { readonly as_eaten: Minutes; readonly at_most?: number };

/** Exactly one of `every` (in feeds), `times` with `weeks`, `at: the rest`. */
export interface ReadDustingRule {
  readonly id: string;
  readonly every?: number;
  readonly times?: number;
  readonly weeks?: number;
  readonly at?: 'the rest';
}

export interface ReadProfileChore {
  readonly id: string;
  readonly title: string;
  readonly every: CalendarSpan;
  readonly minutes?: Minutes;
  readonly leeway?: Days;
  readonly when_away?: WhenAwayWord;
}
export type WhenAwayWord = 'sitter' | 'before' | 'after' | 'skip';

export interface ReadSource {
  readonly cite: string;
  readonly read: 'opened' | 'excerpt' | 'memory';
}

export interface ProfileTree extends ReadTargets {
  readonly format: 1;
  readonly species: string;
  readonly name: string;
  readonly scientific: string;
  readonly activity: ActivityWord;
}
