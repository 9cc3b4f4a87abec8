import { describe, expect, it } from 'vitest';
import type { Run } from '../../../../../src/science/enclosure-day.ts';
import { compareScores, DayJudge, type Score } from '../../../../../src/solve/mist/day/day-judge.ts';
import { Choices } from '../../../../generated/random.ts';
import { fineProblem } from '../../../../reference/mist-solver/random-problems.ts';

const PROBLEMS = 40;
const SETS = 25;

/** Entries anywhere, also where limits give way. */
function randomEntries(judge: DayJudge, choices: Choices): readonly Run[] {
  const entries = new Map<number, Run>();
  const count = choices.between(0, Math.min(4, judge.problem.machine.entriesAtMost));
  for (let k = 0; k < count; k++) {
    const { minute } = choices.oneOf(judge.grid.slots);
    entries.set(minute, { startMinute: minute, seconds: 15 * choices.between(1, 20) });
  }
  return judge.ordered([...entries.values()]);
}

function* judgedSets(
  seed: number,
): Generator<{ readonly choices: Choices; readonly whole: DayJudge; readonly early: DayJudge }> {
  const choices = new Choices(seed);
  for (let k = 0; k < PROBLEMS; k++) {
    const problem = fineProblem(choices);
    const margins = choices.chance(0.5);
    yield { choices, whole: new DayJudge(problem, margins), early: new DayJudge(problem, margins) };
  }
}

describe('a set of entries judged with a hope', () => {
  it('is never told to be worse, half judged, than it turns out to be', () => {
    let told = 0;
    for (const { choices, whole, early } of judgedSets(11)) {
      for (let k = 0; k < SETS; k++) {
        const entries = randomEntries(whole, choices);
        const seen: Score[] = [];
        early.score(entries, (least) => seen.push(least) > 0);
        const score = whole.score(entries);
        for (const least of seen) {
          told++;
          expect(score && compareScores(least, score, whole.grid)).toBeLessThanOrEqual(0);
          expect(least.shortfall).toBeLessThanOrEqual(score?.shortfall ?? 0);
        }
      }
    }
    expect(told).toBeGreaterThan(PROBLEMS * SETS);
  });

  it('is given up only where it betters neither the one it is held against nor the best so far, and saves simulations', () => {
    let [given, kept, simulated, needed] = [0, 0, 0, 0];
    for (const { choices, whole, early } of judgedSets(12)) {
      for (let k = 0; k < SETS; k++) {
        const entries = randomEntries(whole, choices);
        const here = whole.score(randomEntries(whole, choices));
        const score = whole.score(entries);
        if (!score || !here) continue;
        const better = (least: Score) => compareScores(least, here, whole.grid) < 0;
        const best = early.best;
        const found = early.score(entries, better);
        if (found) expect(found).toEqual(score);
        else expect([better(score), !best || compareScores(score, best, whole.grid) < 0]).toEqual([false, false]);
        given += found ? 0 : 1;
        kept += found ? 1 : 0;
      }
      simulated += early.simulations;
      needed += whole.simulations;
    }
    expect(given).toBeGreaterThan(100);
    expect(kept).toBeGreaterThan(100);
    expect(simulated).toBeLessThan(0.5 * needed);
  });
});
