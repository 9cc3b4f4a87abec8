/** A day of a plan simulated again from what the plan itself says: its air model, one condition, entries. */
import { HumidityCurve, longestDryMinutes, peakMinutes } from './day-figures.ts';
import type { Run } from './enclosure-day.ts';
import { saturationDensityGPerM3 } from './moist-air.ts';
import { PeriodicDay } from './wet-enclosure.ts';

const DAY_MINUTES = 1440;

/** The air model as a plan keeps it. */
export interface ToldModel {
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
  readonly lagSeconds?: number;
  readonly afterDripMl?: number;
}

/** One condition as a plan keeps it, its times as minutes of the day; off may equal on (no light) or be 1440. */
export interface ToldCondition {
  readonly onMinute: number;
  readonly offMinute: number;
  readonly roomTemperatureC: number;
  readonly roomHumidity: number;
  readonly dayTemperatureC: number;
  readonly nightTemperatureC: number;
}

export interface ToldPeaks {
  readonly reaches: number;
  readonly rearm: number;
}

export interface ToldDay {
  readonly dayHumidity: number;
  readonly nightHumidity: number;
  readonly meanHumidity: number;
  readonly lowHumidity: number;
  readonly highHumidity: number;
  readonly peaks: number;
  readonly dryMinutes: number;
  readonly waterMl: number;
}

/** Returns the figures of a day under runs sorted by start; means of hours that do not exist are the day's. */
export function simulateTold(
  model: ToldModel,
  condition: ToldCondition,
  runs: readonly Run[],
  peaks: ToldPeaks | null,
  dry: { readonly below: number; readonly when: 'lit' | 'dark' | 'any' },
): ToldDay {
  const day = new PeriodicDay(
    { ...model, baseEvaporationGPerHour: model.baselineGPerHour },
    { ...model, lagSeconds: model.lagSeconds ?? 0, afterDripG: model.afterDripMl ?? 0 },
    airOf(condition),
  );
  day.simulate(runs);
  const curve = new HumidityCurve();
  curve.read(day);
  return {
    dayHumidity: Number.isNaN(curve.lit) ? curve.mean : curve.lit,
    nightHumidity: Number.isNaN(curve.dark) ? curve.mean : curve.dark,
    meanHumidity: curve.mean,
    lowHumidity: curve.low,
    highHumidity: curve.high,
    peaks: peaks ? peakMinutes(curve, day, runs, peaks.reaches, peaks.rearm).length : 0,
    dryMinutes: longestDryMinutes(day, dry.below, dry.when),
    waterMl: day.balance.waterG,
  };
}

function airOf(condition: ToldCondition): PeriodicDay['air'] {
  const { onMinute, offMinute, dayTemperatureC, nightTemperatureC } = condition;
  const minutes =
    offMinute === onMinute ? 0 : offMinute > onMinute ? offMinute - onMinute : offMinute - onMinute + DAY_MINUTES;
  const steps = [
    { fromMinute: onMinute % DAY_MINUTES, celsius: minutes > 0 ? dayTemperatureC : nightTemperatureC },
    { fromMinute: offMinute % DAY_MINUTES, celsius: minutes < DAY_MINUTES ? nightTemperatureC : dayTemperatureC },
  ].sort((a, b) => a.fromMinute - b.fromMinute);
  return {
    roomVapourGPerM3: condition.roomHumidity * saturationDensityGPerM3(condition.roomTemperatureC),
    temperatureSteps: minutes > 0 && minutes < DAY_MINUTES ? steps : steps.slice(0, 1),
    lit: { onMinute: onMinute % DAY_MINUTES, minutes },
  };
}
