/** Every job of a household, in the order in which a person meets them. */
import type { Log } from '../../diagnostics/log.ts';
import { leavingJobs } from '../away/leaving-jobs.ts';
import { enclosureJobs } from './enclosure-jobs.ts';
import { foodJobs } from './food-jobs.ts';
import type { Job } from './job.ts';
import type { JobContext } from './job-context.ts';
import { reportNamed, reportSwitches } from './job-report.ts';
import { lampJobs } from './lamp-jobs.ts';
import { ownJobs } from './own-jobs.ts';
import { withSpreadStarts } from './spread-starts.ts';
import { stateJobs } from './state-jobs.ts';
import { timerJobs } from './timer-jobs.ts';
import { pumpJobs, wateringByHandJobs } from './water-jobs.ts';

/** Returns the jobs: those of each enclosure, those of pumps and timers, those of the food, those before leaving. */
export function allJobs(context: JobContext, log: Log): readonly Job[] {
  reportSwitches(context.care, log);
  const ofEnclosures = context.care.enclosures.flatMap((enclosure) => {
    const own = ownJobs(context, enclosure);
    reportNamed(context, enclosure, own, log);
    return [
      ...stateJobs(context, enclosure),
      ...own.map(({ job }) => job),
      ...wateringByHandJobs(context, enclosure),
      ...enclosureJobs(context, enclosure),
      ...lampJobs(context, enclosure),
    ];
  });
  const jobs = [
    ...ofEnclosures,
    ...pumpJobs(context),
    ...timerJobs(context),
    ...foodJobs(context),
    ...leavingJobs(context),
  ];
  return withSpreadStarts(jobs, context.first, context.last);
}
