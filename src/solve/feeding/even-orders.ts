/** The two orders of a stream over its feeds: feeders by share, then dustings on the feeds whose feeder takes dust. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { EvenProblem } from '../../science/even-problem.ts';
import { type EvenSequence, evenSequence, mostPlacesApart } from '../../science/even-sequence.ts';
import { type Fraction, fraction, lcm, overOneDenominator, ZERO } from '../../science/fraction.ts';
import type { Rated, RatedFeeder } from './rates.ts';

export interface OrderProblem {
  /** Days of the feeds, never falling. */
  readonly days: readonly EpochDay[];
  /** Days after which the order repeats; null: it runs once. */
  readonly cycleDays: number | null;
  readonly feeders: readonly RatedFeeder[];
  readonly dustings: readonly Rated[];
  /** The dusting that takes what others leave; `plain`, the last, where that one has to keep apart itself. */
  readonly rest: number;
  /** Least days between two dustings by their place in `dustings`. */
  readonly apart: readonly (readonly number[])[];
  readonly notBefore: readonly EpochDay[];
  /** Feeds on which nothing is dusted, by place; left out: none. */
  readonly undusted?: readonly boolean[];
  /** Deviations to go on from, by id. */
  readonly carriedFeeders: ReadonlyMap<string, Fraction>;
  readonly carriedDustings: ReadonlyMap<string, Fraction>;
}

export interface EvenOrders {
  /** Indexes into `feeders`, by place. */
  readonly feeders: readonly number[];
  /** Indexes into the given dustings, by place; null where no dust is given. */
  readonly dustings: readonly (number | null)[];
  /** The dustings with the rates that were held. */
  readonly rates: readonly Rated[];
  /** What had to give way for the days apart. */
  readonly cut: readonly {
    readonly id: string;
    readonly asked: number;
    readonly held: number;
    readonly feeds: number;
  }[];
  /** Deviations that the orders went on from, as they were counted. */
  readonly carried: ReadonlyMap<string, Fraction>;
  /** Worst deviations of the two orders, in feeds. */
  readonly worst: { readonly feeders: number; readonly dustings: number };
  /** The largest gap of the worst deviation to a lower bound, in feeds; null where both orders are shown to be the best. */
  readonly gap: number | null;
}

/** Returns both orders; null where the days apart leave none, however little is dusted in the first days. */
export function evenOrders(problem: OrderProblem): EvenOrders | null {
  const feeders = feederOrder(problem);
  const places = feeders.items.flatMap((feeder, place) =>
    problem.feeders[feeder]?.dust && !problem.undusted?.[place] ? [place] : [],
  );
  const dusted = dustingOrder(problem, feeders.items, places);
  if (!dusted) return null;
  const dustings: (number | null)[] = feeders.items.map(() => null);
  places.forEach((place, i) => {
    dustings[place] = dusted.sequence.items[i] ?? null;
  });
  const units = { feeders: feeders.problem.denominator, dustings: dusted.problem.denominator };
  return {
    feeders: feeders.items,
    dustings,
    rates: dusted.rates,
    cut: dusted.cut,
    carried: new Map([...carriedIn(feeders.problem, problem.feeders), ...carriedIn(dusted.problem, dusted.rates)]),
    worst: { feeders: feeders.worst / units.feeders, dustings: dusted.sequence.worst / units.dustings },
    gap: widestGap([feeders, units.feeders], [dusted.sequence, units.dustings]),
  };
}

function carriedIn(even: EvenProblem, items: readonly Rated[]): readonly (readonly [string, Fraction])[] {
  return items.map(({ id }, i) => [id, fraction(even.carried?.[i] ?? 0, even.denominator)] as const);
}

function widestGap(...orders: readonly (readonly [EvenSequence, number])[]): number | null {
  const gaps = orders.flatMap(([order, unit]) => (order.gap ? [(order.worst - order.gap.worstAtLeast) / unit] : []));
  return gaps.length === 0 ? null : Math.max(...gaps);
}

function feederOrder(problem: OrderProblem): EvenSequence & { readonly problem: EvenProblem } {
  const { feeders, days, carriedFeeders } = problem;
  const even = plainProblem(feeders, days.length, carriedFeeders);
  const order = memoised(even);
  if (!order) throw new Error('feeders without days apart always have an order');
  return { ...order, problem: even };
}

/** Returns the problem of items with rates over so many places, without sides. */
function plainProblem(items: readonly Rated[], length: number, carried: ReadonlyMap<string, Fraction>): EvenProblem {
  const even = overOneDenominator(items.map(({ rate }) => rate));
  const from = items.map(({ id }) => carried.get(id) ?? ZERO);
  const isNew = items.some(({ id }) => !carried.has(id)) || from.every(({ n }) => n === 0);
  if (isNew) return { rates: even.numerators, denominator: even.denominator, counts: wholeCounts(even, length, []) };
  const finer = finerUnit(even.denominator, from);
  const ahead = roundedTo(finer, from);
  const numerators = even.numerators.map((numerator) => (numerator * finer) / even.denominator);
  const counts = wholeCounts({ numerators, denominator: finer }, length, ahead);
  return { rates: numerators, denominator: finer, counts, carried: ahead };
}

/** Deviations are carried in units of no less than this share of a feed, so that they stay whole numbers over many plans. */
const FINEST_UNIT = 20_000;

/** Returns a denominator that holds the rates and the carried deviations; the nearest multiple where that grows too large. */
function finerUnit(denominator: number, carried: readonly Fraction[]): number {
  const exact = lcm([denominator, ...carried.map(({ d }) => d)]);
  return exact <= FINEST_UNIT ? exact : denominator * Math.max(1, Math.floor(FINEST_UNIT / denominator));
}

/** Returns fractions to the nearest whole over a denominator, the last so that they sum to 0. */
function roundedTo(denominator: number, carried: readonly Fraction[]): number[] {
  const rounded = carried.map(({ n, d }) => Math.round((n * denominator) / d));
  const over = rounded.reduce((all, value) => all + value, 0);
  return rounded.map((value, i) => (i === rounded.length - 1 ? value - over : value));
}

/** Returns how often each item stands: its due to the nearest whole, the largest remainders first, summing to the length. */
function wholeCounts(
  { numerators, denominator }: ReturnType<typeof overOneDenominator>,
  length: number,
  carried: readonly number[],
): number[] {
  const due = numerators.map((numerator, i) => Math.max(0, numerator * length - (carried[i] ?? 0)));
  const counts = due.map((value) => Math.floor(value / denominator));
  const byRemainder = due
    .map((value, i) => ({ i, remainder: value % denominator }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  let left = length - counts.reduce((all, count) => all + count, 0);
  for (let turn = 0; left > 0; turn = (turn + 1) % Math.max(1, byRemainder.length), left--) {
    const i = byRemainder[turn]?.i ?? 0;
    counts[i] = (counts[i] ?? 0) + 1;
  }
  for (let turn = byRemainder.length - 1; left < 0; turn = (turn || byRemainder.length) - 1) {
    const i = byRemainder[turn]?.i ?? 0;
    if ((counts[i] ?? 0) === 0) continue;
    counts[i] = (counts[i] ?? 0) - 1;
    left++;
  }
  return counts;
}

interface DustingOrder {
  readonly sequence: EvenSequence;
  readonly problem: EvenProblem;
  readonly rates: readonly Rated[];
  readonly cut: EvenOrders['cut'];
}

/** Solves the dustings; where they cannot be kept apart, the most frequent of those in the way is given less often. */
function dustingOrder(
  problem: OrderProblem,
  feeders: readonly number[],
  places: readonly number[],
): DustingOrder | null {
  const first = dustingProblem(problem, feeders, places, problem.dustings);
  const asked = first.counts;
  const rest = isSpaced(problem.apart, problem.rest) ? asked.length - 1 : problem.rest;
  const ladder = [...fewerAndFewer(thinned(first, cliquesOf(problem.apart), rest), problem.apart, rest)];
  const attempt = (step: number, stateLimit?: number): DustingOrder | null => {
    const counts = ladder[step] ?? asked;
    const same = counts.every((count, i) => count === asked[i]);
    const rates = same ? problem.dustings : heldRates(problem.dustings, counts, places.length);
    const even = same ? first : { ...dustingProblem(problem, feeders, places, rates), counts };
    const sequence = memoised(even, stateLimit);
    return sequence && { sequence, problem: even, rates, cut: cutsOf(problem.dustings, asked, counts, places.length) };
  };
  const begun = attempt(0);
  if (begun) return begun;
  const isSeam = problem.notBefore.some((day) => day > (problem.days[0] ?? 0));
  if (isSeam && problem.cycleDays !== null) return null;
  const step = leastStep((each) => attempt(each, RETRY_STATES) !== null, ladder.length - 1);
  if (step === null) return attempt(ladder.push(allToRest(asked, rest)) - 1);
  return attempt(step) ?? attempt(step, RETRY_STATES);
}

/** Nothing but the item that takes the rest: an order of one item always exists. */
function allToRest(asked: readonly number[], rest: number): number[] {
  const places = asked.reduce((all, count) => all + count, 0);
  return asked.map((_, item) => (item === rest ? places : 0));
}

/** States for each try with fewer dustings: many are made. */
const RETRY_STATES = 40_000;

/** Returns the first step that succeeds, of steps that fail up to some point; null where the last fails. */
function leastStep(succeeds: (step: number) => boolean, most: number): number | null {
  let [failed, done] = [0, most];
  if (!succeeds(most)) return null;
  while (done - failed > 1) {
    const middle = Math.floor((failed + done) / 2);
    if (succeeds(middle)) done = middle;
    else failed = middle;
  }
  return done;
}

/** The counts, then with one place fewer and fewer of what must keep apart, to none. */
function fewerAndFewer(
  counts: readonly number[],
  apart: readonly (readonly number[])[],
  rest: number,
): readonly (readonly number[])[] {
  const ladder: (readonly number[])[] = [];
  for (let next: readonly number[] | null = counts; next; next = oneFewer(next, apart, rest)) ladder.push(next);
  return ladder;
}

function heldRates(dustings: readonly Rated[], counts: readonly number[], places: number): readonly Rated[] {
  return dustings.map(({ id }, i) => ({ id, rate: fraction(counts[i] ?? 0, Math.max(1, places)) }));
}

function cutsOf(
  dustings: readonly Rated[],
  asked: readonly number[],
  counts: readonly number[],
  feeds: number,
): EvenOrders['cut'] {
  return dustings.flatMap(({ id }, i) => {
    const [before, held] = [asked[i] ?? 0, counts[i] ?? 0];
    return held < before ? [{ id, asked: before, held, feeds }] : [];
  });
}

function dustingProblem(
  problem: OrderProblem,
  feeders: readonly number[],
  places: readonly number[],
  dustings: readonly Rated[],
): EvenProblem {
  const plain = plainProblem(dustings, places.length, problem.carriedDustings);
  const days = places.map((place) => problem.days[place] ?? 0);
  const spacing = { days, apart: problem.apart, notBefore: problem.notBefore, cycleDays: problem.cycleDays };
  const taking = problem.feeders.map((feeder, i) => ({ feeder, i })).filter(({ feeder }) => feeder.dust);
  const { numerators } = overOneDenominator(taking.map(({ feeder }) => feeder.rate));
  const pairing = {
    groups: places.map((place) => taking.findIndex(({ i }) => i === feeders[place])),
    rates: numerators,
    denominator: numerators.reduce((all, numerator) => all + numerator, 0),
  };
  return { ...plain, spacing, ...(taking.length > 1 ? { pairing } : {}) };
}

/** Items that must all keep the same least distance from one another, with that distance. */
interface Clique {
  readonly members: readonly number[];
  readonly days: number;
}

/** Returns for each item that keeps a distance from itself the items that it keeps it from, as do they among themselves. */
function cliquesOf(apart: readonly (readonly number[])[]): readonly Clique[] {
  return apart.flatMap((row, seed) => {
    const days = row[seed] ?? 0;
    if (days <= 0) return [];
    const members: number[] = [];
    for (const [item] of apart.entries()) {
      const joins = [...members, item, seed].every((other) => (apart[item]?.[other] ?? 0) >= days);
      if (joins) members.push(item);
    }
    return [{ members, days }];
  });
}

/** Takes from the most frequent of a clique what more than fills the days. */
function thinned(problem: EvenProblem, cliques: readonly Clique[], rest: number): number[] {
  const counts = [...problem.counts];
  const { days = [], cycleDays = null } = problem.spacing ?? {};
  for (const { members, days: apart } of cliques) {
    const most = mostPlacesApart(days, apart, cycleDays);
    const total = (): number => members.reduce((all, item) => all + (counts[item] ?? 0), 0);
    while (total() > most) moveOne(counts, members, rest);
  }
  return counts;
}

/** Gives one place of the most frequent member (the later of equals) to the item that takes the rest. */
function moveOne(counts: number[], members: readonly number[], rest: number): void {
  const most = members.reduce((a, b) => ((counts[b] ?? 0) >= (counts[a] ?? 0) ? b : a), members[0] ?? 0);
  counts[most] = (counts[most] ?? 0) - 1;
  counts[rest] = (counts[rest] ?? 0) + 1;
}

function isSpaced(apart: readonly (readonly number[])[], item: number): boolean {
  return apart[item]?.some((days) => days > 0) ?? false;
}

function oneFewer(counts: readonly number[], apart: readonly (readonly number[])[], rest: number): number[] | null {
  const spaced = counts.flatMap((count, item) => (count > 0 && isSpaced(apart, item) ? [item] : []));
  if (spaced.length === 0) return null;
  const fewer = [...counts];
  moveOne(fewer, spaced, rest);
  return fewer;
}

const KEPT = 400;
const solved = new Map<string, EvenSequence | null>();

/** Equal problems are solved once: enclosures of a shelf often share theirs. Days count from the first. */
function memoised(problem: EvenProblem, stateLimit?: number): EvenSequence | null {
  const first = problem.spacing?.days[0] ?? 0;
  const spacing = problem.spacing && {
    ...problem.spacing,
    days: problem.spacing.days.map((day) => day - first),
    notBefore: problem.spacing.notBefore.map((day) => Math.max(0, day - first)),
  };
  const moved = spacing ? { ...problem, spacing } : problem;
  const key = JSON.stringify([moved, stateLimit]);
  const known = solved.get(key);
  if (known !== undefined) return known;
  const answer = evenSequence(moved, stateLimit);
  if (solved.size >= KEPT) solved.clear();
  solved.set(key, answer);
  return answer;
}
