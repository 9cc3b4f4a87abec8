/** What is normal for an animal and when to act, in words and in the household's units. */
import type { Range, UnitSystem } from '../plan.ts';
import type { WatchFor } from '../watch-for.ts';
import type { Words } from '../words/words.ts';
import { dateInWords } from './date-words.ts';

export interface WatchWords {
  /** Rests and states that hold, each with its last day and what the vet ordered. */
  readonly states: readonly string[];
  /** Bands of warmth and of humidity, a line each; empty where no target says anything. */
  readonly normal: readonly string[];
  /** When to act; empty where no limit is given. */
  readonly act: string;
}

/** Returns what the targets of one enclosure say on a date. */
export function watchWords(watch: WatchFor, units: UnitSystem, told: Words): WatchWords {
  const act = actWords(watch, units, told);
  return {
    states: watch.spans.map(({ kind, to, vet }) => {
      const until = told.today.state(told.today.states[kind] ?? kind, dateInWords(to, told));
      return vet === null ? until : `${until}; ${told.today.ordered(vet)}`;
    }),
    normal: [temperatureWords(watch, units, told), humidityWords(watch, told)]
      .filter((words) => words.length > 0)
      .map((words) => words.join(', ')),
    act: act.length > 0 ? told.today.act(act) : '',
  };
}

function temperatureWords(
  { dayC, nightC, baskingC }: WatchFor,
  units: UnitSystem,
  { today }: Words,
): readonly string[] {
  const band = ([low, high]: Range) => today.band(degrees(low, units), degrees(high, units), unitOf(units));
  return [
    ...(dayC ? [today.day(band(dayC))] : []),
    ...(nightC ? [today.night(band(nightC))] : []),
    ...(baskingC ? [today.basking(band(baskingC))] : []),
  ];
}

function humidityWords({ dayHumidity, nightHumidity, meanHumidity }: WatchFor, { today }: Words): readonly string[] {
  const band = ([low, high]: Range) => today.band(percent(low), percent(high), '%');
  return [
    ...(dayHumidity ? [today.humidityDay(band(dayHumidity))] : []),
    ...(nightHumidity ? [today.humidityNight(band(nightHumidity))] : []),
    ...(meanHumidity ? [today.humidityMean(band(meanHumidity))] : []),
  ];
}

function actWords(watch: WatchFor, units: UnitSystem, { today }: Words): readonly string[] {
  const { neverBelowC, neverAboveC, floorHumidity, ceilingHumidity, mayGoWithoutDays } = watch;
  const inUnit = (celsius: number) => `${degrees(celsius, units)} ${unitOf(units)}`;
  return [
    ...(neverBelowC === null ? [] : [today.below(inUnit(neverBelowC))]),
    ...(neverAboveC === null ? [] : [today.above(inUnit(neverAboveC))]),
    ...(floorHumidity === null || floorHumidity <= 0 ? [] : [today.humidityBelow(`${percent(floorHumidity)} %`)]),
    ...(ceilingHumidity === null || ceilingHumidity >= 1 ? [] : [today.humidityAbove(`${percent(ceilingHumidity)} %`)]),
    ...(mayGoWithoutDays === null ? [] : [today.notEaten(mayGoWithoutDays)]),
  ];
}

function unitOf(units: UnitSystem): string {
  return units === 'us' ? '°F' : '°C';
}

function degrees(celsius: number, units: UnitSystem): string {
  return String(units === 'us' ? Math.round(celsius * 1.8 + 32) : Math.round(celsius * 10) / 10);
}

function percent(share: number): string {
  return String(Number((share * 100).toFixed(1)));
}
