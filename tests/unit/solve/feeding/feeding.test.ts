import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf, weekdayOf } from '../../../../src/basics/calendar-day.ts';
import { Log } from '../../../../src/diagnostics/log.ts';
import { Parts } from '../../../../src/plan/parts.ts';
import type { Feed, Plan, RotationState } from '../../../../src/plan/plan.ts';
import type { Care } from '../../../../src/resolve/care.ts';
import { type FeedingPlan, solveFeeding } from '../../../../src/solve/feeding/feeding.ts';
import { barePlan } from '../../../generated/bare-plan.ts';
import { type MinimalHousehold, minimalHousehold, resolveText } from '../../../shipped-profiles.ts';

const CRICKETS = '- { id: cricket, share: 75 %, dust: true, shelf_life: 14 days, gut_load: 24 h }';
const MEALWORMS = '- { id: mealworm, share: 25 %, dust: true, shelf_life: 60 days, stand_in: true }';
const POWDERS =
  'supplements: [{ id: calcium, contains: [] }, { id: calcium-d3, contains: [d3] }, { id: multivitamin, contains: [d3, vitamin-a] }]';
const KEEPER = 'people: [{ id: keeper, feeds_at: "11:00" }, { id: sitter }]';

function careOf(household: MinimalHousehold, days = 365, from = '2027-01-01'): Care {
  const text = minimalHousehold({
    ...household,
    enclosure: [...(household.enclosure ?? []), POWDERS],
    top: [KEEPER, ...(household.top ?? [])],
  }).replace('plan: { from: 2027-01-01 }', `plan: { from: ${from}, days: ${days} }`);
  const { care, diagnostics } = resolveText(text);
  const errors = diagnostics.filter(({ weight }) => weight === 'error');
  if (!care || errors.length > 0) throw new Error(errors.map(({ because }) => because).join('\n'));
  return care;
}

function insects(more: readonly string[] = [], feeders = [CRICKETS, MEALWORMS]): readonly string[] {
  return [...more, 'feeders:', ...feeders.map((line) => `  ${line}`)];
}

interface Solved extends FeedingPlan {
  readonly codes: readonly string[];
}

function solve(care: Care, earlier: Plan | null = null, today = care.plan.from, parts = new Parts(earlier)): Solved {
  const log = new Log();
  const lit = {
    lightsOnWallMinute: 450,
    lightsOffWallMinute: 1140,
    baskingOffWallMinute: null,
    wallLessAnimalMinutes: 0,
  };
  const plan = solveFeeding(care, () => lit, earlier, today, log, parts);
  return { ...plan, codes: log.sorted().map(({ code }) => code) };
}

function stateOf({ rotation }: FeedingPlan, food = 'insects'): RotationState {
  const state = rotation.findLast((each) => each.food === food);
  if (!state) throw new Error(`no rotation of ${food}`);
  return state;
}

const days = (feeds: readonly Feed[]) => feeds.map(({ date }) => date);

describe('a rotation through the year', () => {
  const care = careOf({ enclosure: insects() });
  const plan = solve(care);
  const { order, cycleFeeds, worstDeviation, nextIndex } = stateOf(plan);

  it('repeats after the least whole weeks that hold whole numbers: 3 feeds a week, a quarter mealworms, 2 in 4 weeks', () => {
    expect(order.cycleWeeks).toBe(4);
    expect(cycleFeeds).toBe(12);
    expect(order.feeders.filter((id) => id === 'mealworm')).toHaveLength(3);
    expect(order.dustings.filter((id) => id === 'calcium-d3')).toHaveLength(2);
    expect(order.dustings.filter((id) => id === null)).toHaveLength(2);
  });

  it('gives every slot the same feeder and dusting each time, in order', () => {
    plan.feeding.forEach((feed, i) => {
      expect(feed.slot).toBe(i % 12);
      expect([feed.feeder, feed.dusting]).toEqual([order.feeders[feed.slot], order.dustings[feed.slot]]);
    });
    expect(nextIndex).toBe(plan.feeding.length % 12);
  });

  it('says its worst deviation as the feeds of the plan have it', () => {
    const rates = { 'calcium-d3': 1 / 6, multivitamin: 1 / 6, calcium: 1 / 2, plain: 1 / 6 };
    let worst = 0;
    for (const [id, rate] of Object.entries(rates)) {
      let stood = 0;
      plan.feeding.forEach(({ dusting }, i) => {
        if ((dusting ?? 'plain') === id) stood++;
        worst = Math.max(worst, Math.abs(stood - (i + 1) * rate));
      });
    }
    expect(worstDeviation).toBeCloseTo(worst, 4);
    expect(worst).toBeLessThanOrEqual(1 - 1 / 6 + 1e-9);
  });

  it('starts gut-loading a day before the feed, and only where the feeder is loaded', () => {
    const [first] = plan.feeding;
    expect([first?.date, first?.time, first?.gutLoadFrom]).toEqual(['2027-01-01', '11:00', '2026-12-31']);
    expect(plan.feeding.filter(({ feeder }) => feeder === 'mealworm').every((feed) => feed.gutLoadFrom === null)).toBe(
      true,
    );
  });

  it('keeps the last date of each powder for the plan that follows', () => {
    const lastD3 = plan.feeding.findLast(({ dusting }) => dusting === 'calcium-d3')?.date;
    expect(stateOf(plan).last['calcium-d3']).toBe(lastD3);
    expect(stateOf(plan).last.feed).toBe(plan.feeding.at(-1)?.date);
  });
});

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

  it('copies what stands whole, past marks and all, and solves it anew where the feeders changed', () => {
    const care = careOf({ enclosure: insects(), top: ['shopping: { days: [fri] }'] });
    const parts = new Parts(null);
    const first = solve(care, null, care.plan.from, parts);
    const earlier = barePlan(care, first, '2027-01-01', parts.digests());
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

describe('what changes the feeds', () => {
  it('a stage that begins in mid-plan brings its own rhythm, portion and order, with powders apart over the seam', () => {
    const stage = '[{ from: 2026-01-01, stage: juvenile }, { from: 2027-05-05, stage: adult }]';
    const plan = solve(careOf({ stage, enclosure: insects() }));
    const [young, grown] = [
      plan.feeding.filter(({ date }) => date < '2027-05-05'),
      plan.feeding.filter(({ date }) => date >= '2027-05-05'),
    ];
    expect(new Set(young.map(({ count }) => count))).toEqual(new Set([8]));
    expect(new Set(grown.map(({ count }) => count))).toEqual(new Set([5]));
    expect(plan.rotation.map(({ order }) => order.stage)).toEqual(['juvenile', 'adult']);
    const vitamins = plan.feeding
      .filter(({ dusting }) => dusting === 'calcium-d3' || dusting === 'multivitamin')
      .map(({ date }) => epochDay(date));
    vitamins.forEach((day, i) => {
      if (i > 0) expect(day - (vitamins[i - 1] ?? 0)).toBeGreaterThanOrEqual(3);
    });
  });

  it('a rest stops the feeds before it and starts them after it', () => {
    const rest =
      'rest: { kind: fast, from: 2027-11-01, weeks: 6, ramp: 1 weeks, last_feed: 2 weeks, checked_by_vet: 2027-10-01 }';
    const { feeding } = solve(careOf({ enclosure: insects([rest]) }));
    const around = days(feeding).filter((date) => date > '2027-10-01');
    expect(around.filter((date) => date > '2027-10-18' && date < '2027-12-13')).toEqual([]);
    expect(around.filter((date) => date <= '2027-10-18').at(-1)).toBe('2027-10-18');
    expect(around.find((date) => date > '2027-10-18')).toBe('2027-12-13');
  });

  it('rodents are skipped while shedding and go on in step', () => {
    const states = 'states: [{ is: shedding, from: 2027-02-01, to: 2027-02-14 }]';
    const mice = ['feeders:', '  - { id: mouse, food: rodents, share: 100 %, shelf_life: 180 days }'];
    const shed = solve(careOf({ species: 'corn-snake', enclosure: [states, ...mice] }));
    const plain = solve(careOf({ species: 'corn-snake', enclosure: mice }));
    expect(days(shed.feeding)).toEqual(
      days(plain.feeding).filter((date) => date < '2027-02-01' || date > '2027-02-14'),
    );
    expect(shed.feeding.length).toBeLessThan(plain.feeding.length);
    expect(plain.feeding.every(({ count, portion }) => count === 1 && portion.startsWith('1 '))).toBe(true);
  });

  it('quarantine stops the dust unless the veterinarian ordered it', () => {
    const state = (vet: string) => `states: [{ is: quarantine, from: 2027-02-01, to: 2027-03-31${vet} }]`;
    const within = (plan: FeedingPlan) =>
      plan.feeding.filter(({ date }) => date >= '2027-02-01' && date <= '2027-03-31');
    expect(within(solve(careOf({ enclosure: insects([state('')]) }))).every(({ dusting }) => dusting === null)).toBe(
      true,
    );
    expect(
      within(solve(careOf({ enclosure: insects([state(', vet: as before')]) }))).some(
        ({ dusting }) => dusting !== null,
      ),
    ).toBe(true);
  });

  it('a stand-in steps in for the dates of a shortage and leaves the rest of the rotation as it was', () => {
    const plain = solve(careOf({ enclosure: insects() }));
    const short = solve(
      careOf({ enclosure: insects(), top: ['shortage: [{ from: 2027-02-01, to: 2027-02-10, feeder: cricket }]'] }),
    );
    expect(short.feeding).toHaveLength(plain.feeding.length);
    short.feeding.forEach((feed, i) => {
      const before = plain.feeding[i];
      const isShort = feed.date >= '2027-02-01' && feed.date <= '2027-02-10' && before?.feeder === 'cricket';
      expect(feed.standIn).toBe(isShort);
      expect(feed.feeder).toBe(isShort ? 'mealworm' : before?.feeder);
      expect([feed.slot, feed.dusting]).toEqual([before?.slot, before?.dusting]);
    });
  });

  it('a multivitamin that holds D3 keeps the days of D3, one that does not may come sooner', () => {
    const apart = 'apart: [{ between: [d3, d3], days: 9 }]';
    const dusting =
      'dusting: [{ id: calcium-d3, times: 2, weeks: 6 }, { id: multivitamin, times: 2, weeks: 6 }, { id: calcium, at: the rest }]';
    const own = `targets: { stages: { adult: { ${dusting}, ${apart}, why: our own } } }`;
    const nearest = (plan: FeedingPlan) => {
      const given = plan.feeding
        .filter(({ dusting }) => dusting === 'calcium-d3' || dusting === 'multivitamin')
        .map(({ date }) => epochDay(date));
      return Math.min(...given.slice(1).map((day, i) => day - (given[i] ?? 0)));
    };
    expect(nearest(solve(careOf({ enclosure: insects([own]) })))).toBeGreaterThanOrEqual(9);
  });

  it('several animals get their portion each, and the household’s count replaces the profile’s', () => {
    const feeders = [CRICKETS.replace('share: 75 %', 'share: 100 %, count: 4')];
    const { feeding } = solve(careOf({ enclosure: insects(['animals: 3'], feeders) }, 30));
    expect(feeding[0]?.count).toBe(12);
    expect(feeding[0]?.portion).toBe('12 (3 × 4), no longer than the head is wide');
  });

  it('a sitter feeds on visits, vitamins move to the household’s own days, and nothing is planned for days without a visit', () => {
    const top = ['away: [{ from: 2027-02-01, to: 2027-02-09, sitter: sitter, visits: every 2 days }]'];
    const plan = solve(careOf({ enclosure: insects(), top }));
    const away = plan.feeding.filter(({ date }) => date >= '2027-02-01' && date <= '2027-02-09');
    expect(away.length).toBeGreaterThan(0);
    expect(away.every(({ by }) => by === 'sitter')).toBe(true);
    const vitamin = (feed: Feed) => feed.dusting === 'calcium-d3' || feed.dusting === 'multivitamin';
    expect(away.every((feed) => !vitamin(feed) || feed.preDosed === true)).toBe(true);
    expect(
      plan.feeding.filter(({ date }) => date < '2027-02-01' || date > '2027-02-09').every(({ by }) => by === 'keeper'),
    ).toBe(true);
  });

  it('dust goes on greens where no insects are fed', () => {
    const weeds = ['feeders:', '  - { id: weeds, food: greens, share: 100 %, dust: true, shelf_life: 5 days }'];
    const { feeding } = solve(careOf({ species: 'green-iguana', enclosure: weeds }, 28));
    expect(feeding.filter(({ dusting }) => dusting === 'multivitamin')).toHaveLength(2);
    expect(feeding.filter(({ dusting }) => dusting === 'calcium')).toHaveLength(10);
    expect(feeding.every(({ food }) => food === 'greens')).toBe(true);
  });

  it('vitamins on a complete diet are refused, and none is planned', () => {
    const own = 'targets: { stages: { adult: { dusting: [{ id: multivitamin, every: 2 feeds }], why: our own } } }';
    const feeders = [
      '- { id: diet, food: prepared, share: 100 %, shelf_life: 180 days }',
      CRICKETS.replace('75', '100'),
    ];
    const plan = solve(careOf({ species: 'crested-gecko', enclosure: insects([own], feeders) }));
    expect(plan.codes).toContain('vitamins-on-complete-diet');
    expect(plan.feeding.some(({ dusting }) => dusting !== null)).toBe(false);
    expect(solve(careOf({ species: 'giant-day-gecko', enclosure: insects([], feeders) })).codes).not.toContain(
      'vitamins-on-complete-diet',
    );
  });
});

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
    const { cultures, stock } = solve(
      careOf({ species: 'dyeing-poison-frog', enclosure: insects([], flies), top: ['shopping: { days: [fri] }'] }, 60),
    );
    expect(stock).toEqual([]);
    expect(cultures[0]?.dates.slice(0, 3).map(isoDateOf)).toEqual(['2027-01-01', '2027-01-10', '2027-01-19']);
  });
});
