import { describe, expect, it } from 'vitest';
import { civilOf, epochDay, epochDayOf, isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { expandRecurrence } from '../../../../src/basics/recurrence.ts';
import { foldDates } from '../../../../src/solve/calendar/fold-dates.ts';
import { loopOverDays } from '../../../generated/own-list.ts';
import { Choices } from '../../../generated/random.ts';

const START = epochDay('2027-01-01');

/** Whether one rule may cover just these days, asked of every rule in turn: nothing of the code under test. */
function oneRuleMay(days: readonly number[]): boolean {
  const [first, last] = [days[0] ?? 0, days.at(-1) ?? 0];
  if (days.length === 1) return true;
  for (let step = 1; step <= last - first; step += 1) {
    if (step > 60 && step % 7 !== 0) continue;
    if (days.some((day) => (day - first) % step !== 0)) continue;
    const count = (last - first) / step + 1;
    if (4 * (count - days.length) <= count) return true;
  }
  const dayOfMonth = civilOf(first).dayOfMonth;
  if (dayOfMonth > 28 || days.some((day) => civilOf(day).dayOfMonth !== dayOfMonth)) return false;
  let count = 0;
  for (let day = first; day <= last; day += 1) if (civilOf(day).dayOfMonth === dayOfMonth) count += 1;
  return 4 * (count - days.length) <= count;
}

/** The smallest number of parts, over all ways to part the days. */
function fewestByExhaustion(days: readonly number[]): number {
  const sets = 1 << days.length;
  const may = Array.from(
    { length: sets },
    (_, set) => set > 0 && oneRuleMay(days.filter((_day, at) => (set >> at) & 1)),
  );
  const fewest = new Array<number>(sets).fill(Number.POSITIVE_INFINITY);
  fewest[0] = 0;
  for (let set = 1; set < sets; set += 1) {
    const lowest = set & -set;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if (part & lowest && may[part]) fewest[set] = Math.min(fewest[set] ?? 0, 1 + (fewest[set ^ part] ?? 0));
    }
  }
  return fewest[sets - 1] ?? 0;
}

/** Sizes of the parts where the longest rule of all is looked for anew each time, the least step and the earliest start first. */
function longestByTrial(dates: readonly number[]): readonly number[] {
  const open = new Set(dates);
  const last = dates.at(-1) ?? 0;
  const sizes: number[] = [];
  for (;;) {
    let best: readonly number[] = [];
    for (let step = 1; step <= last - START; step += 1) {
      if (step > 60 && step % 7 !== 0) continue;
      for (const from of dates) {
        const days: number[] = [];
        let count = 0;
        for (let day = from; open.has(from) && day <= last; day += step) {
          count += 1;
          if (open.has(day)) days.push(day);
          if (open.has(day) && 4 * (count - days.length) <= count && days.length > best.length) best = [...days];
        }
      }
    }
    if (best.length < 2) return [...sizes, ...Array.from(open, () => 1)];
    for (const day of best) open.delete(day);
    sizes.push(best.length);
  }
}

/** Expands the runs by rrule and by a loop over days, and holds both against the dates: each covered once. */
function expectCovers(dates: readonly number[]): void {
  const { runs, atLeast } = foldDates(dates);
  const events = runs.map(({ from, to, rule, excepted }) => ({
    start: isoDateOf(from),
    rule,
    until: rule === null ? null : isoDateOf(to),
    exdates: excepted.map(isoDateOf),
  }));
  const wanted = dates.map(isoDateOf);
  expect(events.flatMap(loopOverDays).sort()).toEqual(wanted);
  expect(events.flatMap(expandRecurrence).sort()).toEqual(wanted);
  for (const event of events) {
    const whole = loopOverDays({ ...event, exdates: [] });
    expect(event.exdates.length * 4).toBeLessThanOrEqual(whole.length);
    expect(event.exdates).not.toContain(event.start);
    expect(event.exdates).not.toContain(event.until);
  }
  expect(atLeast).toBeLessThanOrEqual(runs.length);
}

function rules(dates: readonly number[]): readonly (string | null)[] {
  return foldDates(dates).runs.map(({ rule }) => rule);
}

function every(step: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => START + index * step);
}

describe('folding dates', () => {
  it.each([
    ['no dates', [], []],
    ['one date', [START], [null]],
    ['two dates 61 days apart', [START, START + 61], [null, null]],
    ['two dates 63 days apart', [START, START + 63], ['FREQ=WEEKLY;INTERVAL=9;BYDAY=FR']],
    ['every day', every(1, 365), ['FREQ=DAILY']],
    ['every third day', every(3, 100), ['FREQ=DAILY;INTERVAL=3']],
    ['every sixtieth day', every(60, 5), ['FREQ=DAILY;INTERVAL=60']],
    ['every Friday', every(7, 52), ['FREQ=WEEKLY;BYDAY=FR']],
    ['every other Friday', every(14, 26), ['FREQ=WEEKLY;INTERVAL=2;BYDAY=FR']],
    [
      'the first of every month',
      Array.from({ length: 12 }, (_, month) => epochDayOf(2027, month + 1, 1)),
      ['FREQ=MONTHLY;BYMONTHDAY=1'],
    ],
    ['every day but a quarter', every(1, 40).filter((day) => day % 4 !== 1), ['FREQ=DAILY']],
  ] as const)('%s', (_name, dates, expected) => {
    expect(rules(dates)).toEqual(expected);
    expectCovers(dates);
  });

  it('does not take the 29th to 31st for monthly: months lack them', () => {
    const dates = [1, 3, 5, 7, 8, 10, 12].map((month) => epochDayOf(2027, month, 31));
    const last = Array.from({ length: 10 }, (_, month) => epochDayOf(2027, month + 3, 29));
    for (const each of [dates, last]) {
      expect(rules(each).filter((rule) => rule?.startsWith('FREQ=MONTHLY'))).toEqual([]);
      expectCovers(each);
    }
  });

  it('excepts up to a quarter of the dates of a rule, never more', () => {
    const quarter = every(1, 8).filter((_, index) => index !== 3 && index !== 5);
    const more = every(1, 7).filter((_, index) => index !== 2 && index !== 4);
    expect(foldDates(quarter).runs.map(({ excepted }) => excepted.length)).toEqual([2]);
    expect(foldDates(more).runs.length).toBeGreaterThan(1);
    expectCovers(quarter);
    expectCovers(more);
  });

  it('keeps a Monday, Wednesday and Friday to one rule a weekday', () => {
    const dates = every(1, 365).filter((day) => [0, 2, 4].includes((((day + 3) % 7) + 7) % 7));
    expect([...rules(dates)].sort()).toEqual(['FREQ=WEEKLY;BYDAY=FR', 'FREQ=WEEKLY;BYDAY=MO', 'FREQ=WEEKLY;BYDAY=WE']);
    expectCovers(dates);
  });

  it('needs as few events as any way of parting the dates, up to eleven of them', () => {
    let [tried, unproven, worst] = [0, 0, 0];
    for (const [count, span] of [
      [4, 12],
      [7, 20],
      [8, 40],
      [9, 60],
      [10, 90],
      [10, 20],
      [11, 365],
    ] as const) {
      const choices = new Choices(count * 1000 + span);
      for (let round = 0; round < 12; round += 1) {
        const dates = new Set<number>();
        while (dates.size < count) dates.add(START + choices.between(0, span));
        const sorted = [...dates].sort((a, b) => a - b);
        const { runs, atLeast } = foldDates(sorted);
        const fewest = fewestByExhaustion(sorted);
        expect(runs.length, sorted.join()).toBe(fewest);
        expect(atLeast).toBeLessThanOrEqual(fewest);
        expectCovers(sorted);
        tried += 1;
        unproven += atLeast < runs.length ? 1 : 0;
        worst = Math.max(worst, runs.length);
      }
    }
    console.info(`${tried} lists of dates, ${unproven} not proven, at most ${worst} events`);
    expect(unproven).toBe(0);
  });

  it('shares a date between rules so that both keep to a quarter', () => {
    const crossing = [...every(2, 8), ...every(3, 6).map((day) => day + 1)];
    const dates = [...new Set(crossing)].sort((a, b) => a - b);
    expect(foldDates(dates).runs.length).toBe(fewestByExhaustion(dates));
    expectCovers(dates);
  });

  it('takes the longest rule again and again where there are more than forty dates', () => {
    for (const seed of [1, 2, 3, 4]) {
      const choices = new Choices(seed + 40);
      const dates = every(1, 110).filter(() => choices.chance(0.3 + seed / 12));
      const sizes = foldDates(dates).runs.map(({ from, to, rule, excepted }) =>
        rule === null
          ? 1
          : loopOverDays({ start: isoDateOf(from), rule, until: isoDateOf(to), exdates: [] }).length - excepted.length,
      );
      expect(dates.length).toBeGreaterThan(40);
      expect([...sizes].sort((a, b) => b - a)).toEqual(longestByTrial(dates));
    }
  });

  it('covers long irregular lists once each, and says how few might do', () => {
    for (const seed of [1, 2, 3]) {
      const choices = new Choices(seed);
      const dates = every(1, 400).filter(() => choices.chance(seed / 5));
      const { runs, atLeast } = foldDates(dates);
      expect(dates.length).toBeGreaterThan(40);
      expect(atLeast).toBeGreaterThan(1);
      expect(runs.length).toBeLessThan(dates.length / 2);
      expectCovers(dates);
    }
  });
});
