import { describe, expect, it } from 'vitest';
import { epochDay, weekdayOf } from '../../../../src/basics/calendar-day.ts';
import type { Chore, Plan } from '../../../../src/plan/plan.ts';
import { barePlan } from '../../../generated/bare-plan.ts';
import { householdText, solvedChores } from '../../../generated/chore-household.ts';

const OWN = (more: string) => `    chores: [{ id: own, title: Own chore, minutes: 5, ${more} }]`;

function planOf(text: string, chores: readonly Chore[], made = '2027-01-01'): Plan {
  const { care } = solvedChores(text);
  const people = care.people.map(({ id }) => ({ id, feedsAt: [], reminderMinutes: null, minutesADay: null }));
  return { ...barePlan(care, { feeding: [], rotation: [], stock: [] }, made), chores, people };
}

describe('a chore of the file', () => {
  it('stands on its grid, drawn to the preferred weekday, with what was moved listed', () => {
    const { chore } = solvedChores(householdText({ enclosure: OWN('every: 1 week') }));
    const own = chore('sand/own');
    const beforeTheEnd = own.dates.slice(0, -1);
    expect(beforeTheEnd.every((date) => weekdayOf(epochDay(date)) === 'sat')).toBe(true);
    expect(own.dates.slice(0, 3)).toEqual(['2027-01-02', '2027-01-09', '2027-01-16']);
    expect(own.moved[0]).toEqual({ due: '2027-01-01', on: '2027-01-02' });
    expect([own.kind, own.who, own.minutes, own.source]).toEqual(['chore', 'keeper', 5, 'household']);
  });

  it('lies at most interval and leeway apart, even where the preferred weekday would draw it farther', () => {
    const { chore } = solvedChores(householdText({ enclosure: OWN('every: 10 days, leeway: 3 days') }));
    const days = chore('sand/own').dates.map(epochDay);
    const gaps = days.slice(1).map((day, index) => day - (days[index] ?? day));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(13);
    expect(gaps).toContain(7);
  });

  it('with no leeway stays where it is', () => {
    const { chore } = solvedChores(householdText({ enclosure: OWN('every: 1 week, leeway: 0 days') }));
    expect(chore('sand/own').moved).toEqual([]);
  });

  it('on dates stands on them, and outside the plan nowhere', () => {
    const { chore, said } = solvedChores(householdText({ enclosure: OWN('on: [2027-02-03, 2028-02-03]') }));
    expect(chore('sand/own').dates).toEqual(['2027-02-03']);
    const nowhere = solvedChores(householdText({ enclosure: OWN('on: [2028-02-03]') }));
    expect(nowhere.chores.some(({ id }) => id === 'sand/own')).toBe(false);
    expect(said.map(({ code }) => code)).not.toContain('chore-never-due');
    expect(nowhere.said.map(({ code }) => code)).toContain('chore-never-due');
  });

  it('by hours of lamp running is due by the lamp that runs longest', () => {
    const lamps = [
      '      - { id: day, kind: led, for: [daylight], power: 10 W, outlet: dial }',
      '      - { id: mat, kind: mat, for: [heat], power: 10 W, outlet: always, thermostat: on-off }',
    ].join('\n');
    const { chore } = solvedChores(householdText({ lamps, enclosure: OWN('lamp_hours: 240') }));
    expect(chore('sand/own').dates.slice(0, 2)).toEqual(['2027-01-10', '2027-01-20']);
  });

  it('takes the place of the default of the same id', () => {
    const { chores } = solvedChores(
      householdText({ enclosure: '    chores: [{ id: deep-clean, title: My clean, every: 6 weeks, minutes: 50 }]' }),
    );
    expect(chores.filter(({ id }) => id === 'sand/deep-clean').map(({ title }) => title)).toEqual(['My clean']);
  });
});

describe('the default set', () => {
  const { chores } = solvedChores(householdText({ plan: 'days: 365' }));

  it('is there unless it is switched off', () => {
    const ids = chores.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining(['sand/temperatures', 'sand/spot-clean', 'sand/salt-test', 'sand/vet-check']),
    );
    const without = solvedChores(
      householdText({ enclosure: '    defaults: { salt-test: off, timers: off, dish: off }' }),
    );
    const left = without.chores.map(({ id }) => id);
    for (const id of ['sand/salt-test', 'timers', 'sand/dish']) {
      expect(ids).toContain(id);
      expect(left).not.toContain(id);
    }
  });

  it('names who says so, and a misspelt switch', () => {
    expect(chores.find(({ id }) => id === 'sand/temperatures')?.source).toContain('RSPCA');
    expect(chores.find(({ id }) => id === 'sand/thermometer')?.source).toBe('practice');
    const { said } = solvedChores(householdText({ enclosure: '    defaults: { salt-tests: off }' }));
    expect(said.find(({ code }) => code === 'default-chore-unknown')?.instead).toContain('salt-test');
  });

  it('does not begin all at once', () => {
    const firsts = chores.filter(({ kind }) => ['salt-test', 'thermometer', 'vet-check', 'deep-clean'].includes(kind));
    expect(firsts.length).toBe(4);
    expect(new Set(firsts.map(({ dates }) => dates[0])).size).toBe(4);
  });

  it('speaks Spanish in a Spanish household', () => {
    const es = solvedChores(householdText({ more: 'language: es' }));
    expect(es.chore('sand/dish').title).toBe('Lavar el plato, agua fresca');
  });
});

describe('a person', () => {
  it('who is asked for more than they have is said, with the fullest day', () => {
    const people = '{ id: keeper, feeds_at: "19:30", chores_on: sat, minutes_a_day: 12 }';
    const { said } = solvedChores(householdText({ people }));
    const full = said.find(({ code }) => code === 'day-too-full');
    expect(full?.because).toContain('keeper has 12 min a day');
    expect(full?.place?.line).toBe(5);
  });

  it('may be another than the keeper', () => {
    const { chore } = solvedChores(householdText({ enclosure: OWN('every: 1 week, who: sitter') }));
    expect(chore('sand/own').who).toBe('sitter');
  });
});

describe('an absence', () => {
  const away = '{ from: 2027-02-01, to: 2027-02-10, sitter: sitter, visits: every 2 days }';

  it('gives the sitter what is due on the visits, in entries of their own', () => {
    const { chore } = solvedChores(householdText({ away }));
    expect(chore('sand/dish/sitter').dates).toEqual([
      '2027-02-01',
      '2027-02-03',
      '2027-02-05',
      '2027-02-07',
      '2027-02-09',
    ]);
    expect(chore('sand/dish').dates.some((date) => date >= '2027-02-01' && date <= '2027-02-10')).toBe(false);
  });

  it('brings a list of what is done before leaving', () => {
    const { chores } = solvedChores(householdText({ away }));
    const leaving = chores.filter(({ kind }) => kind === 'leaving').map(({ id, dates }) => [id, dates[0]]);
    expect(leaving).toEqual([
      ['leaving/nothing-new', '2027-01-18'],
      ['leaving/live-on-plan', '2027-01-25'],
      ['leaving/tank', '2027-01-31'],
      ['leaving/stock', '2027-01-31'],
      ['leaving/weights', '2027-01-31'],
      ['leaving/numbers', '2027-01-31'],
    ]);
  });

  it('with nobody coming names the water first', () => {
    const { said } = solvedChores(householdText({ away: '{ from: 2027-02-01, to: 2027-02-10 }' }));
    const water = said.find(({ code }) => code === 'water-unattended');
    expect(water?.because).toContain('sand/dish 10 times');
    expect(water?.instead).toContain('2027-02-01');
  });
});

describe('a later plan', () => {
  const text = householdText({ enclosure: OWN('every: 10 days') });
  const first = solvedChores(text);

  it('keeps what is past and goes on with the grid', () => {
    const again = solvedChores(text, { earlier: planOf(text, first.chores), today: '2027-02-15' });
    expect(again.chores).toEqual(first.chores);
  });

  it('goes on from the last date done where the interval changes', () => {
    const longer = householdText({ enclosure: OWN('every: 21 days') });
    const { chore } = solvedChores(longer, { earlier: planOf(text, first.chores), today: '2027-02-15' });
    const own = chore('sand/own');
    const past = first.chore('sand/own').dates.filter((date) => date < '2027-02-15');
    expect(own.dates.slice(0, past.length)).toEqual(past);
    const next = epochDay(own.dates[past.length] ?? '');
    expect(next - epochDay(past.at(-1) ?? '')).toBeLessThanOrEqual(21 + 3);
    expect(next - epochDay(past.at(-1) ?? '')).toBeGreaterThanOrEqual(21 - 2 * 3);
  });

  it('keeps what anybody did who is no longer in the file', () => {
    const renamed = text.replace('{ id: keeper,', '{ id: carer,');
    const second = solvedChores(renamed, { earlier: planOf(text, first.chores), today: '2027-02-15' });
    const third = solvedChores(text, { earlier: planOf(renamed, second.chores, '2027-02-15'), today: '2027-03-15' });
    const done = (chores: readonly Chore[]) =>
      chores
        .filter(({ id }) => id === 'sand/own' || id.startsWith('sand/own/'))
        .flatMap(({ dates, who }) => dates.map((date) => `${date} ${who}`))
        .filter((date) => date < '2027-02-15')
        .sort();
    expect(done(first.chores).length).toBeGreaterThan(3);
    expect(done(second.chores)).toEqual(done(first.chores));
    expect(done(third.chores)).toEqual(done(first.chores));
  });

  it('begins a new chore on its own day', () => {
    const bare = householdText();
    const before = solvedChores(bare);
    const { chore } = solvedChores(householdText({ enclosure: OWN('every: 10 days, leeway: 0 days') }), {
      earlier: planOf(bare, before.chores),
      today: '2027-02-15',
    });
    expect(chore('sand/own').dates.slice(0, 2)).toEqual(['2027-02-15', '2027-02-25']);
  });

  it('of the next year goes on from the last one', () => {
    const next = text.replace('from: 2027-01-01', 'from: 2027-05-01');
    const { chore } = solvedChores(next, { earlier: planOf(text, first.chores), today: '2027-05-01' });
    const last = first.chore('sand/own').dates.at(-1) ?? '';
    const gap = epochDay(chore('sand/own').dates[0] ?? '') - epochDay(last);
    expect(gap).toBeGreaterThanOrEqual(10 - 2 * 3);
    expect(gap).toBeLessThanOrEqual(10 + 3);
  });
});
