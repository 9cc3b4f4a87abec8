import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../../src/basics/calendar-day.ts';
import { Log } from '../../../../src/diagnostics/log.ts';
import { Parts } from '../../../../src/plan/parts.ts';
import type { Plan } from '../../../../src/plan/plan.ts';
import type { Inset } from '../../../../src/resolve/care.ts';
import { solveLighting } from '../../../../src/solve/lighting.ts';
import { edges, enclosure, lamp, pinDial, seasonal, shelfCare } from '../../../generated/shelf-care.ts';
import { dialOf, settingAt, solved } from '../../../generated/solved-shelf.ts';

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
