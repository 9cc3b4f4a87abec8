/** The devices that a household can name, in SI-like units that a timer speaks: minutes, seconds, watts, grams of water (1 mL = 1 g). */
import type { ClockKind, PinSense } from '../plan/plan.ts';

/** Where a device or lamp gets its power: a timer's id, a live outlet, or `auto` (lamps only; chosen by the solver). */
export type Outlet = string | 'always' | 'auto';

interface DeviceBase {
  readonly id: string;
  /** Path of the device in the household file, for messages. */
  readonly path: readonly (string | number)[];
  readonly where: string | null;
}

export interface PinDial extends DeviceBase {
  readonly kind: 'pin-dial';
  readonly stepMinutes: number;
  readonly turnsInDays: 1 | 7;
  readonly outlets: number;
  readonly ratingW: number | null;
  readonly pins: PinSense;
  readonly clock: 'standard' | 'wall';
  /** What stands on it today; off before on passes midnight; equal: nothing. */
  readonly now: { readonly onMinute: number; readonly offMinute: number } | null;
  /** Where it is plugged in itself. */
  readonly outlet: Outlet;
}

export interface ProgrammableTimer extends DeviceBase {
  readonly kind: 'programmable-timer';
  readonly entries: number;
  readonly entryForm: 'start-and-length' | 'on-and-off';
  readonly resolutionSeconds: number;
  readonly shortestSeconds: number;
  readonly outlets: number;
  readonly ratingW: number | null;
  readonly clock: ClockKind;
  readonly keepsTime: boolean;
  readonly outlet: Outlet;
}

export interface RepeatCycleTimer extends DeviceBase {
  readonly kind: 'repeat-cycle-timer';
  readonly onSeconds: readonly [number, number];
  readonly offSeconds: readonly [number, number];
  readonly resolutionSeconds: number;
  readonly outlets: number;
  readonly ratingW: number | null;
  readonly outlet: Outlet;
}

export interface MistPump extends DeviceBase {
  readonly kind: 'mist-pump' | 'fogger';
  readonly outlet: Outlet;
  readonly powerW: number;
  /** Through one nozzle. */
  readonly flowGPerHour: number;
  readonly nozzles: number;
  readonly landsShare: number;
  readonly airborneShare: number;
  readonly lagSeconds: number;
  readonly afterDripG: number;
  readonly longestRunSeconds: number;
  readonly restSeconds: number;
  readonly dutyFactor: number | null;
  readonly startStepMinutes: number;
  readonly lengthStepSeconds: number;
  readonly tank: { readonly holdsG: number; readonly reserveG: number; readonly refillEveryDays: number } | null;
}

export interface Dripper extends DeviceBase {
  readonly kind: 'dripper';
  readonly outlet: Outlet;
  readonly powerW: number;
  readonly flowGPerHour: number;
  readonly bowl: { readonly holdsG: number; readonly emptyEveryDays: number } | null;
  readonly runs:
    | 'always'
    | { readonly everyMinutes: number; readonly forMinutes: number }
    | { readonly afterMistMinutes: number };
}

export interface HandSprayer extends DeviceBase {
  readonly kind: 'hand-sprayer';
  readonly flowGPerHour: number;
}

export type Device = PinDial | ProgrammableTimer | RepeatCycleTimer | MistPump | Dripper | HandSprayer;
export type Timer = PinDial | ProgrammableTimer | RepeatCycleTimer;
