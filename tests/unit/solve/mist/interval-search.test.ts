import { describe, expect, it } from 'vitest';
import { type IntervalProblem, solveInterval } from '../../../../src/solve/mist/interval-search.ts';
import { caseOf, NO_TARGETS, problemOf } from './problem-of-tests.ts';

const free = { starts: [], runs: [], noise: [], noMist: [] };
const lit = [{ fromMinute: 480, toMinute: 1200 }];

function asked(
  change: Partial<IntervalProblem> & { readonly only?: Parameters<typeof caseOf>[0] } = {},
): IntervalProblem {
  const { only, ...rest } = change;
  const one = caseOf({ forbidden: free, drink: null, dryOut: null, runOffAtMostG: null, ...only });
  return {
    problem: problemOf({ cases: [one] }),
    onSeconds: [1, 600],
    offSeconds: [60, 86_400],
    powered: [lit],
    ...rest,
  };
}

describe('a repeat-cycle timer behind a dial', () => {
  const solution = solveInterval(asked());

  it('starts with ON when power comes, and again after on + off', () => {
    const period = ((solution?.onSeconds ?? 0) + (solution?.offSeconds ?? 0)) / 60;
    expect(period % 15).toBe(0);
    const starts = solution?.entriesByCase[0]?.map(({ startMinute }) => startMinute) ?? [];
    expect(starts[0]).toBe(480);
    expect(starts).toEqual(starts.map((_, i) => 480 + i * period));
    expect(starts.at(-1)).toBeLessThan(1200);
    expect(solution?.plugInMinute).toBeNull();
  });

  it('is not bettered by any other interval of its grid', () => {
    const best = solution?.solution.levels ?? [];
    for (let on = 15; on <= 300; on += 45) {
      for (const period of [60, 90, 120, 180, 240, 360, 720]) {
        const only = { onSeconds: [on, on] as const, offSeconds: [period * 60 - on, period * 60 - on] as const };
        const other = solveInterval(asked(only))?.solution.levels ?? [];
        const first = best.findIndex((level, i) => level !== other[i]);
        if (first >= 0) expect(other[first]).toBeGreaterThan(best[first] ?? 0);
      }
    }
  });

  it('cuts the last run at the end of a window', () => {
    const powered = [[{ fromMinute: 480, toMinute: 601 }]];
    const cut = solveInterval(asked({ powered, onSeconds: [120, 120], offSeconds: [7080, 7080] }));
    expect(cut?.entriesByCase[0]).toEqual([
      { startMinute: 480, seconds: 120 },
      { startMinute: 600, seconds: 60 },
    ]);
  });

  it('has none where the timer cannot make one', () => {
    expect(solveInterval(asked({ onSeconds: [400, 600] }))).toBeNull();
  });
});

describe('a repeat-cycle timer alone', () => {
  it('divides 24 h, and names a moment to plug it in', () => {
    const cadence = { perDay: [3, 4], seconds: [30, 60], gapMinutes: null } as const;
    const alone = solveInterval(asked({ powered: null, only: { targets: NO_TARGETS, cadence } }));
    const period = ((alone?.onSeconds ?? 0) + (alone?.offSeconds ?? 0)) / 60;
    expect(1440 % period).toBe(0);
    expect(alone?.entriesByCase[0]?.length).toBe(1440 / period);
    expect(alone?.entriesByCase[0]?.[0]?.startMinute).toBe(alone?.plugInMinute);
    expect(alone?.solution.exceeded).toEqual([]);
  });
});
