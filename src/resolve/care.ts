/**
 * The household without shorthand or gaps: profile and file merged, every quantity in one unit, every value with its origin.
 * What `solve/` works from; it knows nothing of YAML. Times of day are minutes, dates are day numbers, shares are fractions.
 * The targets of an animal stand beside it in `care-targets.ts`, and are had from here.
 */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { Weekday } from '../basics/civil.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Device, Outlet } from '../hardware/devices.ts';
import type { FoodStream, LampUse, Language, Paper, Range, TargetRecord, UnitSystem } from '../plan/plan.ts';
import type { MeasuredAir } from '../science/enclosure-defaults.ts';
import type { Photoperiod, Targets } from './care-targets.ts';

export type * from './care-targets.ts';

export type Path = readonly (string | number)[];

export interface Care {
  /** Place of a path of the household file, or of its nearest parent that stands there. */
  readonly placeOf: (path: Path) => Place;
  /** Place of the line that said a target of an enclosure: in the file, or in its profile; null where it is a default. */
  readonly placeOfTarget: (enclosure: string, targetPath: string) => Place | null;
  readonly id: string | null;
  readonly name: string;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly paper: Paper;
  readonly contacts: Readonly<Partial<Record<'keeper' | 'vet' | 'note', string>>>;
  readonly site: CareSite;
  readonly plan: CarePlan;
  readonly people: readonly Person[];
  /** Wall-clock spans [from, to) in which no pump may run; to before from passes midnight. */
  readonly noise: readonly MinuteSpan[];
  readonly shopping: { readonly days: readonly Weekday[]; readonly reserveDays: number };
  readonly devices: readonly Device[];
  readonly enclosures: readonly CareEnclosure[];
  readonly away: readonly CareAbsence[];
  readonly shortages: readonly {
    readonly from: EpochDay;
    readonly to: EpochDay;
    readonly feeder: string;
    readonly path: Path;
  }[];
  /** Citations by source key, of every profile in use. */
  readonly sources: Readonly<Record<string, string>>;
  readonly cautions: readonly { readonly id: string; readonly text: string; readonly source: string }[];
}

export interface MinuteSpan {
  readonly fromMinute: number;
  readonly toMinute: number;
}

export interface CareSite {
  readonly timezone: string;
  readonly latitude: number;
  readonly longitude: number;
  /** Twelve, January first; humidity as a fraction of saturation at the day temperature. */
  readonly roomByMonth: readonly { readonly dayC: number; readonly nightC: number; readonly humidity: number }[];
}

export interface CarePlan {
  readonly from: EpochDay;
  readonly days: number;
  /** null: any day. */
  readonly changeOn: readonly Weekday[] | null;
  readonly settingsAtMost: number | null;
  readonly toleranceMinutes: number | null;
  readonly atLeastBetweenDays: number;
  readonly jumpAtMostMinutes: number | null;
  readonly mistSetsAtMost: number;
}

export interface Person {
  readonly id: string;
  /** null: no preferred day. */
  readonly choresOn: Weekday | null;
  readonly reminderMinutes: number | null;
  /** Wall-clock minutes, ascending; empty where the file does not say. */
  readonly feedsAtMinutes: readonly number[];
  readonly minutesADay: number | null;
  readonly shops: boolean;
}

export interface CareAbsence {
  readonly from: EpochDay;
  readonly to: EpochDay;
  /** null: nobody comes. */
  readonly sitter: string | null;
  readonly visits: readonly EpochDay[];
  readonly path: Path;
}

export interface CareEnclosure {
  readonly id: string;
  readonly path: Path;
  readonly name: string;
  readonly species: string;
  readonly speciesName: string;
  readonly scientific: string;
  readonly activity: 'diurnal' | 'nocturnal' | 'crepuscular';
  readonly animals: readonly Animal[];
  readonly animalCount: number;
  /** Spans of the plan in order, the first from the plan's start or before. */
  readonly stages: readonly { readonly from: EpochDay; readonly stage: string }[];
  readonly sizeM: { readonly width: number; readonly depth: number; readonly height: number };
  readonly openShare: number;
  readonly planting: 'none' | 'light' | 'medium' | 'dense';
  readonly floor: 'dry' | 'damp-below';
  readonly tray: { readonly holdsG: number; readonly emptyEveryDays: number } | null;
  readonly where: Readonly<Record<string, string>>;
  readonly lamps: readonly Lamp[];
  /** Device id of a pump or fogger, or how it is misted else. */
  readonly mist: string | 'auto' | 'by-hand' | 'none';
  readonly dripper: string | null;
  readonly nozzles: { readonly count: number; readonly hitsLamp: boolean | null };
  /** What the file says, else what was fitted to a gauge log. */
  readonly air: Partial<AirOverrides>;
  /** What of `air` was fitted; absent or null where nothing was. */
  readonly fittedAir?: FittedAir | null;
  readonly targets: Targets;
  /** The same targets as printable records, each with its origin, ordered by path. */
  readonly targetRecords: readonly TargetRecord[];
  readonly rest: Rest | null;
  readonly states: readonly AnimalState[];
  /** Last dates by feed id, dusting id or content, before the plan. */
  readonly last: Readonly<Record<string, EpochDay>>;
  readonly supplements: readonly Supplement[];
  readonly feeders: readonly Feeder[];
  readonly chores: readonly CareChore[];
  /** Default chores switched off, by id. */
  readonly choresOff: readonly string[];
  /** Ids of the cautions that concern this enclosure; their texts stand in `Care.cautions`. */
  readonly cautions: readonly string[];
}

export interface Animal {
  readonly name: string | null;
  readonly sex: string | null;
  readonly born: string | null;
  readonly weightG: number | null;
}

/** Air values that stand instead of our estimates. */
export type AirOverrides = MeasuredAir;

/** Air values from a gauge log, each with where it comes from; values that the file says itself are left out. */
export interface FittedAir {
  readonly values: Partial<AirOverrides>;
  readonly sources: Readonly<Partial<Record<keyof AirOverrides, string>>>;
}

export type LampKind = 'halogen' | 'mercury' | 'metal-halide' | 'fluorescent' | 'led' | 'ceramic' | 'mat' | 'cable';

export interface Lamp {
  readonly id: string;
  readonly path: Path;
  readonly kind: LampKind;
  readonly uses: readonly LampUse[];
  readonly powerW: number;
  readonly outlet: Outlet;
  readonly thermostat: 'none' | 'on-off' | 'pulse' | 'dimming';
  readonly fitted: EpochDay | null;
  readonly replaceAfter: { readonly months: number } | { readonly days: number } | null;
  readonly replaceAfterHours: number | null;
  readonly guard: boolean | null;
  readonly warmsC: number | null;
}

export interface Rest {
  readonly kind: 'brumation' | 'cooling' | 'fast';
  readonly path: Path;
  readonly from: EpochDay;
  readonly weeks: number;
  readonly rampWeeks: number;
  readonly lastFeedDays: number;
  readonly checkedByVet: EpochDay | null;
  /** The keeper's own targets in rest; each blends in over the first ramp and out over the last. */
  readonly photoperiod: Photoperiod | null;
  readonly temperature: { readonly dayC: Range | null; readonly nightC: Range | null } | null;
  readonly humidity: Partial<Targets['humidity']> | null;
}

export interface AnimalState {
  readonly is: 'new' | 'quarantine' | 'gravid' | 'shedding' | 'ill';
  readonly path: Path;
  readonly from: EpochDay;
  readonly to: EpochDay;
  readonly vet: string | null;
}

export type Content = 'd3' | 'vitamin-a';

export interface Supplement {
  readonly id: string;
  readonly path: Path;
  readonly contains: readonly Content[];
  /** False where the file does not say and a default was taken. */
  readonly said: boolean;
  readonly opened: EpochDay | null;
  readonly goodForDays: number | null;
}

export interface Feeder {
  readonly id: string;
  readonly path: Path;
  readonly food: FoodStream;
  readonly share: number;
  readonly count: number | null;
  readonly dust: boolean;
  readonly shelfLifeDays: number | null;
  readonly lossesPerWeek: number;
  readonly gutLoadHours: number | null;
  readonly inStock: number | null;
  readonly standIn: boolean;
  readonly calciumGPerKg: number | null;
  readonly phosphorusGPerKg: number | null;
  readonly culture: { readonly firstAfterDays: number; readonly lastsDays: number; readonly keep: number } | null;
}

export interface CareChore {
  readonly id: string;
  readonly path: Path;
  readonly title: string;
  readonly rhythm:
    | { readonly kind: 'days'; readonly every: number }
    | { readonly kind: 'weeks'; readonly every: number }
    | { readonly kind: 'months'; readonly every: number }
    | { readonly kind: 'lamp-hours'; readonly hours: number }
    | { readonly kind: 'dates'; readonly dates: readonly EpochDay[] };
  readonly minutes: number;
  /** null: the default of its interval. */
  readonly leewayDays: number | null;
  readonly who: string;
  readonly whenAway: 'sitter' | 'before' | 'after' | 'skip';
  readonly origin: { readonly kind: 'file' | 'profile' | 'default'; readonly source: string };
}
