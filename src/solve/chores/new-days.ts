/**
 * The days on which there is to be work only because of moved chores: as few as will do, and of these sets the one on which the chores
 * stand best. Exact: the days are decided in order, and two choices after which every chore has the same ways on, at the same further
 * cost, are one.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { ChainStates, type Move } from './chain-states.ts';
import { type Chain, type GatherProblem, placeCost } from './gather-problem.ts';
import { costsToGo } from './place-chain.ts';

/** Choices kept a day; beyond it the worst are dropped, and nothing is proven. */
const MOST_CHOICES = 2000;
/** Choices kept a day where only a good answer is wanted. */
const NARROW_CHOICES = 60;

export interface NewDays {
  readonly days: readonly EpochDay[];
  readonly atLeast: number;
  readonly isProven: boolean;
}

/** Which days have been opened so far, and the state that this leaves each chore in. */
interface Choice {
  readonly states: readonly number[];
  readonly opened: number;
  readonly cost: number;
  /** New days still needed, and the least cost in the end. */
  readonly needs: number;
  readonly leastCost: number;
  readonly days: Opened | null;
}

interface Opened {
  readonly day: EpochDay;
  readonly before: Opened | null;
}

/** What a choice may come to at most. */
interface Most {
  readonly newDays: number;
  readonly cost: number;
}

interface Sweep {
  readonly best: Choice | null;
  readonly wasCut: boolean;
}

const NO_BOUND: Most = { newDays: Number.POSITIVE_INFINITY, cost: Number.POSITIVE_INFINITY };

/** Returns the further days with work that the chains need; every chain by itself must have a solution. */
export function newDays(problem: GatherProblem): NewDays {
  if (problem.chains.every((chain) => newDaysOf(problem, chain) === 0)) return { days: [], atLeast: 0, isProven: true };
  const field = fieldOf(problem, () => 0);
  let atLeast = start(field).needs;
  for (; ; atLeast++) {
    const { best, wasCut } = sweep(field, { ...NO_BOUND, newDays: atLeast }, MOST_CHOICES);
    if (best && !wasCut) return onFewestDays(problem, atLeast, best);
    if (wasCut) return notProven(problem, atLeast);
  }
}

/** The fewest further days that a chain needs by itself. */
function newDaysOf({ hasWork }: GatherProblem, chain: Chain): number {
  const [first = []] = costsToGo(chain, (_, day) => (hasWork(day) ? 0 : 1));
  return first.reduce((least, needs) => Math.min(least, needs), chain.length === 0 ? 0 : Number.POSITIVE_INFINITY);
}

/** With the number known the best of the sets is looked for, below what a narrow search finds. */
function onFewestDays(problem: GatherProblem, fewest: number, any: Choice): NewDays {
  const field = fieldOf(problem, (due, day) => placeCost(problem, due, day));
  const most = { ...NO_BOUND, newDays: fewest };
  const known = sweep(field, most, NARROW_CHOICES).best;
  const found = sweep(field, { ...most, cost: known?.cost ?? most.cost }, MOST_CHOICES);
  return { days: daysOf(found.best ?? known ?? any), atLeast: fewest, isProven: !found.wasCut };
}

function notProven(problem: GatherProblem, atLeast: number): NewDays {
  const field = fieldOf(problem, (due, day) => placeCost(problem, due, day));
  const { best } = sweep(field, NO_BOUND, NARROW_CHOICES);
  return { days: best ? daysOf(best) : [], atLeast, isProven: false };
}

interface Field {
  readonly hasWork: (day: EpochDay) => boolean;
  readonly chains: readonly ChainStates[];
  /** Days on which anything may stand, ascending. */
  readonly days: readonly EpochDay[];
}

function fieldOf({ chains, hasWork }: GatherProblem, costOf: (due: EpochDay, day: EpochDay) => number): Field {
  const days = new Set(chains.flatMap((chain) => chain.flatMap((movable) => movable.days)));
  return {
    hasWork,
    chains: chains.map((chain) => new ChainStates(chain, costOf, (day) => !hasWork(day))),
    days: [...days].sort((a, b) => a - b),
  };
}

function start({ chains }: Field): Choice {
  return choiceOf(
    chains.map((chain) => chain.start()),
    { opened: 0, cost: 0, days: null },
  );
}

function choiceOf(moves: readonly Move[], before: Pick<Choice, 'opened' | 'cost' | 'days'>): Choice {
  let [cost, needs, toGo] = [before.cost, 0, 0];
  for (const move of moves) {
    cost += move.cost;
    needs = Math.max(needs, move.needs);
    toGo += move.toGo;
  }
  const { opened, days } = before;
  return { states: moves.map(({ state }) => state), opened, cost, needs, leastCost: cost + toGo, days };
}

/** Decides day after day, keeping what comes to at most so much; the best, or null where nothing does. */
function sweep(field: Field, most: Most, width: number): Sweep {
  let choices: readonly Choice[] = [start(field)];
  let wasCut = false;
  for (const day of field.days) {
    const next = new Map<string, Choice>();
    for (const choice of choices) {
      for (const step of steps(field, choice, day)) {
        if (step.opened + step.needs > most.newDays || step.leastCost > most.cost) continue;
        const key = step.states.join();
        const rival = next.get(key);
        if (!rival || compare(step, rival) < 0) next.set(key, step);
      }
    }
    choices = [...next.values()];
    if (choices.length <= width) continue;
    wasCut = true;
    choices = choices.toSorted(byPromise).slice(0, width);
  }
  return { best: choices.toSorted(compare)[0] ?? null, wasCut };
}

/** A day with work is open; another is left alone, or opened at the price of a new day. */
function steps({ chains, hasWork }: Field, choice: Choice, day: EpochDay): readonly Choice[] {
  const move = (isOpen: boolean) => choice.states.map((state, index) => moved(chains, index, state, day, isOpen));
  if (hasWork(day)) return [choiceOf(move(true), choice)];
  const opened = { opened: choice.opened + 1, cost: choice.cost, days: { day, before: choice.days } };
  return [choiceOf(move(false), choice), choiceOf(move(true), opened)];
}

const NO_MOVE: Move = { state: 0, cost: 0, needs: 0, toGo: 0 };

function moved(chains: readonly ChainStates[], index: number, state: number, day: EpochDay, isOpen: boolean): Move {
  return chains[index]?.after(state, day, isOpen) ?? NO_MOVE;
}

function byPromise(a: Choice, b: Choice): number {
  return a.opened + a.needs - b.opened - b.needs || a.leastCost - b.leastCost || compare(a, b);
}

/** Fewer new days, then less cost, then the earlier days. */
function compare(a: Choice, b: Choice): number {
  return a.opened - b.opened || a.cost - b.cost || compareDays(daysOf(a), daysOf(b));
}

function compareDays(a: readonly EpochDay[], b: readonly EpochDay[]): number {
  const at = a.findIndex((day, index) => day !== b[index]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? Number.NEGATIVE_INFINITY);
}

function daysOf({ days }: Choice): readonly EpochDay[] {
  const list: EpochDay[] = [];
  for (let each = days; each; each = each.before) list.push(each.day);
  return list.reverse();
}
