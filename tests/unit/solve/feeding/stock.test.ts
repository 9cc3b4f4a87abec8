import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf, weekdayOf } from '../../../../src/basics/calendar-day.ts';
import { cultureStarts } from '../../../../src/solve/feeding/stock.ts';
import { careOf, insects, solve } from '../../../generated/solved-feeding.ts';

describe('orders', () => {
  const feeders = [
    '- { id: cricket, share: 75 %, dust: true, shelf_life: 10 days, losses: 10 % a week, gut_load: 24 h, in_stock: 40 }',
    '- { id: mealworm, share: 25 %, dust: true, shelf_life: 60 days, losses: 2 % a week, in_stock: 30, stand_in: true }',
  ];
  const care = careOf({ enclosure: insects([], feeders), top: ['shopping: { days: [fri], reserve: 14 days }'] });
  const plan = solve(care);

  it('stand on shopping days and are enough for every feed, counted day by day', () => {
    expect(plan.stock.every(({ date }) => weekdayOf(epochDay(date)) === 'fri')).toBe(true);
    for (const [feeder, shelfLife, survives, atHand] of [
      ['cricket', 10, 0.9 ** (1 / 7), 40],
      ['mealworm', 60, 0.98 ** (1 / 7), 30],
    ] as const) {
      let tubs = [{ bought: epochDay('2027-01-01'), alive: atHand as number }];
      for (let day = epochDay('2027-01-01'); day < epochDay('2028-01-01'); day++) {
        const date = isoDateOf(day);
        tubs = tubs.filter((tub) => day <= tub.bought + shelfLife);
        for (const feed of plan.feeding.filter((each) => each.date === date && each.feeder === feeder)) {
          let wanted = feed.count ?? 0;
          for (const tub of tubs) {
            const taken = Math.min(wanted, tub.alive);
            tub.alive -= taken;
            wanted -= taken;
          }
          expect(wanted, `${feeder} on ${date}`).toBeLessThan(1e-6);
        }
        for (const order of plan.stock.filter((each) => each.date === date && each.feeder === feeder))
          tubs.push({ bought: day, alive: order.amount });
        for (const tub of tubs) tub.alive *= survives;
      }
    }
  });

  it('are not larger than they need be: one piece less, and a feed or the reserve goes short', () => {
    const crickets = plan.stock.filter(({ feeder }) => feeder === 'cricket');
    const eaten = plan.feeding.filter(({ feeder }) => feeder === 'cricket').length * 5;
    const bought = crickets.reduce((all, { amount }) => all + amount, 0);
    expect(bought).toBeGreaterThanOrEqual(eaten - 40);
    expect(bought).toBeLessThan((eaten - 40) * 1.2 + crickets.length);
  });

  it('cover four weeks at most, however long a feeder keeps', () => {
    const roaches = ['- { id: roach, share: 100 %, dust: true, shelf_life: 90 days }'];
    const { stock } = solve(careOf({ enclosure: insects([], roaches), top: ['shopping: { days: [fri] }'] }, 120));
    const covered = stock.flatMap(({ date, why }) => {
      const last = /fed up to (\d{4}-\d\d-\d\d)/.exec(why)?.[1];
      return last === undefined ? [] : [epochDay(last) - epochDay(date)];
    });
    expect(Math.max(...covered)).toBeGreaterThan(21);
    expect(Math.max(...covered)).toBeLessThanOrEqual(28);
  });

  it('keep a reserve of the stand-in that lasts over a shop without stock, on every shopping day from the second order on', () => {
    const fed = plan.feeding.map(({ date, count }) => ({ day: epochDay(date), count: count ?? 0 }));
    const reserve = Math.max(
      ...fed.map(({ day }) =>
        fed.filter((each) => each.day >= day && each.day < day + 14).reduce((all, { count }) => all + count, 0),
      ),
    );
    const orders = plan.stock.filter(({ feeder }) => feeder === 'mealworm');
    const second = orders[1]?.date ?? '';
    expect(reserve).toBe(30);
    let tubs = [{ bought: epochDay('2027-01-01'), alive: 30 }];
    let checked = 0;
    for (let day = epochDay('2027-01-01'); day < epochDay('2028-01-01'); day++) {
      const date = isoDateOf(day);
      tubs = tubs.filter((tub) => day <= tub.bought + 60);
      if (weekdayOf(day) === 'fri' && date > second) {
        expect(
          tubs.reduce((all, { alive }) => all + alive, 0),
          date,
        ).toBeGreaterThanOrEqual(reserve - 1e-6);
        checked++;
      }
      for (const feed of plan.feeding.filter((each) => each.date === date && each.feeder === 'mealworm')) {
        let wanted = feed.count ?? 0;
        for (const tub of tubs) {
          const taken = Math.min(wanted, tub.alive);
          tub.alive -= taken;
          wanted -= taken;
        }
      }
      for (const order of orders.filter((each) => each.date === date)) tubs.push({ bought: day, alive: order.amount });
      for (const tub of tubs) tub.alive *= 0.98 ** (1 / 7);
    }
    expect(checked).toBeGreaterThan(30);
  });

  it('say when what is at hand runs out', () => expect(plan.codes).toContain('stock-runs-out'));

  it.each([
    ['who shops buys on the visits', true],
    ['who does not shop leaves feeds without feeders', false],
  ])('in an absence a sitter %s', (_, shops) => {
    const top = [
      'shopping: { days: [fri] }',
      'away: [{ from: 2027-02-01, to: 2027-02-20, sitter: sitter, visits: every 1 day }]',
    ];
    const care = careOf({ enclosure: insects([], feeders), top }, 60);
    const people = care.people.map((person) => (person.id === 'sitter' ? { ...person, shops } : person));
    const { stock, codes } = solve({ ...care, people });
    const bought = stock.filter(({ date }) => date >= '2027-02-01' && date <= '2027-02-20');
    expect(bought.length > 0).toBe(shops);
    expect(codes.includes('absence-outlasts-food')).toBe(!shops);
  });

  it('start cultures evenly over the time that one lasts', () => {
    const flies = [
      '- { id: fruit-fly, share: 100 %, dust: true, culture: { first_after: 14 days, lasts: 28 days, keep: 3 } }',
    ];
    const care = careOf(
      { species: 'dyeing-poison-frog', enclosure: insects([], flies), top: ['shopping: { days: [fri] }'] },
      60,
    );
    const cultures = cultureStarts(care, care.plan.from);
    expect(solve(care).stock).toEqual([]);
    expect(cultures[0]?.dates.slice(0, 3).map(isoDateOf)).toEqual(['2027-01-01', '2027-01-10', '2027-01-19']);
  });
});
