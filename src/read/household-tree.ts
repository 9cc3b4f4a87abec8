/** The household file as it was read: its own keys and order, quantities in base units, what is not said left out. */
import type { EpochDay } from '../basics/calendar-day.ts';
import type { Weekday } from '../basics/civil.ts';
import type {
  CalendarSpan,
  Celsius,
  Days,
  Grams,
  GramsPerHour,
  GramsPerKilogram,
  GramsPerSquareMetre,
  Hours,
  Metres,
  MetresPerHour,
  Millilitres,
  Minutes,
  Seconds,
  Share,
  SquareMetres,
  Watts,
} from '../basics/units-of-measure.ts';
import type { FoodWord, ReadTargets, WhenAwayWord } from './targets.ts';

export interface HouseholdTree {
  readonly format: 1;
  readonly id?: string;
  readonly name: string;
  readonly language?: 'en' | 'es';
  readonly units?: 'metric' | 'us';
  readonly paper?: 'a4' | 'letter';
  readonly contacts?: { readonly keeper?: string; readonly vet?: string; readonly note?: string };
  readonly site: ReadSite;
  readonly plan: ReadPlan;
  readonly people?: readonly ReadPerson[];
  /** Spans [from, to) in minutes of wall time; to before from passes midnight. */
  readonly noise?: { readonly none: readonly (readonly [Minutes, Minutes])[] };
  readonly shopping?: { readonly days: readonly Weekday[]; readonly reserve?: Days };
  readonly hardware?: readonly ReadDevice[];
  readonly enclosures: readonly ReadEnclosure[];
  readonly away?: readonly ReadAbsence[];
  readonly shortage?: readonly { readonly from: EpochDay; readonly to: EpochDay; readonly feeder: string }[];
}

export interface ReadSite {
  readonly timezone: string;
  /** Degrees, north positive, -90 to 90. */
  readonly latitude: number;
  /** Degrees, east positive, -180 to 180. */
  readonly longitude: number;
  readonly room: ReadRoom;
}

/** One value for the whole year, or twelve, January first. */
export interface ReadRoom {
  readonly day: Celsius | readonly Celsius[];
  readonly night: Celsius | readonly Celsius[];
  readonly humidity: Share | readonly Share[];
}

export interface ReadPlan {
  readonly from: EpochDay;
  readonly days?: number;
  readonly change_on?: readonly Weekday[];
  readonly settings_at_most?: number;
  readonly tolerance?: Minutes;
  readonly at_least_between?: Days;
  readonly jump_at_most?: Minutes;
  readonly mist_sets_at_most?: number;
}

export interface ReadPerson {
  readonly id: string;
  readonly chores_on?: Weekday;
  readonly reminder?: Minutes;
  /** Wall-clock minutes, in the file's order. */
  readonly feeds_at?: readonly Minutes[];
  readonly minutes_a_day?: Minutes;
  readonly shops?: boolean;
}

/** A timer's id, `always` (a live outlet), or for lamps `auto`. */
export type OutletWord = string;
interface DeviceKeys {
  readonly id: string;
  readonly where?: string;
}
export interface ReadPinDial extends DeviceKeys {
  readonly kind: 'pin-dial';
  readonly step: Minutes;
  readonly turns_in?: 1 | 7;
  readonly outlets?: number;
  readonly rating?: Watts;
  readonly pins?: 'down-is-on' | 'up-is-on';
  readonly clock?: 'standard' | 'wall';
  readonly now?: { readonly on: Minutes; readonly off: Minutes };
  readonly outlet?: OutletWord;
}
export interface ReadProgrammableTimer extends DeviceKeys {
  readonly kind: 'programmable-timer';
  readonly entries: number;
  /** What a line of it holds. */
  readonly lines?: 'start-and-length' | 'on-and-off';
  readonly resolution?: Seconds;
  readonly shortest?: Seconds;
  readonly outlets?: number;
  readonly rating?: Watts;
  readonly clock?: 'standard' | 'wall' | 'automatic';
  readonly keeps_time?: boolean;
  readonly outlet?: OutletWord;
}
export interface ReadRepeatCycleTimer extends DeviceKeys {
  readonly kind: 'repeat-cycle-timer';
  readonly on: { readonly from: Seconds; readonly to: Seconds };
  readonly off: { readonly from: Seconds; readonly to: Seconds };
  readonly resolution?: Seconds;
  readonly outlets?: number;
  readonly rating?: Watts;
  readonly outlet?: OutletWord;
}
export interface ReadMistPump extends DeviceKeys {
  readonly kind: 'mist-pump' | 'fogger';
  readonly outlet: OutletWord;
  readonly power: Watts;
  /** Through each nozzle. */
  readonly flow: GramsPerHour;
  readonly nozzles?: number;
  readonly lands?: Share;
  readonly airborne?: Share;
  readonly lag?: Seconds;
  readonly after_drip?: Millilitres;
  readonly longest_run?: Seconds;
  readonly rest?: Seconds;
  readonly duty?: Share;
  readonly start_step?: Minutes;
  readonly length_step?: Seconds;
  readonly tank?: { readonly holds: Millilitres; readonly reserve?: Millilitres; readonly refill_every?: Days };
}
export interface ReadDripper extends DeviceKeys {
  readonly kind: 'dripper';
  readonly outlet?: OutletWord;
  readonly power?: Watts;
  readonly flow: GramsPerHour;
  readonly bowl?: { readonly holds: Millilitres; readonly empty_every: Days };
  readonly runs:
    | 'always'
    | { readonly every: Minutes; readonly for: Minutes }
    | { readonly after_a: 'mist'; readonly for: Minutes };
}
export interface ReadHandSprayer extends DeviceKeys {
  readonly kind: 'hand-sprayer';
  readonly flow: GramsPerHour;
}
export type ReadDevice =
  | ReadPinDial
  | ReadProgrammableTimer
  | ReadRepeatCycleTimer
  | ReadMistPump
  | ReadDripper
  | ReadHandSprayer;

export interface ReadEnclosure {
  readonly id: string;
  readonly name?: string;
  /** A profile's id, or a relative path of a profile file. */
  readonly species: string;
  readonly stage: string | readonly { readonly from: EpochDay; readonly stage: string }[];
  readonly animals?: number | readonly ReadAnimal[];
  readonly size: { readonly width: Metres; readonly depth: Metres; readonly height: Metres };
  readonly open: Share;
  readonly planting?: 'none' | 'light' | 'medium' | 'dense';
  readonly floor?: 'dry' | 'damp-below';
  readonly tray?: { readonly holds: Millilitres; readonly empty_every: Days };
  readonly where?: Readonly<Record<string, string>>;
  readonly lamps?: readonly ReadLamp[];
  /** The id of a pump or fogger, or `auto`, `by-hand`, `none`. */
  readonly mist?: string;
  readonly dripper?: string;
  readonly nozzles?: { readonly count?: number; readonly hits_lamp?: boolean };
  readonly air?: ReadAir;
  readonly targets?: ReadTargets;
  readonly rest?: ReadRest;
  readonly states?: readonly ReadState[];
  /** Last dates by feed, dusting or content. */
  readonly last?: Readonly<Record<string, EpochDay>>;
  readonly supplements?: readonly ReadSupplement[];
  readonly feeders?: readonly ReadFeeder[];
  readonly chores?: readonly ReadChore[];
  /** Default chores switched on or off, by id. */
  readonly defaults?: Readonly<Record<string, boolean>>;
}

export interface ReadAnimal {
  readonly name?: string;
  readonly sex?: 'male' | 'female' | 'unknown';
  /** `YYYY`, `YYYY-MM` or `YYYY-MM-DD`. */
  readonly born?: string;
  readonly weight?: Grams;
}

export type LampUseWord = 'daylight' | 'basking' | 'uvb' | 'plants' | 'heat';
export interface ReadLamp {
  readonly id: string;
  readonly kind: 'halogen' | 'mercury' | 'metal-halide' | 'fluorescent' | 'led' | 'ceramic' | 'mat' | 'cable';
  readonly for: readonly LampUseWord[];
  readonly power: Watts;
  readonly outlet: OutletWord;
  readonly thermostat?: 'none' | 'on-off' | 'pulse' | 'dimming';
  readonly fitted?: EpochDay;
  readonly replace_after?: CalendarSpan | { readonly unit: 'hour'; readonly count: Hours };
  readonly guard?: boolean;
  /** A difference. */
  readonly warms?: Celsius;
}

export interface ReadAir {
  readonly changes_per_hour?: number;
  readonly wettable_area?: SquareMetres;
  readonly film?: GramsPerSquareMetre;
  readonly transfer?: MetresPerHour;
  readonly base_evaporation?: GramsPerHour;
  readonly warm_up?: Minutes;
}

export interface ReadRest {
  readonly kind: 'brumation' | 'cooling' | 'fast';
  readonly from: EpochDay;
  readonly weeks: number;
  readonly ramp?: Days;
  readonly last_feed?: Days;
  readonly targets?: ReadTargets;
  readonly checked_by_vet?: EpochDay;
}

export interface ReadState {
  readonly is: 'new' | 'quarantine' | 'gravid' | 'shedding' | 'ill';
  readonly from: EpochDay;
  readonly to: EpochDay;
  readonly vet?: string;
}

export interface ReadSupplement {
  readonly id: string;
  readonly contains?: readonly ('d3' | 'vitamin-a')[];
  readonly opened?: EpochDay;
  readonly good_for?: CalendarSpan;
}

export interface ReadFeeder {
  readonly id: string;
  readonly food?: FoodWord;
  readonly share?: Share;
  readonly count?: number;
  readonly dust?: boolean;
  readonly shelf_life?: Days;
  /** Share lost a week. */
  readonly losses?: Share;
  readonly gut_load?: Hours;
  readonly in_stock?: number;
  readonly stand_in?: boolean;
  readonly calcium?: GramsPerKilogram;
  readonly phosphorus?: GramsPerKilogram;
  readonly culture?: { readonly first_after: Days; readonly lasts: Days; readonly keep: number };
}

/** Exactly one of `every`, `on`, `lamp_hours`. */
export interface ReadChore {
  readonly id: string;
  readonly title: string;
  readonly every?: CalendarSpan;
  readonly on?: readonly EpochDay[];
  readonly lamp_hours?: Hours;
  readonly minutes?: Minutes;
  readonly leeway?: Days;
  readonly who?: string;
  readonly when_away?: WhenAwayWord;
}

export interface ReadAbsence {
  readonly from: EpochDay;
  readonly to: EpochDay;
  /** Left out: nobody comes. */
  readonly sitter?: string;
  /** Left out with a sitter: as the keeper's absence asks, chosen later. */
  readonly visits?: { readonly every: Days } | { readonly dates: readonly EpochDay[] };
}
