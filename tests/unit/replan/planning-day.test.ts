import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../../src/basics/calendar-day.ts';
import type { Today } from '../../../src/basics/today.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { foreignWords } from '../../../src/replan/foreign-plan.ts';
import { planningDay } from '../../../src/replan/planning-day.ts';

const STANDS = { made: '2027-06-01', from: '2027-01-01' } as Plan;

function dayOf(today: Today, earlier: Plan | null): readonly [string, number] {
  const log = new Log();
  const day = planningDay('Europe/Madrid', today, earlier, log);
  return [isoDateOf(day), log.sorted().length];
}

const clock = (date: string): Today => ({ nowMs: epochDay(date) * 86_400_000 + 12 * 3_600_000 });

describe('the day from which is planned', () => {
  it('is today, by the clock or as it is named', () => {
    expect(dayOf(clock('2027-07-04'), STANDS)).toEqual(['2027-07-04', 0]);
    expect(dayOf({ date: '2027-06-01' }, STANDS)).toEqual(['2027-06-01', 0]);
    expect(dayOf(clock('2020-01-01'), null)).toEqual(['2020-01-01', 0]);
  });

  it('is that of the plan that stands where the clock has been set back, which is said', () => {
    expect(dayOf(clock('1970-01-01'), STANDS)).toEqual(['2027-06-01', 1]);
  });

  it('is an earlier one where somebody names it, which is said', () => {
    expect(dayOf({ date: '2027-03-01' }, STANDS)).toEqual(['2027-03-01', 1]);
  });

  it('tells nothing of the clock where the plan was made before it begins', () => {
    expect(dayOf(clock('2026-12-20'), { made: '2027-01-01', from: '2027-01-01' } as Plan)).toEqual(['2026-12-20', 0]);
  });
});

describe('a plan of another household', () => {
  const plan = { id: 'reading-room', name: 'Reading room', enclosures: [{ id: 'fern' }] } as unknown as Plan;
  const made = { ...plan, id: '0123456789abcdef0123456789abcdef' };
  const care = (id: string | null, name: string, enclosure: string) =>
    ({ id, name, enclosures: [{ id: enclosure }] }) as unknown as Parameters<typeof foreignWords>[1];

  it('is known by its id', () => {
    expect(foreignWords(plan, care('reading-room', 'Anything', 'other'))).toBeNull();
    expect(foreignWords(plan, care('back-room', 'Reading room', 'fern'))).toBe(
      'is the plan of another household: its id is reading-room, and the file says back-room',
    );
  });

  it('is its own where the file names an id for the first time, or no longer', () => {
    expect(foreignWords(made, care('reading-room', 'Reading room', 'fern'))).toBeNull();
    expect(foreignWords(plan, care(null, 'Reading room', 'other'))).toBeNull();
  });

  it('without ids is another’s where neither its name nor an enclosure is the same', () => {
    expect(foreignWords(made, care(null, 'Another name', 'fern'))).toBeNull();
    expect(foreignWords(made, care(null, 'Reading room', 'moss'))).toBeNull();
    expect(foreignWords(made, care(null, 'Another name', 'moss'))).toContain('Reading room');
  });
});
