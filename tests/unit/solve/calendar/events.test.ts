import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { EventDraft } from '../../../../src/plan/event-draft.ts';
import type { Feed, Plan } from '../../../../src/plan/plan.ts';
import { calendarEvents } from '../../../../src/solve/calendar/events.ts';
import { generatedParts } from '../../../generated/calendar-plan.ts';
import { loopOverDays } from '../../../generated/own-list.ts';

const bare: Plan = {
  ...generatedParts(0),
  name: 'Reading room',
  language: 'en',
  from: '2027-01-01',
  to: '2027-12-31',
  enclosures: generatedParts(0)
    .enclosures.slice(0, 1)
    .map((enclosure) => ({ ...enclosure, id: 'fern', name: 'Fern' })),
  people: [
    { id: 'keeper', feedsAt: [], reminderMinutes: 15, minutesADay: null },
    { id: 'sitter', feedsAt: [], reminderMinutes: null, minutesADay: null },
  ],
  site: {
    latitude: 41.65,
    longitude: -0.89,
    standardOffsetMinutes: 60,
    offsets: [
      { fromUtc: '2026-10-25T01:00Z', minutes: 60 },
      { fromUtc: '2027-03-28T01:00Z', minutes: 120 },
      { fromUtc: '2027-10-31T01:00Z', minutes: 60 },
    ],
    sunMinutes: [],
  },
  lighting: [],
  misting: [],
  hardware: [],
  feeding: [],
  chores: [],
  stock: [],
  away: [],
};

const FEED: Feed = {
  date: '2027-01-01',
  time: '08:15',
  slot: 0,
  enclosure: 'fern',
  food: 'insects',
  feeder: 'cricket',
  count: 5,
  portion: '5, no longer than the head is wide',
  dusting: 'calcium-d3',
  by: 'keeper',
  gutLoadFrom: '2026-12-31',
  standIn: false,
};

function events(change: Partial<Plan>, log = new Log()): readonly EventDraft[] {
  return calendarEvents({ ...bare, ...change }, null, log);
}

function titles(change: Partial<Plan>): readonly string[] {
  return events(change).map(({ title }) => title);
}

function codes(change: Partial<Plan>): readonly string[] {
  const log = new Log();
  events(change, log);
  return log.sorted().map(({ code }) => code);
}

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
    expect(titles({ feeding: [{ ...FEED, ...change }] })).toEqual([title]);
  });

  it("carry the portion, gut-loading and the stand-in below, and the person's reminder", () => {
    const [event] = events({ feeding: [{ ...FEED, standIn: true }] });
    expect(event?.description).toBe(
      'Portion: 5, no longer than the head is wide\nGut-load the feeders from the day before.\nStand-in feeder.',
    );
    expect([event?.start, event?.minutes, event?.allDay, event?.alarmMinutes]).toEqual([
      '2027-01-01T08:15',
      10,
      false,
      15,
    ]);
    expect(events({ feeding: [{ ...FEED, by: 'sitter' }] })[0]?.alarmMinutes).toBeNull();
  });

  it('fold into one rule a dust, and the second feed of a day has its own', () => {
    const days = Array.from({ length: 20 }, (_, index) => `2027-01-${String(index + 1).padStart(2, '0')}`);
    const feeding = days.flatMap((date, index) => [
      { ...FEED, date, gutLoadFrom: null, dusting: index % 5 === 0 ? 'calcium-d3' : 'calcium' },
      { ...FEED, date, gutLoadFrom: null, time: '18:00', dusting: null },
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
    const [event] = events({ feeding: [{ ...FEED, time }] });
    expect(event?.allDay).toBe(isAllDay);
    expect(event?.title.startsWith(`${time} Feed`)).toBe(isAllDay);
    expect(codes({ feeding: [{ ...FEED, time }] })).toEqual(isAllDay ? ['event-all-day'] : []);
  });

  it('are the small hours nowhere where clocks do not change', () => {
    const site = { ...bare.site, offsets: [{ fromUtc: '2026-01-01T00:00Z', minutes: 330 }] };
    expect(events({ site, feeding: [{ ...FEED, time: '02:10' }] })[0]?.allDay).toBe(false);
  });

  it('are midnight too where the clocks change at midnight', () => {
    const offsets = [
      { fromUtc: '2026-04-05T03:00Z', minutes: -240 },
      { fromUtc: '2026-09-06T04:00Z', minutes: -180 },
      { fromUtc: '2027-04-04T03:00Z', minutes: -240 },
    ];
    const site = { ...bare.site, standardOffsetMinutes: -240, offsets };
    const at = (time: string): boolean | undefined => events({ site, feeding: [{ ...FEED, time }] })[0]?.allDay;
    const unsafe = ['00:00', '00:30', '02:59', '23:00', '23:55', '22:55'];
    expect(unsafe.map(at)).toEqual(unsafe.map(() => true));
    expect(['03:00', '22:45', '08:00'].map(at)).toEqual([false, false, false]);
  });
});

describe('settings in the calendar', () => {
  const dial: Plan['lighting'][number] = { ...(generatedParts(0).lighting[0] ?? fail()), pins: 'down-is-on' };
  const setting = (
    from: string,
    slots: readonly number[],
    on: string,
    off: string,
  ): (typeof dial)['settings'][number] => ({
    from,
    to: '2027-12-31',
    windows: [{ on, off }],
    slots,
    wall: [],
    worstErrorMinutes: 0,
    meanErrorMinutes: 0,
  });
  const range = (first: number, last: number): readonly number[] =>
    Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const settings = [
    setting('2027-01-01', range(30, 74), '07:30', '18:45'),
    setting('2027-03-06', range(28, 73), '07:00', '18:30'),
  ];

  it.each([
    ['down-is-on', 'wall-dial: push 2 pins 07:00–07:30; lift 1 pin 18:30–18:45'],
    ['up-is-on', 'wall-dial: push 1 pin 18:30–18:45; lift 2 pins 07:00–07:30'],
    [null, 'wall-dial: on 2 pins 07:00–07:30; off 1 pin 18:30–18:45'],
  ] as const)('say what to push and to lift where pins are %s', (pins, title) => {
    expect(titles({ lighting: [{ ...dial, pins, settings }] }).at(-1)).toBe(title);
  });

  it('say the first setting whole, and what the dial reads afterwards', () => {
    const [first, second] = events({ lighting: [{ ...dial, settings }] });
    expect(first?.title).toBe('wall-dial: push 45 pins 07:30–18:45; lift all others');
    expect(second?.description).toContain('wall-dial then reads: on 07:00–18:30.');
    expect([second?.start, second?.allDay, second?.task, second?.for]).toEqual([
      '2027-03-06',
      true,
      'dial/wall-dial',
      'keeper',
    ]);
  });

  it('name the weekdays of a 7-day dial only where they differ', () => {
    const week = (slots: readonly number[]): readonly number[] =>
      range(0, 6).flatMap((day) => slots.map((slot) => day * 96 + slot));
    const weekly = {
      ...dial,
      turnsInDays: 7 as const,
      settings: [
        setting('2027-01-01', week(range(30, 74)), '07:30', '18:45'),
        setting('2027-03-06', week(range(28, 74)), '07:00', '18:45'),
      ],
    };
    expect(titles({ lighting: [weekly] }).at(-1)).toBe('wall-dial: push every day 2 pins 07:00–07:30');
    const monday = {
      ...weekly,
      settings: [
        weekly.settings[0] ?? fail(),
        setting('2027-03-06', [28, 29, ...week(range(30, 74))], '07:00', '18:45'),
      ],
    };
    expect(titles({ lighting: [monday] }).at(-1)).toBe('wall-dial: push Mon 2 pins 07:00–07:30');
  });

  it('say which mist entries to add, alter and delete, once for a timer that enclosures share', () => {
    const mist = { ...(generatedParts(0).misting[0] ?? fail()), enclosure: 'fern', pump: 'pump', device: 'mist-timer' };
    const set = mist.sets[0] ?? fail();
    const entries = (
      ...list: readonly (readonly [string, number])[]
    ): Plan['misting'][number]['sets'][number]['entries'] => list.map(([at, seconds]) => ({ at, seconds }));
    const sets = [
      { ...set, from: '2027-01-01', entries: entries(['08:00', 120], ['13:00', 30], ['17:00', 60]) },
      { ...set, from: '2027-06-05', entries: entries(['08:00', 90], ['17:00', 60], ['20:30', 45]) },
    ];
    expect(
      titles({
        misting: [
          { ...mist, sets },
          { ...mist, enclosure: 'moss', sets },
        ],
      }),
    ).toEqual([
      'mist-timer: enter 08:00 120 s, 13:00 30 s, 17:00 60 s',
      'mist-timer: add 20:30 45 s; alter 08:00 to 90 s; delete 13:00',
    ]);
  });

  it('say at each clock change what to turn and what to leave', () => {
    const device = (id: string, clock: 'standard' | 'wall' | 'automatic'): Plan['hardware'][number] => ({
      id,
      kind: 'pin-dial',
      outlet: 'always',
      clock,
      keepsTime: false,
      drives: [],
      where: null,
    });
    const changes = events({ hardware: [device('wall-dial', 'standard'), device('mist-timer', 'wall')] });
    expect(changes.map(({ start, title }) => [start, title])).toEqual([
      ['2027-03-28', 'Clocks go forward 60 min; turn mist-timer; leave wall-dial'],
      ['2027-10-31', 'Clocks go back 60 min; turn mist-timer; leave wall-dial'],
    ]);
    expect(events({ hardware: [] })).toEqual([]);
  });
});

describe('chores that stand for a setting', () => {
  const chore = (
    id: string,
    kind: string,
    title: string,
    who: string,
    dates: readonly string[],
    moved: Plan['chores'][number]['moved'] = [],
  ): Plan['chores'][number] => ({ id, kind, title, who, minutes: 5, enclosure: null, dates, moved });
  const dial = { ...(generatedParts(0).lighting[0] ?? fail()), pins: 'down-is-on' as const };
  const [one, two] = dial.settings;
  const settings = [
    { ...(one ?? fail()), from: '2027-01-01', slots: [30, 31] },
    { ...(two ?? fail()), from: '2027-03-06', slots: [30, 31, 32] },
  ];

  it('say whose turn it is and on which day, and have no event of their own', () => {
    const chores = [
      chore('wall-dial/re-pin', 're-pin', 'Set wall-dial by its new card', 'keeper', ['2027-01-01']),
      chore(
        'wall-dial/re-pin/sitter',
        're-pin',
        'Set wall-dial by its new card',
        'sitter',
        ['2027-03-07'],
        [{ due: '2027-03-06', on: '2027-03-07' }],
      ),
      chore('change-sheet', 'change-sheet', 'Hang up the new card', 'sitter', ['2027-03-07']),
    ];
    const changes = events({ lighting: [{ ...dial, settings }], chores });
    expect(changes.map(({ start, for: person, title }) => [start, person, title])).toEqual([
      ['2027-01-01', 'keeper', 'wall-dial: push 2 pins 07:30–08:00; lift all others'],
      ['2027-03-07', 'sitter', 'wall-dial: push 1 pin 08:00–08:15'],
    ]);
    expect(changes.map(({ description }) => description.includes('Hang up the new card'))).toEqual([false, true]);
  });

  it('say how to turn a timer at a clock change', () => {
    const hardware: Plan['hardware'] = [
      {
        id: 'mist-timer',
        kind: 'programmable-timer',
        outlet: 'always',
        clock: 'wall',
        keepsTime: true,
        drives: [],
        where: null,
      },
    ];
    const chores = [
      chore('mist-timer/turn-forward', 'turn-dial', 'Set the clock of mist-timer', 'sitter', ['2027-03-28']),
    ];
    const [spring, autumn] = events({ hardware, chores });
    expect([spring?.for, spring?.description]).toEqual(['sitter', 'Set the clock of mist-timer']);
    expect([autumn?.for, autumn?.description]).toEqual([
      'keeper',
      'Turn each dial on, in its own direction, until its mark shows the time now; key the new time into a timer.',
    ]);
  });

  it('mist by hand at the hours of the plan, each its own event', () => {
    const mist = { ...(generatedParts(0).misting[0] ?? fail()), enclosure: 'fern', pump: 'by-hand', device: null };
    const entries = [
      { at: '08:00', seconds: 60 },
      { at: '18:30', seconds: 400 },
    ];
    const sets = [{ ...(mist.sets[0] ?? fail()), wall: [{ from: '2027-01-01', to: '2027-01-10', entries }] }];
    const chores = [
      chore('fern/mist-by-hand', 'mist-by-hand', 'Mist by hand', 'keeper', [
        '2027-01-01',
        '2027-01-02',
        '2027-01-03',
        '2027-01-04',
        '2027-01-05',
        '2027-01-06',
      ]),
      chore('fern/mist-by-hand/sitter', 'mist-by-hand', 'Mist by hand', 'sitter', [
        '2027-01-07',
        '2027-01-08',
        '2027-01-09',
        '2027-01-10',
      ]),
    ];
    const mists = events({ misting: [{ ...mist, sets }], chores });
    expect(
      mists.map(({ start, for: person, title, minutes, until }) => [start, person, title, minutes, until]),
    ).toEqual([
      ['2027-01-01T08:00', 'keeper', 'Mist Fern by hand, 60 s', 5, '2027-01-06T08:00'],
      ['2027-01-01T18:30', 'keeper', 'Mist Fern by hand, 400 s', 7, '2027-01-06T18:30'],
      ['2027-01-07T08:00', 'sitter', 'Mist Fern by hand, 60 s', 5, '2027-01-10T08:00'],
      ['2027-01-07T18:30', 'sitter', 'Mist Fern by hand, 400 s', 7, '2027-01-10T18:30'],
    ]);
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
    const [other] = calendarEvents({ ...bare, stock }, 'sitter', new Log());
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
    expect(titles({ language: 'es', feeding: [FEED] })).toEqual([
      'Alimentar Fern: 5 × cricket, espolvorear con calcium-d3',
    ]);
  });
});

function fail(): never {
  throw new Error('the generated household lacks it');
}
