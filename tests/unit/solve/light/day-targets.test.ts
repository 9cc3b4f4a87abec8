import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import { Log } from '../../../../src/diagnostics/log.ts';
import type { AnimalState } from '../../../../src/resolve/care.ts';
import { dayTargetsOf } from '../../../../src/solve/light/day-targets.ts';
import { enclosure, seasonal, shelfCare } from '../../../generated/shelf-care.ts';

function targetsWith(states: readonly AnimalState[]) {
  const log = new Log();
  const care = shelfCare({ devices: [], enclosures: [enclosure('fern', seasonal(600, 840), [], {}, { states })] });
  const targets = dayTargetsOf(care, log).get('fern') ?? new Int32Array(0);
  const on = (date: string): number => targets[epochDay(date) - care.plan.from] ?? Number.NaN;
  return { on, codes: log.sorted().map(({ code }) => code) };
}

function state(is: AnimalState['is'], from: string, to: string): AnimalState {
  return { is, path: [], from: epochDay(from), to: epochDay(to), vet: null };
}

const free = targetsWith([]);

describe('the target day', () => {
  it.each(['quarantine', 'ill'] as const)('stands still while the animal is %s, and goes on afterwards', (is) => {
    const held = targetsWith([state(is, '2027-03-01', '2027-04-30')]);
    expect(held.on('2027-02-28')).toBe(free.on('2027-02-28'));
    expect(new Set(['2027-03-01', '2027-03-31', '2027-04-30'].map(held.on))).toEqual(new Set([free.on('2027-03-01')]));
    expect(held.on('2027-05-01')).toBe(free.on('2027-05-01'));
    expect(held.codes).toEqual(['season-held']);
  });

  it('keeps the day of a span that began before the plan', () => {
    const held = targetsWith([state('quarantine', '2026-12-01', '2027-02-15')]);
    expect(held.on('2027-01-01')).toBe(held.on('2027-02-15'));
    expect(held.on('2027-02-15')).toBeGreaterThan(6000);
    expect(held.on('2027-02-15')).not.toBe(free.on('2027-01-01'));
  });

  it.each(['new', 'gravid', 'shedding'] as const)('follows the season while the animal is %s', (is) => {
    const { on, codes } = targetsWith([state(is, '2027-03-01', '2027-04-30')]);
    expect(on('2027-04-15')).toBe(free.on('2027-04-15'));
    expect(codes).toEqual([]);
  });
});
