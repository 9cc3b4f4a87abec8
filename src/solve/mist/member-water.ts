/** One enclosure's share of a unit's sets, with everything there is to say about them. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { MistAdvice, MistSet } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import type { ExceededLimit, MistCase } from './day/day-problem.ts';
import { type EntrySpan, mistCondition, setFrame } from './mist-plan.ts';
import type { MistUnit, UnitMember, UnitSpan } from './mist-unit.ts';
import { enclosureNotes, enclosureWarnings } from './notes/enclosure-notes.ts';
import { leversFor } from './notes/levers-by-way.ts';
import { shortfallNotes, shortfallsOf } from './notes/shortfall-notes.ts';
import { tooFewSets } from './notes/too-few-sets.ts';
import { warned } from './notes/water-notes.ts';
import { type CadenceOff, countOff, lengthOff } from './sets/cadence-off.ts';
import { isSameDay, type MemberSet, memberSet, type PlannedSet } from './sets/member-sets.ts';
import type { ChosenSets } from './sets/set-solution.ts';
import type { UnitSolution } from './sets/unit-solver.ts';

/** Returns the sets of an enclosure as the plan keeps them, and its advice. */
export function memberWater(
  care: Care,
  unit: MistUnit,
  member: UnitMember,
  chosen: ChosenSets<UnitSolution>,
  spans: readonly UnitSpan[],
  offsets: UtcOffsets,
): { readonly sets: readonly MistSet[]; readonly advice: readonly MistAdvice[] } {
  const { enclosure } = member;
  const own = chosen.sets.map((set) => memberSet(set, member));
  const days = own.flatMap((each) => each.days);
  const exceeded = own.map((each) => exceededBy(unit, member, each));
  const allExceeded = worstOf(exceeded.flat());
  const levers = leversFor(
    unit,
    days,
    chosen.sets.flatMap((set) => set.spans),
    allExceeded,
  );
  const sets = own.map((each, index) => {
    const set = mistSet(unit, each, offsets);
    const limits = exceeded[index] ?? [];
    return { ...set, shortfalls: shortfallsOf(care, unit, enclosure, each.days, limits, levers) };
  });
  return {
    sets: sets.map((set) => withThirst(unit, member, set)),
    advice: [
      ...enclosureWarnings(care, unit, member, days),
      ...shortfallNotes(care, unit, enclosure, days, allExceeded, levers, (limit) => datesOf(limit, own, exceeded)),
      ...setNotes(unit, member, chosen),
      ...enclosureNotes(care, unit, member, own, spans, levers),
    ],
  };
}

function mistSet(unit: MistUnit, { set, days }: MemberSet, offsets: UtcOffsets): Omit<MistSet, 'shortfalls'> {
  const { solution } = set;
  const conditions = days.map(({ span, runs, day }) => mistCondition(unit, span, runs, day));
  return {
    ...setFrame(entrySpans(set), unit.clock, offsets),
    ...(solution.interval ? { interval: intervalOf(unit, solution.interval) } : {}),
    allowed: solution.allowed.map(({ fromMinute, toMinute }) => [clockTimeOf(fromMinute), clockTimeOf(toMinute)]),
    conditions,
    shortfall: Math.max(0, ...conditions.map(({ shortfall }) => shortfall)),
  };
}

function intervalOf(
  { supply }: MistUnit,
  { onSeconds, offSeconds, plugInMinute }: NonNullable<UnitSolution['interval']>,
): NonNullable<MistSet['interval']> {
  const plugIn = plugInMinute === null ? {} : { plugInAt: clockTimeOf(plugInMinute) };
  return { onSeconds, offSeconds, poweredBy: supply?.id ?? null, ...plugIn };
}

/** Days of a set with the same entries; one span but for what a dial powers. */
function entrySpans({ spans, solution }: PlannedSet): readonly EntrySpan[] {
  return spans.reduce<EntrySpan[]>((joined, span) => {
    const runs = solution.entriesOf(span);
    const before = joined.at(-1);
    if (before && isSameDay(before.runs, runs)) joined[joined.length - 1] = { ...before, toDay: span.toDay };
    else joined.push({ fromDay: span.fromDay, toDay: span.toDay, runs });
    return joined;
  }, []);
}

/** Returns the limits of a set that this enclosure's own share exceeds; what is the unit's as a whole is its first enclosure's. */
function exceededBy(unit: MistUnit, member: UnitMember, { set, days }: MemberSet): readonly ExceededLimit[] {
  const isFirst = unit.members[0] === member;
  return set.solution.exceeded.flatMap((limit) => {
    const by = ownAmount(limit, days, isFirst);
    return by > 0 ? [{ ...limit, by: Math.round(by * 10) / 10 }] : [];
  });
}

function ownAmount({ limit, by }: ExceededLimit, days: MemberSet['days'], isFirst: boolean): number {
  const worst = (of: (day: MemberSet['days'][number]) => number) => Math.max(0, ...days.map(of));
  const where = (has: (one: MistCase) => boolean) => (days.some(({ span }) => has(span.one)) ? by : 0);
  switch (limit) {
    case 'dry-out':
      return worst(({ span, day }) => (span.one.dryOut?.minutes ?? 0) - day.figures.dryOutMinutes);
    case 'tray':
      return worst(({ span, day }) => day.figures.runOffG - (span.one.runOffAtMostG ?? Number.POSITIVE_INFINITY));
    case 'drink':
      return where(({ drink }) => drink !== null);
    case 'count':
      return worst((day) => most(countOff(day)));
    case 'length':
      return worst((day) => most(lengthOff(day)));
    case 'gap':
      return where(({ cadence }) => cadence !== null);
    case 'no-mist':
      return where(({ forbidden }) => forbidden.noMist.length > 0);
    case 'tank':
    case 'noise':
      return isFirst ? by : 0;
  }
}

function most({ under, over }: CadenceOff): number {
  return Math.max(under, over);
}

/** The sets that exceed a limit, where not all of them do. */
function datesOf(
  limit: ExceededLimit['limit'],
  sets: readonly MemberSet[],
  exceeded: readonly (readonly ExceededLimit[])[],
): string {
  const those = sets.filter((_, index) => exceeded[index]?.some((each) => each.limit === limit));
  if (those.length === sets.length) return '';
  const spans = those.map(({ set }) => `${isoDateOf(set.fromDay)} to ${isoDateOf(set.toDay)}`);
  return ` (${spans.join(', ')})`;
}

function worstOf(limits: readonly ExceededLimit[]): readonly ExceededLimit[] {
  const worst = new Map<string, ExceededLimit>();
  for (const limit of limits) if ((worst.get(limit.limit)?.by ?? -1) < limit.by) worst.set(limit.limit, limit);
  return [...worst.values()];
}

/** Where nothing that can be drunk is misted, a person gives it: a chore follows from the missing drink. */
function withThirst(unit: MistUnit, { enclosure }: UnitMember, set: MistSet): MistSet {
  const { drink } = enclosure.targets.water;
  const { misting } = enclosure.targets;
  const mists = Math.max(drink?.mists ?? 0, misting !== null && misting !== 'none' && unit.means === 'none' ? 1 : 0);
  const isDry = unit.means === 'none' || unit.pump?.kind === 'fogger';
  if (!isDry || mists === 0) return set;
  const remedy = 'a person gives it water; a chore stands in the plan';
  return { ...set, shortfalls: [{ target: 'drink', by: mists, unit: 'mists', remedy }, ...set.shortfalls] };
}

/** What there is to say about the sets as such, once a unit. */
function setNotes(
  unit: MistUnit,
  member: UnitMember,
  { reached, worst, alone, sets }: ChosenSets<UnitSolution>,
): readonly MistAdvice[] {
  const { enclosure } = member;
  if (unit.members[0] !== member) return [];
  const notes: MistAdvice[] = [];
  const few = !reached && alone !== null ? tooFewSets(worst, alone) : null;
  if (few) notes.push(warned('mist-sets-too-few', { enclosure: enclosure.id, most: sets.length, ...few }, 'sets'));
  const conflict = dryOutConflict(unit, sets);
  if (conflict && unit.pump)
    notes.push(warned('dry-outs-conflict', { pump: unit.pump.id, enclosures: conflict.join(', ') }, 'mist'));
  return notes;
}

function dryOutConflict({ members }: MistUnit, sets: ChosenSets<UnitSolution>['sets']): readonly string[] | null {
  const isExceeded = sets.some(({ solution }) => solution.exceeded.some(({ limit }) => limit === 'dry-out'));
  const drying = members.filter(({ enclosure }) => enclosure.targets.water.dryOut).map(({ enclosure }) => enclosure.id);
  return isExceeded && drying.length > 1 ? drying : null;
}
