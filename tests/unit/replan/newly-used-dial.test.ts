import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dayView } from '../../../src/plan/day-view.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';

const TEXT = readFileSync(new URL('../../golden/replanned.yaml', import.meta.url), 'utf8');

const planOf = (text: string, today: string, earlier: Plan | null): Plan =>
  planIn(compiledHousehold(text, { today, earlier }));

const choreDates = ({ chores }: Plan, id: string) => chores.find((chore) => chore.id === id)?.dates;
const tasks = ({ events }: Plan, device: string) =>
  events.filter(({ task, status }) => task === `dial/${device}` && status === 'CONFIRMED');

describe('a dial that comes into use when the household is planned anew', () => {
  const moved = TEXT.replace('power: 10 W, outlet: lower', 'power: 10 W, outlet: spare');
  const before = planOf(TEXT, '2027-01-01', null);
  const plan = planOf(moved, '2027-01-20', before);

  it('is set on that day, by chore, calendar and day', () => {
    expect(choreDates(plan, 'spare/re-pin')).toEqual(['2027-01-20', '2027-03-21', '2027-09-25']);
    expect(choreDates(plan, 'change-sheet')).toContain('2027-01-20');
    expect(tasks(plan, 'spare').map(({ start, title }) => [start, title.slice(0, 19)])).toEqual([
      ['2027-01-20', 'spare: push 22 pins'],
      ['2027-03-21', 'spare: push 2 pins '],
      ['2027-09-25', 'spare: lift 2 pins '],
    ]);
    expect(dayView(plan, '2027-01-20', null).lights.find(({ device }) => device === 'spare')?.changesToday).toBe(true);
  });

  it('keeps that day in later revisions, whether copied or solved anew', () => {
    expect(planOf(moved, '2027-02-10', plan)).toBe(plan);
    const later = planOf(
      moved.replace('midday: "13:00" } }\n    chores', 'midday: "12:00" } }\n    chores'),
      '2027-02-10',
      plan,
    );
    expect(later.lighting.find(({ device }) => device === 'spare')?.setOn).toBe('2027-01-20');
    expect(choreDates(later, 'spare/re-pin')?.slice(0, 2)).toEqual(['2027-01-20', '2027-02-10']);
  });

  it('is set from scratch where one of other pins takes its place, though it shows the same hours', () => {
    const turned = planOf(
      TEXT.replace('outlets: 2, rating: 1800 W }', 'outlets: 2, rating: 1800 W, pins: up-is-on }'),
      '2027-01-20',
      before,
    );
    expect(choreDates(turned, 'upper/re-pin')?.slice(0, 2)).toEqual(['2027-01-01', '2027-01-20']);
    expect(tasks(turned, 'upper')[0]).toMatchObject({
      start: '2027-01-20',
      title: expect.stringContaining('push all others'),
    });
  });

  it('is set on the first day where it stood there from the beginning', () => {
    expect(choreDates(before, 'upper/re-pin')?.[0]).toBe('2027-01-01');
    expect(before.lighting.every(({ setOn }) => setOn === undefined)).toBe(true);
  });
});
