import { describe, expect, it } from 'vitest';
import type { DustingRule } from '../../../../src/resolve/care.ts';
import { fraction } from '../../../../src/science/fraction.ts';
import { dustingRates } from '../../../../src/solve/feeding/rates.ts';

const everyFeeds = (id: string, feeds: number): DustingRule => ({ id, rate: { kind: 'every-feeds', feeds } });
const inWeeks = (id: string, times: number, weeks: number): DustingRule => ({
  id,
  rate: { kind: 'times', times, weeks },
});
const THREE_A_WEEK = fraction(3, 1);

function rates(...rules: readonly DustingRule[]): readonly string[] {
  return dustingRates(rules, THREE_A_WEEK).items.map(({ id, rate }) => `${id} ${rate.n}/${rate.d}`);
}

describe('the rates of dustings', () => {
  it('leave the rest of the feeds plain, or to what takes it', () => {
    expect(rates(everyFeeds('calcium', 2), inWeeks('d3', 2, 4))).toEqual(['calcium 1/2', 'd3 1/6', 'plain 1/3']);
    const rest: DustingRule = { id: 'calcium', rate: { kind: 'the-rest' } };
    expect(rates(inWeeks('d3', 2, 4), rest)).toEqual(['d3 1/6', 'calcium 5/6', 'plain 0/1']);
  });

  it('that are more than the feeds are cut where they are most frequent, and it is said', () => {
    const { items, cut } = dustingRates([inWeeks('d3', 2, 4), everyFeeds('calcium', 1)], THREE_A_WEEK);
    expect(items.map(({ id, rate }) => `${id} ${rate.n}/${rate.d}`)).toEqual(['d3 1/6', 'calcium 5/6', 'plain 0/1']);
    expect(cut).toEqual([{ asked: '116.7 %', id: 'calcium', times: '10' }]);
  });

  it('that are far more are cut one after the other', () => {
    const { items, cut } = dustingRates([inWeeks('d3', 24, 4), inWeeks('minerals', 18, 4)], THREE_A_WEEK);
    expect(cut.map(({ id }) => id)).toEqual(['d3', 'minerals']);
    expect(items.map(({ rate }) => rate.n / rate.d)).toEqual([0, 1, 0]);
  });
});
