import { describe, expect, it } from 'vitest';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { Care } from '../../../../src/resolve/care.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
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
} from '../../../generated/shelf-care.ts';

function placed(care: Care) {
  const log = new Log();
  const { drives, notPlanned, lighting, auto } = solveLighting(care, null, care.plan.from, log);
  const on = [...drives].map(([timer, names]) => [
    timer,
    names.filter((name) => name.startsWith('lamp:')).map((name) => name.slice(5)),
  ]);
  const said = log.sorted().filter(({ code }) => code === 'no-dial-for-lamp' || code === 'assignment-not-proven');
  return { on: Object.fromEntries(on) as Record<string, string[]>, notPlanned, lighting, said, auto };
}

const noon = { anchor: { kind: 'midday', minute: 720 }, noLightBeforeMinute: null, noLightAfterMinute: null } as const;

describe('lamps on auto', () => {
  it('hang with their like', () => {
    const care = shelfCare({
      devices: [pinDial('a', { outlets: 2 }), pinDial('b', { outlets: 2 })],
      enclosures: [600, 840, 610, 830].map((minutes, index) => enclosure(`e${index}`, hours(minutes), [lamp('day')])),
    });
    expect(placed(care).on).toEqual({ a: ['e0/day', 'e2/day'], b: ['e1/day', 'e3/day'] });
  });

  it('take the fewest timers where nothing else parts them, the first in the file', () => {
    const care = shelfCare({
      devices: [pinDial('a'), pinDial('b')],
      enclosures: [enclosure('fern', hours(720), [lamp('day'), lamp('grow', { uses: ['plants'] })])],
    });
    expect(placed(care).on).toEqual({ a: ['fern/day', 'fern/grow'], b: [] });
  });

  it('take fewer timers before earlier ones', () => {
    const care = shelfCare({
      devices: [pinDial('a', { outlets: 1 }), pinDial('b', { outlets: 2 })],
      enclosures: [enclosure('fern', hours(720), [lamp('day'), lamp('grow', { uses: ['plants'] })])],
    });
    expect(placed(care).on).toEqual({ a: [], b: ['fern/day', 'fern/grow'] });
  });

  it('have a part of the day on a dial of their own where one is free', () => {
    const care = shelfCare({
      devices: [pinDial('a'), pinDial('b')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('bask', { uses: ['basking'], kind: 'halogen' }), lamp('day')], {
          basking: edges(60, 60),
        }),
      ],
    });
    expect(placed(care).on).toEqual({ a: ['fern/bask'], b: ['fern/day'] });
  });

  it('never share a dial between enclosures whose day hangs on different times', () => {
    const care = shelfCare({
      devices: [pinDial('a'), pinDial('b')],
      enclosures: [
        enclosure('fern', hours(720), [lamp('day')]),
        enclosure('moss', hours(720), [lamp('day')], { day: noon }),
      ],
    });
    expect(placed(care).on).toEqual({ a: ['fern/day'], b: ['moss/day'] });
  });

  it('whose light comes in spans hang on a timer that has an entry for each, and on none with fewer', () => {
    const spans = [0, 120, 240].map((minutes) => ({
      at: { of: 'after_lights_on' as const, minutes },
      forMinutes: 60,
    }));
    const shelf = (entries: number) =>
      placed(
        shelfCare({
          devices: [pinDial('a', { outlets: 1 }), programmableTimer('clock', { entries })],
          enclosures: [
            enclosure('fern', hours(720), [lamp('day'), lamp('uv', { uses: ['uvb'] })], {
              uvb: { form: 'spans', spans, fergusonZone: 3 },
            }),
          ],
        }),
      );
    expect(shelf(3)).toMatchObject({ on: { a: ['fern/day'], clock: ['fern/uv'] }, notPlanned: [] });
    expect(shelf(2).on.clock).not.toContain('fern/uv');
  });

  it('keep within the watts of each timer', () => {
    const care = shelfCare({
      devices: [pinDial('a', { ratingW: 100 }), pinDial('b', { ratingW: 60 })],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { powerW: 60 }), lamp('grow', { powerW: 60 })])],
    });
    expect(placed(care).on).toEqual({ a: ['fern/day'], b: ['fern/grow'] });
  });

  it('stay off a dial that runs other hardware alone, and join one that lights already', () => {
    const fogger = (outlet: string) => mistPump('fogger', { kind: 'fogger', outlet });
    const alone = shelfCare({
      devices: [pinDial('a'), pinDial('b'), fogger('a')],
      enclosures: [enclosure('fern', hours(720), [lamp('day')])],
    });
    expect(placed(alone).on).toEqual({ a: [], b: ['fern/day'] });
    const beside = shelfCare({
      devices: [pinDial('a'), fogger('a')],
      enclosures: [enclosure('fern', hours(720), [lamp('day', { outlet: 'a' }), lamp('grow')])],
    });
    expect(placed(beside).on).toEqual({ a: ['fern/day', 'fern/grow'] });
  });

  it('may take a programmable timer, which comes nearer', () => {
    const care = shelfCare({
      devices: [pinDial('a', { stepMinutes: 30 }), programmableTimer('clock')],
      enclosures: [enclosure('fern', hours(707), [lamp('day')])],
    });
    expect(placed(care).on).toEqual({ a: [], clock: ['fern/day'] });
  });

  it('that find no outlet are named, with the nearest arrangement that works', () => {
    const care = shelfCare({
      devices: [pinDial('a', { outlets: 1 })],
      enclosures: [enclosure('fern', hours(720), [lamp('day'), lamp('grow', { powerW: 30 })])],
    });
    const { on, notPlanned, said } = placed(care);
    expect(on).toEqual({ a: ['fern/day'] });
    expect(notPlanned.map(({ lamp: id }) => id)).toEqual(['fern/grow']);
    expect(said.map(({ because, instead }) => [because, instead])).toEqual([
      [
        'auto finds no timer for fern/grow: 2 lamps want an outlet and 1 is free',
        'nearest that works: fern/day on a; for the rest another dial with 1 timed outlet, rated 30 W or more',
      ],
    ]);
  });

  it.each([
    ['no timer at all', [], 'no dial or timer may drive lamps'],
    [
      'a lamp too strong',
      [pinDial('a', { ratingW: 15 })],
      'fern/day draws 20 W and no timer has more than 15 W to spare',
    ],
  ] as const)('say why: %s', (_, devices, why) => {
    const care = shelfCare({ devices, enclosures: [enclosure('fern', hours(720), [lamp('day')])] });
    expect(placed(care).said[0]?.because).toBe(`auto finds no timer for fern/day: ${why}`);
  });

  it('are all placed on a shelf too large to search, and it is said', () => {
    const care = shelfCare({
      plan: { days: 60, settingsAtMost: 1 },
      devices: Array.from({ length: 12 }, (_, index) => pinDial(`dial-${index}`, { stepMinutes: index % 2 ? 15 : 30 })),
      enclosures: Array.from({ length: 20 }, (_, index) =>
        enclosure(
          `e${index}`,
          seasonal(600 + 9 * index, 720 + 7 * ((index * 7) % 20)),
          [lamp('day'), lamp('bask', { uses: ['basking'], kind: 'halogen' })],
          {
            basking: edges(30 + 3 * index, 60),
          },
        ),
      ),
    });
    const { notPlanned, said, lighting, auto } = placed(care);
    expect(notPlanned).toEqual([]);
    expect(said.map(({ because }) => because)).toEqual([
      'auto places 40 lamps on 12 timers with the least worst error there is, 39.9 min; their errors add up to 248 min a day, and an arrangement with less may be left, but none is under 98 min',
    ]);
    expect(auto[0]).toMatchObject({ kind: 'lamps', isProven: false });
    expect(auto[0]?.placed).toHaveLength(40);
    const worst = Math.max(...lighting.flatMap(({ lamps }) => lamps.map(({ worstErrorMinutes }) => worstErrorMinutes)));
    expect(worst).toBe(auto[0]?.levels[0]?.value);
  });
});
