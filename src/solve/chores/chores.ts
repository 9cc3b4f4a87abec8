/** What people do besides feeding: every job with its dates, gathered a person at a time. */

import { type EpochDay, epochDay, isoDateOf, weekdayOf } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import { Parts } from '../../plan/parts.ts';
import type { Chore, Plan } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import { reportAbsenceWater } from '../away/absence-water.ts';
import { type DaysThere, daysThere } from '../away/days-there.ts';
import { solvePart } from '../solve-part.ts';
import { allJobs } from './all-jobs.ts';
import { reportChores } from './chore-report.ts';
import { gather } from './gather.ts';
import type { GatherProblem } from './gather-problem.ts';
import type { Job } from './job.ts';
import { jobContext, type PlannedParts } from './job-context.ts';
import { reportLoads } from './load-report.ts';
import { earlierDates, firstCourses, isOfJob, type JobCourse, jobCourse, type PlanSpan } from './occurrences.ts';
import type { PersonsChores } from './persons-chores.ts';

export interface ChoresResult {
  /** In the order of the file: by enclosure, then devices, then the household; those of a sitter follow the keeper's. */
  readonly chores: readonly Chore[];
}

/**
 * Returns the chores of a household. With an earlier plan the days before `today` are copied from it and the grids go on; without one
 * the plan is solved from its first day. Messages: those of the catalogue of chores.
 *
 * @param planned what the stages before have planned; mists may be empty
 * @param parts where the chores of each person (`chores.PERSON`) note what they were solved from; what stands is copied whole
 */
export function solveChores(
  care: Care,
  planned: PlannedParts,
  earlier: Plan | null,
  today: EpochDay,
  log: Log,
  parts: Parts = new Parts(earlier),
): ChoresResult {
  const context = jobContext(care, planned);
  const there = daysThere(care);
  const jobs = allJobs(context, log);
  const people = [...new Set(jobs.map(({ who }) => who))];
  const lists = people.map((person) => {
    const own = jobs.filter(({ who }) => who === person);
    const work = new Set(planned.feeding.filter(({ by }) => by === person).map(({ date }) => epochDay(date)));
    const part = `chores.${person}`;
    const stands = parts.stands(part, choreInputs(care, own, person, work)) && earlier !== null;
    return solvePart({ care, parts, log }, part, stands ? copied(earlier, own) : null, (placed, said) => {
      const list = personsChores(placed, own, person, work, there, earlier, beginOf(care, earlier, today));
      reportChores(placed, list, said);
      return list.chores;
    });
  });
  const chores = inOrder(lists.flat(), jobs);
  reportLoads(care, chores, planned.feeding, log);
  reportAbsenceWater(care, chores, planned.misting, log);
  return { chores };
}

/** What one person's chores depend on, the earlier plan left out. */
function choreInputs(care: Care, jobs: readonly Job[], person: string, work: ReadonlySet<EpochDay>): unknown {
  const { from, days } = care.plan;
  const preferred = care.people.find(({ id }) => id === person)?.choresOn ?? null;
  const away = care.away.map(({ from: begins, to, sitter, visits }) => ({ begins, to, sitter, visits }));
  return { from, days, jobs, preferred, away, work: [...work].sort((a, b) => a - b) };
}

function beginOf(care: Care, earlier: Plan | null, today: EpochDay): EpochDay {
  return earlier ? Math.max(care.plan.from, today) : care.plan.from;
}

/** What stands comes from the earlier plan as it is, whatever a change of this program would make of it. */
function copied(earlier: Plan, jobs: readonly Job[]): readonly Chore[] {
  return earlier.chores.filter((entry) => jobs.some(({ id }) => isOfJob(id, entry)));
}

function personsChores(
  care: Care,
  jobs: readonly Job[],
  person: string,
  work: ReadonlySet<EpochDay>,
  there: DaysThere,
  earlier: Plan | null,
  from: EpochDay,
): PersonsChores {
  const first = care.plan.from;
  const span: PlanSpan = { first, last: first + care.plan.days - 1, from };
  const courses = earlier
    ? jobs.map((job) => jobCourse(job, span, there, earlierDates(job, earlier.chores)))
    : firstCourses(jobs, span, there);
  const movable = courses.filter(({ isMovable }) => isMovable);
  const gathered = gather(problemOf(care, person, courses, movable, work, there));
  const days = new Map(movable.map(({ job }, index) => [job.id, gathered.days[index] ?? []]));
  const chores = courses.flatMap((course) =>
    choresOf(course, days.get(course.job.id) ?? course.chain.flatMap((each) => each.days[0] ?? []), there),
  );
  return { person, courses, chores, gathered };
}

/** Feeds, visits and what is not moved are work anyway. */
function problemOf(
  care: Care,
  person: string,
  courses: readonly JobCourse[],
  movable: readonly JobCourse[],
  work: ReadonlySet<EpochDay>,
  there: DaysThere,
): GatherProblem {
  const preferred = care.people.find(({ id }) => id === person)?.choresOn ?? null;
  const unmoved = courses
    .filter(({ isMovable }) => !isMovable)
    .flatMap(({ chain }) => chain.map(({ days }) => days[0]));
  const busy = new Set([...work, ...unmoved]);
  return {
    chains: movable.map(({ chain }) => chain),
    hasWork: (day) => busy.has(day) || there.isVisit(day),
    isPreferred: (day) => preferred !== null && weekdayOf(day) === preferred,
  };
}

interface Placed {
  readonly due: EpochDay;
  readonly on: EpochDay;
  readonly who: string;
}

/** One entry for whoever's job it is, and one for each sitter who does it in an absence. */
function choresOf({ job, done, chain }: JobCourse, days: readonly EpochDay[], there: DaysThere): readonly Chore[] {
  const coming = chain.flatMap(({ due }, index): readonly Placed[] => {
    const on = days[index];
    return on === undefined ? [] : [{ due, on, who: there.absenceOn(on)?.sitter ?? job.who }];
  });
  const placed = [...done, ...coming];
  const people = [...new Set(placed.map(({ who }) => who))].sort(
    (a, b) => rank(a, job) - rank(b, job) || (a < b ? -1 : 1),
  );
  return people.map((who) =>
    entryOf(
      job,
      who,
      placed.filter((each) => each.who === who),
    ),
  );
}

function rank(who: string, job: Job): number {
  return who === job.who ? 0 : 1;
}

function entryOf(job: Job, who: string, placed: readonly Placed[]): Chore {
  return {
    id: who === job.who ? job.id : `${job.id}/${who}`,
    title: job.title,
    kind: job.kind,
    who,
    minutes: job.minutes,
    enclosure: job.enclosure,
    source: job.source,
    dates: placed.map(({ on }) => isoDateOf(on)),
    moved: placed
      .filter(({ due, on }) => due !== on)
      .map(({ due, on }) => ({ due: isoDateOf(due), on: isoDateOf(on) })),
  };
}

function inOrder(chores: readonly Chore[], jobs: readonly Job[]): readonly Chore[] {
  const position = new Map(jobs.map(({ id }, index) => [id, index]));
  const at = ({ id, who }: Chore) => position.get(id) ?? position.get(id.slice(0, -who.length - 1)) ?? jobs.length;
  return chores.toSorted((a, b) => at(a) - at(b));
}
