/** Finds targets that cannot hold together, whatever the hardware. */

import { clockTimeOf } from '../basics/minute-of-day.ts';
import { spanWords } from '../basics/span-words.ts';
import type { Place } from '../diagnostics/diagnostic.ts';
import type { Log } from '../diagnostics/log.ts';
import type { Range } from '../plan/plan.ts';
import type { Inset, Targets } from './care.ts';
import { dayLengthRange } from './photoperiod.ts';

export interface ContradictionContext {
  readonly enclosure: string;
  readonly log: Log;
  /** Place of the line that said a target. */
  readonly placeOf: (targetPath: string) => Place | null;
}

/** Reports every contradiction among the targets of one enclosure. */
export function reportContradictions(targets: Targets, context: ContradictionContext): void {
  reportDay(targets, context);
  reportHumidity(targets.humidity, context);
  reportTemperature(targets.temperature, context);
  reportWater(targets, context);
}

function reportDay(targets: Targets, { enclosure, log, placeOf }: ContradictionContext): void {
  const { photoperiod, day } = targets;
  if (isNative(photoperiod.season) && targets.rangeLatitude === null)
    log.report('range-unknown', { enclosure }, placeOf('photoperiod.season'));
  const { noLightBeforeMinute: before, noLightAfterMinute: after } = day;
  if (before !== null && after !== null && after <= before)
    log.report(
      'no-light-hours-crossed',
      { enclosure, before: clockTimeOf(before), after: clockTimeOf(after) },
      placeOf('day.no_light_after'),
    );
  const longest = dayLengthRange(photoperiod)?.longest ?? null;
  if (longest === null) return;
  reportInset('basking', targets.basking, longest, { enclosure, log, placeOf });
  if (targets.uvb && targets.uvb.form !== 'unplaced')
    reportInset('uvb', targets.uvb, longest, { enclosure, log, placeOf });
}

function isNative(season: Targets['photoperiod']['season']): boolean {
  return (
    season.kind === 'native' || (season.kind === 'moved' && (season.was === 'native' || season.becomes === 'native'))
  );
}

function reportInset(
  use: 'basking' | 'uvb',
  inset: Inset | null,
  longestMinutes: number,
  { enclosure, log, placeOf }: ContradictionContext,
): void {
  if (!inset) return;
  const longest = spanWords(longestMinutes);
  if (inset.form === 'edges') {
    const edges = inset.afterLightsOnMinutes + inset.beforeLightsOffMinutes;
    if (edges >= longestMinutes)
      log.report(
        'inset-leaves-nothing',
        { enclosure, use, edges: spanWords(edges), longest },
        placeOf(`${use}.after_lights_on`),
      );
    return;
  }
  const minutes = inset.form === 'hours' ? inset.minutes : Math.max(...inset.spans.map(({ forMinutes }) => forMinutes));
  const at = inset.form === 'hours' ? `${use}.hours` : `${use}.spans`;
  if (minutes > longestMinutes)
    log.report('inset-outlasts-day', { enclosure, use, hours: spanWords(minutes), longest }, placeOf(at));
}

function reportHumidity(humidity: Targets['humidity'], { enclosure, log, placeOf }: ContradictionContext): void {
  const { day, night, mean, peak, floor, ceiling } = humidity;
  const crossed = (limit: string, value: number, other: string, otherValue: string, is: 'above' | 'below') =>
    log.report(
      'humidity-limits-crossed',
      { enclosure, limit: `humidity.${limit}`, limitValue: percent(value), other: `humidity.${other}`, otherValue, is },
      placeOf(`humidity.${limit}`),
    );
  for (const [name, band] of [
    ['day', day],
    ['night', night],
    ['mean', mean],
    ['peak', peak],
  ] as const) {
    if (!band) continue;
    if (floor !== null && floor > band[1]) crossed('floor', floor, name, percentBand(band), 'above');
    if (ceiling !== null && ceiling < band[0]) crossed('ceiling', ceiling, name, percentBand(band), 'below');
  }
  if (floor !== null && ceiling !== null && floor > ceiling)
    crossed('floor', floor, 'ceiling', percent(ceiling), 'above');
  const rising = day ?? mean;
  if (peak && rising && peak[0] < rising[0])
    log.report(
      'peak-below-day',
      { enclosure, peak: percent(peak[0]), other: day ? 'day' : 'mean', band: percentBand(rising) },
      placeOf('humidity.peak'),
    );
}

function reportTemperature(
  temperature: Targets['temperature'],
  { enclosure, log, placeOf }: ContradictionContext,
): void {
  const { dayC, nightC, baskingC, neverBelowC, neverAboveC } = temperature;
  const crossed = (limit: 'never_below' | 'never_above', limitC: number, other: string, otherValue: string) =>
    log.report(
      'temperature-limits-crossed',
      { enclosure, limit, limitC, other, otherValue },
      placeOf(`temperature.${limit}`),
    );
  for (const [name, band] of [
    ['day', dayC],
    ['night', nightC],
    ['basking', baskingC],
  ] as const) {
    if (!band) continue;
    if (neverBelowC !== null && neverBelowC > band[1])
      crossed('never_below', neverBelowC, name, `${band[0]} to ${band[1]} °C`);
    if (neverAboveC !== null && neverAboveC < band[0] && name !== 'basking')
      crossed('never_above', neverAboveC, name, `${band[0]} to ${band[1]} °C`);
  }
  if (neverBelowC !== null && neverAboveC !== null && neverBelowC >= neverAboveC)
    crossed('never_below', neverBelowC, 'never_above', `${neverAboveC} °C`);
}

function reportWater(
  { water, misting, photoperiod }: Targets,
  { enclosure, log, placeOf }: ContradictionContext,
): void {
  if (misting === 'none' && water.drink && water.drink.mists > 0)
    log.report('drink-without-misting', { enclosure, mists: water.drink.mists }, placeOf('misting'));
  if (
    misting &&
    misting !== 'none' &&
    misting.gapMinutes !== null &&
    misting.perDay[0] > 1 &&
    misting.gapMinutes * misting.perDay[0] > 1440
  )
    log.report(
      'cadence-too-dense',
      { enclosure, mists: misting.perDay[0], gap: spanWords(misting.gapMinutes) },
      placeOf('misting.gap'),
    );
  const { dryOut } = water;
  const range = dayLengthRange(photoperiod);
  if (!dryOut || !range) return;
  const longest = dryOut.when === 'lit' ? range.longest : dryOut.when === 'dark' ? 1440 - range.shortest : 1440;
  if (dryOut.atLeastMinutes > longest)
    log.report(
      'dry-out-outlasts-hours',
      { enclosure, asked: spanWords(dryOut.atLeastMinutes), hours: dryOut.when, longest: spanWords(longest) },
      placeOf('water.dry_out.at_least'),
    );
}

function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

function percentBand(band: Range): string {
  return `${percent(band[0])} to ${percent(band[1])}`;
}
