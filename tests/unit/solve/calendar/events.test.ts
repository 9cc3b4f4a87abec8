import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import { calendarEvents } from '../../../../src/solve/calendar/events.ts';
import { codes, events, FERN_FEED, fernPlan, titles } from '../../../generated/fern-events.ts';
import { loopOverDays } from '../../../generated/own-list.ts';

describe('feeds in the calendar', () => {
  it.each([
    ['dusted', {}, 'Feed Fern: 5 × cricket, dust with calcium-d3'],
    ['dusted beforehand', { preDosed: true }, 'Feed Fern: 5 × cricket, calcium-d3 from the portion put up beforehand'],
    ['plain insects', { dusting: null }, 'Feed Fern: 5 × cricket, no dust'],
    [
      'by eye',
      { count: null, food: 'greens', feeder: 'dandelion', portion: 'a shell-sized heap', dusting: null },
      'Feed Fern: dandelion, a shell-sized heap',
    ],
  ] as const)('say what, how much and which dust: %s', (_name, change, title) => {
    expect(titles({ feeding: [{ ...FERN_FEED, ...change }] })).toEqual([title]);
  });

  it("carry the portion, gut-loading and the stand-in below, and the person's reminder", () => {
    const [event] = events({ feeding: [{ ...FERN_FEED, standIn: true }] });
    expect(event?.description).toBe(
      'Portion: 5, no longer than the head is wide\nGut-load the feeders from the day before.\nStand-in feeder.',
    );
    expect([event?.start, event?.minutes, event?.allDay, event?.alarmMinutes]).toEqual([
      '2027-01-01T08:15',
      10,
      false,
      15,
    ]);
    expect(events({ feeding: [{ ...FERN_FEED, by: 'sitter' }] })[0]?.alarmMinutes).toBeNull();
  });

  it('fold into one rule a dust, and the second feed of a day has its own', () => {
    const days = Array.from({ length: 20 }, (_, index) => `2027-01-${String(index + 1).padStart(2, '0')}`);
    const feeding = days.flatMap((date, index) => [
      { ...FERN_FEED, date, gutLoadFrom: null, dusting: index % 5 === 0 ? 'calcium-d3' : 'calcium' },
      { ...FERN_FEED, date, gutLoadFrom: null, time: '18:00', dusting: null },
    ]);
    const folded = events({ feeding });
    expect(folded.map(({ task, slot, rule, exdates }) => [task, slot, rule, exdates.length])).toEqual([
      ['fern/feed/cricket/calcium-d3', 0, 'FREQ=DAILY;INTERVAL=5', 0],
      ['fern/feed/cricket', 0, 'FREQ=DAILY', 0],
      ['fern/feed/cricket/calcium', 0, 'FREQ=DAILY', 3],
    ]);
    const first = folded.flatMap(loopOverDays).filter((start) => start.startsWith('2027-01-06'));
    expect([...first].sort()).toEqual(['2027-01-06T08:15', '2027-01-06T18:00']);
  });
});

describe('times at which clocks change', () => {
  it.each([
    ['00:49', false],
    ['00:50', true],
    ['01:00', true],
    ['02:59', true],
    ['03:00', false],
  ] as const)('%s becomes all day, with the time in the title: %s', (time, isAllDay) => {
    const [event] = events({ feeding: [{ ...FERN_FEED, time }] });
    expect(event?.allDay).toBe(isAllDay);
    expect(event?.title.startsWith(`${time} Feed`)).toBe(isAllDay);
    expect(codes({ feeding: [{ ...FERN_FEED, time }] })).toEqual(isAllDay ? ['event-all-day'] : []);
  });

  it('are the small hours nowhere where clocks do not change', () => {
    const site = { ...fernPlan.site, offsets: [{ fromUtc: '2026-01-01T00:00Z', minutes: 330 }] };
    expect(events({ site, feeding: [{ ...FERN_FEED, time: '02:10' }] })[0]?.allDay).toBe(false);
  });

  it('are midnight too where the clocks change at midnight', () => {
    const offsets = [
      { fromUtc: '2026-04-05T03:00Z', minutes: -240 },
      { fromUtc: '2026-09-06T04:00Z', minutes: -180 },
      { fromUtc: '2027-04-04T03:00Z', minutes: -240 },
    ];
    const site = { ...fernPlan.site, standardOffsetMinutes: -240, offsets };
    const at = (time: string): boolean | undefined => events({ site, feeding: [{ ...FERN_FEED, time }] })[0]?.allDay;
    const unsafe = ['00:00', '00:30', '02:59', '23:00', '23:55', '22:55'];
    expect(unsafe.map(at)).toEqual(unsafe.map(() => true));
    expect(['03:00', '22:45', '08:00'].map(at)).toEqual([false, false, false]);
  });
});

describe('other work in the calendar', () => {
  const away = [
    {
      from: '2027-03-05',
      to: '2027-03-14',
      sitter: 'sitter',
      visits: ['2027-03-05', '2027-03-07', '2027-03-09', '2027-03-11', '2027-03-13'],
    },
  ];

  it('tells the keeper of an absence over all its days, and the sitter of the visits', () => {
    const [absence, visits] = events({ away });
    expect([absence?.for, absence?.title, absence?.minutes, absence?.description]).toEqual([
      'keeper',
      'Away until 14 March 2027',
      14_400,
      'sitter comes on 5 days.',
    ]);
    expect([visits?.for, visits?.title, visits?.rule, visits?.until]).toEqual([
      'sitter',
      'Visit: Reading room',
      'FREQ=DAILY;INTERVAL=2',
      '2027-03-13',
    ]);
  });

  it("is the sitter's while the keeper is away", () => {
    const stock = ['2027-03-04', '2027-03-06'].map((date) => ({ date, feeder: 'cricket', amount: 40, why: '' }));
    const shopping = events({ away, stock }).filter(({ kind }) => kind === 'shopping');
    expect(shopping.map((event) => [event.start, event.for])).toEqual([
      ['2027-03-04', 'keeper'],
      ['2027-03-06', 'sitter'],
    ]);
    const [other] = calendarEvents({ ...fernPlan, stock }, 'sitter', new Log());
    expect(other?.for).toBe('sitter');
  });

  it('folds what is bought of each feeder', () => {
    const fridays = Array.from({ length: 8 }, (_, week) =>
      new Date(Date.UTC(2027, 0, 8 + week * 7)).toISOString().slice(0, 10),
    );
    const stock = fridays.flatMap((date, week) => [
      { date, feeder: 'cricket', amount: week % 2 === 0 ? 40 : 30, why: `20 fed up to ${date}` },
      ...(week % 4 === 0 ? [{ date, feeder: 'mealworm', amount: 70, why: '' }] : []),
    ]);
    expect(events({ stock }).map(({ title, rule, task, description }) => [title, rule, task, description])).toEqual([
      ['Buy 40 × cricket', 'FREQ=WEEKLY;INTERVAL=2;BYDAY=FR', 'shopping/cricket', ''],
      ['Buy 70 × mealworm', 'FREQ=WEEKLY;INTERVAL=4;BYDAY=FR', 'shopping/mealworm', ''],
      ['Buy 30 × cricket', 'FREQ=WEEKLY;INTERVAL=2;BYDAY=FR', 'shopping/cricket', ''],
    ]);
  });

  it('names the enclosure of a chore once, and says how long it takes', () => {
    const chore = {
      id: 'fern/bowl',
      title: 'Scrub the drip bowl',
      kind: 'chore',
      who: 'keeper',
      minutes: 5,
      enclosure: 'fern',
      dates: ['2027-01-02'],
      moved: [],
    };
    const [one] = events({ chores: [chore] });
    expect([one?.title, one?.description, one?.allDay, one?.minutes, one?.alarmMinutes]).toEqual([
      'Fern: Scrub the drip bowl',
      'About 5 min.',
      true,
      1440,
      null,
    ]);
    expect(titles({ chores: [{ ...chore, title: 'Weigh Fern' }] })).toEqual(['Weigh Fern']);
  });

  it('cuts a title of ten thousand characters, and says so', () => {
    const chore = {
      id: 'fern/bowl',
      title: 'x'.repeat(10_000),
      kind: 'chore',
      who: 'keeper',
      minutes: 0,
      enclosure: null,
      dates: ['2027-01-02'],
      moved: [],
    };
    expect([...(titles({ chores: [chore] })[0] ?? '')].length).toBe(200);
    expect(codes({ chores: [chore] })).toEqual(['title-cut']);
  });

  it('speaks Spanish', () => {
    expect(titles({ language: 'es', feeding: [FERN_FEED] })).toEqual([
      'Alimentar Fern: 5 × cricket, espolvorear con calcium-d3',
    ]);
  });
});
