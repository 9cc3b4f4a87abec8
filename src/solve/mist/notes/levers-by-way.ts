/** The levers for an enclosure's missed targets, apart for the days that are too dry and those that are too humid. */
import type { ExceededLimit } from '../day/day-problem.ts';
import type { MistUnit } from '../mist-unit.ts';
import type { SetDay } from '../sets/member-sets.ts';
import { type Lever, troubleOf } from './lever.ts';
import { Levers } from './levers.ts';
import { missesOf, ROUNDING_SHORTFALL } from './missed-targets.ts';

/** Sets may fall behind conditions solved alone by so much; what is less is told, not warned of. */
const NEAR = 0.05;

/** Levers for the days that are too dry (or lack peaks, or exceed a limit) and for those that are too humid: a year may have both. */
export interface LeversByWay {
  readonly dry: readonly Lever[];
  readonly humid: readonly Lever[];
}

/** Returns the levers with which the missed targets of some days would be met; empty where nothing is missed or nothing helps. */
export function leversFor(unit: MistUnit, days: readonly SetDay[], exceeded: readonly ExceededLimit[]): LeversByWay {
  const short = days
    .filter(({ day }) => day.shortfall > ROUNDING_SHORTFALL)
    .toSorted((a, b) => b.day.shortfall - a.day.shortfall);
  if (exceeded.length === 0 && isNear(short)) return { dry: [], humid: [] };
  const isHumid = (day: SetDay) => missesOf(day).some((miss) => miss.isHigh && miss.target !== 'peaks_per_day');
  const isDry = (day: SetDay) => missesOf(day).some((miss) => !miss.isHigh);
  const dry = short.filter((day) => isDry(day) && !isHumid(day));
  const alike = dry.length > 0 ? dry : short.filter(isDry);
  return {
    dry: leversOn(unit, exceeded.length > 0 ? days : alike, exceeded),
    humid: leversOn(unit, short.filter(isHumid), []),
  };
}

function leversOn(unit: MistUnit, days: readonly SetDay[], exceeded: readonly ExceededLimit[]): readonly Lever[] {
  const [first] = days;
  if (!first) return [];
  const cases = [...new Set(days.map(({ span }) => span.one))];
  return new Levers(unit, cases, first.runs).thatDo(troubleOf(days.flatMap(missesOf), exceeded));
}

/** Tells whether the days miss so little that it is what one set for all of them costs. */
export function isNear(days: readonly SetDay[]): boolean {
  return days.every(({ day }) => day.shortfall <= NEAR + 1e-9);
}
