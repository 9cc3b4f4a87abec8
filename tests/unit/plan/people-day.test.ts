import { describe, expect, it } from 'vitest';
import { summaryText } from '../../../src/emit/text/summary.ts';
import { todayText } from '../../../src/emit/text/today.ts';
import { dayView } from '../../../src/plan/day-view.ts';
import { peopleDay } from '../../../src/plan/people-day.ts';
import type { Chore, Feed, MistPlan, Plan, PlanEnclosure } from '../../../src/plan/plan.ts';
import { watchFor } from '../../../src/plan/watch-for.ts';
import { mistChanges, mistsOn } from '../../../src/plan/water-day.ts';
import { FEED_MINUTES, workDays, workWeeks } from '../../../src/plan/work-load.ts';
import { barePlan } from '../../generated/bare-plan.ts';
import { PLAIN_ENCLOSURE, PLAIN_FEED } from '../../generated/plain-plan.ts';
import { shelfCare } from '../../generated/shelf-care.ts';

function feed(date: string, more: Partial<Feed> = {}): Feed {
  return { ...PLAIN_FEED, date, time: '09:15', enclosure: 'fern', dusting: 'calcium', ...more };
}

function chore(id: string, dates: readonly string[], more: Partial<Chore> = {}): Chore {
  return { id, title: id, kind: 'chore', who: 'keeper', minutes: 5, enclosure: null, dates, moved: [], ...more };
}

function enclosure(id: string, more: Partial<PlanEnclosure> = {}): PlanEnclosure {
  const record = (path: string, value: unknown, unit: string) => ({
    path,
    value,
    unit,
    origin: { kind: 'profile' as const },
  });
  return {
    ...PLAIN_ENCLOSURE,
    id,
    name: id === 'fern' ? 'Fern' : 'Moss',
    stages: [
      { from: '2027-01-01', stage: 'juvenile' },
      { from: '2027-06-01', stage: 'adult' },
    ],
    targets: [
      record('temperature.day', [22, 28], '°C'),
      record('temperature.never_below', 15, '°C'),
      record('humidity.day', [0.5, 0.7], '1'),
      record('humidity.floor', 0.25, '1'),
      record('may_go_without.juvenile', 2, 'd'),
      record('may_go_without.adult', 7, 'd'),
      record('moist_hide', 'none', 'text'),
    ],
    uvIndex: null,
    cautions: [],
    where: {},
    spans: [],
    ...more,
  };
}

const bare = barePlan(
  shelfCare({ devices: [], enclosures: [] }),
  { feeding: [], rotation: [], stock: [] },
  '2027-01-01',
);
const keeper = { id: 'keeper', feedsAt: ['09:15'], reminderMinutes: null, minutesADay: null };
const sitter = { id: 'sitter', feedsAt: [], reminderMinutes: null, minutesADay: null };
const plan: Plan = {
  ...bare,
  people: [keeper, sitter],
  enclosures: [enclosure('fern'), enclosure('moss')],
  feeding: [feed('2027-02-01'), feed('2027-02-03', { gutLoadFrom: '2027-02-02' })],
  chores: [
    chore('fern/wipe', ['2027-02-01'], { title: 'Wipe', enclosure: 'fern', minutes: 2 }),
    chore('moss/wipe', ['2027-02-01'], { title: 'Wipe', enclosure: 'moss', minutes: 2 }),
    chore('timers', ['2027-02-01'], { title: 'Look at the timers' }),
  ],
};

describe('what people have to do', () => {
  it('has feeds, and the same job at several enclosures as one', () => {
    const [day] = peopleDay(plan, '2027-02-01');
    expect(day?.feeds.map(({ name, feed: each }) => `${name} ${each.time}`)).toEqual(['Fern 09:15']);
    expect(day?.chores).toEqual([
      { title: 'Wipe', kind: 'chore', names: ['Fern', 'Moss'], minutes: 4 },
      { title: 'Look at the timers', kind: 'chore', names: [], minutes: 5 },
    ]);
    expect(day?.minutes).toBe(9 + FEED_MINUTES);
  });

  it('puts an enclosure in quarantine last, with lines of its own', () => {
    const spans = [{ kind: 'quarantine', from: '2027-01-20', to: '2027-02-20', vet: null }];
    const apart = { ...plan, enclosures: [enclosure('fern', { spans }), enclosure('moss')] };
    expect(peopleDay(apart, '2027-02-01')[0]?.chores.map(({ names }) => names.join())).toEqual(['Moss', '', 'Fern']);
    expect(watchFor(apart, '2027-02-01').map(({ name }) => name)).toEqual(['Moss', 'Fern']);
    expect(watchFor(apart, '2027-03-01').map(({ name }) => name)).toEqual(['Fern', 'Moss']);
  });

  it('begins good food for the feeders on the last day before on which anybody is there', () => {
    const gutLoads = (away: Plan['away'], date: string) =>
      peopleDay({ ...plan, away }, date).map(({ person, gutLoads: loads }) => [person, loads.length]);
    expect(gutLoads([], '2027-02-02')).toEqual([['keeper', 1]]);
    const away = [{ from: '2027-02-02', to: '2027-02-05', sitter: 'sitter', visits: ['2027-02-03'] }];
    expect(gutLoads(away, '2027-02-01')).toEqual([['keeper', 1]]);
    expect(gutLoads(away, '2027-02-02')).toEqual([]);
  });

  it('is nobody’s on a day without work', () => {
    expect(peopleDay(plan, '2027-05-01')).toEqual([]);
  });

  it('tells the mists that are due by hand', () => {
    const set = { from: '2027-01-01', to: '2027-12-31', entries: [{ at: '20:00', seconds: 30 }] };
    const mist = { enclosure: 'moss', pump: 'by-hand', sets: [{ ...set, wall: [set] }] } as unknown as MistPlan;
    const hand = chore('moss/mist-by-hand', ['2027-02-01'], { kind: 'mist-by-hand', enclosure: 'moss' });
    const [day] = peopleDay({ ...plan, chores: [hand], misting: [mist] }, '2027-02-01');
    expect(day?.mists).toEqual([{ at: '20:00', seconds: 30, name: 'Moss' }]);
    expect(day?.chores).toEqual([]);
  });
});

describe('mists of pumps', () => {
  const entries = [{ at: '08:00', seconds: 120 }];
  const span = { from: '2027-01-01', to: '2027-03-31' };
  const later = { from: '2027-04-01', to: '2027-12-31' };
  const sets = [
    { ...span, entries, wall: [{ ...span, entries }] },
    { ...later, entries: [], wall: [{ ...later, entries: [] }] },
  ];
  const misting = ['fern', 'moss'].map(
    (id) => ({ enclosure: id, pump: 'pump', device: 'timer', sets }) as unknown as MistPlan,
  );

  it('that several enclosures share are one', () => {
    expect(mistsOn({ ...plan, misting }, '2027-02-01')).toEqual([
      { at: '08:00', seconds: 120, pump: 'pump', names: ['Fern', 'Moss'] },
    ]);
    expect(mistsOn({ ...plan, misting }, '2027-05-01')).toEqual([]);
  });

  it('change on the day of the next set, once a timer', () => {
    expect(mistChanges({ misting })).toEqual([{ date: '2027-04-01', device: 'timer' }]);
    expect(dayView({ ...plan, misting }, '2027-03-01', null).nextChange).toEqual({
      date: '2027-04-01',
      inDays: 31,
      devices: ['timer'],
    });
  });
});

describe('what is normal', () => {
  it('comes from the targets, in the stage of the day', () => {
    const [winter] = watchFor(plan, '2027-02-01');
    expect(winter).toMatchObject({
      dayC: [22, 28],
      nightC: null,
      neverBelowC: 15,
      floorHumidity: 0.25,
      mayGoWithoutDays: 2,
    });
    expect(watchFor(plan, '2027-06-01')[0]?.mayGoWithoutDays).toBe(7);
  });

  it('in a rest leaves the limits of life, as other bands hold', () => {
    const spans = [{ kind: 'brumation', from: '2027-01-01', to: '2027-03-01', vet: null }];
    const [resting] = watchFor({ enclosures: [enclosure('fern', { spans })] }, '2027-02-01');
    expect(resting).toMatchObject({ dayC: null, dayHumidity: null, neverBelowC: 15, mayGoWithoutDays: null });
  });
});

describe('the work', () => {
  it('adds up by day and by week from Monday', () => {
    const days = workDays(plan);
    expect(days).toEqual([
      { person: 'keeper', date: '2027-02-01', minutes: 9 + FEED_MINUTES },
      { person: 'keeper', date: '2027-02-03', minutes: FEED_MINUTES },
    ]);
    expect(workWeeks(days)).toEqual([
      { person: 'keeper', from: '2027-02-01', minutes: 9 + 2 * FEED_MINUTES, longest: days[0] },
    ]);
  });
});

describe('the summary', () => {
  it('tells each person’s hours a week', () => {
    const longer = chore('deep', ['2027-02-10'], { minutes: 90 });
    const text = summaryText({ ...plan, chores: [...plan.chores, longer] }, null);
    expect(text).toContain('\nWork\n  keeper: about 55 min a week, at most 1 h 30 min in the week of 2027-02-08\n');
  });
});

describe('the screen', () => {
  it('has machines and people, what is normal, and whom to call', () => {
    const text = todayText([dayView(plan, '2027-02-01', null)], { unicode: false, contacts: { vet: '555-0101' } });
    expect(text).toBe(`Monday 1 February 2027

keeper, about 14 min
  09:15  Feed Fern: 5 × cricket, no longer than the head is wide; dust with calcium
  -      Fern and Moss: Wipe
  -      Look at the timers

What is normal, and when to act
  Fern: day 22 to 28 °C
    humidity by day 50 to 70 %
    act below 15 °C, under 25 % humidity, after 2 days without food
  Moss: day 22 to 28 °C
    humidity by day 50 to 70 %
    act below 15 °C, under 25 % humidity, after 2 days without food
  Call: vet 555-0101

No further change of settings in this plan
`);
  });

  it('tells a count for several animals once, with what each gets', () => {
    const portion = '10 (2 × 5), no longer than the head is wide';
    const many = { ...plan, feeding: [feed('2027-02-01', { count: 10, portion })] };
    expect(todayText([dayView(many, '2027-02-01', null)], { unicode: false })).toContain(
      'Feed Fern: 10 × cricket (2 × 5), no longer than the head is wide; dust with calcium\n',
    );
  });

  it('speaks the household’s language and units', () => {
    const text = todayText([dayView(plan, '2027-02-01', null)], { unicode: false, language: 'es', units: 'us' });
    expect(text).toContain('lunes 1 de febrero de 2027');
    expect(text).toContain('Alimentar Fern: 5 × cricket');
    expect(text).toContain('de día 72 a 82 °F');
  });

  it('of several days tells the work in all, and machines where they differ', () => {
    const views = ['2027-02-01', '2027-02-02', '2027-02-03'].map((date) => dayView(plan, date, null));
    const text = todayText(views, { unicode: false });
    expect(text).toContain("Good food for the cricket of tomorrow's feed");
    expect(text).toContain('keeper: about 19 min in all, most on Monday 1 February 2027: 14 min');
    expect(text.match(/What is normal/g)?.length).toBe(1);
  });

  it('tells one person’s work alone', () => {
    expect(dayView(plan, '2027-02-01', null, 'sitter').people).toEqual([]);
    const away = [{ from: '2027-02-01', to: '2027-02-05', sitter: 'sitter', visits: ['2027-02-01', '2027-02-04'] }];
    const text = todayText([dayView({ ...plan, away }, '2027-02-02', null, 'sitter')], { unicode: false });
    expect(text).toContain('Away until Friday 5 February 2027; sitter comes next on Thursday 4 February 2027');
    expect(text).toContain('Nothing to do');
  });
});
