/** Why a mist is as it is: what the air would do without it, which target it serves, and what bounds its time; and the day as a sketch. */

import { minuteOf } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { MistCondition, MistEntry, MistPlan, MistSet, MistTargets, Plan, Range } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import { simulateTold, type ToldDay } from '../../science/plan-day.ts';

/** Levels of a peak: the day's band must have been left below its upper edge, or by 5 points at least. */
const REARM_BELOW_PEAK = 0.05;

/** Answers for all mists of an enclosure, or for the one at a time of its timer; null where there is none. */
export function whyMists(plan: Plan, mist: MistPlan, at: string | null): string | null {
  const set = setInForce(plan, mist);
  const condition = set && conditionInForce(plan, set);
  if (!set || !condition) return null;
  if (at === null) return allMists(mist, set, condition);
  const entry = set.entries.find((each) => each.at === at);
  return entry ? oneMist(mist, set, condition, entry) : null;
}

/** Returns the times that can be asked about. */
export function mistTimes(plan: Plan, mist: MistPlan): readonly string[] {
  return (setInForce(plan, mist)?.entries ?? []).map(({ at }) => at);
}

function setInForce(plan: Plan, { sets }: MistPlan): MistSet | null {
  return sets.find(({ from, to }) => from <= plan.made && plan.made <= to) ?? sets.find(({ past }) => !past) ?? null;
}

function conditionInForce(plan: Plan, { conditions }: MistSet): MistCondition | null {
  return conditions.find(({ from, to }) => from <= plan.made && plan.made <= to) ?? conditions[0] ?? null;
}

function allMists(mist: MistPlan, set: MistSet, condition: MistCondition): string {
  const entries = set.entries.map(({ at, seconds }) => `${at} for ${runLength(seconds)}`);
  return [
    `${mist.enclosure}: ${entries.length === 0 ? 'no mist' : entries.join(', ')} (${clockWords(mist)}), ${set.from} to ${set.to}`,
    '',
    ...sketch(set, condition),
    '',
    `Judged for ${condition.from} to ${condition.to}: lit ${condition.dayOn} to ${condition.dayOff}, room ${condition.roomTemperatureC} °C and ${percent(condition.roomHumidity)}`,
    ...predictedLines(mist.targets, condition),
    ...set.shortfalls.map(({ target, by, unit, remedy }) => `  short: ${target} by ${byWords(by, unit)}; ${remedy}`),
    ...(set.entries.length > 0 ? ['', `Starts allowed on all its days: ${allowedWords(set)}`] : []),
    '',
    ...mist.advice.map(({ message }) => `- ${message}`),
    '',
  ].join('\n');
}

function clockWords({ clock, device }: MistPlan): string {
  return `${device === null ? '' : `${device}, `}${clock === 'standard' ? 'standard time' : 'time of day'}`;
}

function allowedWords({ allowed }: MistSet): string {
  return allowed.map(([from, to]) => `${from} to ${to}`).join(', ');
}

function oneMist(mist: MistPlan, set: MistSet, condition: MistCondition, entry: MistEntry): string {
  const others = set.entries.filter((each) => each !== entry);
  const step = mist.limits?.lengthStepSeconds ?? 15;
  const shorter = { ...entry, seconds: entry.seconds - step };
  const columns: readonly (readonly [string, ToldDay])[] = [
    ['with it', simulated(mist, condition, set.entries)],
    ['without it', simulated(mist, condition, others)],
    ...(shorter.seconds >= (mist.limits?.shortestSeconds ?? 15)
      ? [[`${step} s less`, simulated(mist, condition, [...others, shorter])] as const]
      : []),
  ];
  return [
    `${mist.enclosure}, ${entry.at} for ${runLength(entry.seconds)} (${clockWords(mist)}), ${set.from} to ${set.to}`,
    `On the days from ${condition.from} to ${condition.to}, lit ${condition.dayOn} to ${condition.dayOff}:`,
    '',
    `  ${''.padEnd(16)}${columns.map(([name]) => name.padEnd(12)).join('')}target`,
    ...rowsOf(mist.targets).map(
      ({ name, value, target }) =>
        `  ${name.padEnd(16)}${columns.map(([, day]) => value(day).padEnd(12)).join('')}${target}`,
    ),
    '',
    ...reasons(mist, set, entry, columns[1]?.[1] ?? null, condition).map((line) => `- ${line}`),
    '',
  ].join('\n');
}

function simulated(mist: MistPlan, condition: MistCondition, entries: readonly MistEntry[]): ToldDay {
  const { peakHumidity, dayHumidity, meanHumidity, dryOut } = mist.targets;
  const rearmBand = (dayHumidity ?? meanHumidity)?.[1] ?? 1;
  const peaks = peakHumidity && {
    reaches: peakHumidity[0],
    rearm: Math.min(rearmBand, peakHumidity[0] - REARM_BELOW_PEAK),
  };
  const runs = entries
    .map(({ at, seconds }) => ({ startMinute: minuteOf(at), seconds }))
    .sort((a, b) => a.startMinute - b.startMinute);
  const told = { ...condition, onMinute: minuteOf(condition.dayOn), offMinute: minuteOf(condition.dayOff) };
  return simulateTold(mist.model, told, runs, peaks, dryOut ?? { below: 0.2, when: 'lit' });
}

interface Row {
  readonly name: string;
  readonly value: (day: ToldDay) => string;
  readonly target: string;
  readonly isMet: (day: ToldDay) => boolean;
  readonly path: string;
}

/** Only what has a target, and the water. */
function rowsOf(targets: MistTargets): readonly Row[] {
  const share = (name: string, path: string, of: (day: ToldDay) => number, band: Range | null): readonly Row[] =>
    band === null
      ? []
      : [
          {
            name,
            path,
            value: (day) => percent(of(day)),
            target: `${percent(band[0])} to ${percent(band[1])}`,
            isMet: (day) => of(day) >= band[0] - 1e-4 && of(day) <= band[1] + 1e-4,
          },
        ];
  const { peaksPerDay, floorHumidity, dryOut } = targets;
  return [
    ...share('mean by day', 'humidity.day', (day) => day.dayHumidity, targets.dayHumidity),
    ...share('mean by night', 'humidity.night', (day) => day.nightHumidity, targets.nightHumidity),
    ...share('mean of 24 h', 'humidity.mean', (day) => day.meanHumidity, targets.meanHumidity),
    ...share(
      'lowest',
      'humidity.floor',
      (day) => day.lowHumidity,
      floorHumidity === null ? null : [floorHumidity, 1],
    ).map((row) => ({ ...row, target: `${percent(floorHumidity ?? 0)} at least` })),
    ...(peaksPerDay && targets.peakHumidity
      ? [
          {
            name: 'peaks',
            path: 'humidity.peaks_per_day',
            value: (day: ToldDay) => `${day.peaks}`,
            target: `${peaksPerDay[0]} to ${peaksPerDay[1]}`,
            isMet: (day: ToldDay) => day.peaks >= peaksPerDay[0] && day.peaks <= peaksPerDay[1],
          },
        ]
      : []),
    ...(dryOut
      ? [
          {
            name: 'dry spell',
            path: 'water.dry_out',
            value: (day: ToldDay) => spanWords(day.dryMinutes),
            target: `${spanWords(dryOut.hours * 60)} at least`,
            isMet: (day: ToldDay) => day.dryMinutes >= dryOut.hours * 60 - 1,
          },
        ]
      : []),
    { name: 'water', path: '', value: (day) => `${Math.round(day.waterMl)} mL`, target: '', isMet: () => true },
  ];
}

function reasons(
  mist: MistPlan,
  set: MistSet,
  entry: MistEntry,
  without: ToldDay | null,
  condition: MistCondition,
): readonly string[] {
  const { targets } = mist;
  const lost = without ? rowsOf(targets).filter(({ isMet }) => !isMet(without)) : [];
  return [
    ...(lost.length === 0
      ? ['every humidity target would be met without it']
      : [`without it ${lost.map(({ path }) => path).join(', ')} would be missed`]),
    ...drinkReason(targets, set, entry, condition),
    ...cadenceReason(targets, set),
    `its start lies in the hours that are open on all days of the set: ${allowedWords(set)}`,
    `of starts that serve as well, those nearest to the rhythm are taken: ${targets.favour}`,
    `of lengths that serve as well, the one that takes the least water`,
  ];
}

function drinkReason(
  { drink }: MistTargets,
  set: MistSet,
  entry: MistEntry,
  { dayOn, dayOff }: MistCondition,
): readonly string[] {
  if (!drink || entry.seconds < drink.seconds) return [];
  const isLit = (at: string) => {
    const [on, off, minute] = [minuteOf(dayOn), minuteOf(dayOff), minuteOf(at)];
    return on <= off ? minute >= on && minute < off : minute >= on || minute < off;
  };
  const serves = ({ at, seconds }: MistEntry) =>
    seconds >= drink.seconds && (drink.when === 'any' || isLit(at) === (drink.when === 'lit'));
  if (!serves(entry)) return [];
  const count = set.entries.filter(serves).length;
  const hours = drink.when === 'any' ? '' : ` in the ${drink.when} hours`;
  return count <= drink.mists
    ? [
        `it is one of the ${drink.mists === 1 ? '' : `${drink.mists} `}mists to drink from, ${drink.seconds} s at least${hours}`,
      ]
    : [];
}

function cadenceReason({ cadence }: MistTargets, { entries }: MistSet): readonly string[] {
  if (!cadence || entries.length > cadence.perDay[0]) return [];
  return [`misting.per_day asks for ${cadence.perDay[0]} at least, and there are no more`];
}

function predictedLines(targets: MistTargets, { predicted }: MistCondition): readonly string[] {
  const day: ToldDay = {
    ...predicted,
    dryMinutes: predicted.dryOutHours * 60,
    waterMl: predicted.waterMlPerDay,
  };
  return rowsOf(targets).map(({ name, value, target }) => `  ${name.padEnd(16)}${value(day).padEnd(12)}${target}`);
}

function byWords(by: number, unit: string): string {
  if (unit === '1') return `${Number((by * 100).toFixed(1))} points`;
  return `${by} ${unit}`;
}

function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

const SKETCH_STEP_MINUTES = 30;
const LEVELS = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2];

/** The day in half hours, plain letters: `#` humidity, `v` a mist, `-` lamp on, `~` leaves wetter than a fifth. */
function sketch({ entries }: Pick<MistSet, 'entries'>, condition: MistCondition): readonly string[] {
  const count = 1440 / SKETCH_STEP_MINUTES;
  const columns = Array.from({ length: count }, (_, i) => i * SKETCH_STEP_MINUTES);
  const { curve } = condition;
  const at = (values: readonly number[], minute: number) => values[Math.round(minute / curve.everyMinutes)] ?? 0;
  const row = (label: string, mark: (minute: number) => string) =>
    `  ${label.padStart(6)} ${columns.map(mark).join('').trimEnd()}`;
  const [on, off] = [minuteOf(condition.dayOn), minuteOf(condition.dayOff)];
  const isLit = (minute: number) => (on <= off ? minute >= on && minute < off : minute >= on || minute < off);
  const lowest = Math.min(...curve.humidity);
  return [
    row('mists', (minute) =>
      entries.some((entry) => Math.floor(minuteOf(entry.at) / SKETCH_STEP_MINUTES) * SKETCH_STEP_MINUTES === minute)
        ? 'v'
        : ' ',
    ),
    ...LEVELS.filter((level) => level > lowest - 0.15).map((level) =>
      row(percent(level), (minute) => (at(curve.humidity, minute) >= level - 0.05 ? '#' : '.')),
    ),
    row('leaves', (minute) => (at(curve.leafWetness, minute) >= 0.2 ? '~' : ' ')),
    row('lamp', (minute) => (isLit(minute) ? '-' : ' ')),
    row('', (minute) =>
      minute % 180 === 0
        ? String(minute / 60)
            .padStart(2, '0')
            .charAt(0)
        : minute % 180 === 30
          ? String((minute - 30) / 60)
              .padStart(2, '0')
              .charAt(1)
          : ' ',
    ),
  ];
}
