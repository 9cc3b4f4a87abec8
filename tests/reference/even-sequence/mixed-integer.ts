/**
 * Even sequences as a mixed-integer program, solved by HiGHS: a binary for each item at each place, running counts, and the largest
 * deviation above all of them. Nothing of the search over layers is in it.
 */
import loadHighs from 'highs';
import type { EvenProblem, Spacing } from '../../../src/science/even-problem.ts';

/** The package's function under its CommonJS type. */
const highs = await (loadHighs as unknown as typeof loadHighs.default)();

const stands = (item: number, place: number) => `x_${item}_${place}`;
const countOf = (item: number, place: number) => `s_${item}_${place}`;

/**
 * Looks for the least worst deviation (over the problem's denominator), spacing held and pairs left aside, for so many seconds at most;
 * `worst` is null where nothing was found by then.
 */
export function leastWorstDeviation(
  problem: EvenProblem,
  seconds: number,
): { readonly isProven: boolean; readonly worst: number | null } {
  const { Status, ObjectiveValue } = highs.solve(programOf(problem), {
    output_flag: false,
    time_limit: seconds,
    mip_rel_gap: 0,
    mip_abs_gap: 0.4,
  });
  return {
    isProven: Status === 'Optimal',
    worst: Number.isFinite(ObjectiveValue) ? Math.round(ObjectiveValue) : null,
  };
}

function programOf(problem: EvenProblem): string {
  const places = problem.counts.reduce((sum, count) => sum + count, 0);
  const rows: string[] = [];
  const binaries: string[] = [];
  for (let place = 0; place < places; place++) {
    rows.push(`${problem.rates.map((_, item) => stands(item, place)).join(' + ')} = 1`);
    for (const [item, rate] of problem.rates.entries()) {
      binaries.push(stands(item, place));
      const before = place === 0 ? '' : ` - ${countOf(item, place - 1)}`;
      rows.push(`${countOf(item, place)}${before} - ${stands(item, place)} = 0`);
      const due = (place + 1) * rate - (problem.carried?.[item] ?? 0);
      rows.push(`worst - ${problem.denominator} ${countOf(item, place)} >= ${-due}`);
      rows.push(`worst + ${problem.denominator} ${countOf(item, place)} >= ${due}`);
    }
  }
  for (const [item, count] of problem.counts.entries()) rows.push(`${countOf(item, places - 1)} = ${count}`);
  if (problem.spacing) rows.push(...spacingRows(problem.spacing, problem.counts.length));
  return `Minimize\n obj: worst\nSubject To\n${rows.map((row, at) => ` c${at}: ${row}`).join('\n')}\nBinary\n ${binaries.join('\n ')}\nEnd\n`;
}

/** Two items that must keep apart do not both stand where the days between are too few, around the cycle too. */
function spacingRows({ days, apart, notBefore, cycleDays }: Spacing, items: number): readonly string[] {
  const rows: string[] = [];
  const isNear = (first: number, a: number, second: number, b: number) => {
    const least = apart[a]?.[b] ?? 0;
    const between = (days[second] ?? 0) - (days[first] ?? 0);
    return between < least || (cycleDays !== null && cycleDays - between < least);
  };
  for (let a = 0; a < items; a++) {
    for (const [place, day] of days.entries()) {
      if (day < (notBefore[a] ?? 0)) rows.push(`${stands(a, place)} = 0`);
      for (let b = 0; b < items; b++)
        for (let second = place + 1; second < days.length; second++)
          if (isNear(place, a, second, b)) rows.push(`${stands(a, place)} + ${stands(b, second)} <= 1`);
    }
  }
  return rows;
}
