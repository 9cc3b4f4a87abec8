/** The sets of an earlier plan that lie before the day from which a plan is made anew. */
import { type EpochDay, epochDay, isoDateOf } from '../../../basics/calendar-day.ts';
import { minuteOf } from '../../../basics/minute-of-day.ts';
import type { MistSet, Plan } from '../../../plan/plan.ts';
import type { CarePlan } from '../../../resolve/care.ts';
import type { Run } from '../../../science/enclosure-day.ts';
import type { UnitSpan } from '../mist-unit.ts';
import type { ChosenSets } from './set-solution.ts';
import type { UnitSolution } from './unit-solver.ts';

export interface PastSets {
  /** One list an enclosure, in the order asked; null for one that the earlier plan had no sets for. */
  readonly sets: readonly (readonly MistSet[] | null)[];
  /** The first day that is not past. */
  readonly until: EpochDay;
}

/**
 * Returns the sets of each enclosure from the plan's first day to the day before `from`, or to the plan's last where that is over. A timer goes on with its last entries where the earlier plan had ended, and is taken to
 * have run its first ones where that one began later.
 */
export function pastSets(
  enclosures: readonly string[],
  earlier: Plan | null,
  plan: Pick<CarePlan, 'from' | 'days'>,
  from: EpochDay,
): PastSets {
  const until = Math.min(from, plan.from + plan.days);
  if (!earlier || until <= plan.from) return { sets: enclosures.map(() => null), until: plan.from };
  const sets = enclosures.map((id) => {
    const standing = earlier.misting.find(({ enclosure }) => enclosure === id)?.sets ?? [];
    const past = setsBetween(standing, isoDateOf(plan.from), isoDateOf(until - 1));
    return past.length === 0 ? null : past;
  });
  return sets.every((own) => own === null) ? { sets, until: plan.from } : { sets, until };
}

/** Returns the number of changes of what is keyed in, the first included. */
export function countOf(past: PastSets): number {
  return Math.max(0, ...past.sets.map((own) => own?.length ?? 0));
}

/** Returns whether two sets are keyed in alike. */
export function isKeyedAlike(a: Keyed, b: Keyed): boolean {
  return keyOf(a) === keyOf(b);
}

type Keyed = Pick<MistSet, 'entries' | 'interval'>;

function keyOf({ entries, interval }: Keyed): string {
  if (interval) return `every ${interval.onSeconds} ${interval.offSeconds} ${interval.poweredBy} ${interval.plugInAt}`;
  return entries.map(({ at, seconds }) => `${at}/${seconds}`).join(' ');
}

function setsBetween(standing: readonly MistSet[], first: string, last: string): readonly MistSet[] {
  const begun = standing.filter((set) => set.from <= last).toSorted((a, b) => (a.from < b.from ? -1 : 1));
  const held = begun.filter(({ from }, index) => {
    const next = begun[index + 1];
    return next === undefined || (next.from > first && next.from > from);
  });
  return held.map((set, index) => {
    const next = held[index + 1];
    const from = index === 0 ? first : later(set.from, first);
    return heldOver(set, from, next ? isoDateOf(epochDay(next.from) - 1) : last);
  });
}

function later(a: string, b: string): string {
  return a > b ? a : b;
}

interface Dated {
  readonly from: string;
  readonly to: string;
}

/** Returns a set cut or stretched to [from, to], marked as past. */
function heldOver(set: MistSet, from: string, to: string): MistSet {
  const conditions = stretched(set.conditions, from, to);
  const shortfall = Math.max(0, ...conditions.map((condition) => condition.shortfall));
  return { ...set, from, to, wall: stretched(set.wall, from, to), conditions, shortfall, past: true };
}

/** Returns spans cut to [from, to], the first and the last of them stretched to its ends. */
function stretched<T extends Dated>(spans: readonly T[], from: string, to: string): readonly T[] {
  const inside = spans.filter((span) => span.from <= to && span.to >= from);
  const kept = inside.length > 0 ? inside : spans.slice(-1);
  return kept.map((span, index) => ({
    ...span,
    from: index === 0 ? from : span.from,
    to: index === kept.length - 1 ? to : span.to,
  }));
}

/** Returns past and coming sets in a row; where nothing is keyed in on the day between, the last of the past goes on. */
export function goingOn(past: readonly MistSet[], coming: readonly MistSet[]): readonly MistSet[] {
  const [last, first] = [past.at(-1), coming[0]];
  if (!last || !first || !isKeyedAlike(last, first)) return [...past, ...coming];
  const known = new Set(first.shortfalls.map(({ target }) => target));
  const joined = {
    ...first,
    from: last.from,
    entries: last.entries,
    wall: [...last.wall, ...first.wall],
    conditions: [...last.conditions, ...first.conditions],
    shortfall: Math.max(last.shortfall, first.shortfall),
    shortfalls: [...last.shortfalls.filter(({ target }) => !known.has(target)), ...first.shortfalls],
  };
  return [...past.slice(0, -1), joined, ...coming.slice(1)];
}

/** Returns past sets as if they had just been chosen, for an enclosure that was not there: it is told what it would have met. */
export function asChosen(past: readonly MistSet[], all: readonly UnitSpan[]): ChosenSets<UnitSolution> {
  const sets = past.map((set) => {
    const [fromDay, toDay] = [epochDay(set.from), epochDay(set.to)];
    const runs: readonly Run[] = set.entries.map(({ at, seconds }) => ({ startMinute: minuteOf(at), seconds }));
    return { fromDay, toDay, spans: spansBetween(all, fromDay, toDay), solution: givenSolution(runs) };
  });
  return { sets, alone: null, worst: 0, reached: true };
}

/** Returns spans cut to [fromDay, toDay]. */
export function spansBetween(all: readonly UnitSpan[], fromDay: EpochDay, toDay: EpochDay): readonly UnitSpan[] {
  return all
    .filter((span) => span.fromDay <= toDay && span.toDay >= fromDay)
    .map((span) => ({ ...span, fromDay: Math.max(span.fromDay, fromDay), toDay: Math.min(span.toDay, toDay) }));
}

/** Returns a solution of which nothing is known but its runs. */
export function givenSolution(runs: readonly Run[]): UnitSolution {
  return { exceeded: [], marginsHold: true, allowed: [], shortfall: 0, shortfallOf: () => 0, entriesOf: () => runs };
}
