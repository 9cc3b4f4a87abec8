import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../src/basics/calendar-day.ts';
import { minuteOf } from '../../../src/basics/minute-of-day.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import { Parts } from '../../../src/plan/parts.ts';
import type { DialPlan, DialSetting, Plan } from '../../../src/plan/plan.ts';
import type { Care, Inset } from '../../../src/resolve/care.ts';
import { dayWindows } from '../../../src/solve/light/day-windows.ts';
import { type LightingResult, solveLighting } from '../../../src/solve/lighting.ts';
import {
  edges,
  enclosure,
  hours,
  lamp,
  mistPump,
  pinDial,
  programmableTimer,
  seasonal,
  shelfCare,
} from '../../generated/shelf-care.ts';

function solved(
  care: Care,
  earlier: Plan | null = null,
  today = care.plan.from,
): LightingResult & { readonly codes: readonly string[] } {
  const log = new Log();
  const result = solveLighting(care, earlier, today, log);
  return { ...result, codes: log.sorted().map(({ code }) => code) };
}

function dialOf({ lighting }: LightingResult, id: string): DialPlan {
  const dial = lighting.find(({ device }) => device === id);
  if (!dial) throw new Error(id);
  return dial;
}

function settingAt(dial: DialPlan, date: string): DialSetting {
  const setting = dial.settings.find(({ from, to }) => from <= date && date <= to);
  if (!setting) throw new Error(`${dial.device} on ${date}`);
  return setting;
}

const SPANS: Inset = {
  form: 'spans',
  spans: [
    { at: { of: 'after_lights_on', minutes: 0 }, forMinutes: 60 },
    { at: { of: 'before_lights_off', minutes: 60 }, forMinutes: 60 },
  ],
};

describe('watts', () => {
  const shelf = (ratingW: number | null, more = 0) =>
    shelfCare({
      devices: [pinDial('dial', { ratingW }), mistPump('fogger', { kind: 'fogger', outlet: 'dial', powerW: 20 })],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'dial', powerW: 80 + more })])],
    });

  it('add up to the peak, and to what runs for three hours or more', () => {
    expect(solved(shelf(1800)).loads).toEqual([{ device: 'dial', peakW: 100, continuousW: 80, ratingW: 1800 }]);
  });

  it('may reach the rating, and 80 % of it for long', () => {
    expect(solved(shelf(100)).codes).toEqual([]);
    expect(solved(shelf(101, 1)).codes).toEqual(['timer-near-rating']);
  });

  it('above the rating leave the timer without a setting and its lamps unplanned', () => {
    const result = solved(shelf(100, 1));
    expect(result.codes).toEqual(['timer-overloaded']);
    expect(dialOf(result, 'dial').settings).toEqual([]);
    expect(result.notPlanned).toEqual([{ lamp: 'fern/day', device: 'dial', why: '101 W on a timer rated 100 W' }]);
    expect(result.loads).toEqual([{ device: 'dial', peakW: 101, continuousW: 0, ratingW: 100 }]);
  });

  it('of a short window do not count as lasting', () => {
    const short = shelfCare({
      devices: [pinDial('dial'), pinDial('uv-dial')],
      enclosures: [
        enclosure(
          'fern',
          hours(720),
          [lamp('day', { outlet: 'dial' }), lamp('uv', { uses: ['uvb'], outlet: 'uv-dial' })],
          {
            uvb: { form: 'hours', minutes: 165, fergusonZone: 3 },
          },
        ),
      ],
    });
    expect(solved(short).loads.map(({ continuousW }) => continuousW)).toEqual([20, 0]);
  });

  it('leave the rest of the shelf planned', () => {
    const two = shelfCare({
      devices: [pinDial('weak', { ratingW: 10 }), pinDial('dial')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day', { outlet: 'weak' })]),
        enclosure('moss', hours(660), [lamp('day', { outlet: 'dial' })]),
      ],
    });
    const result = solved(two);
    expect(dialOf(result, 'weak').settings).toEqual([]);
    expect(dialOf(result, 'dial').settings).toHaveLength(1);
  });
});

describe('outlets', () => {
  it('too few leave out the last lamps in the file', () => {
    const care = shelfCare({
      devices: [pinDial('dial', { outlets: 2 }), mistPump('pump', { outlet: 'dial' })],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' }), lamp('grow', { outlet: 'dial' })])],
    });
    const result = solved(care);
    expect(result.codes).toEqual(['outlets-too-few']);
    expect(result.notPlanned.map(({ lamp: id }) => id)).toEqual(['fern/grow']);
    expect(dialOf(result, 'dial').lamps.map(({ lamp: id }) => id)).toEqual(['day']);
  });
});

describe('sharing', () => {
  it('counts the larger distance to the longest and the shortest target', () => {
    const care = shelfCare({
      devices: [pinDial('dial')],
      enclosures: [
        enclosure('fern', hours(780), [lamp('day', { outlet: 'dial' })]),
        enclosure('moss', hours(700), [lamp('day', { outlet: 'dial' })]),
      ],
    });
    const dial = dialOf(solved(care), 'dial');
    expect(dial.settings.map(({ windows }) => windows)).toEqual([[{ on: '07:00', off: '19:15' }]]);
    expect([dial.targetHighMinutes[0], dial.targetLowMinutes[0], dial.targetMinutes[0]]).toEqual([780, 700, 740]);
    expect(dial.worstErrorMinutes).toBe(45);
    expect(dial.lamps.map(({ worstErrorMinutes }) => worstErrorMinutes)).toEqual([45, 35]);
  });

  it('refuses enclosures that hang their day on different times, and plans nothing for the dial', () => {
    const noon = {
      anchor: { kind: 'midday', minute: 720 },
      noLightBeforeMinute: null,
      noLightAfterMinute: null,
    } as const;
    const care = shelfCare({
      devices: [pinDial('dial')],
      enclosures: [
        enclosure('fern', hours(780), [lamp('day', { outlet: 'dial' })]),
        enclosure('moss', hours(780), [lamp('day', { outlet: 'dial' })], { day: noon }),
      ],
    });
    const result = solved(care);
    expect(result.codes).toEqual(['day-placement-differs']);
    expect(dialOf(result, 'dial').settings).toEqual([]);
    expect(result.notPlanned).toHaveLength(2);
  });

  it('takes the tighter of the limits on light', () => {
    const day = (before: number, after: number) => ({
      anchor: { kind: 'midday', minute: 780 } as const,
      noLightBeforeMinute: before,
      noLightAfterMinute: after,
    });
    const care = shelfCare({
      devices: [pinDial('dial')],
      enclosures: [
        enclosure('fern', hours(780), [lamp('day', { outlet: 'dial' })], { day: day(420, 1200) }),
        enclosure('moss', hours(780), [lamp('day', { outlet: 'dial' })], { day: day(480, 1320) }),
      ],
    });
    const result = solved(care);
    expect(dialOf(result, 'dial').settings[0]?.windows).toEqual([{ on: '08:00', off: '20:00' }]);
    expect(result.codes).toEqual(['day-longer-than-allowed']);
  });
});

describe('a lamp with hours of its own', () => {
  const bask = (outlet: string) => lamp('bask', { kind: 'halogen', uses: ['basking'], outlet, thermostat: 'dimming' });

  it('follows the day on the dial of the daylight, with its own error and advice', () => {
    const care = shelfCare({
      devices: [pinDial('dial')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' }), bask('dial')], { basking: edges(30, 60) }),
      ],
    });
    const result = solved(care);
    const dial = dialOf(result, 'dial');
    expect(dial.worstErrorMinutes).toBe(0);
    expect(dial.lamps.map(({ worstErrorMinutes }) => worstErrorMinutes)).toEqual([0, 90]);
    expect(result.codes).toEqual(['inset-follows-day']);
  });

  it('has its edges on a dial of its own', () => {
    const care = shelfCare({
      devices: [pinDial('dial'), pinDial('bask-dial')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' }), bask('bask-dial')], { basking: edges(30, 60) }),
      ],
    });
    const result = solved(care);
    expect(dialOf(result, 'dial').settings[0]?.windows).toEqual([{ on: '07:00', off: '19:00' }]);
    expect(dialOf(result, 'bask-dial').settings[0]?.windows).toEqual([{ on: '07:30', off: '18:00' }]);
    expect(dialOf(result, 'bask-dial').worstErrorMinutes).toBe(0);
  });

  it('stands in the middle of the day where it has hours', () => {
    const care = shelfCare({
      devices: [pinDial('dial'), pinDial('bask-dial')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' }), bask('bask-dial')], {
          basking: { form: 'hours', minutes: 480 },
        }),
      ],
    });
    expect(dialOf(solved(care), 'bask-dial').settings[0]?.windows).toEqual([{ on: '09:00', off: '17:00' }]);
  });

  it('lies inside the day on every date, however short', () => {
    const care = shelfCare({
      devices: [pinDial('dial', { stepMinutes: 30 }), pinDial('bask-dial')],
      enclosures: [
        enclosure('fern', seasonal(540, 840), [lamp('day', { outlet: 'dial' }), bask('bask-dial')], {
          basking: edges(0, 10),
        }),
      ],
    });
    const result = solved(care);
    const [day, inset] = [dialOf(result, 'dial'), dialOf(result, 'bask-dial')];
    for (let date = care.plan.from; date < care.plan.from + 365; date++) {
      const [outer] = settingAt(day, isoDateOf(date)).windows;
      for (const { on, off } of settingAt(inset, isoDateOf(date)).windows) {
        expect(minuteOf(on)).toBeGreaterThanOrEqual(minuteOf(outer?.on ?? '24:00'));
        expect(minuteOf(off)).toBeLessThanOrEqual(minuteOf(outer?.off ?? '00:00'));
      }
    }
    expect(inset.settings.length).toBeGreaterThan(3);
  });

  it.each(['basking edges', 'spans'] as const)(
    'lies inside the day by the clock on the wall, its dial on another clock: %s',
    (form) => {
      const care = shelfCare({
        devices: [pinDial('dial'), pinDial('bask-dial', { clock: 'wall' })],
        enclosures: [
          enclosure('fern', seasonal(600, 840), [lamp('day', { outlet: 'dial' }), bask('bask-dial')], {
            basking: form === 'spans' ? SPANS : edges(15, 45),
          }),
        ],
      });
      const result = solved(care);
      const wallOn = (id: string, date: string) =>
        settingAt(dialOf(result, id), date).wall.find(({ from, to }) => from <= date && date <= to && from !== to)
          ?.windows ?? [];
      let checked = 0;
      for (let day = care.plan.from; day < care.plan.from + 365; day++) {
        const [outer] = wallOn('dial', isoDateOf(day));
        for (const { on, off } of outer ? wallOn('bask-dial', isoDateOf(day)) : []) {
          checked++;
          expect(minuteOf(on)).toBeGreaterThanOrEqual(minuteOf(outer?.on ?? '24:00'));
          expect(minuteOf(off)).toBeLessThanOrEqual(minuteOf(outer?.off ?? '00:00'));
        }
      }
      expect(checked).toBeGreaterThan(350);
      expect(result.codes).toContain('clocks-differ');
    },
  );

  it('moves its spans with the lights as set, on the same dates', () => {
    const care = shelfCare({
      plan: { changeOn: ['sat'] },
      devices: [pinDial('dial'), pinDial('uv-dial')],
      enclosures: [
        enclosure(
          'fern',
          seasonal(600, 840),
          [lamp('day', { outlet: 'dial' }), lamp('uv', { uses: ['uvb'], outlet: 'uv-dial' })],
          {
            uvb: { ...SPANS, fergusonZone: 3 },
          },
        ),
      ],
    });
    const result = solved(care);
    const [day, uv] = [dialOf(result, 'dial'), dialOf(result, 'uv-dial')];
    expect(uv.settings.map(({ from }) => from)).toEqual(day.settings.map(({ from }) => from));
    day.settings.forEach(({ windows }, index) => {
      const [outer] = windows;
      const [morning, evening] = uv.settings[index]?.windows ?? [];
      expect([morning?.on, evening?.off]).toEqual([outer?.on, outer?.off]);
      expect(uv.settings[index]?.slots).toHaveLength(8);
    });
    expect(uv.worstErrorMinutes).toBe(0);
  });

  it('whose spans differ from another lamp on the dial is refused', () => {
    const care = shelfCare({
      devices: [pinDial('dial'), pinDial('uv-dial')],
      enclosures: [
        enclosure(
          'fern',
          hours(720),
          [lamp('day', { outlet: 'dial' }), lamp('uv', { uses: ['uvb'], outlet: 'uv-dial' }), bask('uv-dial')],
          {
            uvb: { ...SPANS, fergusonZone: 3 },
            basking: edges(30, 30),
          },
        ),
      ],
    });
    const result = solved(care);
    expect(result.codes).toEqual(['spans-do-not-share']);
    expect(result.notPlanned.map(({ lamp: id }) => id)).toEqual(['fern/uv', 'fern/bask']);
  });

  it('longer than the day is said with the shortest day', () => {
    const care = shelfCare({
      devices: [pinDial('dial'), pinDial('bask-dial')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' }), bask('bask-dial')], {
          basking: { form: 'hours', minutes: 780 },
        }),
      ],
    });
    const result = solved(care);
    expect(result.codes).toEqual(['inset-longer-than-day']);
    expect(dialOf(result, 'bask-dial').settings[0]?.windows).toEqual([{ on: '07:00', off: '19:00' }]);
    expect(dialOf(result, 'bask-dial').worstErrorMinutes).toBe(60);
  });
});

describe('kinds of timers', () => {
  it('a 7-day dial shows the same window every weekday', () => {
    const care = shelfCare({
      devices: [pinDial('week', { stepMinutes: 120, turnsInDays: 7 })],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'week' })])],
    });
    const [setting] = dialOf(solved(care), 'week').settings;
    expect(setting?.windows.map(({ day, on, off }) => `${day} ${on} ${off}`)).toEqual(
      ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) => `${day} 08:00 20:00`),
    );
    expect(setting?.slots.slice(0, 7)).toEqual([4, 5, 6, 7, 8, 9, 16]);
    expect(setting?.slots).toHaveLength(42);
  });

  it('a programmable timer is set to the minute', () => {
    const care = shelfCare({
      devices: [programmableTimer('clock')],
      enclosures: [enclosure('fern', hours(723), [lamp('day', { outlet: 'clock' })])],
    });
    const dial = dialOf(solved(care), 'clock');
    expect([dial.stepMinutes, dial.pins, dial.worstErrorMinutes]).toEqual([1, null, 0]);
    expect(dial.settings[0]?.windows).toEqual([{ on: '06:59', off: '19:02' }]);
  });

  it('a programmable timer without lamps is no light dial, a pin dial without lamps has no setting', () => {
    const care = shelfCare({ devices: [programmableTimer('clock'), pinDial('dial')], enclosures: [] });
    expect(solved(care).lighting.map(({ device, settings }) => [device, settings.length])).toEqual([['dial', 0]]);
  });

  it('a day that passes midnight is written as two windows', () => {
    const late = {
      anchor: { kind: 'midday', minute: 1380 },
      noLightBeforeMinute: null,
      noLightAfterMinute: null,
    } as const;
    const care = shelfCare({
      devices: [pinDial('dial')],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' })], { day: late })],
    });
    const result = solved(care);
    expect(dialOf(result, 'dial').settings[0]?.windows).toEqual([
      { on: '00:00', off: '05:00' },
      { on: '17:00', off: '24:00' },
    ]);
    expect(dayWindows(care, result.lighting, 'fern').windows[0]).toEqual({ onMinute: 1020, offMinute: 1740 });
  });
});

describe('the day of an enclosure', () => {
  it('is the target of each month’s 15th about midday where no dial switches it', () => {
    const care = shelfCare({ devices: [], enclosures: [enclosure('fern', hours(700), [])] });
    const days = dayWindows(care, [], 'fern');
    expect([days.clock, days.device, days.windows.length]).toEqual(['standard', null, 365]);
    expect(days.windows[40]).toEqual({ onMinute: 430, offMinute: 1130 });
  });

  it('changes with the months only', () => {
    const care = shelfCare({ devices: [], enclosures: [enclosure('fern', seasonal(600, 840), [])] });
    const { windows } = dayWindows(care, [], 'fern');
    const changes = windows.flatMap((window, day) =>
      day > 0 && window !== windows[day - 1] ? [isoDateOf(care.plan.from + day)] : [],
    );
    expect(changes).toHaveLength(11);
    expect(changes.every((date) => date.endsWith('-01'))).toBe(true);
  });
});

describe('a re-plan', () => {
  const care = shelfCare({
    plan: { settingsAtMost: 5, changeOn: ['sat', 'sun'] },
    devices: [pinDial('dial')],
    enclosures: [enclosure('fern', seasonal(600, 840), [lamp('day', { outlet: 'dial' })])],
  });
  const log = new Log();
  const parts = new Parts(null);
  const first = solveLighting(care, null, care.plan.from, log, parts);
  const earlier = {
    made: '2027-01-01',
    previous: null,
    lighting: first.lighting,
    digests: parts.digests(),
  } as unknown as Plan;

  it('copies a dial whose digest stands, whatever the day', () => {
    const again = solved(care, earlier, epochDay('2027-06-10'));
    expect(again.lighting[0]).toBe(first.lighting[0]);
  });

  it('keeps the past, marks it, and goes on from the day', () => {
    const today = epochDay('2027-06-09');
    const longer = { ...care, enclosures: [enclosure('fern', seasonal(600, 900), [lamp('day', { outlet: 'dial' })])] };
    const dial = dialOf(solved(longer, earlier, today), 'dial');
    const past = dial.settings.filter(({ to }) => to < '2027-06-09');
    expect(past.length).toBeGreaterThan(1);
    const before = dialOf(first, 'dial').settings;
    past.forEach((setting, index) => {
      expect(setting.past).toBe(true);
      expect([setting.from, setting.windows]).toEqual([before[index]?.from, before[index]?.windows]);
    });
    expect(past.at(-1)?.to).toBe('2027-06-08');
    for (const { from, to, wall } of dial.settings) expect([wall[0]?.from, wall.at(-1)?.to]).toEqual([from, to]);
    expect(dial.settings.find(({ from }) => from === '2027-06-09')?.past).toBeUndefined();
    expect(dial.settings.length).toBeLessThanOrEqual(5);
  });

  it.each([
    ['is over', { from: '2027-01-01', days: 365 }, '2028-02-10', 365],
    ['was made shorter than what has passed', { from: '2027-01-01', days: 100 }, '2027-06-09', 100],
    ['goes on after a pause', { from: '2027-01-01', days: 600 }, '2028-02-10', 405],
    ['is told to have begun earlier', { from: '2026-12-01', days: 365 }, '2027-06-09', 190],
  ] as const)('leaves what stood where the plan %s', (_, span, today, pastDays) => {
    const other = {
      ...care,
      plan: { ...care.plan, from: epochDay(span.from), days: span.days },
      enclosures: [enclosure('fern', seasonal(600, 900), [lamp('day', { outlet: 'dial' })])],
    };
    const dial = dialOf(solved(other, earlier, epochDay(today)), 'dial');
    const before = dialOf(first, 'dial').settings;
    for (let day = 0; day < pastDays; day++) {
      const date = isoDateOf(epochDay(span.from) + day);
      const stood =
        before.find(({ from, to }) => from <= date && date <= to) ?? (date < '2027-01-01' ? before[0] : before.at(-1));
      expect(settingAt(dial, date).windows, date).toEqual(stood?.windows);
    }
    expect(dial.settings[0]?.from).toBe(span.from);
    expect(dial.settings.at(-1)?.to).toBe(isoDateOf(epochDay(span.from) + span.days - 1));
    for (const { from, to, wall } of dial.settings) expect([wall[0]?.from, wall.at(-1)?.to]).toEqual([from, to]);
  });

  it('sets another timer anew, whose steps do not hold what stood', () => {
    const coarse = {
      ...care,
      devices: [pinDial('dial', { stepMinutes: 60 })],
      plan: { ...care.plan, atLeastBetweenDays: 300 },
    };
    const dial = dialOf(solved(coarse, earlier, epochDay('2027-06-09')), 'dial');
    const coming = dial.settings.filter(({ past }) => !past);
    expect(coming[0]?.from).toBe('2027-06-09');
    for (const { windows } of coming)
      for (const { on, off } of windows) expect([on.slice(3), off.slice(3)]).toEqual(['00', '00']);
    for (const { slots } of dial.settings) expect(Math.max(...slots)).toBeLessThan(24);
  });

  it('leaves lamps on auto where they are until something changes from which they were placed', () => {
    const two = (moss: Inset | null) =>
      shelfCare({
        plan: { settingsAtMost: 5, changeOn: null },
        devices: [pinDial('one'), pinDial('two')],
        enclosures: [
          enclosure('fern', seasonal(600, 840), [lamp('day', { outlet: 'auto' })]),
          enclosure('moss', seasonal(660, 900), [
            lamp('day', { outlet: 'auto' }),
            ...(moss ? [lamp('uv', { outlet: 'auto', uses: ['uvb'] })] : []),
          ]),
        ],
      });
    const before = new Parts(null);
    const then = solveLighting(two(null), null, epochDay('2027-01-01'), new Log(), before);
    const swapped = (drives: readonly string[]) =>
      drives.map((name) => name.replace(/fern|moss/, (id) => (id === 'fern' ? 'moss' : 'fern')));
    const plan = {
      made: '2027-01-01',
      previous: null,
      lighting: then.lighting,
      notPlanned: [],
      hardware: [...then.drives].map(([id, drives]) => ({ id, drives: swapped(drives) })),
      digests: before.digests(),
    } as unknown as Plan;
    const kept = solved(two(null), plan, epochDay('2027-06-10'));
    expect(kept.drives.get('one')).toEqual(swapped(then.drives.get('one') ?? []));
    expect(kept.drives.get('one')).not.toEqual(then.drives.get('one'));
    const anew = solved(two(edges(0, 0)), plan, epochDay('2027-01-01'));
    expect(anew.drives.get('one')).toContain('lamp:fern/day');
  });

  it('starts the next plan from what stood on the dial', () => {
    const next = { ...care, plan: { ...care.plan, from: epochDay('2028-01-01'), atLeastBetweenDays: 90 } };
    const result = solved(next, earlier, next.plan.from);
    expect(result.codes).toContain('first-change-held-back');
    expect(dialOf(result, 'dial').settings[0]?.windows).toEqual(dialOf(first, 'dial').settings.at(-1)?.windows);
  });
});

describe('clocks', () => {
  it('that differ within an enclosure are said, wall and automatic being the same', () => {
    const shelf = (clock: 'wall' | 'automatic' | 'standard') =>
      shelfCare({
        devices: [
          pinDial('dial', { clock: 'wall' }),
          programmableTimer('clock', { clock }),
          mistPump('pump', { outlet: 'clock' }),
        ],
        enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'dial' })], {}, { mist: 'pump' })],
      });
    expect(solved(shelf('automatic')).codes).toEqual([]);
    expect(solved(shelf('standard')).codes).toEqual(['clocks-differ']);
  });
});
