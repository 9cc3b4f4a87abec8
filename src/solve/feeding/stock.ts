/** Orders of feeders on the days on which the household shops, from what the rotations eat, what dies and what keeps. */

import { type EpochDay, isoDateOf, WEEKDAYS, weekdayIndex } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Feed, StockOrder } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import {
  type Demand,
  demandsOf,
  type EatenFeed,
  eatenFeeds,
  longestShoppingGap,
  mostEatenIn,
  type StockFeeder,
  stockFeeders,
} from './feeder-stock.ts';
import { someoneShops } from './pauses.ts';
import { isShort } from './stand-ins.ts';
import type { StockCourse } from './stock-course.ts';
import { feedFrom, goodOn, type Keeping, keepingOf, type Lot, survivors } from './stock-lots.ts';
import { reportStock } from './stock-report.ts';

/** When to start cultures of a feeder that is bred at home. */
export interface CultureStarts {
  readonly enclosure: string;
  readonly feeder: string;
  readonly dates: readonly EpochDay[];
}

/** An order covers no more days than this, however long a feeder keeps; ours. */
const COVERS_AT_MOST_DAYS = 28;

/** Returns orders by date and feeder, from a day on. */
export function solveStock(care: Care, feeds: readonly Feed[], from: EpochDay, log: Log): readonly StockOrder[] {
  const eaten = eatenFeeds(feeds, from);
  const courses = stockFeeders(care).flatMap((feeder) => {
    const course = courseOf(care, eaten, feeder, from);
    return course ? [course] : [];
  });
  reportStock(care, courses, from, log);
  return courses
    .flatMap((course) => course.orders)
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.feeder < b.feeder ? -1 : 1));
}

function courseOf(care: Care, feeds: readonly EatenFeed[], feeder: StockFeeder, from: EpochDay): StockCourse | null {
  const demands = demandsOf(feeds, feeder.id);
  const reserve = feeder.standIn ? mostEatenIn(feeds, feeder.foods, care.shopping.reserveDays) : 0;
  if (demands.length === 0 && reserve === 0) return null;
  const keeping = keepingOf(feeder, feeder.shelfLifeDays ?? takenShelfLife(care, demands));
  const shoppingDays = daysToShop(care, feeder.id, from);
  const atHand: readonly Lot[] =
    feeder.inStock === null ? [] : [{ bought: from, pieces: feeder.inStock, atHand: true }];
  const counted = feeder.inStock === null ? afterFirstShopping(demands, shoppingDays) : demands;
  const course = runThrough(
    keeping,
    feeder.id,
    shoppingDays,
    counted,
    atHand,
    reserve,
    from + daysLeft(care, from) - 1,
  );
  return { feeder, keeping, shoppingDays, ...course, runsOut: runOut(atHand, keeping, demands) };
}

/** A shelf life that reaches from one purchase over the next: what is taken where the file does not say. */
function takenShelfLife(care: Care, demands: readonly Demand[]): number {
  const lead = Math.max(0, ...demands.map(({ day, buyBy }) => day - buyBy));
  return Math.max(1, longestShoppingGap(care.shopping.days)) + lead;
}

function daysLeft(care: Care, from: EpochDay): number {
  return care.plan.from + care.plan.days - from;
}

function daysToShop(care: Care, feeder: string, from: EpochDay): readonly EpochDay[] {
  const weekdays = new Set(care.shopping.days.map((day) => WEEKDAYS.indexOf(day)));
  const days: EpochDay[] = [];
  for (let day = from; day < from + daysLeft(care, from); day++)
    if (weekdays.has(weekdayIndex(day)) && someoneShops(care, day) && !isShort(care, feeder, day)) days.push(day);
  return days;
}

/** What was not counted is taken to last until the first purchase can be fed. */
function afterFirstShopping(demands: readonly Demand[], shoppingDays: readonly EpochDay[]): readonly Demand[] {
  const first = shoppingDays[0];
  return first === undefined ? [] : demands.filter(({ buyBy }) => buyBy >= first);
}

function runOut(atHand: readonly Lot[], keeping: Keeping, demands: readonly Demand[]): EpochDay | null {
  if (atHand.length === 0) return null;
  let lots = atHand;
  for (const demand of demands) {
    const fed = feedFrom(lots, keeping, demand);
    if (fed.missing > 0) return demand.day;
    lots = fed.lots;
  }
  return null;
}

type Course = Pick<StockCourse, 'orders' | 'missing'>;

/** Goes from one shopping day to the next; buys on a day where waiting for the next would leave a feed or the reserve short. */
function runThrough(
  keeping: Keeping,
  feeder: string,
  shoppingDays: readonly EpochDay[],
  demands: readonly Demand[],
  atHand: readonly Lot[],
  reserve: number,
  lastDay: EpochDay,
): Course {
  const orders: StockOrder[] = [];
  const missing: { demand: Demand; pieces: number }[] = [];
  let lots = atHand;
  let served = 0;
  const feedUntil = (day: EpochDay): void => {
    for (let demand = demands[served]; demand && demand.buyBy < day; demand = demands[++served]) {
      const fed = feedFrom(lots, keeping, demand);
      if (fed.missing > 0) missing.push({ demand, pieces: Math.ceil(fed.missing - 1e-6) });
      lots = fed.lots;
    }
  };
  shoppingDays.forEach((day, i) => {
    feedUntil(day);
    const waiting = demands.slice(served);
    const next = shoppingDays[i + 1] ?? lastDay + 1;
    if (lasts(lots, keeping, waiting, next, reserve)) return;
    const order = orderOn(day, next, feeder, lots, keeping, waiting, reserve);
    if (order.amount === 0) return;
    orders.push(order);
    lots = [...lots, { bought: day, pieces: order.amount, atHand: false }];
  });
  feedUntil(Number.POSITIVE_INFINITY);
  return { orders, missing };
}

/** Whether what is at hand feeds all that the next purchase comes too late for, and leaves the reserve good on that day. */
function lasts(
  lots: readonly Lot[],
  keeping: Keeping,
  waiting: readonly Demand[],
  next: EpochDay,
  reserve: number,
): boolean {
  let left = lots;
  for (const demand of waiting) {
    if (demand.buyBy >= next) break;
    const fed = feedFrom(left, keeping, demand);
    if (fed.missing > 0) return false;
    left = fed.lots;
  }
  return goodOn(left, keeping, next) >= reserve - 1e-6;
}

function orderOn(
  day: EpochDay,
  next: EpochDay,
  feeder: string,
  lots: readonly Lot[],
  keeping: Keeping,
  waiting: readonly Demand[],
  reserve: number,
): StockOrder {
  const until = Math.max(next, day + Math.min(keeping.shelfLifeDays, COVERS_AT_MOST_DAYS));
  let left = lots;
  let wanted = 0;
  let eaten = 0;
  let last = day;
  for (const demand of waiting) {
    if (demand.day > Math.min(until, day + keeping.shelfLifeDays)) break;
    const fed = feedFrom(left, keeping, demand);
    left = fed.lots;
    eaten += fed.missing;
    wanted += fed.missing / survivors(keeping, demand.day - day);
    last = demand.day;
  }
  const short = Math.max(0, reserve - goodOn(left, keeping, until));
  const reserved = short / survivors(keeping, Math.min(until - day, keeping.shelfLifeDays));
  const amount = Math.ceil(wanted + reserved - 1e-6);
  return { date: isoDateOf(day), feeder, amount, why: whyOf(eaten, short, amount, last, day) };
}

function whyOf(eaten: number, short: number, amount: number, last: EpochDay, day: EpochDay): string {
  const [fed, kept] = [Math.ceil(eaten - 1e-6), Math.ceil(short - 1e-6)];
  const lost = amount - fed - kept;
  return [
    ...(fed > 0 ? [`${fed} fed up to ${isoDateOf(Math.max(last, day))}`] : []),
    ...(kept > 0 ? [`${kept} in reserve`] : []),
    ...(lost > 0 ? [`${lost} for losses`] : []),
  ].join(', ');
}

/** Returns the start days that keep the wanted number of cultures bearing: evenly over the time that one lasts. */
export function cultureStarts(care: Care, from: EpochDay): readonly CultureStarts[] {
  return care.enclosures.flatMap((enclosure) =>
    enclosure.feeders.flatMap(({ id, culture }) => {
      if (!culture) return [];
      const every = Math.max(1, Math.floor(culture.lastsDays / Math.max(1, culture.keep)));
      const starts = Math.ceil(daysLeft(care, from) / every);
      return [
        { enclosure: enclosure.id, feeder: id, dates: Array.from({ length: starts }, (_, i) => from + i * every) },
      ];
    }),
  );
}
