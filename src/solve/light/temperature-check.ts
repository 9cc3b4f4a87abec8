/** The plan's temperatures against what the animal needs and must never pass. */
import { civilOf, type EpochDay } from '../../basics/calendar-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Assumption, DialPlan, Range } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { EnclosureClimate, type EnclosureTemperature, temperatureBandsOn } from './enclosure-temperature.ts';

interface Finding {
  readonly when: 'day' | 'night';
  readonly side: 'below' | 'above';
  readonly limitC: number;
  readonly months: Set<number>;
  worstC: number;
}

/** Reports limits passed and bands missed, with their months; returns what was assumed about temperature. */
export function checkTemperatures(
  care: Care,
  lighting: readonly DialPlan[],
  offsets: UtcOffsets,
  log: Log,
): readonly Assumption[] {
  return care.enclosures.flatMap((enclosure, index) => {
    const climate = new EnclosureClimate(care, enclosure, lighting, offsets);
    const days = Array.from({ length: care.plan.days }, (_, day) => care.plan.from + day);
    const temperatures = days.map((day) => climate.on(day));
    reportLimits(care, enclosure, days, temperatures, log);
    reportBands(care, enclosure, days, temperatures, log);
    return assumptionsOf(index, temperatures);
  });
}

function reportLimits(
  care: Care,
  enclosure: CareEnclosure,
  days: readonly EpochDay[],
  temperatures: readonly EnclosureTemperature[],
  log: Log,
): void {
  const { neverBelowC, neverAboveC, limitsWaivedBecause } = enclosure.targets.temperature;
  const limits: Range = [neverBelowC ?? Number.NEGATIVE_INFINITY, neverAboveC ?? Number.POSITIVE_INFINITY];
  for (const when of ['day', 'night'] as const)
    for (const finding of findings(days, temperatures, when, () => limits)) {
      const key = finding.side === 'below' ? 'never_below' : 'never_above';
      const words = finding.side === 'below' ? 'under its never_below' : 'over its never_above';
      log.report(
        'temperature-limit',
        {
          enclosure: enclosure.id,
          when,
          temperature: temperatureWords(finding.worstC, care.units),
          limit: `${words} of ${temperatureWords(finding.limitC, care.units)}`,
          months: monthWords([...finding.months]),
        },
        care.placeOfTarget(enclosure.id, `temperature.${key}`) ?? care.placeOf(enclosure.path),
        limitsWaivedBecause === null ? undefined : 'note',
      );
    }
}

function reportBands(
  care: Care,
  enclosure: CareEnclosure,
  days: readonly EpochDay[],
  temperatures: readonly EnclosureTemperature[],
  log: Log,
): void {
  for (const when of ['day', 'night'] as const) {
    const bandOn = (day: EpochDay): Range | null =>
      temperatureBandsOn(enclosure, day)[when === 'day' ? 'dayC' : 'nightC'];
    for (const finding of findings(days, temperatures, when, bandOn)) {
      const words = finding.side === 'below' ? 'under' : 'over';
      log.report(
        'temperature-band',
        {
          enclosure: enclosure.id,
          when,
          side: finding.side,
          temperature: temperatureWords(finding.worstC, care.units),
          band: `the target, ${words} ${temperatureWords(finding.limitC, care.units)}`,
          months: monthWords([...finding.months]),
        },
        care.placeOfTarget(enclosure.id, `temperature.${when}`) ?? care.placeOf(enclosure.path),
      );
    }
  }
}

const HAIR_C = 1e-9;

function findings(
  days: readonly EpochDay[],
  temperatures: readonly EnclosureTemperature[],
  when: 'day' | 'night',
  bandOn: (day: EpochDay) => Range | null,
): readonly Finding[] {
  const found = new Map<string, Finding>();
  days.forEach((day, index) => {
    const band = bandOn(day);
    const valueC = temperatures[index]?.[when === 'day' ? 'dayC' : 'nightC'];
    if (!band || valueC === undefined) return;
    if (valueC < band[0] - HAIR_C) note(found, when, 'below', band[0], valueC, day);
    if (valueC > band[1] + HAIR_C) note(found, when, 'above', band[1], valueC, day);
  });
  return [...found.values()];
}

function note(
  found: Map<string, Finding>,
  when: 'day' | 'night',
  side: 'below' | 'above',
  limitC: number,
  valueC: number,
  day: EpochDay,
): void {
  const finding = found.get(side) ?? { when, side, limitC, months: new Set<number>(), worstC: valueC };
  finding.months.add(civilOf(day).month);
  if (side === 'below' ? valueC < finding.worstC : valueC > finding.worstC) finding.worstC = valueC;
  found.set(side, finding);
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** Returns months in the order of the plan, runs as `November to February`. */
export function monthWords(months: readonly number[]): string {
  if (months.length === 12) return 'all year';
  const starts = months.toSorted((a, b) => a - b).filter((month) => !months.includes(month === 1 ? 12 : month - 1));
  return starts
    .map((start) => {
      let end = start;
      while (months.includes((end % 12) + 1)) end = (end % 12) + 1;
      const [from, to] = [MONTHS[start - 1] ?? '', MONTHS[end - 1] ?? ''];
      return start === end ? from : `${from} to ${to}`;
    })
    .join(', ');
}

/** Returns a temperature in the household's unit, to 0.1. */
export function temperatureWords(celsius: number, units: Care['units']): string {
  return units === 'us'
    ? `${Math.round(((celsius * 9) / 5) * 10 + 320) / 10} °F`
    : `${Math.round(celsius * 10) / 10} °C`;
}

function assumptionsOf(index: number, temperatures: readonly EnclosureTemperature[]): readonly Assumption[] {
  const last = temperatures[0];
  if (!last) return [];
  const dayFrom = temperatures.some((each) => each.dayFrom === 'band') ? 'band' : last.dayFrom;
  const nightFrom = temperatures.some((each) => each.nightFrom === 'heater') ? 'heater' : last.nightFrom;
  return [
    {
      path: `enclosures[${index}].dayTemperatureC`,
      value: rangeWords(temperatures.map(({ dayC }) => dayC)),
      source:
        dayFrom === 'band'
          ? 'the middle of the target band: a lamp does not say how far it warms'
          : 'the room by day and what the lamps warm',
    },
    {
      path: `enclosures[${index}].nightTemperatureC`,
      value: rangeWords(temperatures.map(({ nightC }) => nightC)),
      source:
        nightFrom === 'heater'
          ? 'the middle of the night band, held by a heater behind a thermostat'
          : 'the room by night',
    },
  ];
}

/** A number where it is the same all along, else `21 to 25`. */
function rangeWords(values: readonly number[]): number | string {
  const [least, most] = [Math.round(Math.min(...values) * 10) / 10, Math.round(Math.max(...values) * 10) / 10];
  return least === most ? least : `${least} to ${most}`;
}
