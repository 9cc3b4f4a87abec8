/** Generated households: whatever stands on the shelf, the water that is planned keeps to what pump, timer, animal and people allow. */
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import { minuteOf, wrapMinute } from '../../src/basics/minute-of-day.ts';
import type { MistEntry, MistPlan, MistSet, Plan } from '../../src/plan/plan.ts';
import { simulateTold } from '../../src/science/plan-day.ts';
import { compiledHousehold, planIn } from '../compiled-household.ts';
import { resolveText } from '../shipped-profiles.ts';
import { tries } from '../tries.ts';
import { generateHousehold } from './household-generator.ts';

const SEEDS = Array.from({ length: tries(9, 60) }, (_, i) => 4100 + i);

function compiled(text: string, earlier: Plan | null = null): Plan {
  return planIn(compiledHousehold(text, { earlier }));
}

/** Sets and conditions follow one another from the first day to the last. */
function expectCover(spans: readonly { readonly from: string; readonly to: string }[], from: string, to: string): void {
  expect(spans[0]?.from).toBe(from);
  expect(spans.at(-1)?.to).toBe(to);
  for (const [i, span] of spans.entries()) {
    expect(span.from <= span.to).toBe(true);
    const next = spans[i + 1];
    if (next) expect(isoDateOf(epochDay(span.to) + 1)).toBe(next.from);
  }
}

function gaps(entries: readonly MistEntry[]): readonly number[] {
  return entries.map(({ at, seconds }, i) => {
    const next = entries[(i + 1) % entries.length] ?? entries[0];
    const between = wrapMinute(minuteOf(next?.at ?? at) - minuteOf(at)) || 1440;
    return between * 60 - seconds;
  });
}

const says = (set: MistSet, target: string): boolean => set.shortfalls.some((each) => each.target === target);

/** No mist within 10 min before a dusted feed of its dates, nor at its hour, by the wall clock. */
function expectDryFeeds(plan: Plan, mist: MistPlan, set: MistSet): void {
  for (const feed of plan.feeding) {
    if (feed.enclosure !== mist.enclosure || feed.dusting === null) continue;
    const span = set.wall.find(({ from, to }) => from <= feed.date && feed.date <= to);
    for (const { at } of span?.entries ?? []) {
      const before = wrapMinute(minuteOf(feed.time) - minuteOf(at));
      expect(before > 10, `${mist.enclosure} ${feed.date} mist ${at}, dusted feed ${feed.time}`).toBe(true);
    }
  }
}

describe.each(SEEDS)('household %i', (seed) => {
  const text = generateHousehold(seed, { days: 75, enclosures: 1 + (seed % 3) });
  const plan = compiled(text);
  const care = resolveText(text).care;

  it('has sets and conditions for every day, and no more sets than allowed', () => {
    expect(plan.misting.map(({ enclosure }) => enclosure)).toEqual(plan.enclosures.map(({ id }) => id));
    for (const { sets } of plan.misting) {
      expectCover(sets, plan.from, plan.to);
      expect(sets.length).toBeLessThanOrEqual(4);
      for (const set of sets) {
        expectCover(set.conditions, set.from, set.to);
        expectCover(set.wall, set.from, set.to);
      }
    }
  });

  it('keeps to pump and timer, to quiet hours and to dusted feeds', () => {
    for (const mist of plan.misting) {
      const { limits } = mist;
      for (const set of mist.sets) {
        if (!limits) {
          expect(set.entries).toEqual([]);
          continue;
        }
        expect(set.entries.length).toBeLessThanOrEqual(limits.entries);
        for (const { at, seconds } of set.entries) {
          expect(minuteOf(at) % limits.startStepMinutes).toBe(0);
          expect(seconds % limits.lengthStepSeconds).toBe(0);
          expect(seconds).toBeGreaterThanOrEqual(limits.shortestSeconds);
          expect(seconds).toBeLessThanOrEqual(limits.longestSeconds);
        }
        for (const gap of gaps(set.entries)) expect(gap).toBeGreaterThanOrEqual(limits.restSeconds);
        expectDryFeeds(plan, mist, set);
        if (mist.pump === 'by-hand' || says(set, 'noise')) continue;
        for (const { fromMinute, toMinute } of care?.noise ?? [])
          for (const { entries } of set.wall)
            for (const { at } of entries)
              expect(wrapMinute(minuteOf(at) - fromMinute) < wrapMinute(toMinute - fromMinute), `${at} in noise`).toBe(
                false,
              );
      }
    }
  });

  it('keeps to the tank, and leaves no animal that drinks from mists without water', () => {
    for (const { sets, limits, targets } of plan.misting)
      for (const set of sets) {
        const drawn = plan.misting
          .filter((other) => other.pump !== null && other.pump === plan.misting.find((m) => m.sets === sets)?.pump)
          .reduce((sum, other) => {
            const same = other.sets.find(({ from }) => from === set.from);
            return sum + Math.max(0, ...(same?.conditions.map(({ predicted }) => predicted.waterMlPerDay) ?? []));
          }, 0);
        const most = limits?.waterMlPerDay ?? null;
        if (most !== null && !plan.misting.some((m) => m.sets.some((each) => says(each, 'tank'))))
          expect(drawn).toBeLessThanOrEqual(most + 0.1);
        if (targets.drink && set.entries.length === 0) expect(says(set, 'drink')).toBe(true);
      }
  });

  it('tells figures that anyone can work out again from the plan alone', () => {
    for (const mist of plan.misting)
      for (const set of mist.sets)
        for (const condition of set.conditions) {
          const { predicted } = condition;
          expect(predicted.lowHumidity).toBeLessThanOrEqual(predicted.meanHumidity);
          expect(predicted.meanHumidity).toBeLessThanOrEqual(predicted.highHumidity);
          const runs = set.entries.map(({ at, seconds }) => ({ startMinute: minuteOf(at), seconds }));
          const told = { ...condition, onMinute: minuteOf(condition.dayOn), offMinute: minuteOf(condition.dayOff) };
          const again = simulateTold(mist.model, told, runs, null, { below: 0.2, when: 'lit' });
          expect(again.dayHumidity).toBeCloseTo(predicted.dayHumidity, 3);
          expect(again.nightHumidity).toBeCloseTo(predicted.nightHumidity, 3);
          expect(again.waterMl).toBeCloseTo(predicted.waterMlPerDay, 0);
        }
  });

  it('says what falls short, with a remedy, and nothing where nothing does', () => {
    for (const { sets } of plan.misting)
      for (const { shortfall, shortfalls } of sets) {
        for (const { remedy, by } of shortfalls) {
          expect(remedy).not.toBe('');
          expect(by).toBeGreaterThan(0);
        }
        if (shortfall > 0.05) expect(shortfalls.length).toBeGreaterThan(0);
      }
  });

  it('comes back as it is where nothing has changed', () => {
    expect(compiled(text, plan)).toBe(plan);
  });
});
