import { describe, expect, it } from 'vitest';
import { minuteOf } from '../../../src/basics/minute-of-day.ts';
import { summaryText } from '../../../src/emit/text/summary.ts';
import { dayStrip, todayText } from '../../../src/emit/text/today.ts';
import { dayView } from '../../../src/plan/day-view.ts';
import { isOnAt, joinedWindows, splitAtMidnight } from '../../../src/plan/dial-day.ts';
import type { DialPlan, DialSetting, Plan, Window } from '../../../src/plan/plan.ts';
import { barePlan } from '../../generated/bare-plan.ts';
import { shelfCare } from '../../generated/shelf-care.ts';

function setting(from: string, to: string, wall: DialSetting['wall'], windows: readonly Window[]): DialSetting {
  const slots = windows.flatMap(({ on, off }) =>
    Array.from({ length: (minuteOf(off) - minuteOf(on)) / 15 }, (_, index) => minuteOf(on) / 15 + index),
  );
  return { from, to, windows, slots, wall, worstErrorMinutes: 0, meanErrorMinutes: 0 };
}

const winter = { on: '08:00', off: '18:00' };
const summer = { on: '07:00', off: '19:00' };
const DIAL: DialPlan = {
  device: 'dial',
  clock: 'standard',
  stepMinutes: 15,
  turnsInDays: 1,
  pins: 'down-is-on',
  drives: ['lamp:fern/day', 'device:pulse'],
  lamps: [],
  settings: [
    setting('2027-01-01', '2027-03-19', [{ from: '2027-01-01', to: '2027-03-19', windows: [winter] }], [winter]),
    setting(
      '2027-03-20',
      '2027-12-31',
      [
        { from: '2027-03-20', to: '2027-03-27', windows: [summer] },
        { from: '2027-03-28', to: '2027-03-28', windows: [{ on: '08:00', off: '20:00' }] },
        { from: '2027-03-29', to: '2027-12-31', windows: [{ on: '08:00', off: '20:00' }] },
      ],
      [summer],
    ),
  ],
  targetHighMinutes: [],
  targetLowMinutes: [],
  targetMinutes: [],
  worstErrorMinutes: 12.3,
  meanErrorMinutes: 5,
  tradeoff: [],
};
const plan: Plan = {
  ...barePlan(shelfCare({ devices: [], enclosures: [] }), { feeding: [], rotation: [], stock: [] }, '2027-01-01'),
  lighting: [DIAL],
};

describe('a day of the plan', () => {
  it.each([
    ['2027-01-10', 479, false],
    ['2027-01-10', 480, true],
    ['2027-01-10', 1079, true],
    ['2027-01-10', 1080, false],
    ['2027-03-28', 1190, true],
  ] as const)('on %s at minute %i the light is on: %s', (date, minute, isOn) => {
    expect(dayView(plan, date, minute).lights[0]?.isOnNow).toBe(isOn);
  });

  it('switches by the clock on the wall', () => {
    const { switches } = dayView(plan, '2027-04-02', null);
    expect(switches.map(({ at, goes, device }) => `${at} ${device} ${goes}`)).toEqual([
      '08:00 dial on',
      '20:00 dial off',
    ]);
  });

  it('names the next change, and the change of the day', () => {
    expect(dayView(plan, '2027-03-15', null).nextChange).toEqual({ date: '2027-03-20', inDays: 5, devices: ['dial'] });
    expect(dayView(plan, '2027-03-20', null).lights[0]?.changesToday).toBe(true);
    expect(dayView(plan, '2027-03-20', null).nextChange).toBeNull();
    expect(dayView(plan, '2027-01-01', null).lights[0]?.changesToday).toBe(false);
  });

  it('has no lights outside the plan', () => {
    expect(dayView(plan, '2028-01-01', 600).lights[0]?.setting).toBeNull();
    expect(dayView(plan, '2028-01-01', 600).switches).toEqual([]);
  });

  it('says which light is not planned, a line for each timer', () => {
    const why = 'its lamps want different hours';
    const notPlanned = [
      { lamp: 'fern/day', device: 'dial', why },
      { lamp: 'fern/uv', device: 'dial', why },
      { lamp: 'fern/sun', device: null, why: 'no outlet is left for it' },
    ];
    const refused = { ...plan, lighting: [{ ...DIAL, settings: [] }], notPlanned };
    const lines = (language: 'en' | 'es') =>
      todayText([dayView(refused, '2027-02-01', 600)], { unicode: true, language }).split('\n');
    expect(lines('en')).toContain(`  dial: its light is not planned: ${why}`);
    expect(lines('en')).toContain('  fern sun: its light is not planned: no outlet is left for it');
    expect(lines('en').filter((line) => line.includes('not planned'))).toHaveLength(2);
    expect(lines('en')).toContain('Lights (wall time)');
    expect(lines('es').some((line) => line.startsWith('  dial: su luz no está planificada: '))).toBe(true);
    const beside = todayText([dayView({ ...plan, notPlanned }, '2027-02-01', 600)], { unicode: true });
    expect(beside).toContain(`\n  fern uv: its light is not planned: ${why}\n`);
    expect(beside).not.toContain('dial: its light');
    expect(todayText([dayView(plan, '2027-02-01', 600)], { unicode: true })).not.toContain('not planned');
  });

  it('does not switch at midnight where the light runs on', () => {
    const night = [
      { on: '00:00', off: '05:00' },
      { on: '17:00', off: '24:00' },
    ];
    const dial = {
      ...DIAL,
      settings: [
        setting('2027-01-01', '2027-12-31', [{ from: '2027-01-01', to: '2027-12-31', windows: night }], night),
      ],
    };
    const { switches } = dayView({ ...plan, lighting: [dial] }, '2027-02-01', null);
    expect(switches.map(({ at, goes }) => `${at} ${goes}`)).toEqual(['05:00 off', '17:00 on']);
  });
});

describe('windows of a day', () => {
  const cases: readonly [
    readonly { onMinute: number; offMinute: number }[],
    readonly { onMinute: number; offMinute: number }[],
  ][] = [
    [[{ onMinute: 450, offMinute: 1125 }], [{ onMinute: 450, offMinute: 1125 }]],
    [
      [{ onMinute: 1020, offMinute: 1740 }],
      [
        { onMinute: 0, offMinute: 300 },
        { onMinute: 1020, offMinute: 1440 },
      ],
    ],
    [[{ onMinute: 0, offMinute: 1440 }], [{ onMinute: 0, offMinute: 1440 }]],
    [[{ onMinute: 600, offMinute: 2040 }], [{ onMinute: 0, offMinute: 1440 }]],
    [[{ onMinute: 600, offMinute: 600 }], []],
    [[{ onMinute: 1500, offMinute: 1600 }], [{ onMinute: 60, offMinute: 160 }]],
  ];

  it.each(cases)('%j is written as %j', (joined, split) => {
    expect(splitAtMidnight(joined)).toEqual(split);
  });

  it('read back joined', () => {
    const windows = [
      { on: '00:00', off: '05:00' },
      { on: '08:00', off: '09:00' },
      { on: '17:00', off: '24:00' },
    ];
    expect(joinedWindows(windows)).toEqual([
      { onMinute: 480, offMinute: 540 },
      { onMinute: 1020, offMinute: 1740 },
    ]);
    expect(joinedWindows([{ on: '00:00', off: '24:00' }])).toEqual([{ onMinute: 0, offMinute: 1440 }]);
  });

  it('are on at a minute in any turn of the day', () => {
    const night = [{ onMinute: 1020, offMinute: 1740 }];
    expect([0, 299, 300, 1019, 1020, -1, 1440].map((minute) => isOnAt(night, minute))).toEqual([
      true,
      true,
      false,
      false,
      true,
      true,
      true,
    ]);
  });
});

describe('on the screen', () => {
  it('a strip has a mark a half hour, plain letters where asked', () => {
    expect(dayStrip([winter], { unicode: false })).toBe(
      '00 ............ 06 ....######## 12 ############ 18 ............',
    );
    expect(dayStrip([], { unicode: true })).toContain('·'.repeat(12));
  });

  it('a day tells what is on, what switches, what comes next', () => {
    expect(todayText([dayView(plan, '2027-03-15', 600)], { unicode: false })).toContain(
      [
        'Monday 15 March 2027, 10:00',
        '',
        'On now: dial',
        '  next at 18:00: dial off: fern day and pulse',
        '',
        'Lights (wall time)',
        '  dial: on from 08:00 to 18:00 (fern day and pulse)',
        '    00 ............ 06 ....######## 12 ############ 18 ............',
        '',
        'By the clock',
        '  08:00  dial on: fern day and pulse',
        '  18:00  dial off: fern day and pulse',
        '',
        'Nothing to do',
        '',
        'Next change: Saturday 20 March 2027, in 5 days: dial',
      ].join('\n'),
    );
  });

  it('a dial that is to be set today shows the pins to move, apart from those that stay', () => {
    const text = todayText([dayView(plan, '2027-03-20', 600)], { unicode: false });
    expect(text).toContain(
      [
        '    set it today: on from 07:00 to 19:00 on its own clock',
        '    00:00 .... .... .... .... .... ....',
        '    06:00 .... vvvv #### #### #### ####',
        '    12:00 #### #### #### #### #### ####',
        '    18:00 vvvv .... .... .... .... ....',
        '    v push down  ^ lift  # stays on  . stays off',
      ].join('\n'),
    );
    expect(todayText([dayView(plan, '2027-03-21', 600)], { unicode: false })).not.toContain('push down');
  });

  it('the summary tells what to set, the next change and the error', () => {
    const text = summaryText(plan, 'out/shelf', '2027-03-15');
    expect(text).toContain('Set on 2027-03-15\n  dial (standard time): on 08:00 to 18:00\n');
    expect(text).toContain('Next change\n  2027-03-20: dial: on 07:00 to 19:00\n');
    expect(text).toContain('  dial: 12 min, 5 min on average, with 2 settings\n');
    expect(text).toContain('written to out/shelf\n');
    expect(text.endsWith('at the shelf: out/shelf/settings.txt; to look at: out/shelf/index.html\n')).toBe(true);
  });
});
