import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../src/plan/plan.ts';
import { generatedParts } from '../../../generated/calendar-plan.ts';
import { events, fail, titles } from '../../../generated/fern-events.ts';

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
      'mist-timer: enter 08:00 2 min, 13:00 30 s, 17:00 60 s',
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
      ['2027-01-01T18:30', 'keeper', 'Mist Fern by hand, 6 min 40 s', 7, '2027-01-06T18:30'],
      ['2027-01-07T08:00', 'sitter', 'Mist Fern by hand, 60 s', 5, '2027-01-10T08:00'],
      ['2027-01-07T18:30', 'sitter', 'Mist Fern by hand, 6 min 40 s', 7, '2027-01-10T18:30'],
    ]);
  });
});
