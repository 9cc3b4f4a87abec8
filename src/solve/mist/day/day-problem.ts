/**
 * The question "which mists on one day", as the solver takes it: one pump, and every enclosure and condition that its entries serve at once.
 * All times are minutes of the day on the mist timer's clock.
 */

import type { Favour, LightHours, Range } from '../../../plan/plan.ts';
import type { MinuteSpan, Targets } from '../../../resolve/care.ts';
import type { AirDay, Run, Spray, WetEnclosure } from '../../../science/enclosure-day.ts';

export type HumidityTargets = Targets['humidity'];

/** What pump and timer can do; never given up. */
export interface MistMachine {
  readonly entriesAtMost: number;
  /** Starts are multiples of it from 00:00, lengths multiples of the length step. */
  readonly startStepMinutes: number;
  readonly lengthStepSeconds: number;
  /** Least length that timer and pump can make; without a cadence at least 15 s. */
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
  readonly restSeconds: number;
  /** Share of any 10 min that the pump may run; null: no limit. */
  readonly dutyFactor: number | null;
  /** Tank water of one run of all nozzles of the pump. */
  readonly pumpFlowGPerHour: number;
  readonly lagSeconds: number;
  readonly afterDripG: number;
}

/** Spans [from, to) of the day, over midnight where to is not after from; an empty list forbids nothing. */
export interface Forbidden {
  /** No start: cold air in the dark, dusted feeds. Never given up. */
  readonly starts: readonly MinuteSpan[];
  /** No water running: hot lamps. Never given up. */
  readonly runs: readonly MinuteSpan[];
  readonly noise: readonly MinuteSpan[];
  readonly noMist: readonly MinuteSpan[];
}

export interface Cadence {
  readonly perDay: Range;
  readonly seconds: Range;
  /** Start to start, past midnight too; null: none asked. */
  readonly gapMinutes: number | null;
}

/** One enclosure under one condition. */
export interface MistCase {
  readonly enclosure: string;
  readonly body: WetEnclosure;
  readonly spray: Spray;
  readonly air: AirDay;
  readonly targets: HumidityTargets;
  readonly dryOut: { readonly minutes: number; readonly when: LightHours; readonly below: number } | null;
  readonly drink: { readonly when: LightHours; readonly mists: number; readonly seconds: number } | null;
  readonly cadence: Cadence | null;
  /** Run-off that the tray takes in a day. */
  readonly runOffAtMostG: number | null;
  readonly forbidden: Forbidden;
}

export interface DayProblem {
  readonly machine: MistMachine;
  readonly cases: readonly MistCase[];
  /** Tank water of a day; null: no tank. */
  readonly waterAtMostG: number | null;
  readonly rhythm: { readonly favour: Favour; readonly gapMinutes: number | null };
}

/** The limits that may be exceeded where they cannot all hold, earliest first. */
export const GIVING_WAY = ['gap', 'count', 'length', 'dry-out', 'tank', 'tray', 'noise', 'no-mist', 'drink'] as const;
export type GivingLimit = (typeof GIVING_WAY)[number];

/** A limit that was exceeded, by the least that would do: minutes, mists, s, g a day. */
export interface ExceededLimit {
  readonly limit: GivingLimit;
  readonly by: number;
  readonly unit: 'min' | 'mists' | 's' | 'g/day';
}

export type TargetName = 'day' | 'night' | 'mean' | 'floor' | 'ceiling' | 'soaked_at_most' | 'peaks_per_day';

/** How far one target is missed: a share of RH, hours or peaks, and what it adds to the shortfall. */
export interface TargetMiss {
  readonly target: TargetName;
  readonly by: number;
  readonly unit: '1' | 'h' | 'peaks';
  readonly adds: number;
}

/** What the air of one case does; humidities as fractions rounded to 1e-5, times to 1 min, water to 0.1 g. */
export interface CaseFigures {
  /** NaN where there are no such hours. */
  readonly dayHumidity: number;
  readonly nightHumidity: number;
  readonly meanHumidity: number;
  readonly lowHumidity: number;
  readonly highHumidity: number;
  readonly peaks: number;
  readonly peakMinutes: readonly number[];
  readonly hoursSoaked: number;
  /** Longest spell of the case's dry-out hours and share (lit hours and 20 % where none is asked). */
  readonly dryOutMinutes: number;
  readonly waterG: number;
  readonly runOffG: number;
}

export interface CaseOutcome {
  readonly figures: CaseFigures;
  /** Without margin. */
  readonly shortfall: number;
  readonly misses: readonly TargetMiss[];
}

export interface DaySolution {
  /** In the order of the day, which begins 30 min before the earliest lights-on. */
  readonly entries: readonly Run[];
  /** In the order of the problem's cases. */
  readonly cases: readonly CaseOutcome[];
  /** The worst case's, without margin. */
  readonly shortfall: number;
  /** Tank water of the day. */
  readonly waterG: number;
  readonly exceeded: readonly ExceededLimit[];
  /** False where the hard limits hold only without their margins. */
  readonly marginsHold: boolean;
  /** Starts allowed under all cases, as half-open spans of whole start steps, in the order of the day. */
  readonly allowed: readonly MinuteSpan[];
  /** Places of the rhythm for as many mists, minutes of the day. */
  readonly places: readonly number[];
  /** Levels compared, for `why` and for tests: the solver's own order. */
  readonly levels: readonly number[];
  readonly simulations: number;
}

/** A search to begin with, and where to stop. */
export interface SolveOptions {
  /** Sets of entries worth a look, such as a neighbouring condition's. */
  readonly seeds?: readonly (readonly Run[])[];
  /** Stop as soon as all targets are met under all hard limits; the rest of the order is not searched. */
  readonly untilMet?: boolean;
}
