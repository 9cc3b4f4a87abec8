/** What holds for the chores of any household: leeway, spacing, people who are there, dates within the plan, one a day. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import { Log } from '../../src/diagnostics/log.ts';
import type { Chore, Plan } from '../../src/plan/plan.ts';
import type { Care } from '../../src/resolve/care.ts';
import { allJobs } from '../../src/solve/chores/all-jobs.ts';
import { solveChores } from '../../src/solve/chores/chores.ts';
import type { Job } from '../../src/solve/chores/job.ts';
import { jobContext, type PlannedParts } from '../../src/solve/chores/job-context.ts';
import { leewayOf } from '../../src/solve/chores/leeway.ts';
import { solveFeeding } from '../../src/solve/feeding/feeding.ts';
import { lightsOfDay } from '../../src/solve/feeding/lights-of-day.ts';
import { solveLighting } from '../../src/solve/lighting.ts';
import { barePlan } from '../generated/bare-plan.ts';
import { resolveText } from '../shipped-profiles.ts';
import { generateHousehold } from './household-generator.ts';

const SEED = 20270105;

interface Household {
  readonly care: Care;
  readonly planned: PlannedParts;
  readonly jobs: ReadonlyMap<string, Job>;
  readonly chores: readonly Chore[];
}

function householdOf(seed: number): Household | null {
  const { care } = resolveText(generateHousehold(seed, { days: 120 }));
  if (!care) return null;
  const { lighting, offsets } = solveLighting(care, null, care.plan.from, new Log());
  const { feeding } = solveFeeding(care, lightsOfDay(care, lighting, offsets), null, care.plan.from, new Log());
  const planned = { lighting, misting: [], feeding, offsets };
  const { chores } = solveChores(care, planned, null, care.plan.from, new Log());
  const jobs = allJobs(jobContext(care, planned), new Log());
  return { care, planned, chores, jobs: new Map(jobs.map((job) => [job.id, job])) };
}

function jobOf({ jobs }: Household, chore: Chore): Job {
  const job = jobs.get(chore.id) ?? jobs.get(chore.id.slice(0, -chore.who.length - 1));
  if (!job) throw new Error(`no job of ${chore.id}`);
  return job;
}

const seeds = fc.sample(fc.nat(1_000_000), { numRuns: 24, seed: SEED });
const households = seeds.map(householdOf).filter((each) => each !== null);

function isAway({ care }: Household, date: string): boolean {
  return care.away.some(({ from, to }) => isoDateOf(from) <= date && date <= isoDateOf(to));
}

describe('the chores of any household', () => {
  it('are many', () => {
    expect(households.length).toBeGreaterThan(20);
    expect(households.filter(({ care }) => care.away.length > 0).length).toBeGreaterThan(5);
    for (const { chores } of households) expect(chores.length).toBeGreaterThan(8);
  });

  it('stand within their leeway, except where an absence let them not', () => {
    for (const household of households)
      for (const chore of household.chores)
        for (const { due, on } of chore.moved) {
          const shift = Math.abs(epochDay(on) - epochDay(due));
          if (shift > leewayOf(jobOf(household, chore))) expect(isAway(household, due)).toBe(true);
        }
  });

  it('of three days or less are not moved but by an absence', () => {
    for (const household of households)
      for (const chore of household.chores) {
        const { rhythm } = jobOf(household, chore);
        if (rhythm.kind === 'days' && rhythm.every <= 3)
          expect(chore.moved.filter(({ due }) => !isAway(household, due))).toEqual([]);
      }
  });

  it('never come twice a day, nor outside the plan', () => {
    for (const { care, chores } of households) {
      const [first, last] = [isoDateOf(care.plan.from), isoDateOf(care.plan.from + care.plan.days - 1)];
      const byJob = new Map<string, string[]>();
      for (const { id, who, dates } of chores) {
        const job = id.endsWith(`/${who}`) ? id.slice(0, -who.length - 1) : id;
        byJob.set(job, [...(byJob.get(job) ?? []), ...dates]);
        expect(dates.every((date) => first <= date && date <= last)).toBe(true);
        expect(dates).toEqual(dates.toSorted());
      }
      for (const dates of byJob.values()) expect(new Set(dates).size).toBe(dates.length);
    }
  });

  it('lie at most their interval and leeway apart where nobody was away', () => {
    for (const household of households)
      for (const chore of household.chores) {
        const job = jobOf(household, chore);
        if (job.rhythm.kind !== 'days' || job.during !== null) continue;
        const most = Math.min(job.rhythm.every + leewayOf(job), job.gapAtMostDays ?? Number.POSITIVE_INFINITY);
        for (const [index, date] of chore.dates.entries()) {
          const next = chore.dates[index + 1];
          if (next === undefined) continue;
          const days = Array.from({ length: epochDay(next) - epochDay(date) + 1 }, (_, at) => epochDay(date) + at);
          if (days.some((day) => isAway(household, isoDateOf(day)))) continue;
          expect(epochDay(next) - epochDay(date), `${chore.id} from ${date} to ${next}`).toBeLessThanOrEqual(most);
        }
      }
  });

  it('ask nobody who is away, and a sitter on visits alone', () => {
    for (const { care, chores } of households)
      for (const absence of care.away)
        for (const { id, who, dates } of chores)
          for (const date of dates) {
            const day = epochDay(date);
            if (day < absence.from || day > absence.to) continue;
            expect(who, `${id} on ${date}`).toBe(absence.sitter);
            expect(absence.visits).toContain(day);
          }
  });

  it('are the same for the same household, and stay where they are when nothing changes', () => {
    for (const { care, planned, chores } of households.slice(0, 8)) {
      const again = solveChores(care, planned, null, care.plan.from, new Log());
      expect(again.chores).toEqual(chores);
      const later = care.plan.from + 40;
      expect(solveChores(care, planned, planOf(care, chores), later, new Log()).chores).toEqual(chores);
    }
  });

  it('keep what is past when something changes, and go on from it without doing a job twice within its leeway', () => {
    for (const { care, planned, chores } of households.slice(0, 8)) {
      const later = care.plan.from + 40;
      const people = care.people.map((person) => ({ ...person, choresOn: 'thu' as const }));
      const changed = solveChores({ ...care, people }, planned, planOf(care, chores), later, new Log()).chores;
      const past = (list: readonly Chore[]) =>
        list
          .map(({ id, dates }) => [id, dates.filter((date) => date < isoDateOf(later))])
          .filter(([, dates]) => dates?.length);
      expect(past(changed)).toEqual(past(chores));
    }
  });
});

function planOf(care: Care, chores: readonly Chore[]): Plan {
  const plan = barePlan(care, { feeding: [], rotation: [], stock: [] }, isoDateOf(care.plan.from));
  return {
    ...plan,
    chores,
    people: care.people.map(({ id }) => ({ id, feedsAt: [], reminderMinutes: null, minutesADay: null })),
  };
}
