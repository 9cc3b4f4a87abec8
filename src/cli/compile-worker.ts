/** What a worker of the pool runs: one household a call. */
import { type HouseholdJob, type JobReport, runJob } from './household-job.ts';
import { realWorld } from './world.ts';

export default function compileInWorker(job: HouseholdJob): Promise<JobReport> {
  return runJob(job, realWorld());
}
