/** The same question as other devices put it: a dial whose windows are the mists, a person with a sprayer. */
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { DayProblem, MistCase } from './day-problem.ts';

const BY_HAND_AT_MOST = 3;
/** Humane hours of a person, wall time: starts from 07:00, none from 22:00 on. */
const BY_HAND_CLOSED = { fromMinute: 22 * 60, toMinute: 7 * 60 };

/** Returns whether a pump may run for as long as one step of a dial is. */
export function dialStepFits(longestRunSeconds: number, dialStepMinutes: number): boolean {
  return dialStepMinutes * 60 <= longestRunSeconds;
}

/** Returns the problem with the windows of a dial as its entries: on and off are multiples of the dial's step, at least one step lies between two. */
export function asDialWindows(problem: DayProblem, dialStepMinutes: number): DayProblem {
  const step = dialStepMinutes * 60;
  const { machine } = problem;
  return {
    ...problem,
    machine: {
      ...machine,
      entriesAtMost: Math.floor(DAY_MINUTES / dialStepMinutes / 2),
      startStepMinutes: dialStepMinutes,
      lengthStepSeconds: step,
      shortestSeconds: step,
      longestSeconds: Math.min(machine.longestSeconds, DAY_MINUTES * 60 - step),
      restSeconds: Math.max(machine.restSeconds, step),
    },
  };
}

/** Returns the problem for a person who mists by hand, on the wall clock: few mists, at humane hours. */
export function asByHand(problem: DayProblem): DayProblem {
  const closed = (one: MistCase): MistCase => ({
    ...one,
    forbidden: { ...one.forbidden, starts: [...one.forbidden.starts, BY_HAND_CLOSED] },
  });
  const entriesAtMost = Math.min(BY_HAND_AT_MOST, problem.machine.entriesAtMost);
  return { ...problem, machine: { ...problem.machine, entriesAtMost }, cases: problem.cases.map(closed) };
}
