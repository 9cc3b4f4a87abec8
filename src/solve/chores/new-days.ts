/**
 * The days on which there is to be work only because of moved chores: as few as will do, and of these sets the one on which the chores
 * stand best. Exact: the days are decided in order, and two choices after which every chore has the same ways on, at the same further
 * cost, are one.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { type Chain, type GatherProblem, type Movable, placeCost } from './gather-problem.ts';
import { costsToGo } from './place-chain.ts';

/** Choices kept a day; beyond it the worst are dropped, and nothing is proven. */
const MOST_CHOICES = 4000;

export interface NewDays {
  readonly days: readonly EpochDay[];
  readonly atLeast: number;
  readonly isProven: boolean;
}

/** A way on for one chore: the last occurrence that stands, and the last day for the next one. */
interface Way {
  readonly placed: number;
  readonly until: EpochDay;
  readonly cost: number;
}

interface Choice {
  /** One list of ways a chain; their costs are counted from `cost`. */
  readonly ways: readonly (readonly Way[])[];
  readonly key: string;
  readonly opened: number;
  readonly cost: number;
  readonly days: Opened | null;
}

interface Opened {
  readonly day: EpochDay;
  readonly before: Opened | null;
}

/** Returns the further days with work that the chains need; every chain by itself must have a solution. */
export function newDays(problem: GatherProblem): NewDays {
  const field = fieldOf(problem);
  const first = start(field);
  let atLeast = stillNeeded(field, first, Number.NEGATIVE_INFINITY);
  if (atLeast === 0) return { days: [], atLeast, isProven: true };
  for (; ; atLeast++) {
    const { best, wasCut } = sweep(field, first, atLeast);
    if (best) return { days: daysOf(best), atLeast, isProven: !wasCut };
    if (wasCut) break;
  }
  const { best } = sweep(field, first, Number.POSITIVE_INFINITY);
  return { days: best ? daysOf(best) : [], atLeast, isProven: false };
}

interface Field {
  readonly problem: GatherProblem;
  /** For each chain, occurrence and day of it: the fewest new days from there on, itself included. */
  readonly needs: readonly (readonly (readonly number[])[])[];
  /** Days on which anything may stand, ascending. */
  readonly days: readonly EpochDay[];
}

function fieldOf(problem: GatherProblem): Field {
  const isNew = (_: Movable, day: EpochDay) => (problem.hasWork(day) ? 0 : 1);
  const days = new Set(problem.chains.flatMap((chain) => chain.flatMap((movable) => movable.days)));
  return {
    problem,
    needs: problem.chains.map((chain) => costsToGo(chain, isNew)),
    days: [...days].sort((a, b) => a - b),
  };
}

function start({ problem }: Field): Choice {
  const ways = problem.chains.map((chain) => [{ placed: -1, until: lastDay(chain, 0, null), cost: 0 }]);
  return { ways, key: '', opened: 0, cost: 0, days: null };
}

/** The last day on which an occurrence may stand; without end where there is none left. */
function lastDay(chain: Chain, index: number, before: EpochDay | null): EpochDay {
  const movable = chain[index];
  if (!movable) return Number.POSITIVE_INFINITY;
  const last = movable.days.at(-1) ?? Number.NEGATIVE_INFINITY;
  return before === null || movable.gapAtMost === null ? last : Math.min(last, before + movable.gapAtMost);
}

/** Decides day after day, keeping what needs at most so many new days; null where nothing does. */
function sweep(field: Field, first: Choice, most: number): { readonly best: Choice | null; readonly wasCut: boolean } {
  let choices: readonly Choice[] = [first];
  let wasCut = false;
  for (const day of field.days) {
    const next = new Map<string, Choice>();
    for (const choice of choices) {
      for (const step of steps(field, choice, day)) {
        if (step.opened + stillNeeded(field, step, day) > most) continue;
        const rival = next.get(step.key);
        if (!rival || isBetter(step, rival)) next.set(step.key, step);
      }
    }
    choices = [...next.values()];
    if (choices.length <= MOST_CHOICES) continue;
    wasCut = true;
    choices = promising(field, choices, day);
  }
  return { best: choices.toSorted((a, b) => (isBetter(a, b) ? -1 : 1))[0] ?? null, wasCut };
}

function promising(field: Field, choices: readonly Choice[], day: EpochDay): readonly Choice[] {
  return choices
    .map((choice) => ({ choice, needs: choice.opened + stillNeeded(field, choice, day) }))
    .sort((a, b) => a.needs - b.needs || (isBetter(a.choice, b.choice) ? -1 : 1))
    .slice(0, MOST_CHOICES)
    .map(({ choice }) => choice);
}

function isBetter(a: Choice, b: Choice): boolean {
  if (a.opened !== b.opened) return a.opened < b.opened;
  if (a.cost !== b.cost) return a.cost < b.cost;
  return isEarlier(daysOf(a), daysOf(b));
}

function isEarlier(a: readonly EpochDay[], b: readonly EpochDay[]): boolean {
  const at = a.findIndex((day, index) => day !== b[index]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? Number.NEGATIVE_INFINITY);
}

function daysOf({ days }: Choice): readonly EpochDay[] {
  const list: EpochDay[] = [];
  for (let each = days; each; each = each.before) list.unshift(each.day);
  return list;
}

/** A day without work is left alone, or opened where a chore could use it. */
function steps({ problem }: Field, choice: Choice, day: EpochDay): readonly Choice[] {
  const open = (): Choice => stepped(choice, day, problem, true);
  if (problem.hasWork(day)) return [open()];
  const opened = { ...open(), opened: choice.opened + 1, days: { day, before: choice.days } };
  return [stepped(choice, day, problem, false), opened];
}

function stepped(choice: Choice, day: EpochDay, problem: GatherProblem, isOpen: boolean): Choice {
  let cost = choice.cost;
  const ways = choice.ways.map((ways, index) => {
    const onward = waysAfter(ways, problem.chains[index] ?? [], day, problem, isOpen);
    const least = Math.min(...onward.map((way) => way.cost));
    if (onward.length > 0) cost += least;
    return onward.map((way) => ({ ...way, cost: way.cost - least }));
  });
  return { ...choice, ways, cost, key: keyOf(ways) };
}

function waysAfter(
  ways: readonly Way[],
  chain: Chain,
  day: EpochDay,
  problem: GatherProblem,
  isOpen: boolean,
): readonly Way[] {
  const all = ways.flatMap((way) => {
    const waits = way.until > day ? [way] : [];
    const next = chain[way.placed + 1];
    if (!isOpen || !next || day > way.until || !next.days.includes(day)) return waits;
    const until = lastDay(chain, way.placed + 2, day);
    return [...waits, { placed: way.placed + 1, until, cost: way.cost + placeCost(problem, next.due, day) }];
  });
  return all
    .filter(({ until }) => until > day)
    .filter((way, index, alive) => !alive.some((other, at) => at !== index && makesNeedless(other, way, at < index)))
    .sort((a, b) => a.placed - b.placed || a.until - b.until);
}

/** Of two ways after the same occurrence one is needless that ends no later and costs no less. */
function makesNeedless(other: Way, way: Way, isFirst: boolean): boolean {
  if (other.placed !== way.placed || other.until < way.until || other.cost > way.cost) return false;
  return isFirst || other.until > way.until || other.cost < way.cost;
}

function keyOf(ways: readonly (readonly Way[])[]): string {
  return ways.map((each) => each.map((way) => `${way.placed},${way.until},${way.cost}`).join(';')).join('|');
}

/** The new days that the neediest chain still takes after a day; infinite where one has no way on. */
function stillNeeded({ problem, needs }: Field, choice: Choice, day: EpochDay): number {
  return choice.ways.reduce((most, ways, index) => {
    const chain = problem.chains[index] ?? [];
    const least = ways.reduce(
      (fewest, way) => Math.min(fewest, needOf(chain, needs[index] ?? [], way, day)),
      Number.POSITIVE_INFINITY,
    );
    return Math.max(most, least);
  }, 0);
}

function needOf(chain: Chain, needs: readonly (readonly number[])[], way: Way, day: EpochDay): number {
  const next = chain[way.placed + 1];
  if (!next) return 0;
  let fewest = Number.POSITIVE_INFINITY;
  for (const [at, each] of next.days.entries())
    if (each > day && each <= way.until) fewest = Math.min(fewest, needs[way.placed + 1]?.[at] ?? fewest);
  return fewest;
}
