import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import type { Feed } from '../../../../src/plan/plan.ts';
import type { FeedingPlan } from '../../../../src/solve/feeding/feeding.ts';
import { CRICKETS, careOf, insects, MEALWORMS, solve, stateOf } from '../../../generated/solved-feeding.ts';

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

  it('a stand-in comes before other feeders, and the next feeder where it is short too', () => {
    const roaches = '- { id: roach, share: 25 %, dust: true, shelf_life: 60 days }';
    const feeders = [CRICKETS.replace('75', '50'), roaches, MEALWORMS];
    const fedInstead = (short: readonly string[]) => {
      const spans = short.map((feeder) => `{ from: 2027-02-01, to: 2027-02-28, feeder: ${feeder} }`).join(', ');
      const { feeding } = solve(careOf({ enclosure: insects([], feeders), top: [`shortage: [${spans}]`] }, 90));
      return new Set(feeding.filter(({ standIn }) => standIn).map(({ feeder }) => feeder));
    };
    expect(fedInstead(['cricket'])).toEqual(new Set(['mealworm']));
    expect(fedInstead(['cricket', 'mealworm'])).toEqual(new Set(['roach']));
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
