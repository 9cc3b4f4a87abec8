import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf, weekdayOf } from '../../src/basics/calendar-day.ts';
import { Log } from '../../src/diagnostics/log.ts';
import type { Feed, Plan } from '../../src/plan/plan.ts';
import type { Care, CareEnclosure } from '../../src/resolve/care.ts';
import { type FeedingPlan, solveFeeding } from '../../src/solve/feeding/feeding.ts';
import { barePlan } from '../generated/bare-plan.ts';
import { resolveText } from '../shipped-profiles.ts';
import { tries } from '../tries.ts';
import { drawnHousehold } from './feeding-households.ts';

const RUNS = { seed: 20_270_101, numRuns: tries(60, 1200) };
const NOON = 12 * 60;

function careOf(text: string): Care {
  const { care, diagnostics } = resolveText(text);
  const errors = diagnostics.filter(({ weight }) => weight === 'error');
  if (!care || errors.length > 0)
    throw new Error(`${errors.map((d) => `${d.place?.line} ${d.because}`).join('\n')}\n${text}`);
  return care;
}

function fed(care: Care, earlier: Plan | null = null, today = care.plan.from): FeedingPlan {
  const lights = () => ({
    lightsOnWallMinute: NOON - 360,
    lightsOffWallMinute: NOON + 360,
    baskingOffWallMinute: null,
    wallLessAnimalMinutes: 0,
  });
  return solveFeeding(care, lights, earlier, today, new Log());
}

/** The powder's contents, by the words of the household and the names of powders: coded apart from the solver. */
function holds(enclosure: CareEnclosure, powder: string): readonly string[] {
  if (powder === 'd3' || powder === 'vitamin-a') {
    const known = enclosure.supplements.find(({ id }) => id === powder);
    return known ? known.contains : [powder];
  }
  return enclosure.supplements.find(({ id }) => id === powder)?.contains ?? [];
}

function needed(enclosure: CareEnclosure, stage: string, a: string, b: string): number {
  const names = (powder: string) => [powder, ...holds(enclosure, powder)];
  let days = 0;
  for (const rule of enclosure.targets.stages[stage]?.apart ?? []) {
    const [left, right] = rule.between;
    const either =
      (names(a).includes(left) && names(b).includes(right)) || (names(a).includes(right) && names(b).includes(left));
    if (either) days = Math.max(days, rule.days);
  }
  return days;
}

function stageOn(enclosure: CareEnclosure, day: number): string {
  let stage = enclosure.stages[0]?.stage ?? '';
  for (const each of enclosure.stages) if (each.from <= day) stage = each.stage;
  return stage;
}

function expectApart(care: Care, feeding: readonly Feed[]): number {
  let pairs = 0;
  for (const enclosure of care.enclosures) {
    const given = feeding
      .filter((feed) => feed.enclosure === enclosure.id && feed.dusting !== null)
      .map((feed) => ({ powder: feed.dusting ?? '', day: epochDay(feed.date) }));
    const before = ['calcium-d3', 'multivitamin'].flatMap((powder) => {
      const day = enclosure.last[powder];
      return day === undefined ? [] : [{ powder, day }];
    });
    given.forEach((later, i) => {
      for (const first of [...before, ...given.slice(0, i)]) {
        const stages = [stageOn(enclosure, first.day), stageOn(enclosure, later.day)];
        const days = Math.max(...stages.map((stage) => needed(enclosure, stage, first.powder, later.powder)));
        if (days === 0) continue;
        pairs++;
        expect(
          later.day - first.day,
          `${first.powder} on ${isoDateOf(first.day)}, ${later.powder} on ${isoDateOf(later.day)}`,
        ).toBeGreaterThanOrEqual(days);
      }
    });
  }
  return pairs;
}

function expectSound(care: Care, { feeding, rotation, stock }: FeedingPlan): void {
  const [first, last] = [isoDateOf(care.plan.from), isoDateOf(care.plan.from + care.plan.days - 1)];
  const occasions = new Set<string>();
  for (const feed of feeding) {
    expect(feed.date >= first && feed.date <= last, `${feed.date} lies outside the plan`).toBe(true);
    const occasion = [feed.enclosure, feed.food, feed.date, feed.time].join(' ');
    expect(occasions.has(occasion), `${occasion} is fed twice`).toBe(false);
    occasions.add(occasion);
    const enclosure = care.enclosures.find(({ id }) => id === feed.enclosure);
    const feeder = enclosure?.feeders.find(({ id }) => id === feed.feeder);
    if (feeder) expect(feeder.food).toBe(feed.food);
    else expect(feed.feeder).toBe(feed.food);
    if (feed.dusting !== null) expect(feeder?.dust ?? true).toBe(true);
    if (feed.gutLoadFrom !== null) expect(feed.gutLoadFrom <= feed.date).toBe(true);
    for (const state of enclosure?.states ?? []) {
      if (epochDay(feed.date) < state.from || epochDay(feed.date) > state.to) continue;
      if ((state.is === 'quarantine' || state.is === 'ill') && state.vet === null) expect(feed.dusting).toBeNull();
      if (state.is === 'shedding') expect(feed.food).not.toBe('rodents');
    }
    for (const absence of care.away) {
      const day = epochDay(feed.date);
      if (day < absence.from || day > absence.to) continue;
      expect(absence.visits).toContain(day);
      expect(feed.by).toBe(absence.sitter);
    }
    for (const short of care.shortages) {
      const day = epochDay(feed.date);
      if (day < short.from || day > short.to || feed.feeder !== short.feeder) continue;
      expect(enclosure?.feeders.filter(({ food }) => food === feed.food).map(({ id }) => id)).toEqual([short.feeder]);
    }
  }
  for (const { order, cycleFeeds, nextIndex, worstDeviation } of rotation) {
    expect(order.feeders).toHaveLength(cycleFeeds);
    expect(Number.isFinite(worstDeviation)).toBe(true);
    if (order.cycleWeeks === null) continue;
    expect(nextIndex).toBeLessThan(Math.max(1, cycleFeeds));
    for (const [id, [n, d]] of Object.entries(order.feederRates))
      expect(order.feeders.filter((each) => each === id).length * d).toBe(n * cycleFeeds);
    const dusted = Object.values(order.dustingRates).length > 0 ? order.dustings : [];
    const dustable = dusted.filter((each, i) => each !== null || takesDust(care, order.feeders[i])).length;
    for (const [id, [n, d]] of Object.entries(order.dustingRates))
      if (id !== 'plain') expect(dusted.filter((each) => each === id).length * d).toBe(n * dustable);
  }
  for (const order of stock) {
    expect(order.amount).toBeGreaterThan(0);
    expect(order.date >= first && order.date <= last).toBe(true);
    expect(care.shopping.days).toContain(weekdayOf(epochDay(order.date)));
    expect(care.away.some(({ from, to }) => epochDay(order.date) >= from && epochDay(order.date) <= to)).toBe(false);
  }
}

function takesDust(care: Care, feeder: string | undefined): boolean {
  return care.enclosures.some(({ feeders }) => feeders.some(({ id, dust }) => id === feeder && dust));
}

describe('feeding of generated households', () => {
  it('keeps powders apart, feeds one feeder a feed, stays in the plan, and holds its rates', () => {
    let pairs = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000_000 }), (seed) => {
        const care = careOf(drawnHousehold(seed).text);
        const plan = fed(care);
        expectSound(care, plan);
        pairs += expectApart(care, plan.feeding);
      }),
      RUNS,
    );
    console.info(`feeding: ${RUNS.numRuns} households, ${pairs} pairs of powders at their distance`);
    expect(pairs).toBeGreaterThan(80 * RUNS.numRuns);
  });

  it('goes on after a change in mid-plan: the past stands, powders keep apart over the seam', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000_000 }), fc.integer({ min: 1, max: 58 }), (seed, day) => {
        const { text, changed } = drawnHousehold(seed);
        const [before, care] = [careOf(text), careOf(changed)];
        const first = fed(before);
        const today = care.plan.from + day;
        const second = fed(care, barePlan(before, first, isoDateOf(before.plan.from)), today);
        const past = (plan: FeedingPlan) =>
          plan.feeding.filter(({ date }) => date < isoDateOf(today)).map(({ past: _, ...feed }) => feed);
        expect(past(second)).toEqual(past(first));
        expect(second.feeding.every((feed) => (feed.past === true) === feed.date < isoDateOf(today))).toBe(true);
        expectApart(care, second.feeding);
      }),
      { ...RUNS, numRuns: tries(40, 800) },
    );
  });

  it('goes on unchanged where nothing changed: a re-plan is the same plan', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000_000 }), fc.integer({ min: 0, max: 58 }), (seed, day) => {
        const care = careOf(drawnHousehold(seed).text);
        const first = fed(care);
        const second = fed(care, barePlan(care, first, isoDateOf(care.plan.from)), care.plan.from + day);
        expect(second.feeding.map(({ past: _, ...feed }) => feed)).toEqual(first.feeding);
      }),
      { ...RUNS, numRuns: tries(30, 600) },
    );
  });
});
