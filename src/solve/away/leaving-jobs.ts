/** What is done before leaving: two weeks before nothing new, a week before living on the plan, the day before tank, stock, weights, numbers. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { CareAbsence } from '../../resolve/care.ts';
import type { Job } from '../chores/job.ts';
import { isOffForAll, type JobContext, jobOf } from '../chores/job-context.ts';
import { daysThere } from './days-there.ts';

interface LeavingStep {
  readonly name: string;
  readonly title: string;
  readonly daysBefore: number;
  readonly minutes: number;
  readonly isNeeded?: (absence: CareAbsence) => boolean;
}

/** Returns one job a step, on the dates of all absences; a step whose day has passed or is itself an absence falls away. */
export function leavingJobs(context: JobContext): readonly Job[] {
  const { care, first, last } = context;
  if (isOffForAll(care.enclosures, 'leaving')) return [];
  const there = daysThere(care);
  return stepsOf(context).flatMap(({ name, title, daysBefore, minutes, isNeeded }) => {
    const dates = care.away
      .filter((absence) => isNeeded?.(absence) ?? true)
      .map(({ from }) => from - daysBefore)
      .filter((day) => day >= first && day <= last && there.isHome(day));
    if (dates.length === 0) return [];
    const named = { id: `leaving/${name}`, kind: 'leaving', title, enclosure: null };
    return [jobOf(context, named, { rhythm: { kind: 'dates', dates }, minutes, whenAway: 'skip' })];
  });
}

const TWO_WEEKS = 14;
const WEEK = 7;

function stepsOf(context: JobContext): readonly LeavingStep[] {
  const { words, feeding } = context;
  return [
    { name: 'nothing-new', title: words.nothingNew, daysBefore: TWO_WEEKS, minutes: 1 },
    { name: 'live-on-plan', title: words.liveOnPlan, daysBefore: WEEK, minutes: 5 },
    { name: 'tank', title: words.leavingTank, daysBefore: 1, minutes: 10 },
    { name: 'stock', title: words.leavingStock, daysBefore: 1, minutes: 5 },
    { name: 'weights', title: words.leavingWeights, daysBefore: 1, minutes: 5 },
    { name: 'numbers', title: words.leavingNumbers, daysBefore: 1, minutes: 2 },
    {
      name: 'portions',
      title: words.leavingPortions,
      daysBefore: 1,
      minutes: 10,
      isNeeded: (absence) => feeding.some((feed) => feed.preDosed === true && isIn(absence, feed.date)),
    },
  ];
}

function isIn({ from, to }: { readonly from: EpochDay; readonly to: EpochDay }, date: string): boolean {
  return isoDateOf(from) <= date && date <= isoDateOf(to);
}
