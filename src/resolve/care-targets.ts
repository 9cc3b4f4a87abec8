/** What an animal is to have: light, warmth, humidity, water and food, by its profile and the household file. Times in minutes, humidities as fractions. */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { Weekday } from '../basics/civil.ts';
import type { Favour, FoodStream, LightHours, Range } from '../plan/plan.ts';

/** A time relative to the lights; the span is at least 0. */
export interface Edge {
  readonly of: 'after_lights_on' | 'before_lights_on' | 'before_lights_off' | 'after_lights_off';
  readonly minutes: number;
}
export type TimeOrEdge = { readonly minute: number } | Edge;

export interface Targets {
  readonly rangeLatitude: number | null;
  readonly photoperiod: Photoperiod;
  readonly day: DayPlacement;
  readonly basking: Inset | null;
  readonly uvb:
    | (Inset & { readonly fergusonZone: number | null })
    | { readonly fergusonZone: number; readonly form: 'unplaced' }
    | null;
  readonly temperature: {
    readonly dayC: Range | null;
    readonly nightC: Range | null;
    readonly baskingC: Range | null;
    readonly neverBelowC: number | null;
    readonly neverAboveC: number | null;
    /** The household file accepts temperatures outside the limits, with its reason. */
    readonly limitsWaivedBecause: string | null;
  };
  readonly humidity: {
    readonly day: Range | null;
    readonly night: Range | null;
    readonly mean: Range | null;
    readonly peak: Range | null;
    readonly peaksPerDay: Range | null;
    readonly floor: number | null;
    readonly ceiling: number | null;
    readonly soakedAtMostHours: number | null;
  };
  readonly water: {
    /** null where the profile says none or nothing. */
    readonly drink: { readonly when: LightHours; readonly mists: number; readonly atLeastSeconds: number } | null;
    readonly dish: { readonly changeEveryDays: number } | null;
    readonly soak: { readonly minutes: number; readonly perWeek: number } | null;
    readonly dryOut: { readonly atLeastMinutes: number; readonly when: LightHours; readonly below: number } | null;
    readonly noMist: readonly { readonly from: TimeOrEdge; readonly to: TimeOrEdge }[];
  };
  readonly misting:
    | {
        readonly perDay: Range;
        readonly seconds: Range;
        readonly gapMinutes: number | null;
        readonly favour: Favour | null;
      }
    | 'none'
    | null;
  readonly moistHide: { readonly humidity: Range; readonly dampenEveryDays: number } | null;
  readonly feeding: {
    readonly from: TimeOrEdge;
    readonly to: TimeOrEdge;
    readonly dryBeforeMistMinutes: number;
  } | null;
  /** Days by stage. */
  readonly mayGoWithoutDays: Readonly<Record<string, number>>;
  readonly stages: Readonly<Record<string, Stage>>;
}

export type Season =
  | { readonly kind: 'site' }
  | { readonly kind: 'native' }
  | {
      readonly kind: 'moved';
      readonly was: 'site' | 'native';
      readonly becomes: 'site' | 'native';
      readonly from: EpochDay;
      readonly overDays: number;
    };

export interface Photoperiod {
  readonly form:
    | { readonly kind: 'constant'; readonly minutes: number }
    | { readonly kind: 'seasonal'; readonly longestMinutes: number; readonly shortestMinutes: number }
    | { readonly kind: 'latitude'; readonly latitude: number | 'site' }
    | { readonly kind: 'months'; readonly minutes: readonly number[] };
  readonly season: Season;
  readonly atLeastMinutes: number | null;
  readonly atMostMinutes: number | null;
}

/** Where the daylight window sits; the no-light limits are minutes on the animal's clock. */
export interface DayPlacement {
  readonly anchor: { readonly kind: 'midday' | 'lights-on' | 'lights-off'; readonly minute: number };
  readonly noLightBeforeMinute: number | null;
  readonly noLightAfterMinute: number | null;
}

export type Inset =
  | { readonly form: 'edges'; readonly afterLightsOnMinutes: number; readonly beforeLightsOffMinutes: number }
  | { readonly form: 'hours'; readonly minutes: number }
  | { readonly form: 'spans'; readonly spans: readonly { readonly at: Edge; readonly forMinutes: number }[] };

export interface Stage {
  readonly feeds: readonly FeedRule[];
  readonly dusting: readonly DustingRule[];
  readonly apart: readonly {
    readonly between: readonly [string, string];
    readonly days: number;
    readonly path: string;
  }[];
}

export interface FeedRule {
  readonly food: FoodStream;
  readonly rhythm:
    | { readonly kind: 'per-week'; readonly times: number }
    | { readonly kind: 'every'; readonly days: number }
    | { readonly kind: 'days'; readonly days: readonly Weekday[] };
  readonly timesADay: number;
  readonly pieces: number | null;
  /** The portion in words, as printed: "5, no longer than the head is wide". */
  readonly portion: string;
  readonly asEatenMinutes: number | null;
  readonly removeAfterHours: number | null;
}

export interface DustingRule {
  readonly id: string;
  readonly rate:
    | { readonly kind: 'every-feeds'; readonly feeds: number }
    | { readonly kind: 'times'; readonly times: number; readonly weeks: number }
    | { readonly kind: 'the-rest' };
}
