import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import { Parts } from '../../../../src/plan/parts.ts';
import type { FeedingPlan } from '../../../../src/solve/feeding/feeding.ts';
import { barePlan } from '../../../generated/bare-plan.ts';
import { CRICKETS, careOf, insects, MEALWORMS, solve, stateOf } from '../../../generated/solved-feeding.ts';

describe('going on', () => {
  it('a new year goes on with last year’s order, at the next slot', () => {
    const last = careOf({ enclosure: insects() }, 365, '2026-01-01');
    const before = solve(last);
    const care = careOf({ enclosure: insects() });
    const plan = solve(care, barePlan(last, before, '2026-01-01'));
    expect(plan.feeding[0]?.slot).toBe(stateOf(before).nextIndex);
    expect(stateOf(plan).order).toEqual(stateOf(before).order);
    expect(plan.feeding.some((feed) => feed.past)).toBe(false);
  });

  it('last dates push a powder off until its days have passed, and set the beat of every n days', () => {
    const enclosure = insects(['last: { feed: 2026-12-31, calcium-d3: 2026-12-31, multivitamin: 2026-12-29 }']);
    const care = careOf({ species: 'leopard-gecko', enclosure });
    const { feeding } = solve(care);
    expect(feeding[0]?.date).toBe('2027-01-02');
    const firstD3 = feeding.find(({ dusting }) => dusting === 'calcium-d3' || dusting === 'multivitamin');
    expect((firstD3?.date ?? '') >= '2027-01-03').toBe(true);
    const firstA = feeding.find(({ dusting }) => dusting === 'multivitamin');
    expect((firstA?.date ?? '') >= '2027-01-05').toBe(true);
  });

  it('changed shares go on from the deviations in which the old order was left', () => {
    const before = solve(careOf({ enclosure: insects() }));
    const care = careOf({ enclosure: insects([], [CRICKETS.replace('75', '50'), MEALWORMS.replace('25', '50')]) });
    const plan = solve(care, barePlan(care, before, '2027-01-01'), epochDay('2027-03-03'));
    const { order } = stateOf(plan);
    expect(order.feederRates).toEqual({ cricket: [1, 2], mealworm: [1, 2] });
    const past = plan.feeding.filter((feed) => feed.past === true && feed.slot >= 0);
    const since = past.slice(Math.floor(past.length / 12) * 12);
    const ahead = since.filter(({ feeder }) => feeder === 'cricket').length - since.length * 0.75;
    const [n, d] = order.carried.cricket ?? [0, 1];
    expect(n / d).toBeCloseTo(ahead, 1);
  });

  it('shares changed a second time go on from both', () => {
    const shared = (cricket: number) =>
      careOf({
        enclosure: insects([], [CRICKETS.replace('75', `${cricket}`), MEALWORMS.replace('25', `${100 - cricket}`)]),
      });
    const [first, second, third] = [shared(75), shared(50), shared(25)];
    const [change, again] = ['2027-03-03', '2027-05-05'];
    const before = solve(first);
    const between = solve(second, barePlan(first, before, '2027-01-01'), epochDay(change));
    const after = solve(third, barePlan(second, between, change), epochDay(again));
    const aheadOf = (plan: FeedingPlan) => {
      const [n, d] = stateOf(plan).order.carried.cricket ?? [0, 1];
      return n / d;
    };
    const fed = between.feeding.filter(({ date }) => date >= change && date < again);
    const gained = fed.filter(({ feeder }) => feeder === 'cricket').length - fed.length / 2;
    expect(Math.abs(aheadOf(between))).toBeGreaterThan(0.2);
    expect(aheadOf(after)).toBeCloseTo(aheadOf(between) + gained, 6);
  });

  it('copies what stands whole, past marks and all, and solves it anew where the feeders changed', () => {
    const care = careOf({ enclosure: insects(), top: ['shopping: { days: [fri] }'] });
    const parts = new Parts(null);
    const first = solve(care, null, care.plan.from, parts);
    const earlier = { ...barePlan(care, first, '2027-01-01', parts.digests()), said: parts.said() };
    const again = solve(care, earlier, epochDay('2027-05-01'));
    expect(again.feeding).toEqual(first.feeding);
    expect(again.rotation).toEqual(first.rotation);
    expect(again.stock).toEqual(first.stock);
    expect(again.codes).toEqual(first.codes);
    const changed = careOf({
      enclosure: insects([], [CRICKETS.replace('75', '100')]),
      top: ['shopping: { days: [fri] }'],
    });
    const other = solve(changed, earlier, epochDay('2027-05-01'));
    expect(other.feeding.filter(({ past }) => past)).toHaveLength(
      first.feeding.filter(({ date }) => date < '2027-05-01').length,
    );
    expect(other.feeding.filter(({ past }) => !past).every(({ feeder }) => feeder === 'cricket')).toBe(true);
  });
});
