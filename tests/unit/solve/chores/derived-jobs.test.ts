import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../../src/basics/calendar-day.ts';
import type { MistPlan, MistSet } from '../../../../src/plan/plan.ts';
import { householdText, solvedChores } from '../../../generated/chore-household.ts';

const PUMP = [
  '  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W, clock: wall }',
  '  - { id: mist-timer, kind: programmable-timer, entries: 12, resolution: 1 s, shortest: 5 s, clock: wall, keeps_time: yes }',
  '  - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, nozzles: 1, longest_run: 5 min, rest: 10 min, tank: { holds: 15 L, reserve: 2 L, refill_every: REFILL } }',
  '  - { id: drip, kind: dripper, outlet: always, flow: 0.5 mL/min, bowl: { holds: 1 L, empty_every: 1 day }, runs: { every: 3 h, for: 20 min } }',
].join('\n');

function misted(refill = '7 days', more = ''): string {
  return householdText({
    species: 'panther-chameleon',
    hardware: PUMP.replace('REFILL', refill),
    feeders: '{ id: cricket, share: 100 %, dust: true, shelf_life: 10 days }',
    enclosure: `    mist: pump\n    nozzles: { count: 1, hits_lamp: no }\n    dripper: drip\n    tray: { holds: 4 L, empty_every: 4 days }\n${more}`,
  });
}

function mistSet(from: string, to: string, at: string, tankDays: number): MistSet {
  const entries = [{ at, seconds: 90 }];
  const predicted = { tankDays, runoffMlPerDay: 500 } as MistSet['conditions'][number]['predicted'];
  const condition = { from, to, predicted } as MistSet['conditions'][number];
  return {
    from,
    to,
    entries,
    wall: [{ from, to, entries }],
    allowed: [],
    conditions: [condition],
    shortfall: 0,
    shortfalls: [],
  };
}

function mistPlan(sets: readonly MistSet[], pump: string | null = 'pump'): MistPlan {
  const device = pump === 'by-hand' ? null : 'mist-timer';
  return { enclosure: 'sand', pump, device, clock: 'wall', sets, limits: null, advice: [] } as unknown as MistPlan;
}

function gaps(dates: readonly string[]): readonly number[] {
  return dates.slice(1).map((date, index) => epochDay(date) - epochDay(dates[index] ?? date));
}

describe('the tank', () => {
  it('is refilled at the lesser of what the keeper wants and what it lasts', () => {
    const { chore } = solvedChores(misted(), {
      misting: [mistPlan([mistSet('2027-01-01', '2027-04-30', '09:00', 3.7)])],
    });
    expect(chore('pump/refill').dates.slice(0, 3)).toEqual(['2027-01-01', '2027-01-04', '2027-01-07']);
    expect(chore('pump/scrub-tank').dates.length).toBeGreaterThan(10);
  });

  it('is never refilled more than a week apart, however long it would last', () => {
    const { chore, chores } = solvedChores(misted('20 days'), {
      misting: [mistPlan([mistSet('2027-01-01', '2027-04-30', '09:00', 40)])],
    });
    expect(Math.max(...gaps(chore('pump/refill').dates))).toBeLessThanOrEqual(7);
    expect(chore('pump/refill').title).toContain('scrub');
    expect(chores.some(({ id }) => id === 'pump/scrub-tank')).toBe(false);
  });

  it('that runs dry in an absence is named, with the day by which to refill it', () => {
    const text = misted().replace('hardware:', 'away: [{ from: 2027-02-01, to: 2027-02-20 }]\nhardware:');
    const { said } = solvedChores(text, { misting: [mistPlan([mistSet('2027-01-01', '2027-04-30', '09:00', 9)])] });
    const dry = said.find(({ code }) => code === 'tank-runs-dry');
    expect(dry?.because).toContain('lasts 9 days');
    expect(dry?.instead).toContain('2027-02-09');
    // 20 days and the one before at 13 L / 9 days, and the reserve
    expect(dry?.instead).toContain('33 L');
    expect(said.find(({ code }) => code === 'tray-runs-over')?.because).toContain('full after 8 days');
  });
});

describe('what water asks for', () => {
  it('is emptied no later than the file says', () => {
    const { chore } = solvedChores(misted());
    expect(Math.max(...gaps(chore('sand/empty-tray').dates))).toBeLessThanOrEqual(4);
    expect(gaps(chore('sand/drip-bowl').dates).every((gap) => gap === 1)).toBe(true);
    expect(chore('sand/drip-bowl-disinfect').dates.length).toBeGreaterThan(14);
  });

  it('is keyed into the timer once for each set that differs', () => {
    const sets = [
      mistSet('2027-01-01', '2027-02-28', '09:00', 20),
      mistSet('2027-03-01', '2027-03-31', '09:00', 20),
      mistSet('2027-04-01', '2027-04-30', '10:00', 20),
    ];
    const { chore } = solvedChores(misted(), { misting: [mistPlan(sets)] });
    expect(chore('mist-timer/mist-entries').dates).toEqual(['2027-01-01', '2027-04-01']);
    expect(chore('change-sheet').dates).toContain('2027-04-01');
  });

  it('is misted by hand on the days of the plan, and drunk by hand where mists do not suffice', () => {
    const set = mistSet('2027-01-10', '2027-01-12', '09:00', 20);
    const hand = solvedChores(misted(), { misting: [mistPlan([set], 'by-hand')] });
    expect(hand.chore('sand/mist-by-hand').dates).toEqual(['2027-01-10', '2027-01-11', '2027-01-12']);
    const short = { ...set, shortfalls: [{ target: 'drink', by: 1, unit: '1', remedy: '' }] };
    expect(solvedChores(misted(), { misting: [mistPlan([short])] }).chore('sand/drink-by-hand').dates.length).toBe(3);
  });
});

describe('timers', () => {
  it('that show wall time are turned on by the hour that the clocks go forward', () => {
    const { chore } = solvedChores(misted());
    expect(chore('dial/turn-forward').dates).toEqual(['2027-03-28']);
    expect(chore('dial/turn-forward').title).toBe('Turn dial on by 1 h: the clocks go forward');
    expect(chore('mist-timer/turn-forward').title).toContain('Set the clock of mist-timer');
  });

  it('go round by 23 h in autumn, as a dial is not turned back', () => {
    const { chore } = solvedChores(misted().replace('days: 120', 'days: 365'));
    expect(chore('dial/turn-back').title).toBe('Turn dial on by 23 h: the clocks go back');
    expect(chore('dial/turn-back').dates).toEqual(['2027-10-31']);
  });

  it('on standard time are left alone, and set anew where the pins change', () => {
    const { chores, chore } = solvedChores(householdText());
    expect(chores.some(({ kind }) => kind === 'turn-dial')).toBe(false);
    expect(chore('dial/re-pin').dates[0]).toBe('2027-01-01');
    expect(chore('change-sheet').dates).toEqual(chore('dial/re-pin').dates.slice(1));
  });
});

describe('lamps', () => {
  const lamps = [
    '      - { id: sun, kind: halogen, for: [daylight, basking], power: 50 W, outlet: dial, guard: yes, fitted: 2026-08-15, replace_after: 6 months }',
    '      - { id: uv, kind: fluorescent, for: [uvb], power: 24 W, outlet: dial, fitted: 2026-03-01 }',
  ].join('\n');
  const { chore } = solvedChores(householdText({ lamps }));

  it('are replaced, with what a new one asks for', () => {
    expect(chore('sand/replace-sun').dates).toEqual(['2027-02-15']);
    expect(chore('sand/replace-sun').title).toContain('probe');
    expect(chore('sand/replace-sun').title).not.toContain('UV');
  });

  it('for UV of known age are replaced after a year where nobody says', () => {
    expect(chore('sand/replace-uv').dates).toEqual(['2027-03-01']);
    expect([chore('sand/replace-uv').source, chore('sand/replace-sun').source]).toEqual(['practice', 'household']);
  });

  it('for basking without a thermostat are checked with a probe for a week from start, new lamp and season', () => {
    const { dates } = chore('sand/probe-sun');
    expect(dates.slice(0, 8)).toEqual([1, 2, 3, 4, 5, 6, 7].map((day) => `2027-01-0${day}`).concat('2027-02-15'));
    expect(dates.filter((date) => date >= '2027-03-01').length).toBe(7);
    expect(dates.length).toBe(21);
  });
});

describe('powders and feeders', () => {
  const enclosure = [
    '    supplements:',
    '      - { id: calcium, contains: [] }',
    '      - { id: multivitamin, contains: [d3], opened: 2026-10-01, good_for: 4 months }',
    '      - { id: calcium-d3, contains: [d3], opened: 2026-09-15 }',
  ].join('\n');
  const feeders = '{ id: flies, share: 100 %, dust: true, culture: { first_after: 14 days, lasts: 28 days, keep: 2 } }';
  const { chore, chores } = solvedChores(householdText({ species: 'dyeing-poison-frog', feeders, enclosure }));

  it('are thrown away when the file says, else after six months', () => {
    expect(chore('discard-multivitamin').dates[0]).toMatch(/^2027-0(1-29|1-30|1-31|2-01)$/);
    expect(chore('discard-calcium-d3').dates).toEqual(['2027-03-15']);
    expect(chores.some(({ id }) => id === 'discard-calcium')).toBe(false);
  });

  it('are started as cultures evenly over the time that one lasts', () => {
    expect(chore('sand/culture-flies').dates.slice(0, 3)).toEqual(['2027-01-01', '2027-01-15', '2027-01-29']);
  });

  it('make the profile’s own water chore stand for the dish', () => {
    expect(chores.some(({ id }) => id === 'sand/water-dish')).toBe(true);
    expect(chores.some(({ id }) => id === 'sand/dish')).toBe(false);
  });
});

describe('an animal', () => {
  it('that soaks does so on its weekdays', () => {
    const { chore } = solvedChores(
      householdText({
        species: 'hermanns-tortoise',
        feeders: '{ id: weeds, food: greens, share: 100 %, shelf_life: 4 days }',
      }),
    );
    expect(chore('sand/soak').dates.slice(0, 4)).toEqual(['2027-01-04', '2027-01-07', '2027-01-11', '2027-01-14']);
    expect(chore('sand/remove-food').dates[0]).toBe('2027-01-02');
  });

  it('is weighed once a month as an adult, once a week when young', () => {
    const young = householdText().replace(
      'stage: adult',
      'stage: [{ from: 2026-06-01, stage: juvenile }, { from: 2027-03-01, stage: adult }]',
    );
    const { chore } = solvedChores(young);
    expect(chore('sand/weigh-weekly').dates.length).toBe(9);
    expect(chore('sand/weigh-weekly').dates.every((date) => date < '2027-03-01')).toBe(true);
    expect(chore('sand/weigh').dates.every((date) => date >= '2027-03-01')).toBe(true);
  });

  it('in quarantine is looked at every day, last of all', () => {
    const enclosure =
      '    states: [{ is: quarantine, from: 2027-02-01, to: 2027-02-20 }, { is: shedding, from: 2027-03-01, to: 2027-03-09 }]';
    const { chore } = solvedChores(householdText({ enclosure }));
    expect(chore('sand/note-health-last').dates.length).toBe(20);
    expect(chore('sand/note-health-last').title).toMatch(/^Visit last/);
    expect(chore('sand/shed-check').dates).toEqual(['2027-03-09']);
  });
});
