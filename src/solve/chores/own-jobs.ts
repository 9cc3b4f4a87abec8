/** The chores that the file and the profiles name. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import { minutesOn } from '../../plan/dial-day.ts';
import type { CareChore, CareEnclosure, Lamp } from '../../resolve/care.ts';
import { lampHours } from '../light/lamp-hours.ts';
import type { Job, Rhythm } from './job.ts';
import type { JobContext } from './job-context.ts';

export interface OwnJob {
  readonly job: Job;
  readonly chore: CareChore;
}

/** Returns the named chores of an enclosure; one that goes by hours of a lamp that never runs is due on no date. */
export function ownJobs(context: JobContext, enclosure: CareEnclosure): readonly OwnJob[] {
  return enclosure.chores.map((chore) => ({
    chore,
    job: {
      id: `${enclosure.id}/${chore.id}`,
      kind: 'chore',
      title: chore.title,
      enclosure: enclosure.id,
      who: chore.who,
      minutes: chore.minutes,
      rhythm: rhythmOf(context, enclosure, chore),
      startAfterDays: 0,
      during: null,
      leewayDays: chore.leewayDays,
      gapAtMostDays: null,
      whenAway: chore.whenAway,
      isVital: false,
      source: chore.origin.kind === 'file' ? 'household' : chore.origin.source,
    },
  }));
}

function rhythmOf(context: JobContext, enclosure: CareEnclosure, { rhythm }: CareChore): Rhythm {
  switch (rhythm.kind) {
    case 'days':
      return { kind: 'days', every: rhythm.every };
    case 'weeks':
      return { kind: 'days', every: rhythm.every * 7 };
    case 'months':
      return { kind: 'months', every: rhythm.every };
    case 'dates':
      return { kind: 'dates', dates: rhythm.dates };
    case 'lamp-hours':
      return { kind: 'dates', dates: datesByHours(minutesByDay(context, enclosure), rhythm.hours, context.first) };
    default:
      return rhythm satisfies never;
  }
}

/** Minutes a day of the lamp of the enclosure that runs longest in the plan, the first of equals. */
function minutesByDay({ care, lighting }: JobContext, enclosure: CareEnclosure): readonly number[] {
  const minutes = enclosure.lamps.map((lamp: Lamp) =>
    lampHours(care.plan, enclosure, lamp, lighting).byDay.map(minutesOn),
  );
  const sum = (days: readonly number[]) => days.reduce((all, day) => all + day, 0);
  return minutes.reduce<readonly number[]>((most, each) => (sum(each) > sum(most) ? each : most), []);
}

/** Returns the dates by whose end the lamp has run another so many hours since the first day. */
export function datesByHours(minutes: readonly number[], hours: number, first: EpochDay): readonly EpochDay[] {
  const dates: EpochDay[] = [];
  let run = 0;
  for (const [index, day] of minutes.entries()) {
    run += day;
    if (run < hours * 60) continue;
    dates.push(first + index);
    run -= hours * 60;
  }
  return dates;
}
