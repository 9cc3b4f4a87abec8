import { describe, expect, it } from 'vitest';
import { isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { minuteOf } from '../../../../src/basics/minute-of-day.ts';
import type { Inset } from '../../../../src/resolve/care.ts';
import { edges, enclosure, hours, lamp, pinDial, seasonal, shelfCare } from '../../../generated/shelf-care.ts';
import { dialOf, settingAt, solved } from '../../../generated/solved-shelf.ts';

const SPANS: Inset = {
  form: 'spans',
  spans: [
    { at: { of: 'after_lights_on', minutes: 0 }, forMinutes: 60 },
    { at: { of: 'before_lights_off', minutes: 60 }, forMinutes: 60 },
  ],
};

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
