/** What is normal for an animal and when to act: limits from its targets, as data for screens and papers. */
import { epochDay } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import type { EnclosureSpan, Plan, PlanEnclosure, Range, RestingTargets } from './plan.ts';

export interface WatchFor {
  readonly enclosure: string;
  readonly name: string;
  /** Bands of the day, null where the targets have none; in a rest its own, blended in and out over its ramps, null where it has none. */
  readonly dayC: Range | null;
  readonly nightC: Range | null;
  readonly baskingC: Range | null;
  readonly neverBelowC: number | null;
  readonly neverAboveC: number | null;
  readonly dayHumidity: Range | null;
  readonly nightHumidity: Range | null;
  readonly meanHumidity: Range | null;
  readonly floorHumidity: number | null;
  readonly ceilingHumidity: number | null;
  /** Days without food after which to call, in the stage of the date; null where the profile does not say or the animal fasts. */
  readonly mayGoWithoutDays: number | null;
  /** Rests and states that hold on the date. */
  readonly spans: PlanEnclosure['spans'];
}

const RESTS: readonly string[] = ['brumation', 'cooling', 'fast'];

/** Returns one entry an enclosure, those in quarantine or with an ill animal last. */
export function watchFor(plan: Pick<Plan, 'enclosures'>, date: IsoDate): readonly WatchFor[] {
  const all = plan.enclosures.map((enclosure) => watchOne(enclosure, date));
  const isLast = ({ spans }: WatchFor) => spans.some(({ kind }) => kind === 'quarantine' || kind === 'ill');
  return [...all.filter((watch) => !isLast(watch)), ...all.filter(isLast)];
}

function watchOne(enclosure: PlanEnclosure, date: IsoDate): WatchFor {
  const spans = enclosure.spans.filter(({ from, to }) => from <= date && date <= to);
  const rests = spans.some(({ kind }) => RESTS.includes(kind));
  const resting = spans.find((span) => span.resting);
  const band = (path: string, of?: RestBand) => {
    const usual = bandOf(enclosure, path);
    if (!rests) return usual;
    const own = of === undefined ? null : (resting?.resting?.[of] ?? null);
    return own && resting ? blended(usual, own, restShare(resting, date)) : null;
  };
  const stage = enclosure.stages.findLast(({ from }) => from <= date)?.stage ?? enclosure.stages[0]?.stage ?? '';
  return {
    enclosure: enclosure.id,
    name: enclosure.name,
    dayC: band('temperature.day', 'dayC'),
    nightC: band('temperature.night', 'nightC'),
    baskingC: band('temperature.basking'),
    neverBelowC: numberOf(enclosure, 'temperature.never_below'),
    neverAboveC: numberOf(enclosure, 'temperature.never_above'),
    dayHumidity: band('humidity.day', 'dayHumidity'),
    nightHumidity: band('humidity.night', 'nightHumidity'),
    meanHumidity: band('humidity.mean', 'meanHumidity'),
    floorHumidity: rests ? null : numberOf(enclosure, 'humidity.floor'),
    ceilingHumidity: rests ? null : numberOf(enclosure, 'humidity.ceiling'),
    mayGoWithoutDays: rests ? null : numberOf(enclosure, `may_go_without.${stage}`),
    spans,
  };
}

type RestBand = Exclude<keyof RestingTargets, 'rampDays'>;

/** How much a rest counts on a date, 0 to 1: rising over its first ramp, falling over its last. */
function restShare({ from, to, resting }: EnclosureSpan, date: IsoDate): number {
  const rampDays = resting?.rampDays ?? 0;
  const [since, left] = [epochDay(date) - epochDay(from), epochDay(to) + 1 - epochDay(date)];
  return rampDays === 0 ? 1 : Math.min(1, since / rampDays, left / rampDays);
}

/** To a hundredth: of a degree, or a whole percent. */
function blended(usual: Range | null, resting: Range, share: number): Range {
  const at = (index: 0 | 1) => {
    const from = usual?.[index] ?? resting[index];
    return Math.round((from + (resting[index] - from) * share) * 100) / 100;
  };
  return [at(0), at(1)];
}

function valueAt({ targets }: PlanEnclosure, wanted: string): unknown {
  return targets.find(({ path }) => path === wanted)?.value;
}

function bandOf(enclosure: PlanEnclosure, path: string): Range | null {
  const value = valueAt(enclosure, path);
  if (!Array.isArray(value)) return null;
  const [low, high]: readonly unknown[] = value;
  return typeof low === 'number' && typeof high === 'number' ? [low, high] : null;
}

function numberOf(enclosure: PlanEnclosure, path: string): number | null {
  const value = valueAt(enclosure, path);
  return typeof value === 'number' ? value : null;
}
