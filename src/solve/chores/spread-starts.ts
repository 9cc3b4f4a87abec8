/**
 * When the default chores of long intervals first fall due: were all of them to begin with the plan, its first weekend would hold a
 * year's work. Each takes, in the order of the list, the first start week that adds least to the fullest week of the plan.
 */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { dueDates } from './due-dates.ts';
import type { Job } from './job.ts';

const WEEK = 7;
/** Weeks of a month and of the longest time that a first date is put off. */
const WEEKS_A_MONTH = 4;
const MOST_WEEKS = 26;

/** Kinds that are due with the plan: what is measured at the start is what later values are held against. */
const AT_START: ReadonlySet<string> = new Set(['weigh', 'nozzle-flow']);

/** Returns the jobs with `startAfterDays` on the default chores of a month or more; the household's own begin with the plan. */
export function withSpreadStarts(jobs: readonly Job[], first: EpochDay, last: EpochDay): readonly Job[] {
  const load = new Float64Array(Math.ceil((last - first + 1) / WEEK) + 1);
  const add = (job: Job): void => {
    for (const week of weeksOf(job, first, last)) load[week] = (load[week] ?? 0) + job.minutes;
  };
  const mayWait = (job: Job) => job.rhythm.kind === 'months' && job.source !== 'household' && !AT_START.has(job.kind);
  for (const job of jobs) if (!mayWait(job)) add(job);
  return jobs.map((job) => {
    if (!mayWait(job)) return job;
    const spread = leastFull(job, load, first, last);
    add(spread);
    return spread;
  });
}

function leastFull(job: Job, load: Float64Array, first: EpochDay, last: EpochDay): Job {
  const months = job.rhythm.kind === 'months' ? job.rhythm.every : 1;
  const weeks = Math.min(MOST_WEEKS, months * WEEKS_A_MONTH);
  let [best, least] = [job, Number.POSITIVE_INFINITY];
  for (let week = 0; week < weeks; week++) {
    const start = { ...job, startAfterDays: week * WEEK };
    if (first + start.startAfterDays > last) break;
    const fullest = weeksOf(start, first, last).reduce((most, each) => Math.max(most, load[each] ?? 0), 0);
    if (fullest < least) [best, least] = [start, fullest];
  }
  return best;
}

function weeksOf({ rhythm, startAfterDays, during }: Job, first: EpochDay, last: EpochDay): readonly number[] {
  return dueDates(rhythm, first + startAfterDays, last)
    .filter((day) => day >= first && (during === null || during.some(({ from, to }) => from <= day && day <= to)))
    .map((day) => Math.floor((day - first) / WEEK));
}
