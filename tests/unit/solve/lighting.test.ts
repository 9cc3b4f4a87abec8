import { describe, expect, it } from 'vitest';
import { dayWindows } from '../../../src/solve/light/day-windows.ts';
import { enclosure, hours, lamp, mistPump, pinDial, programmableTimer, shelfCare } from '../../generated/shelf-care.ts';
import { dialOf, solved } from '../../generated/solved-shelf.ts';

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
