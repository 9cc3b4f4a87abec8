/** One dial over a year: all six levels and the trade-off, and the first levels against the same instance as a mixed-integer program. */
import { epochDay } from '../../src/basics/calendar-day.ts';
import { dayLengthsUtc } from '../../src/science/sun.ts';
import type { DialProblem } from '../../src/solve/light/dial-problem.ts';
import { leastErrors, solveDial } from '../../src/solve/light/solve-dial.ts';
import { choicesOf, leastWorstWithin } from '../reference/dial/mixed-integer.ts';
import { plainProblem } from '../reference/dial/plain-problem.ts';
import { atLeast, atMost, leastMs, shown, type Table, times } from './figures.ts';

const GENERAL_SOLVER_SECONDS = 10;

function year(latitude: number, days: number): Int32Array {
  return Int32Array.from(dayLengthsUtc(latitude, 0, epochDay('2027-01-01'), days), (each) => Math.round(each * 10));
}

const dialYear = plainProblem(year(42, 365), { settingsAtMost: 12 });

const CASES: readonly (readonly [string, DialProblem])[] = [
  ['a year at 42°, 15 min pins, 12 settings, any day', dialYear],
  ['a year at 15°', plainProblem(year(15, 365), { settingsAtMost: 12 })],
  ['a year at 52°', plainProblem(year(52, 365), { settingsAtMost: 12 })],
  [
    'changes on two weekdays, 14 days apart',
    plainProblem(year(42, 365), { settingsAtMost: 12, changeOnWeekdays: [5, 6], atLeastBetweenDays: 14 }),
  ],
  [
    '14 days apart, jumps of 60 min at most',
    plainProblem(year(42, 365), { settingsAtMost: 12, atLeastBetweenDays: 14, jumpAtMostMinutes: 60 }),
  ],
  ['30 min pins, a tolerance of 20 min', plainProblem(year(42, 365), { stepMinutes: 30, toleranceTenths: 200 })],
  ['1100 days', plainProblem(year(42, 1100), { settingsAtMost: 36 })],
  ['a programmable timer: 1 min steps', plainProblem(year(42, 365), { stepMinutes: 1, settingsAtMost: 12 })],
];

export async function run(): Promise<readonly Table[]> {
  const ours = leastMs(() => leastErrors(dialYear), 200);
  const whole = leastMs(() => solveDial(dialYear), 50);
  const start = performance.now();
  const general = leastWorstWithin(dialYear, choicesOf(dialYear), GENERAL_SOLVER_SECONDS);
  const generalMs = performance.now() - start;
  const isMore = general.isProven ? '' : 'more than ';
  const stopped = general.isProven ? '' : ', not proven by then';
  return [
    {
      name: 'One dial, six levels and the trade-off (least of the runs, warm)',
      rows: CASES.map(([label, problem]) => [label, leastMs(() => solveDial(problem), 25).toFixed(2), 'ms']),
      targets: [atMost('a dial-year: 12 settings on any day, six levels and the trade-off', whole, 15, 'ms')],
    },
    {
      name: 'The same dial-year: worst error and sum here, worst error alone in HiGHS',
      rows: [
        ['here, levels 1 and 2', ours.toFixed(3), 'ms'],
        [`HiGHS, level 1${stopped}`, generalMs.toFixed(0), 'ms'],
        ['ratio', `${isMore}${Math.round(generalMs / ours)}`, 'times'],
      ],
      targets: [atLeast(`its first level against HiGHS${stopped}`, generalMs / ours, 200, 'times as fast')],
      beside: [
        {
          work: 'settings of a dial-year, least worst error (here with the least sum too)',
          ours: `${shown(ours)} ms`,
          other: 'HiGHS',
          takes: `${isMore}${shown(generalMs)} ms${stopped}`,
          ratio: `${isMore}${times(generalMs, ours)}`,
        },
      ],
    },
  ];
}
