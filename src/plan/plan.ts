/**
 * The middle form: the whole plan as data. Everything that is written, drawn or served is made from it alone.
 * Dates are `YYYY-MM-DD` and both ends of a span are inclusive; times are `HH:MM` on the clock that the field names
 * (`24:00` ends a day); windows are half-open [on, off). Humidities and shares are fractions.
 * Its parts by subject stand beside it in `light-plan.ts`, `mist-plan.ts`, `feed-plan.ts` and `work-plan.ts`; all are had from here.
 */

import type { ClockTime, IsoDate } from '../basics/civil.ts';
import type { Feed, RotationState, StockOrder } from './feed-plan.ts';
import type { ClockKind, DialPlan } from './light-plan.ts';
import type { MistPlan, Range } from './mist-plan.ts';
import type { Absence, Chore, PlanEvent } from './work-plan.ts';

export type { ClockTime, IsoDate, Weekday } from '../basics/civil.ts';
export type * from './feed-plan.ts';
export type * from './light-plan.ts';
export type * from './mist-plan.ts';
export type * from './work-plan.ts';
export type UnitSystem = 'metric' | 'us';
export type Paper = 'a4' | 'letter';
export type Language = 'en' | 'es';

export interface Plan {
  readonly format: 1;
  readonly id: string;
  /** 1 for the first; one more each time anything is said differently. */
  readonly revision: number;
  /** The day it was made on; the plan's first where that is later. */
  readonly made: IsoDate;
  /** Name and version of the program. */
  readonly tool: string;
  /** Of each part's problem, by part: where one stands, the part is copied. */
  readonly digests: Readonly<Record<string, string>>;
  /** What was said of each part when it was solved, and is said again while the part is copied; a part of which nothing is said is absent. */
  readonly said?: Readonly<Record<string, readonly PartMessage[]>>;
  /** The newest revision made on an earlier day (on the first day the first one), whole; its own `previous` are older ones, each with what a change sheet compares. */
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
  /** How good the places are that `auto` found; absent where nothing was left to it. */
  readonly auto?: readonly AutoPlaces[];
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
  /** By the wall's clock, ascending; empty where the file does not say. */
  readonly feedsAt: readonly ClockTime[];
  /** Before an event; null: no reminder. */
  readonly reminderMinutes: number | null;
  /** The most work of a day; null: no limit. */
  readonly minutesADay: number | null;
}

export interface PlanSite {
  /** Degrees, north and east positive. */
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
  /** Width, depth, height. */
  readonly sizeCm: readonly [number, number, number];
  readonly targets: readonly TargetRecord[];
  /** Lamps and heaters that no timer switches; absent where there are none. */
  readonly live?: readonly LiveLamp[];
  /** null: no Ferguson zone is said for it. */
  readonly uvIndex: { readonly fergusonZone: number; readonly mean: Range; readonly max: Range } | null;
  readonly cautions: readonly string[];
  /** Where things are, in the keeper's words. */
  readonly where: Readonly<Record<string, string>>;
  /** Spans of rest and of states that fall into the plan. */
  readonly spans: readonly EnclosureSpan[];
}

export interface EnclosureSpan {
  readonly kind: string;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly vet: string | null;
  /** The targets of a rest where the file gives any; absent in states. */
  readonly resting?: RestingTargets;
}

/** Targets that hold between the ramps of a rest, blended in and out over them; null where the rest says nothing. */
export interface RestingTargets {
  readonly rampDays: number;
  readonly dayC: Range | null;
  readonly nightC: Range | null;
  readonly dayHumidity: Range | null;
  readonly nightHumidity: Range | null;
  readonly meanHumidity: Range | null;
}

/** A lamp or heater on a live socket. */
export interface LiveLamp {
  readonly lamp: string;
  readonly powerW: number;
  /** Whether a thermostat stands before it. */
  readonly isRegulated: boolean;
}

export interface TargetRecord {
  /** For instance `humidity.day` or `stages.adult.feeds`. */
  readonly path: string;
  readonly value: unknown;
  /** `1` for fractions and counts, else `°C`, `min`, `s`, `d`, `text`. */
  readonly unit: string;
  readonly origin: OriginRecord;
}

/** Who says so: a line of the household file, a profile with its source, or a default. */
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

/** A device in the words that papers and pages need; `lighting`, `misting` and `loads` hold what is set on it. */
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

/** A lamp that is left out of the plan, and why. */
export interface NotPlanned {
  readonly lamp: string;
  readonly device: string | null;
  readonly why: string;
}

/** What `auto` placed together, held against a bound that no arrangement is under. */
export interface AutoPlaces {
  readonly kind: 'lamps' | 'pumps';
  /** Lamps as `ENCLOSURE/LAMP`, or enclosures. */
  readonly placed: readonly string[];
  /** Whether no arrangement is better. */
  readonly isProven: boolean;
  /** What was weighed, the first before the second. */
  readonly levels: readonly AutoLevel[];
}

/** One thing weighed, and what no arrangement is under. */
export interface AutoLevel {
  /**
   * `worst-error`: minutes, of the worst day; `errors-a-day`: minutes, of all timers and of the lamps that follow one, mean of a day;
   * `limits-exceeded`: hard limits of the worst pump; `worst-shortfall`, `shortfalls`: as the mists count them, of the worst enclosure and
   * of all added up.
   */
  readonly name: 'limits-exceeded' | 'worst-error' | 'errors-a-day' | 'worst-shortfall' | 'shortfalls';
  readonly value: number;
  readonly atLeast: number;
}

export interface Load {
  readonly device: string;
  readonly peakW: number;
  readonly continuousW: number;
  readonly ratingW: number | null;
}

/** A number that was taken and not given. */
export interface Assumption {
  /** Where it stands in the plan, for instance `misting[0].model.transferMPerHour`. */
  readonly path: string;
  readonly value: number | string;
  readonly source: string;
}

/** What was said to the keeper and counts; place as in `Place`, null where there is none. */
export interface Warning {
  readonly code: string;
  readonly message: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
}
