/** What is normal for an animal and when to act: limits from its targets, as data for screens and papers. */
import type { IsoDate } from '../basics/civil.ts';
import type { Plan, PlanEnclosure, Range } from './plan.ts';

export interface WatchFor {
  readonly enclosure: string;
  readonly name: string;
  /** Bands of the day, null where the targets have none. In a rest they do not hold and are null. */
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
  const band = (path: string) => (rests ? null : bandOf(enclosure, path));
  const stage = enclosure.stages.findLast(({ from }) => from <= date)?.stage ?? enclosure.stages[0]?.stage ?? '';
  return {
    enclosure: enclosure.id,
    name: enclosure.name,
    dayC: band('temperature.day'),
    nightC: band('temperature.night'),
    baskingC: band('temperature.basking'),
    neverBelowC: numberOf(enclosure, 'temperature.never_below'),
    neverAboveC: numberOf(enclosure, 'temperature.never_above'),
    dayHumidity: band('humidity.day'),
    nightHumidity: band('humidity.night'),
    meanHumidity: band('humidity.mean'),
    floorHumidity: rests ? null : numberOf(enclosure, 'humidity.floor'),
    ceilingHumidity: rests ? null : numberOf(enclosure, 'humidity.ceiling'),
    mayGoWithoutDays: rests ? null : numberOf(enclosure, `may_go_without.${stage}`),
    spans,
  };
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
