/** What a worker of the pool runs: one household a call. Workers tell each other the days of mists that they have solved. */
import { BroadcastChannel, type MessagePort, receiveMessageOnPort } from 'node:worker_threads';
import type { DaySolution } from '../solve/mist/day/day-problem.ts';
import { type DayExchange, shareSolvedDays } from '../solve/mist/day/solved-days.ts';
import { type HouseholdJob, type JobReport, runJob } from './household-job.ts';
import { realWorld } from './world.ts';

shareSolvedDays(exchangeBetweenWorkers());

export default function compileInWorker(job: HouseholdJob): Promise<JobReport> {
  return runJob(job, realWorld());
}

type Told = readonly [key: string, solution: DaySolution];

/** Read when asked and not by an event: a worker solves for seconds without a turn of its event loop. */
function exchangeBetweenWorkers(): DayExchange {
  const channel = new BroadcastChannel('dewdial solved days');
  channel.unref();
  return {
    tell: (key, solution) => channel.postMessage([key, solution] satisfies Told),
    *heard() {
      for (let next = received(channel); next; next = received(channel)) yield next;
    },
  };
}

/** Node takes a channel here too; its types know only of ports. */
function received(channel: BroadcastChannel): Told | null {
  const message = receiveMessageOnPort(channel as unknown as MessagePort);
  return message ? (message.message as Told) : null;
}
