/** The rotation of one stream through one stage: its feed days with feeder, dusting and slot, and the state it is left in. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { digestOf } from '../../basics/digest.ts';
import type { FoodStream, RotationOrder, RotationState } from '../../plan/plan.ts';
import type { Care, CareEnclosure, FeedRule, Stage } from '../../resolve/care.ts';
import { type Fraction, fraction, subtract } from '../../science/fraction.ts';
import { refusedDustings } from './complete-diet.ts';
import { type EvenOrders, evenOrders, type OrderProblem } from './even-orders.ts';
import { type FeedTime, feedsPerWeek, feedTimes } from './feed-days.ts';
import { fastingSpans, isWithin, someoneThere, undustedSpans } from './pauses.ts';
import { daysApart, firstDayFor, type Given } from './powders.ts';
import {
  cycleWeeks,
  type DustingRates,
  dustedPerWeek,
  dustingRates,
  feederShares,
  PLAIN,
  type Rated,
  type RatedFeeder,
} from './rates.ts';

/** One feed of a rotation, before people and portions. */
export interface RotationFeed extends FeedTime {
  readonly food: FoodStream;
  readonly stage: string;
  readonly slot: number;
  readonly feeder: string;
  readonly dusting: string | null;
}

/** One stream in one stage of an enclosure. */
export interface StreamSpan {
  readonly care: Care;
  readonly enclosure: CareEnclosure;
  readonly stageName: string;
  readonly stage: Stage;
  readonly food: FoodStream;
  /** Whether the stage's dustings go on this stream. */
  readonly dusted: boolean;
  /** The first day of the stage in the plan; before `from` where a part of it is past. */
  readonly began: EpochDay;
  readonly from: EpochDay;
  readonly to: EpochDay;
}

/** What the stream goes on from. */
export interface Before {
  readonly lastFeed: EpochDay | null;
  readonly given: readonly Given[];
  /** The order that ran until now, with the slot that would have come next. */
  readonly preceding: { readonly order: RotationOrder; readonly nextSlot: number } | null;
  /** The order that an earlier plan has for this stage. */
  readonly standing: { readonly order: RotationOrder; readonly worstDeviation: number } | null;
}

export interface Rotated {
  readonly feeds: readonly RotationFeed[];
  /** The past feeds of an order that goes on, as it laid them. */
  readonly pastFeeds: readonly RotationFeed[];
  /** Without its last dates, which hang on what is really given. */
  readonly state: Omit<RotationState, 'last'>;
  readonly orders: EvenOrders | null;
  readonly rateCuts: DustingRates['cut'];
  readonly cycleWeeks: number | null;
}

/** Returns the feeds of a stream over its stage, going on from what was fed before. */
export function rotate(span: StreamSpan, before: Before): Rotated {
  const setup = setUp(span);
  const started =
    goOn(span, setup, before) ??
    (setup.weeks === null ? null : startAnew(span, setup, setup.weeks, before)) ??
    startAnew(span, setup, null, before);
  if (!started) throw new Error('an order without dustings always exists');
  return started;
}

interface Setup {
  readonly rules: readonly FeedRule[];
  readonly feeders: readonly RatedFeeder[];
  readonly dustings: DustingRates;
  readonly apart: readonly (readonly number[])[];
  readonly weeks: number | null;
}

function setUp(span: StreamSpan): Setup {
  const { enclosure, stage, food, dusted } = span;
  const rules = stage.feeds.filter((rule) => rule.food === food);
  const shares = feederShares(enclosure, food);
  const feeders = dusted ? shares : shares.map((feeder) => ({ ...feeder, dust: false }));
  const perWeek = dustedPerWeek(feedsPerWeek(rules), feeders);
  const refused = refusedDustings(enclosure, stage);
  const dustings = dustingRates(perWeek.n > 0 ? stage.dusting.filter((rule) => !refused.includes(rule)) : [], perWeek);
  const powders = dustings.items.map(({ id }) => id);
  const apart = powders.map((a) =>
    powders.map((b) => (a === PLAIN || b === PLAIN ? 0 : daysApart(enclosure, stage.apart, a, b))),
  );
  return { rules, feeders, dustings, apart, weeks: cycleWeeks(rules, feeders, dustings.items) };
}

/** A digest of what an order is solved from: the same digest, the same order. One that runs once is solved for its days. */
function basisOf(span: StreamSpan, { rules, feeders, dustings, apart }: Setup, weeks: number | null): string {
  const rhythm = rules.map((rule) => [rule.rhythm, rule.timesADay]);
  const rates = [...feeders, ...dustings.items].map(({ id, rate }) => `${id} ${rate.n}/${rate.d}`);
  const dust = feeders.map((feeder) => (feeder.dust ? 1 : 0)).join('');
  return digestOf([rhythm, rates, dust, apart, weeks, weeks === null ? [span.to, pausedDays(span)] : []]);
}

function pausedDays(span: StreamSpan): readonly (readonly number[])[] {
  const spans = [...fastingSpans(span.enclosure, span.food), ...undustedSpans(span.enclosure)];
  const away = span.care.away.map(({ from, to, visits }) => [from, to, ...visits]);
  return [...spans.map(({ from, to }) => [from, to]), ...away];
}

/** Returns whether the stream is fed on a day. */
function fedOn({ care, enclosure, food }: StreamSpan): (day: EpochDay) => boolean {
  const fasting = fastingSpans(enclosure, food);
  if (fasting.length === 0 && care.away.length === 0) return () => true;
  return (day) => someoneThere(care, day) && !isWithin(fasting, day);
}

function startAnew(span: StreamSpan, setup: Setup, weeks: number | null, before: Before): Rotated | null {
  const places = weeks === null ? placesOnce(span, setup, before) : placesOfCycle(span, setup, weeks, before);
  const carried = carriedFrom(before.preceding, setup);
  const powders = setup.dustings.items;
  const undusted = undustedSpans(span.enclosure);
  const problem: OrderProblem = {
    days: places.map(({ day }) => day),
    cycleDays: weeks === null ? null : 7 * weeks,
    feeders: setup.feeders,
    dustings: powders,
    rest: setup.dustings.rest,
    apart: setup.apart,
    notBefore: powders.map(({ id }) =>
      id === PLAIN ? Number.NEGATIVE_INFINITY : firstDayFor(span.enclosure, span.stage.apart, id, before.given),
    ),
    ...(weeks === null ? { undusted: places.map(({ day }) => isWithin(undusted, day)) } : {}),
    carriedFeeders: carried,
    carriedDustings: carried,
  };
  const orders = evenOrders(problem);
  if (!orders) return null;
  const order = orderOf(span, setup, orders, weeks, places[0]?.day ?? span.from);
  return { ...laidOut(span, setup, order, worstOf(orders)), orders };
}

function worstOf({ worst }: EvenOrders): number {
  return Math.round(Math.max(worst.feeders, worst.dustings) * 10_000) / 10_000;
}

function placesOnce(span: StreamSpan, { rules }: Setup, { lastFeed }: Before): readonly FeedTime[] {
  const isFed = fedOn(span);
  return feedTimes(rules, span.from, span.to, lastFeed).filter(({ day }) => isFed(day));
}

function placesOfCycle(span: StreamSpan, { rules }: Setup, weeks: number, { lastFeed }: Before): readonly FeedTime[] {
  const perWeek = feedsPerWeek(rules);
  const first = feedTimes(rules, span.from, span.to, lastFeed)[0]?.day ?? span.from;
  return feedTimes(rules, first, first + 7 * weeks - 1, null).slice(0, (perWeek.n * weeks) / perWeek.d);
}

function orderOf(
  span: StreamSpan,
  setup: Setup,
  orders: EvenOrders,
  weeks: number | null,
  began: EpochDay,
): RotationOrder {
  const ids = orders.rates.map(({ id }) => (id === PLAIN ? null : id));
  return {
    stage: span.stageName,
    began: isoDateOf(began),
    cycleWeeks: weeks,
    basis: basisOf(span, setup, weeks),
    feeders: orders.feeders.map((feeder) => setup.feeders[feeder]?.id ?? span.food),
    dustings: orders.dustings.map((dusting) => (dusting === null ? null : (ids[dusting] ?? null))),
    feederRates: ratesById(setup.feeders),
    dustingRates: ratesById(orders.rates.filter(({ rate }) => rate.n > 0)),
    carried: Object.fromEntries(
      [...orders.carried]
        .filter(([, { n }]) => n !== 0)
        .map(([id, { n, d }]): [string, [number, number]] => [id, [n, d]]),
    ),
  };
}

function ratesById(items: readonly Rated[]): RotationOrder['feederRates'] {
  return Object.fromEntries(items.map(({ id, rate }): [string, [number, number]] => [id, [rate.n, rate.d]]));
}

/** Goes on with the standing order where it was solved from the same and keeps its distance from what was given since. */
function goOn(span: StreamSpan, setup: Setup, before: Before): Rotated | null {
  const standing = before.standing;
  if (!standing || standing.order.basis !== basisOf(span, setup, standing.order.cycleWeeks)) return null;
  const laid = laidOut(span, setup, standing.order, standing.worstDeviation);
  const near = laid.feeds.every(({ day, dusting }) => {
    return dusting === null || day >= firstDayFor(span.enclosure, span.stage.apart, dusting, before.given);
  });
  return near ? { ...laid, orders: null } : null;
}

/** Returns the feeds of a stage that is past, as its standing order laid them; empty where it was solved from something else. */
export function relaid(span: StreamSpan, { standing }: Before): readonly RotationFeed[] {
  const setup = setUp(span);
  if (!standing || standing.order.basis !== basisOf(span, setup, standing.order.cycleWeeks)) return [];
  return laidOut(span, setup, standing.order, 0).pastFeeds;
}

/** Lays an order over the days of the span. */
function laidOut(
  span: StreamSpan,
  setup: Setup,
  order: RotationOrder,
  worstDeviation: number,
): Omit<Rotated, 'orders'> {
  const { times, slots } = slotted(span, setup, order);
  const undusted = undustedSpans(span.enclosure);
  const isFed = fedOn(span);
  const past: RotationFeed[] = [];
  const feeds: RotationFeed[] = [];
  times.forEach((time, i) => {
    const { day, ordinal, rule } = time;
    if (day < span.began || day > span.to || !isFed(day)) return;
    const slot = slots[i] ?? 0;
    const dusting = isWithin(undusted, day) ? null : (order.dustings[slot] ?? null);
    const feeder = order.feeders[slot] ?? span.food;
    const into = day < span.from ? past : feeds;
    into.push({ day, ordinal, rule, food: span.food, stage: span.stageName, slot, feeder, dusting });
  });
  const length = order.feeders.length;
  const state = {
    enclosure: span.enclosure.id,
    food: span.food,
    cycleFeeds: length,
    nextIndex: nextSlot(slots, times, span.to, order),
    worstDeviation,
    order,
  };
  return { feeds, pastFeeds: past, state, rateCuts: setup.dustings.cut, cycleWeeks: order.cycleWeeks };
}

/** The days of an order from its beginning on, each with its slot; an order that runs once leaves out the days without feed. */
function slotted(
  span: StreamSpan,
  { rules }: Setup,
  order: RotationOrder,
): { readonly times: readonly FeedTime[]; readonly slots: readonly number[] } {
  const isFed = fedOn(span);
  const all = feedTimes(rules, epochDay(order.began), span.to, null);
  const times = order.cycleWeeks === null ? all.filter(({ day }) => isFed(day)) : all;
  const length = Math.max(1, order.feeders.length);
  return { times, slots: times.map((_, i) => (order.cycleWeeks === null ? i : i % length)) };
}

function nextSlot(slots: readonly number[], times: readonly FeedTime[], to: EpochDay, order: RotationOrder): number {
  const done = times.filter(({ day }) => day <= to).length;
  return order.cycleWeeks === null ? done : ((slots[done - 1] ?? -1) + 1) % Math.max(1, order.feeders.length);
}

/** Returns the deviations in which an order is left at its next slot, by id. */
function carriedFrom(preceding: Before['preceding'], setup: Setup): ReadonlyMap<string, Fraction> {
  if (!preceding) return new Map();
  const { order, nextSlot } = preceding;
  const feeders = order.feeders.slice(0, nextSlot);
  const dusting = feeders.map((id) => setup.feeders.some((feeder) => feeder.id === id && feeder.dust));
  const dustings = order.dustings.slice(0, nextSlot).filter((_, slot) => dusting[slot]);
  return new Map([
    ...left(order.feederRates, order.carried, feeders),
    ...left(
      order.dustingRates,
      order.carried,
      dustings.map((id) => id ?? PLAIN),
    ),
  ]);
}

function left(
  rates: RotationOrder['feederRates'],
  carried: RotationOrder['carried'],
  stood: readonly string[],
): readonly (readonly [string, Fraction])[] {
  return Object.entries(rates).map(([id, [n, d]]) => {
    const times = stood.filter((each) => each === id).length;
    const [ahead, of] = carried[id] ?? [0, 1];
    const due = subtract(fraction(n * stood.length, d), fraction(ahead, of));
    return [id, subtract(fraction(times, 1), due)] as const;
  });
}
