/** What a plan says of water: the mists of an enclosure, what they are to reach, and what the air does under them. */
import type { ClockTime, IsoDate } from '../basics/civil.ts';
import type { ToldModel } from '../science/plan-day.ts';
import type { ClockKind } from './light-plan.ts';

/** Low and high, both included. */
export type Range = readonly [number, number];

export interface MistPlan {
  readonly enclosure: string;
  /** null where the enclosure is not misted; `by-hand` where a person mists. */
  readonly pump: string | null;
  /** The timer that runs the pump; null where a person mists or nothing is misted. */
  readonly device: string | null;
  readonly clock: ClockKind;
  readonly sets: readonly MistSet[];
  readonly targets: MistTargets;
  /** null where no machine mists. */
  readonly limits: MistLimits | null;
  readonly model: AirModel;
  readonly advice: readonly MistAdvice[];
}

export interface MistEntry {
  readonly at: ClockTime;
  readonly seconds: number;
}

/** What the timer is set to over a span, and what comes of it. */
export interface MistSet {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** By the timer's own clock. */
  readonly entries: readonly MistEntry[];
  /** The same by the clock on the wall, a span for each offset in force. */
  readonly wall: readonly { readonly from: IsoDate; readonly to: IsoDate; readonly entries: readonly MistEntry[] }[];
  /** On a repeat-cycle timer alone; `entries` are what it makes. */
  readonly interval?: {
    readonly onSeconds: number;
    readonly offSeconds: number;
    /** The timer that it hangs on; null on a live outlet. */
    readonly poweredBy: string | null;
    readonly plugInAt?: ClockTime;
  };
  /** Starts allowed under all conditions, half-open. */
  readonly allowed: readonly (readonly [ClockTime, ClockTime])[];
  readonly conditions: readonly MistCondition[];
  /** The worst condition's. */
  readonly shortfall: number;
  readonly shortfalls: readonly {
    readonly target: string;
    /** In `unit`: `1` for humidities, else `h`, `min`, `s`, `g/day`, `mists`, `peaks`. */
    readonly by: number;
    readonly unit: string;
    readonly remedy: string;
  }[];
  /** Copied from an earlier revision: it lies before the day this one was made. */
  readonly past?: true;
}

/** Days of a set with the same room and the same light, and what the air does on each of them. */
export interface MistCondition {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** When its light goes on and off, by the timer's clock. */
  readonly dayOn: ClockTime;
  readonly dayOff: ClockTime;
  readonly roomTemperatureC: number;
  readonly roomHumidity: number;
  readonly dayTemperatureC: number;
  readonly nightTemperatureC: number;
  readonly predicted: MistPrediction;
  /** From 00:00 by the timer's clock. */
  readonly curve: {
    readonly everyMinutes: number;
    readonly humidity: readonly number[];
    /** Share of the film that the leaves can hold, 0 to 1. */
    readonly leafWetness: readonly number[];
    readonly temperatureC: readonly number[];
  };
  readonly shortfall: number;
}

/** Figures of one day under a set, by the model; humidities as fractions. */
export interface MistPrediction {
  readonly dayHumidity: number;
  readonly nightHumidity: number;
  readonly meanHumidity: number;
  readonly lowHumidity: number;
  readonly highHumidity: number;
  /** Where the air would settle with all leaves wet, and with all of them dry. */
  readonly wetLimit: number;
  readonly dryLimit: number;
  readonly peaks: number;
  readonly hoursSoaked: number;
  readonly dryOutHours: number;
  readonly waterMlPerDay: number;
  readonly runoffMlPerDay: number;
  /** null: no tank. */
  readonly tankDays: number | null;
}

/** What the mists are to reach; null where nothing is asked. Humidities as fractions. */
export interface MistTargets {
  readonly dayHumidity: Range | null;
  readonly nightHumidity: Range | null;
  readonly meanHumidity: Range | null;
  readonly peakHumidity: Range | null;
  readonly peaksPerDay: Range | null;
  readonly floorHumidity: number | null;
  readonly ceilingHumidity: number | null;
  readonly soakedAtMostHours: number | null;
  readonly dryOut: { readonly hours: number; readonly when: LightHours; readonly below: number } | null;
  readonly drink: { readonly when: LightHours; readonly mists: number; readonly seconds: number } | null;
  readonly cadence: { readonly perDay: Range; readonly seconds: Range; readonly gapMinutes: number | null } | null;
  readonly favour: Favour;
}

/** While the daylight is on, while it is off, or either. */
export type LightHours = 'lit' | 'dark' | 'any';
/** Where in the day mists are to stand where the targets leave a choice. */
export type Favour = 'dawn' | 'dusk' | 'dawn-and-dusk' | 'even';

/** What pump, timer, tank and tray allow in a day. */
export interface MistLimits {
  /** At most so many mists. */
  readonly entries: number;
  readonly startStepMinutes: number;
  readonly lengthStepSeconds: number;
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
  readonly restSeconds: number;
  /** The most of any hour that the pump may run, 0 to 1; null: no limit. */
  readonly dutyFactor: number | null;
  readonly waterMlPerDay: number | null;
  readonly runoffMlPerDay: number | null;
}

/** Something to know or to do about the water of an enclosure. */
export interface MistAdvice {
  readonly code: string;
  readonly message: string;
  /** What the message is made of, by name; absent where there is nothing to name. */
  readonly values?: Readonly<Record<string, string | number>>;
  /** What of the household it is about, for the place of a warning; absent where it is only told. */
  readonly about?: MistSubject;
}

export type MistSubject = 'mist' | 'open' | 'tank' | 'tray' | 'noise' | 'size' | 'room' | 'sets' | `targets.${string}`;

/** The air model of an enclosure, with all that it takes to simulate a day again. */
export type AirModel = ToldModel;
