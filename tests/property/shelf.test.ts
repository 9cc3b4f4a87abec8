import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf, weekdayOf } from '../../src/basics/calendar-day.ts';
import { minuteOf } from '../../src/basics/minute-of-day.ts';
import { Log } from '../../src/diagnostics/log.ts';
import type { Device, PinDial } from '../../src/hardware/devices.ts';
import type { DialPlan, DialSetting } from '../../src/plan/plan.ts';
import type { Care, CareEnclosure, Inset, Lamp } from '../../src/resolve/care.ts';
import { dayWindows } from '../../src/solve/light/day-windows.ts';
import { type LightingResult, solveLighting } from '../../src/solve/lighting.ts';
import { edges, enclosure, lamp, pinDial, programmableTimer, seasonal, shelfCare } from '../generated/shelf-care.ts';
import { tries } from '../tries.ts';

const DAYS = 120;

const device: fc.Arbitrary<(index: number) => Device> = fc
  .record({
    isDial: fc.boolean(),
    stepMinutes: fc.constantFrom(15, 30, 60),
    outlets: fc.integer({ min: 1, max: 4 }),
    ratingW: fc.constantFrom(null, 60, 200, 1800),
    turnsInDays: fc.constantFrom(1 as const, 1 as const, 7 as const),
    entries: fc.integer({ min: 1, max: 4 }),
  })
  .map(
    ({ isDial, stepMinutes, turnsInDays, entries, ...shared }) =>
      (index: number) =>
        isDial
          ? pinDial(`timer-${index}`, { ...shared, stepMinutes, turnsInDays })
          : programmableTimer(`timer-${index}`, { ...shared, entries }),
  );

const inset: fc.Arbitrary<Inset> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 }))
    .map(([after, before]) => edges(after, before)),
  fc.integer({ min: 30, max: 900 }).map((minutes) => ({ form: 'hours' as const, minutes })),
  fc.constant<Inset>({
    form: 'spans',
    spans: [
      { at: { of: 'after_lights_on', minutes: 15 }, forMinutes: 60 },
      { at: { of: 'before_lights_off', minutes: 60 }, forMinutes: 45 },
    ],
  }),
);

const anyLamp: fc.Arbitrary<(index: number, timers: number) => Lamp> = fc
  .record({
    uses: fc.constantFrom<Lamp['uses']>(
      ['daylight'],
      ['plants'],
      ['basking'],
      ['uvb'],
      ['daylight', 'basking', 'uvb'],
      ['heat'],
    ),
    kind: fc.constantFrom<Lamp['kind']>('led', 'halogen', 'mercury', 'fluorescent', 'ceramic'),
    powerW: fc.integer({ min: 5, max: 90 }),
    thermostat: fc.constantFrom<Lamp['thermostat']>('none', 'none', 'on-off', 'dimming'),
    outlet: fc.integer({ min: -3, max: 3 }),
  })
  .map(
    ({ outlet, ...rest }) =>
      (index: number, timers: number) =>
        lamp(`lamp-${index}`, {
          ...rest,
          outlet: outlet < 0 ? 'auto' : outlet === 0 ? 'always' : `timer-${outlet % timers}`,
        }),
  );

const anyEnclosure = fc
  .record({
    shortest: fc.integer({ min: 0, max: 700 }),
    longest: fc.integer({ min: 700, max: 1440 }),
    midday: fc.constantFrom(780, 780, 720, 1320),
    noLight: fc.constantFrom<readonly [number | null, number | null]>([null, null], [420, 1260]),
    lamps: fc.array(anyLamp, { minLength: 1, maxLength: 3 }),
    basking: inset,
    uvb: inset,
  })
  .map(
    ({ shortest, longest, midday, noLight, lamps, basking, uvb }) =>
      (index: number, timers: number): CareEnclosure =>
        enclosure(
          `e${index}`,
          seasonal(shortest, longest),
          lamps.map((make, at) => make(at, timers)),
          {
            basking,
            uvb: { ...uvb, fergusonZone: 3 },
            day: {
              anchor: { kind: 'midday', minute: midday },
              noLightBeforeMinute: noLight[0],
              noLightAfterMinute: noLight[1],
            },
          },
        ),
  );

const shelf: fc.Arbitrary<Care> = fc
  .record({
    devices: fc.array(device, { minLength: 1, maxLength: 3 }),
    enclosures: fc.array(anyEnclosure, { minLength: 1, maxLength: 3 }),
    settingsAtMost: fc.constantFrom(null, 1, 3),
    toleranceMinutes: fc.constantFrom(null, null, 20),
    changeOn: fc.constantFrom(null, ['sat' as const, 'sun' as const]),
    atLeastBetweenDays: fc.constantFrom(1, 14),
  })
  .map(({ devices, enclosures, ...plan }) =>
    shelfCare({
      plan: { ...plan, days: DAYS },
      devices: devices.map((make, index) => make(index)),
      enclosures: enclosures.map((make, index) => make(index, devices.length)),
    }),
  );

function lampIds(care: Care): readonly string[] {
  return care.enclosures.flatMap((each) => each.lamps.map((one) => `${each.id}/${one.id}`));
}

function plannedIds({ lighting }: LightingResult): readonly string[] {
  return lighting.flatMap(({ lamps }) => lamps.map((each) => `${each.enclosure}/${each.lamp}`));
}

function isOnInWindows({ windows }: DialSetting, slot: number, { stepMinutes }: DialPlan): boolean {
  const minute = (slot * stepMinutes) % 1440;
  const day = Math.floor((slot * stepMinutes) / 1440);
  const weekday = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'][day];
  return windows.some(
    (each) => (each.day ?? weekday) === weekday && minuteOf(each.on) <= minute && minute < minuteOf(each.off),
  );
}

function checkSettings(care: Care, dial: DialPlan): void {
  const { settings } = dial;
  expect(settings[0]?.from).toBe(isoDateOf(care.plan.from));
  expect(settings.at(-1)?.to).toBe(isoDateOf(care.plan.from + DAYS - 1));
  for (const [index, setting] of settings.entries()) {
    const slots = Array.from({ length: (1440 * dial.turnsInDays) / dial.stepMinutes }, (_, slot) => slot);
    expect(setting.slots).toEqual(slots.filter((slot) => isOnInWindows(setting, slot, dial)));
    const before = settings[index - 1];
    if (before)
      expect([epochDay(setting.from), before.slots.join()]).not.toEqual([epochDay(before.to), setting.slots.join()]);
    if (before) expect(epochDay(setting.from)).toBe(epochDay(before.to) + 1);
    if (before && care.plan.changeOn && !followsSpans(care, dial))
      expect(care.plan.changeOn).toContain(weekdayOf(epochDay(setting.from)));
  }
}

function followsSpans(care: Care, dial: DialPlan): boolean {
  return dial.lamps.some(({ enclosure: id, uses }) => {
    const targets = care.enclosures.find((each) => each.id === id)?.targets;
    return (uses.includes('uvb') ? targets?.uvb?.form : targets?.basking?.form) === 'spans';
  });
}

/** Whether [on, off) lies inside a day window, in any turn of the day. */
function liesInside(
  on: number,
  off: number,
  outer: { readonly onMinute: number; readonly offMinute: number },
): boolean {
  return (
    [-1440, 0, 1440].some((turn) => outer.onMinute <= on + turn && off + turn <= outer.offMinute) ||
    outer.offMinute - outer.onMinute >= 1440
  );
}

function checkInsets(care: Care, result: LightingResult): void {
  for (const dial of result.lighting) {
    const aiming = dial.lamps.filter(({ uses }) => uses.some((use) => use !== 'heat'));
    if (aiming.length === 0 || aiming.some(({ uses }) => uses.includes('daylight') || uses.includes('plants')))
      continue;
    for (const id of new Set(aiming.map(({ enclosure: each }) => each))) {
      const days = dayWindows(care, result.lighting, id);
      for (const setting of dial.settings)
        for (const { on, off } of setting.windows)
          for (let day = epochDay(setting.from); day <= epochDay(setting.to); day++)
            expect(
              liesInside(
                minuteOf(on),
                minuteOf(off),
                days.windows[day - care.plan.from] ?? { onMinute: 0, offMinute: 0 },
              ),
              `${id} ${isoDateOf(day)}`,
            ).toBe(true);
    }
  }
}

describe('any shelf', () => {
  it('is planned or refused lamp by lamp, within outlets, watts, days and change dates', () => {
    fc.assert(
      fc.property(shelf, (care) => {
        const result = solveLighting(care, null, care.plan.from, new Log());
        const planned = plannedIds(result);
        const left = result.notPlanned.map(({ lamp: id }) => id);
        const live = lampIds(care).filter(
          (_, index) => care.enclosures.flatMap(({ lamps }) => lamps)[index]?.outlet === 'always',
        );
        const told = [...planned, ...left, ...live.filter((id) => !left.includes(id))];
        expect([...told].sort()).toEqual([...lampIds(care)].sort());

        for (const dial of result.lighting) {
          const timer = care.devices.find(({ id }) => id === dial.device) as PinDial;
          if (dial.settings.length > 0) {
            checkSettings(care, dial);
            expect(dial.drives.length).toBeLessThanOrEqual(timer.outlets);
            const watts = dial.lamps.reduce((sum, { powerW }) => sum + powerW, 0);
            expect(watts).toBeLessThanOrEqual(timer.ratingW ?? Number.POSITIVE_INFINITY);
          }
        }
        checkInsets(care, result);
        expect(solveLighting(care, null, care.plan.from, new Log()).lighting).toEqual(result.lighting);
      }),
      { numRuns: Number(process.env.DEWDIAL_RUNS ?? tries(30, 300)), seed: 27 },
    );
  });
});
