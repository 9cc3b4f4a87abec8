/** The sets of a unit as one of its enclosures meets them: days that are alike for it, with what its air does. */
import type { Run } from '../../../science/enclosure-day.ts';
import { type CaseDay, caseDay } from '../mist-plan.ts';
import type { EnclosureSpan, UnitMember } from '../mist-unit.ts';
import type { ChosenSet } from './set-solution.ts';
import type { UnitSolution } from './unit-solver.ts';

export type PlannedSet = ChosenSet<UnitSolution>;

/** Alike days of one enclosure under one set. */
export interface SetDay {
  readonly span: EnclosureSpan;
  readonly runs: readonly Run[];
  readonly day: CaseDay;
}

export interface MemberSet {
  readonly set: PlannedSet;
  readonly days: readonly SetDay[];
}

/** Returns the days of an enclosure in a set; days that are alike for it are one, whatever another enclosure meets. */
export function memberSet(set: PlannedSet, { enclosure }: UnitMember): MemberSet {
  const own = set.spans.flatMap((span) => {
    const found = span.spans.find(({ one }) => one.enclosure === enclosure.id);
    const runs = set.solution.entriesOf(span);
    return found ? [{ span: { ...found, fromDay: span.fromDay, toDay: span.toDay }, runs }] : [];
  });
  const joined = own.reduce<typeof own>((before, { span, runs }) => {
    const last = before.at(-1);
    if (last?.span.one === span.one && isSameDay(last.runs, runs))
      before[before.length - 1] = { runs, span: { ...last.span, toDay: span.toDay } };
    else before.push({ span, runs });
    return before;
  }, []);
  return { set, days: joined.map(({ span, runs }) => ({ span, runs, day: caseDay(span.one, runs) })) };
}

/** Tells whether two days have the same entries in the same order. */
export function isSameDay(a: readonly Run[], b: readonly Run[]): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
