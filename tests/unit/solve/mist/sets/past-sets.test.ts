import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../../src/basics/calendar-day.ts';
import type { MistSet, Plan } from '../../../../../src/plan/plan.ts';
import { countOf, goingOn, pastSets } from '../../../../../src/solve/mist/sets/past-sets.ts';

function setOf(from: string, to: string, at: string, shortfall = 0): MistSet {
  const entries = [{ at, seconds: 60 }];
  const spans = { from, to };
  const conditions = [{ ...spans, shortfall }] as unknown as MistSet['conditions'];
  return { ...spans, entries, wall: [{ ...spans, entries }], allowed: [], conditions, shortfall, shortfalls: [] };
}

const EARLIER = {
  misting: [
    {
      enclosure: 'fern',
      sets: [setOf('2027-01-01', '2027-03-31', '07:00', 0.2), setOf('2027-04-01', '2027-06-30', '08:00')],
    },
  ],
} as unknown as Plan;

function past(from: string, plan: { from: string; days: number }, ids = ['fern']) {
  return pastSets(ids, EARLIER, { from: epochDay(plan.from), days: plan.days }, epochDay(from));
}

function datesOf(sets: readonly MistSet[] | null | undefined): readonly string[] {
  return (sets ?? []).map(({ from, to, entries }) => `${from} ${to} ${entries[0]?.at}`);
}

describe('past mists', () => {
  it('are cut at the day of the re-plan and marked, their conditions with them', () => {
    const { sets, until } = past('2027-05-10', { from: '2027-01-01', days: 181 });
    expect(until).toBe(epochDay('2027-05-10'));
    expect(datesOf(sets[0])).toEqual(['2027-01-01 2027-03-31 07:00', '2027-04-01 2027-05-09 08:00']);
    for (const set of sets[0] ?? []) {
      expect(set.past).toBe(true);
      expect([set.conditions.at(-1)?.to, set.wall.at(-1)?.to]).toEqual([set.to, set.to]);
    }
  });

  it('tell the shortfall of their own dates only', () => {
    const { sets } = past('2027-05-10', { from: '2027-04-15', days: 200 });
    expect(datesOf(sets[0])).toEqual(['2027-04-15 2027-05-09 08:00']);
    expect(sets[0]?.[0]?.shortfall).toBe(0);
  });

  it('go on where the earlier plan had ended, and began where it began later', () => {
    expect(datesOf(past('2027-08-01', { from: '2027-07-10', days: 90 }).sets[0])).toEqual([
      '2027-07-10 2027-07-31 08:00',
    ]);
    expect(datesOf(past('2027-02-01', { from: '2026-12-20', days: 90 }).sets[0])).toEqual([
      '2026-12-20 2027-01-31 07:00',
    ]);
  });

  it('are all there is where the plan is over', () => {
    const { sets, until } = past('2027-09-01', { from: '2027-01-01', days: 181 });
    expect(until).toBe(epochDay('2027-07-01'));
    expect(datesOf(sets[0]).at(-1)).toBe('2027-04-01 2027-06-30 08:00');
  });

  it('are none before the plan begins, without an earlier plan, and for whoever was not there', () => {
    expect(past('2027-01-01', { from: '2027-01-01', days: 181 }).sets).toEqual([null]);
    expect(pastSets(['fern'], null, { from: 20_000, days: 10 }, 20_005)).toEqual({ sets: [null], until: 20_000 });
    const both = past('2027-05-10', { from: '2027-01-01', days: 181 }, ['moss', 'fern']);
    expect(both.sets[0]).toBeNull();
    expect(countOf(both)).toBe(2);
  });

  it('and the coming ones are one set where nothing is keyed in between', () => {
    const { sets } = past('2027-05-10', { from: '2027-01-01', days: 181 });
    const same = goingOn(sets[0] ?? [], [setOf('2027-05-10', '2027-06-30', '08:00', 0.3)]);
    expect(datesOf(same)).toEqual(['2027-01-01 2027-03-31 07:00', '2027-04-01 2027-06-30 08:00']);
    expect([same[1]?.past, same[1]?.shortfall, same[1]?.conditions.length]).toEqual([undefined, 0.3, 2]);
    const other = goingOn(sets[0] ?? [], [setOf('2027-05-10', '2027-06-30', '08:15')]);
    expect(datesOf(other)).toHaveLength(3);
  });
});
