import { afterEach, describe, expect, it } from 'vitest';
import type { DaySolution } from '../../../../../src/solve/mist/day/day-problem.ts';
import { judgeMistDay } from '../../../../../src/solve/mist/day/solve-day.ts';
import { dayKey, rememberedDay, shareSolvedDays } from '../../../../../src/solve/mist/day/solved-days.ts';
import { caseOf, problemOf } from '../problem-of-tests.ts';

afterEach(() => shareSolvedDays(null));

/** A question that no other test asks. */
function question(flow: number) {
  return problemOf({ machine: { pumpFlowGPerHour: flow } });
}

function answer(flow: number): DaySolution {
  const solution = judgeMistDay(question(flow), []);
  if (!solution) throw new Error('no mists at all can always run');
  return solution;
}

function never(): DaySolution {
  throw new Error('asked again');
}

describe('days that were solved already', () => {
  it('are answered once, whosever enclosure asks', () => {
    const solution = answer(1001);
    expect(rememberedDay(question(1001), {}, () => solution)).toBe(solution);
    const problem = question(1001);
    const other = { ...problem, cases: problem.cases.map((one) => ({ ...one, enclosure: 'of somebody else' })) };
    expect(rememberedDay(other, {}, never)).toBe(solution);
  });

  it.each([
    ['another machine', { ...question(1002), machine: { ...question(1002).machine, entriesAtMost: 3 } }, {}],
    ['less water', { ...question(1002), waterAtMostG: 12 }, {}],
    ['another rhythm', { ...question(1002), rhythm: { favour: 'dusk' as const, gapMinutes: 17 } }, {}],
    ['another case', { ...question(1002), cases: [caseOf({ runOffAtMostG: 3.5 })] }, {}],
    ['two cases', { ...question(1002), cases: [caseOf(), caseOf({ drink: null })] }, {}],
    ['an early end', question(1002), { untilMet: true }],
    ['other seeds', question(1002), { seeds: [[{ startMinute: 480, seconds: 60 }]] }],
  ])('are asked anew with %s', (_what, problem, options) => {
    rememberedDay(question(1002), {}, () => answer(1002));
    const fresh = answer(1003);
    expect(rememberedDay(problem, options, () => fresh)).toBe(fresh);
  });

  it('are told to others, and what others tell is not solved again', () => {
    const told: [string, DaySolution][] = [];
    shareSolvedDays({ tell: (key, solution) => void told.push([key, solution]), heard: () => [] });
    const ours = rememberedDay(question(1004), {}, () => answer(1004));
    expect(told).toEqual([[dayKey(question(1004), {}), ours]]);
    const theirs = answer(1005);
    shareSolvedDays({ tell: never, heard: () => [[dayKey(question(1005), {}), theirs]] });
    expect(rememberedDay(question(1005), {}, never)).toBe(theirs);
  });
});
