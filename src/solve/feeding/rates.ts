/** Shares of feeders and rates of dustings as exact fractions, and the cycle that holds whole numbers of them. */

import type { FoodStream } from '../../plan/plan.ts';
import type { CareEnclosure, DustingRule, Feeder, FeedRule } from '../../resolve/care.ts';
import {
  compare,
  divide,
  type Fraction,
  fraction,
  fractionOf,
  multiply,
  ONE,
  subtract,
  sum,
  ZERO,
} from '../../science/fraction.ts';
import { feedsPerWeek, repeatsAfter } from './feed-days.ts';

/** One item of an order with its share of the places. */
export interface Rated {
  readonly id: string;
  readonly rate: Fraction;
}

export interface RatedFeeder extends Rated {
  readonly dust: boolean;
}

export const PLAIN = 'plain';
const LONGEST_CYCLE_WEEKS = 8;

/**
 * Returns the feeders of a stream with shares that sum to 1, in the file's order; where the file names none, the stream itself
 * stands for its feeder.
 */
export function feederShares(enclosure: CareEnclosure, food: FoodStream): readonly RatedFeeder[] {
  const feeders = enclosure.feeders.filter((feeder) => feeder.food === food && feeder.share > 0);
  if (feeders.length === 0) return [{ id: food, rate: ONE, dust: food === 'insects' || food === 'greens' }];
  const shares = feeders.map((feeder) => fractionOf(feeder.share));
  const total = sum(shares);
  return feeders.map((feeder, i) => ({
    id: feeder.id,
    rate: divide(shares[i] ?? ZERO, total),
    dust: feeder.dust && takesDust(feeder),
  }));
}

function takesDust(feeder: Feeder): boolean {
  return feeder.food === 'insects' || feeder.food === 'greens';
}

function percent(share: Fraction): string {
  return `${Math.round((1000 * share.n) / share.d) / 10} %`;
}

/** What a dusting order may ask for, and what had to be taken from it. */
export interface DustingRates {
  /** In the file's order, `plain` last; an item may have no share. */
  readonly items: readonly Rated[];
  /** Position of the item that takes what the others leave. */
  readonly rest: number;
  /** What was more than there are feeds: the asked sum, and the dusting that gave way with its times in 4 weeks. */
  readonly cut: readonly { readonly asked: string; readonly id: string; readonly times: string }[];
}

/**
 * Returns the rates of the dustings; `perWeek` counts the feeds that take dust. Where they come to more than one a feed, the most
 * frequent gives way.
 */
export function dustingRates(rules: readonly DustingRule[], perWeek: Fraction): DustingRates {
  const asked = rules.map((rule) => ({ id: rule.id, rate: rateOf(rule, perWeek) }));
  const { items: kept, cut } = cutToOne(asked, perWeek);
  const left = subtract(ONE, sum(kept.map(({ rate }) => rate)));
  const restAt = rules.findIndex(({ rate }) => rate.kind === 'the-rest');
  const items = kept.map((item, i) => (i === restAt ? { id: item.id, rate: left } : item));
  const plain = { id: PLAIN, rate: restAt >= 0 ? ZERO : left };
  return { items: [...items, plain], rest: restAt >= 0 ? restAt : items.length, cut };
}

function rateOf({ rate }: DustingRule, perWeek: Fraction): Fraction {
  if (rate.kind === 'every-feeds') return divide(ONE, fractionOf(rate.feeds));
  if (rate.kind === 'the-rest' || perWeek.n === 0) return ZERO;
  return divide(fractionOf(rate.times), multiply(fractionOf(rate.weeks), perWeek));
}

function cutToOne(asked: readonly Rated[], perWeek: Fraction): Pick<DustingRates, 'items' | 'cut'> {
  const cut: DustingRates['cut'][number][] = [];
  let items = asked;
  for (let over = overOf(items); over.n > 0 && cut.length < asked.length; over = overOf(items)) {
    const most = items.reduce((a, b) => (compare(b.rate, a.rate) > 0 ? b : a));
    const kept = compare(most.rate, over) > 0 ? subtract(most.rate, over) : ZERO;
    const times = multiply(multiply(kept, perWeek), fraction(4, 1));
    cut.push({ asked: percent(sum(items.map(({ rate }) => rate))), id: most.id, times: decimal(times) });
    items = items.map((item) => (item === most ? { id: item.id, rate: kept } : item));
  }
  return { items, cut };
}

function overOf(items: readonly Rated[]): Fraction {
  return subtract(sum(items.map(({ rate }) => rate)), ONE);
}

function decimal({ n, d }: Fraction): string {
  return String(Math.round((100 * n) / d) / 100);
}

/**
 * Returns the least number of whole weeks, at most 8, in which the feed days repeat and every feeder and every dusting has a
 * whole number of feeds; null where there is none.
 */
export function cycleWeeks(
  rules: readonly FeedRule[],
  feeders: readonly RatedFeeder[],
  dustings: readonly Rated[],
): number | null {
  const perWeek = feedsPerWeek(rules);
  const dusted = dustedPerWeek(perWeek, feeders);
  for (let weeks = 1; weeks <= LONGEST_CYCLE_WEEKS; weeks++) {
    const span = fraction(weeks, 1);
    const whole = (rate: Fraction, of: Fraction): boolean => multiply(multiply(rate, of), span).d === 1;
    if (
      repeatsAfter(rules, weeks) &&
      feeders.every(({ rate }) => whole(rate, perWeek)) &&
      dustings.every(({ rate }) => whole(rate, dusted))
    ) {
      return weeks;
    }
  }
  return null;
}

/** Returns the feeds a week whose feeder takes dust. */
export function dustedPerWeek(perWeek: Fraction, feeders: readonly RatedFeeder[]): Fraction {
  return multiply(perWeek, sum(feeders.filter(({ dust }) => dust).map(({ rate }) => rate)));
}
