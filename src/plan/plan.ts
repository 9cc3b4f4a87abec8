/**
 * The middle form: the whole plan as data. Everything that is written, drawn or served is made from it alone.
 * Dates are `YYYY-MM-DD` and both ends of a span are inclusive; times are `HH:MM` on the clock that the field names
 * (`24:00` ends a day); windows are half-open [on, off). Humidities and shares are fractions.
 */

import type { ClockTime, IsoDate, Weekday } from '../basics/civil.ts';

export type { ClockTime, IsoDate, Weekday } from '../basics/civil.ts';
export type ClockKind = 'standard' | 'wall' | 'automatic';
export type PinSense = 'down-is-on' | 'up-is-on';
export type UnitSystem = 'metric' | 'us';
export type Paper = 'a4' | 'letter';
export type Language = 'en' | 'es';
export type Range = readonly [number, number];

export interface Plan {
  readonly format: 1;
  readonly id: string;
  readonly revision: number;
  readonly made: IsoDate;
  readonly tool: string;
  readonly digests: Readonly<Record<string, string>>;
  /** What was said of each part when it was solved, and is said again while the part is copied; a part of which nothing is said is absent. */
  readonly said?: Readonly<Record<string, readonly PartMessage[]>>;
  /** The newest revision made on an earlier day, whole; its own `previous` are older ones, each with what a change sheet compares. */
  readonly previous: Plan | null;
  readonly name: string;
  readonly timezone: string;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly units: UnitSystem;
  readonly paper: Paper;
  readonly language: Language;
  readonly contacts: Readonly<Partial<Record<'keeper' | 'vet' | 'note', string>>>;
  readonly people: readonly PlanPerson[];
  readonly site: PlanSite;
  readonly enclosures: readonly PlanEnclosure[];
  readonly hardware: readonly PlanDevice[];
  readonly cautions: readonly Caution[];
  readonly sources: Readonly<Record<string, string>>;
  readonly lighting: readonly DialPlan[];
  readonly misting: readonly MistPlan[];
  readonly feeding: readonly Feed[];
  readonly rotation: readonly RotationState[];
  readonly chores: readonly Chore[];
  readonly stock: readonly StockOrder[];
  readonly away: readonly Absence[];
  readonly events: readonly PlanEvent[];
  readonly notPlanned: readonly NotPlanned[];
  readonly loads: readonly Load[];
  readonly assumptions: readonly Assumption[];
  readonly warnings: readonly Warning[];
}

export interface PartMessage {
  readonly code: string;
  readonly weight: 'error' | 'refusal' | 'warning' | 'note';
  readonly because: string;
  readonly instead: string;
  /** What it is about: a path of the household file, or a target of an enclosure; null where it has no place. */
  readonly about:
    | { readonly path: readonly (string | number)[] }
    | { readonly enclosure: string; readonly target: string }
    | null;
}

export interface PlanPerson {
  readonly id: string;
  readonly feedsAt: readonly ClockTime[];
  readonly reminderMinutes: number | null;
  readonly minutesADay: number | null;
}

export interface PlanSite {
  readonly latitude: number;
  readonly longitude: number;
  readonly standardOffsetMinutes: number;
  /** The UTC offsets in force over the plan; the first stands before the plan begins. */
  readonly offsets: readonly { readonly fromUtc: string; readonly minutes: number }[];
  /** Day length of the site, minutes, one a day of the plan. */
  readonly sunMinutes: readonly number[];
}

export interface PlanEnclosure {
  readonly id: string;
  readonly name: string;
  readonly species: string;
  readonly speciesName: string;
  readonly scientific: string;
  readonly activity: 'diurnal' | 'nocturnal' | 'crepuscular';
  readonly animals: number;
  readonly animalNames: readonly string[];
  readonly stages: readonly { readonly from: IsoDate; readonly stage: string }[];
  readonly sizeCm: readonly [number, number, number];
  readonly targets: readonly TargetRecord[];
  readonly uvIndex: { readonly fergusonZone: number; readonly mean: Range; readonly max: Range } | null;
  readonly cautions: readonly string[];
  /** Where things are, in the keeper's words. */
  readonly where: Readonly<Record<string, string>>;
  /** Spans of rest and of states that fall into the plan. */
  readonly spans: readonly {
    readonly kind: string;
    readonly from: IsoDate;
    readonly to: IsoDate;
    readonly vet: string | null;
  }[];
}

export interface TargetRecord {
  /** For instance `humidity.day` or `stages.adult.feeds`. */
  readonly path: string;
  readonly value: unknown;
  /** `1` for fractions and counts, else `°C`, `min`, `s`, `d`, `text`. */
  readonly unit: string;
  readonly origin: OriginRecord;
}

export interface OriginRecord {
  readonly kind: 'file' | 'profile' | 'default';
  readonly file?: string;
  readonly line?: number;
  readonly source?: string;
  readonly citation?: string;
  readonly read?: 'opened' | 'excerpt' | 'memory';
  readonly why?: string;
  /** Values of other sources that disagree. */
  readonly also?: readonly { readonly value: unknown; readonly source: string }[];
}

/** A device in the words that papers and pages need; the contract's `lighting`, `misting` and `loads` hold what is set on it. */
export interface PlanDevice {
  readonly id: string;
  readonly kind: string;
  /** The timer it hangs on, `always`, or null for what needs no outlet. */
  readonly outlet: string | null;
  readonly clock: ClockKind | null;
  readonly keepsTime: boolean | null;
  /** What hangs on it, as `lamp:ENCLOSURE/LAMP` and `device:ID`. */
  readonly drives: readonly string[];
  readonly where: string | null;
  /** How a programmable timer takes a line; absent on others. */
  readonly lines?: 'start-and-length' | 'on-and-off';
  readonly tank?: { readonly holdsMl: number; readonly reserveMl: number; readonly refillEveryDays: number };
}

export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly source: string;
}

export interface DialPlan {
  readonly device: string;
  readonly clock: ClockKind;
  readonly stepMinutes: number;
  readonly turnsInDays: 1 | 7;
  readonly pins: PinSense | null;
  readonly drives: readonly string[];
  readonly lamps: readonly DialLamp[];
  readonly settings: readonly DialSetting[];
  /** The day on which a person sets it for the first time, where it came into a plan that had begun; absent where it stood there already. */
  readonly setOn?: IsoDate;
  readonly targetHighMinutes: readonly number[];
  readonly targetLowMinutes: readonly number[];
  readonly targetMinutes: readonly number[];
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  readonly tradeoff: readonly Tradeoff[];
}

export interface DialLamp {
  readonly enclosure: string;
  readonly lamp: string;
  readonly uses: readonly LampUse[];
  readonly powerW: number;
  readonly targetMinutes: readonly number[];
  readonly worstErrorMinutes: number;
  readonly replaceOn: readonly IsoDate[];
}

export type LampUse = 'daylight' | 'basking' | 'uvb' | 'plants' | 'heat';

export interface Window {
  /** On a 7-day dial the weekday; else absent. */
  readonly day?: Weekday;
  readonly on: ClockTime;
  readonly off: ClockTime;
}

export interface DialSetting {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly windows: readonly Window[];
  readonly slots: readonly number[];
  readonly wall: readonly WallWindows[];
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  /** Copied from an earlier revision: it lies before the day this one was made. */
  readonly past?: true;
}

export interface WallWindows {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly windows: readonly Window[];
}

export interface Tradeoff {
  readonly settings: number;
  readonly worstErrorMinutes: number;
  readonly meanErrorMinutes: number;
  readonly largestJumpMinutes: number;
}

export interface MistEntry {
  readonly at: ClockTime;
  readonly seconds: number;
}

export interface MistPlan {
  readonly enclosure: string;
  /** null where the enclosure is not misted; `by-hand` where a person mists. */
  readonly pump: string | null;
  readonly device: string | null;
  readonly clock: ClockKind;
  readonly sets: readonly MistSet[];
  readonly targets: MistTargets;
  readonly limits: MistLimits | null;
  readonly model: AirModel;
  readonly advice: readonly MistAdvice[];
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

export interface MistSet {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly entries: readonly MistEntry[];
  readonly wall: readonly { readonly from: IsoDate; readonly to: IsoDate; readonly entries: readonly MistEntry[] }[];
  readonly interval?: {
    readonly onSeconds: number;
    readonly offSeconds: number;
    readonly poweredBy: string | null;
    readonly plugInAt?: ClockTime;
  };
  readonly allowed: readonly (readonly [ClockTime, ClockTime])[];
  readonly conditions: readonly MistCondition[];
  readonly shortfall: number;
  readonly shortfalls: readonly {
    readonly target: string;
    readonly by: number;
    readonly unit: string;
    readonly remedy: string;
  }[];
  readonly past?: true;
}

export interface MistCondition {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly dayOn: ClockTime;
  readonly dayOff: ClockTime;
  readonly roomTemperatureC: number;
  readonly roomHumidity: number;
  readonly dayTemperatureC: number;
  readonly nightTemperatureC: number;
  readonly predicted: MistPrediction;
  readonly curve: {
    readonly everyMinutes: number;
    readonly humidity: readonly number[];
    readonly leafWetness: readonly number[];
    readonly temperatureC: readonly number[];
  };
  readonly shortfall: number;
}

export interface MistPrediction {
  readonly dayHumidity: number;
  readonly nightHumidity: number;
  readonly meanHumidity: number;
  readonly lowHumidity: number;
  readonly highHumidity: number;
  readonly wetLimit: number;
  readonly dryLimit: number;
  readonly peaks: number;
  readonly hoursSoaked: number;
  readonly dryOutHours: number;
  readonly waterMlPerDay: number;
  readonly runoffMlPerDay: number;
  readonly tankDays: number | null;
}

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

export type LightHours = 'lit' | 'dark' | 'any';
export type Favour = 'dawn' | 'dusk' | 'dawn-and-dusk' | 'even';

export interface MistLimits {
  readonly entries: number;
  readonly startStepMinutes: number;
  readonly lengthStepSeconds: number;
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
  readonly restSeconds: number;
  readonly dutyFactor: number | null;
  readonly waterMlPerDay: number | null;
  readonly runoffMlPerDay: number | null;
}

export interface AirModel {
  readonly volumeM3: number;
  readonly airChangesPerHour: number;
  readonly wettableAreaM2: number;
  readonly filmCapacityG: number;
  readonly airborneShare: number;
  readonly landsShare: number;
  readonly warmUpMinutes: number;
  readonly transferMPerHour: number;
  readonly baselineGPerHour: number;
  readonly flowGPerHour: number;
  /** At the start of a run, nothing sprayed; absent: 0. */
  readonly lagSeconds?: number;
  /** After a run, tank water and run-off of this enclosure's nozzles; absent: 0. */
  readonly afterDripMl?: number;
}

export type FoodStream = 'insects' | 'greens' | 'prepared' | 'rodents';

export interface Feed {
  readonly date: IsoDate;
  readonly time: ClockTime;
  /** Position of the feed in its rotation's cycle, 0 first. */
  readonly slot: number;
  readonly enclosure: string;
  readonly food: FoodStream;
  readonly feeder: string;
  readonly count: number | null;
  readonly portion: string;
  readonly dusting: string | null;
  readonly by: string;
  readonly gutLoadFrom: IsoDate | null;
  readonly standIn: boolean;
  /** A vitamin powder that falls to the sitter: the keeper weighs it out beforehand. */
  readonly preDosed?: true;
  readonly past?: true;
}

export interface RotationState {
  readonly enclosure: string;
  readonly food: FoodStream;
  readonly cycleFeeds: number;
  readonly nextIndex: number;
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

export interface Chore {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly who: string;
  readonly minutes: number;
  readonly enclosure: string | null;
  /** Who says so: `household`, `practice` (common practice, no source), `ours`, or a citation. */
  readonly source?: string;
  readonly dates: readonly IsoDate[];
  readonly moved: readonly { readonly due: IsoDate; readonly on: IsoDate }[];
}

export interface StockOrder {
  readonly date: IsoDate;
  readonly feeder: string;
  readonly amount: number;
  readonly why: string;
}

export interface Absence {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly sitter: string;
  readonly visits: readonly IsoDate[];
}

export interface PlanEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly stamp: string;
  readonly status: 'CONFIRMED' | 'CANCELLED';
  readonly title: string;
  readonly description: string;
  readonly category: string;
  /** `YYYY-MM-DDTHH:MM` in the plan's zone, `YYYY-MM-DD` where all day. */
  readonly start: string;
  readonly minutes: number;
  readonly allDay: boolean;
  readonly rule: string | null;
  readonly until: string | null;
  readonly exdates: readonly string[];
  readonly alarmMinutes: number | null;
  readonly for: string;
  readonly kind: string;
  readonly task: string;
  readonly slot: number;
}

export interface NotPlanned {
  readonly lamp: string;
  readonly device: string | null;
  readonly why: string;
}

export interface Load {
  readonly device: string;
  readonly peakW: number;
  readonly continuousW: number;
  readonly ratingW: number | null;
}

export interface Assumption {
  readonly path: string;
  readonly value: number | string;
  readonly source: string;
}

export interface Warning {
  readonly code: string;
  readonly message: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
}
