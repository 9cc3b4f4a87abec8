import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { packageFolder } from './files.ts';
import type { HouseholdJob, JobReport } from './household-job.ts';
import { installedModule } from './installed-module.ts';
import { expectLongRun } from './short-run.ts';

export interface JobRunner {
  readonly run: (job: HouseholdJob) => Promise<JobReport>;
  readonly end: () => Promise<void>;
}

/** Young objects die young in a compile; a larger nursery for them would only be memory. */
const NURSERY_MB = 32;

/** Starts workers, at most as many as there is work for; each is a thread that lives as long as the run. */
export async function workerPool(jobs: number | null, work: number): Promise<JobRunner> {
  expectLongRun();
  const { Tinypool } = (await installedModule('tinypool')) as typeof import('tinypool');
  const threads = Math.max(1, Math.min(jobs ?? availableParallelism(), work));
  const pool = new Tinypool({
    filename: join(packageFolder(), 'dist', 'compile-worker.js'),
    runtime: 'worker_threads',
    minThreads: threads,
    maxThreads: threads,
    isolateWorkers: false,
    resourceLimits: { maxYoungGenerationSizeMb: NURSERY_MB },
  });
  return { run: (job) => pool.run(job) as Promise<JobReport>, end: () => pool.destroy() };
}
