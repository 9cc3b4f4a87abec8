/** What is normal for each animal and when to act, in the household's units. */
import type { Range, UnitSystem } from '../../plan/plan.ts';
import type { WatchFor } from '../../plan/watch-for.ts';
import type { Words } from '../../plan/words/words.ts';
import { dateInWords } from './today-dates.ts';

export interface WatchLook {
  readonly units: UnitSystem;
  readonly contacts: Readonly<Partial<Record<'keeper' | 'vet' | 'note', string>>>;
}

/** Returns a few lines an enclosure, and whom to call; nothing where no target says anything. */
export function watchLines(watch: readonly WatchFor[], look: WatchLook, told: Words): readonly string[] {
  const lines = watch.flatMap((each) => oneEnclosure(each, look, told));
  const { keeper, vet } = look.contacts;
  const numbers = [
    ...(keeper === undefined ? [] : [`${told.today.keeper} ${keeper}`]),
    ...(vet === undefined ? [] : [`${told.today.vet} ${vet}`]),
  ];
  if (lines.length === 0) return [];
  return [told.today.watch, ...lines, ...(numbers.length > 0 ? [`  ${told.today.call(numbers.join('; '))}`] : [])];
}

function oneEnclosure(watch: WatchFor, { units }: WatchLook, told: Words): readonly string[] {
  const normal = [temperatureWords(watch, units, told), humidityWords(watch, told)].filter((words) => words.length > 0);
  const act = actWords(watch, units, told);
  const states = watch.spans.map(({ kind, to, vet }) => {
    const until = told.today.state(told.today.states[kind] ?? kind, dateInWords(to, told));
    return vet === null ? until : `${until}; ${told.today.ordered(vet)}`;
  });
  const [first = '', ...rest] = [
    ...states,
    ...normal.map((words) => words.join(', ')),
    ...(act.length > 0 ? [told.today.act(act)] : []),
  ];
  return first === '' ? [] : [`  ${watch.name}: ${first}`, ...rest.map((line) => `    ${line}`)];
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
