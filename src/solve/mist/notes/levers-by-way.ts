/** The levers for an enclosure's missed targets, apart for the days that are too dry and those that are too humid. */
import type { ExceededLimit, MistCase } from '../day/day-problem.ts';
import type { MistUnit, UnitSpan } from '../mist-unit.ts';
import type { SetDay } from '../sets/member-sets.ts';
import { distinctCases } from '../sets/unit-solver.ts';
import { type Lever, NEAR, troubleOf } from './lever.ts';
import { Levers } from './levers.ts';
import { missesOf, ROUNDING_SHORTFALL } from './missed-targets.ts';

/** Levers for the days that are too dry (or lack peaks, or exceed a limit) and for those that are too humid: a year may have both. */
export interface LeversByWay {
  readonly dry: readonly Lever[];
  readonly humid: readonly Lever[];
}

/** Returns the levers with which the missed targets of an enclosure's days, out of its unit's `spans`, would be met; empty where nothing is missed or nothing helps. */
export function leversFor(
  unit: MistUnit,
  days: readonly SetDay[],
  spans: readonly UnitSpan[],
  exceeded: readonly ExceededLimit[],
): LeversByWay {
  const short = days
    .filter(({ day }) => day.shortfall > ROUNDING_SHORTFALL)
    .toSorted((a, b) => b.day.shortfall - a.day.shortfall);
  if (exceeded.length === 0 && isNear(short)) return { dry: [], humid: [] };
  const isHumid = (day: SetDay) => missesOf(day).some((miss) => miss.isHigh && miss.target !== 'peaks_per_day');
  const isDry = (day: SetDay) => missesOf(day).some((miss) => !miss.isHigh);
  const dry = short.filter((day) => isDry(day) && !isHumid(day));
  const alike = dry.length > 0 ? dry : short.filter(isDry);
  return {
    dry: leversOn(unit, exceeded.length > 0 ? days : alike, spans, exceeded),
    humid: leversOn(unit, short.filter(isHumid), spans, []),
  };
}

function leversOn(
  unit: MistUnit,
  days: readonly SetDay[],
  spans: readonly UnitSpan[],
  exceeded: readonly ExceededLimit[],
): readonly Lever[] {
  const [first] = days;
  if (!first) return [];
  const cases = [...new Set(days.map(({ span }) => span.one))];
  const others = casesBeside(cases, spans);
  return new Levers(unit, cases, first.runs, others).thatDo(troubleOf(days.flatMap(missesOf), exceeded));
}

/** The other enclosures of the unit on the days of some cases; none where an enclosure has its pump for itself. */
function casesBeside(cases: readonly MistCase[], spans: readonly UnitSpan[]): readonly MistCase[] {
  const own = new Set(cases);
  const shared = spans.filter(({ spans: each }) => each.some(({ one }) => own.has(one)));
  return distinctCases(shared).filter(({ enclosure }) => enclosure !== cases[0]?.enclosure);
}

/** Tells whether the days miss so little that it is what one set for all of them costs. */
export function isNear(days: readonly SetDay[]): boolean {
  return days.every(({ day }) => day.shortfall <= NEAR + 1e-9);
}
