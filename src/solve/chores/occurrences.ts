/** The occurrences of a job over a plan: due on its grid, on days on which somebody is there, after what is past. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import type { Chore } from '../../plan/plan.ts';
import { type AwayOutcome, aroundAbsences } from '../away/away-rules.ts';
import type { DaysThere } from '../away/days-there.ts';
import { dueDates } from './due-dates.ts';
import type { Chain, Movable } from './gather-problem.ts';
import type { Job } from './job.ts';
import { leewayOf } from './leeway.ts';
import { feasibleChain } from './place-chain.ts';

/** Where an occurrence stood that is past. */
export interface Done {
  readonly due: EpochDay;
  readonly on: EpochDay;
  readonly who: string;
}

export interface PlanSpan {
  readonly first: EpochDay;
  readonly last: EpochDay;
  /** The day from which dates are chosen; what lies before is past. */
  readonly from: EpochDay;
}

export interface JobCourse {
  readonly job: Job;
  readonly done: readonly Done[];
  readonly chain: Chain;
  /** Whether any occurrence has a choice of days. */
  readonly isMovable: boolean;
  readonly undone: AwayOutcome['undone'];
  /** Due dates that stand farther off than their leeway, for an absence. */
  readonly forced: ReadonlySet<EpochDay>;
}

/** Returns whether an entry of a plan is of a job; a job's entries for other people have the person in their id. */
export function isOfJob(jobId: string, { id, who }: Pick<Chore, 'id' | 'who'>): boolean {
  return id === jobId || id === `${jobId}/${who}`;
}

/** Returns what stood of a job in an earlier plan, by day, whoever had it. */
export function earlierDates(job: Job, earlier: readonly Chore[]): readonly Done[] {
  return earlier
    .filter((entry) => isOfJob(job.id, entry))
    .flatMap(({ dates, moved, who }) => {
      const dues = new Map(moved.map(({ due, on }) => [on, due]));
      return dates.map((on) => ({ due: epochDay(dues.get(on) ?? on), on: epochDay(on), who }));
    })
    .sort((a, b) => a.on - b.on);
}

/**
 * Returns the occurrences that are still to be placed.
 *
 * @param earlier what stood of the job in the plan before; null where there is none
 */
export function jobCourse(job: Job, span: PlanSpan, there: DaysThere, earlier: readonly Done[] | null): JobCourse {
  const done = (earlier ?? []).filter(({ on }) => on < span.from);
  const dues = openDues(job, span, earlier, done);
  const leeway = leewayOf(job);
  const inPlan = dues
    .map((due) => ({ due, days: daysAround(job, due, leeway, span) }))
    .filter(({ days }) => days.length > 0);
  const { kept, undone } = aroundAbsences(
    inPlan,
    { whenAway: job.whenAway, intervalDays: intervalOf(dues), isVital: job.isVital },
    there,
    span.from,
    span.last,
  );
  const lastDone = done.at(-1) ?? null;
  const chain = feasibleChain(withGaps(job, kept, dues, leeway, lastDone), lastDone?.on ?? null);
  return {
    job,
    done: done.filter(({ on }) => on >= span.first && on <= span.last),
    chain,
    isMovable: chain.some(({ days }) => days.length > 1),
    undone,
    forced: new Set(kept.filter(({ isForced }) => isForced).map(({ due }) => due)),
  };
}

/** Returns the courses of jobs that no earlier plan has; those that ask for the same days share them, as most of many enclosures do. */
export function firstCourses(jobs: readonly Job[], span: PlanSpan, there: DaysThere): readonly JobCourse[] {
  const known = new Map<string, JobCourse>();
  return jobs.map((job) => {
    const { rhythm, startAfterDays, during, leewayDays, gapAtMostDays, whenAway, isVital } = job;
    const key = JSON.stringify([rhythm, startAfterDays, during, leewayDays, gapAtMostDays, whenAway, isVital]);
    const course = known.get(key) ?? jobCourse(job, span, there, null);
    known.set(key, course);
    return { ...course, job };
  });
}

/** The grid begins with the plan, or where the chore came into it; it goes on from the last date done where the rhythm has changed. */
function openDues(
  job: Job,
  span: PlanSpan,
  earlier: readonly Done[] | null,
  done: readonly Done[],
): readonly EpochDay[] {
  const lastDone = done.at(-1)?.due ?? null;
  const after = (day: EpochDay) => day >= span.first && (lastDone === null || day > lastDone) && isDuring(job, day);
  if (job.rhythm.kind === 'dates' || job.rhythm.kind === 'weekdays')
    return dueDates(job.rhythm, span.first, span.last).filter(after);
  const began =
    earlier === null ? span.first + job.startAfterDays : (earlier[0]?.due ?? span.from + job.startAfterDays);
  const grid = dueDates(job.rhythm, Math.min(began, span.last), span.last);
  const goesOn = lastDone === null || grid.includes(lastDone);
  return (goesOn ? grid : dueDates(job.rhythm, lastDone, span.last)).filter(after);
}

function isDuring({ during }: Job, day: EpochDay): boolean {
  return during === null || during.some(({ from, to }) => from <= day && day <= to);
}

function daysAround(job: Job, due: EpochDay, leeway: number, span: PlanSpan): readonly EpochDay[] {
  const days: EpochDay[] = [];
  for (let day = Math.max(due - leeway, span.from); day <= Math.min(due + leeway, span.last); day++)
    if (isDuring(job, day)) days.push(day);
  return days;
}

/** Days between two jobs on given dates count as this where there is only one; ours. */
const SINGLE_INTERVAL_DAYS = 14;

function intervalOf(dues: readonly EpochDay[]): number {
  const gaps = dues.slice(1).map((due, index) => due - (dues[index] ?? due));
  return gaps.length === 0 ? SINGLE_INTERVAL_DAYS : Math.min(...gaps);
}

/** Two occurrences lie at most their interval and the leeway apart; what is not moved, and what stands on given dates, is not bound. */
function withGaps(
  job: Job,
  kept: AwayOutcome['kept'],
  dues: readonly EpochDay[],
  leeway: number,
  lastDone: Done | null,
): readonly Movable[] {
  const isBound = leeway > 0 && job.rhythm.kind !== 'dates';
  const before = new Map(isBound ? dues.map((due, index) => [due, dues[index - 1]]) : []);
  return kept.map(({ due, days }) => {
    const last = before.get(due) ?? lastDone?.due ?? null;
    if (!isBound || last === null) return { due, days, gapAtMost: null };
    return { due, days, gapAtMost: Math.min(due - last + leeway, job.gapAtMostDays ?? Number.POSITIVE_INFINITY) };
  });
}
