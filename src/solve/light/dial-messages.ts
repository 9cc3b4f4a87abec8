/** What a solved dial has to say: tolerance, jumps, spacing, hours in which no light is allowed. */
import { isoDateOf } from '../../basics/calendar-day.ts';
import { clockTimeOf, DAY_MINUTES, wrapMinute } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Log } from '../../diagnostics/log.ts';
import { minutesOn } from '../../plan/dial-day.ts';
import type { Care } from '../../resolve/care.ts';
import { placeWindow } from './candidate-windows.ts';
import type { DialProblem, DialSolution } from './dial-problem.ts';
import type { SolvedGroup } from './solve-group.ts';

/** A change above this is warned about where the household gives no limit of its own. */
const LARGE_JUMP_MINUTES = 60;
const BRIDGE_STEP_MINUTES = 30;

/** Reports where a solved timer misses its tolerance or limits; nothing where it has no solution. */
export function reportDial(care: Care, solved: SolvedGroup, log: Log): void {
  const { solution, problem } = solved;
  if (!solution) return;
  reportTolerance(care, solved, solution, log);
  reportJumps(care, solved, solution, log);
  reportSpacing(care, solved, solution, log);
  if (solved.group.kind === 'day') reportNoLight(care, solved, problem, log);
}

function reportTolerance(care: Care, { group, problem }: SolvedGroup, solution: DialSolution, log: Log): void {
  if (solution.toleranceReached || problem.toleranceTenths === null) return;
  const values = {
    timer: group.timer.id,
    toleranceMinutes: problem.toleranceTenths / 10,
    worstMinutes: solution.worstErrorTenths / 10,
    settings: solution.settings.length,
    leastMinutes: solution.leastPossibleWorstTenths / 10,
    settingsToReach: settingsToReach(solution, problem.toleranceTenths),
  };
  log.report('tolerance-out-of-reach', values, care.placeOf(['plan', 'tolerance']));
}

function settingsToReach({ tradeoff }: DialSolution, toleranceTenths: number): number | null {
  return tradeoff.find(({ worstErrorTenths }) => worstErrorTenths <= toleranceTenths)?.settings ?? null;
}

function reportJumps(care: Care, solved: SolvedGroup, solution: DialSolution, log: Log): void {
  const { group, problem } = solved;
  const limitMinutes = problem.jumpAtMostMinutes;
  const place = care.placeOf(['plan', 'jump_at_most']);
  if (limitMinutes === null) reportLargeJumps(care, solved, log);
  else if (!solution.jumpKept) {
    const values = { timer: group.timer.id, limitMinutes, leastMinutes: solution.largestJumpMinutes };
    log.report('jump-not-kept', values, place);
  } else if (solution.jumpCost) {
    const { worstWithoutTenths, settingsToUndo } = solution.jumpCost;
    const errors = { worstMinutes: solution.worstErrorTenths / 10, withoutMinutes: worstWithoutTenths / 10 };
    log.report('jump-costs-light', { timer: group.timer.id, limitMinutes, ...errors, settingsToUndo }, place);
  }
}

function reportLargeJumps(care: Care, { group, problem, settings }: SolvedGroup, log: Log): void {
  let before = problem.earlier?.window.lengthMinutes ?? null;
  for (const { fromDayIndex, windows, written } of settings) {
    const length = minutesOn(windows);
    const jumpMinutes = before === null ? 0 : Math.abs(length - before);
    if (jumpMinutes > LARGE_JUMP_MINUTES && !written) {
      const bridge = bridgeWords(problem, before ?? 0, length, care.plan.from + fromDayIndex);
      log.report(
        'jump-large',
        {
          timer: group.timer.id,
          date: isoDateOf(care.plan.from + fromDayIndex),
          jumpMinutes,
          stepMinutes: problem.stepMinutes,
          bridge,
        },
        care.placeOf(group.timer.path),
      );
    }
    before = length;
  }
}

/**
 * Returns the evenings and windows between two lengths, in steps of 30 min or the dial's own where that is longer; null where one step of
 * the dial is the whole change.
 */
function bridgeWords(problem: DialProblem, before: number, after: number, firstDay: number): string | null {
  const step = Math.max(problem.stepMinutes, BRIDGE_STEP_MINUTES);
  const evenings: string[] = [];
  for (let count = 1; count * step < Math.abs(after - before); count++) {
    const length = before + Math.sign(after - before) * count * step;
    const window = placeWindow(problem, Math.round(length / problem.stepMinutes) * problem.stepMinutes);
    const evening = isoDateOf(firstDay + count - 1);
    if (window) evenings.push(`${evening} ${windowWords(window.onMinute, window.lengthMinutes)}`);
  }
  if (evenings.length === 0) return null;
  const last = placeWindow(problem, after);
  const end = isoDateOf(firstDay + evenings.length);
  return [...evenings, ...(last ? [`${end} ${windowWords(last.onMinute, last.lengthMinutes)}`] : [])].join(', ');
}

function windowWords(onMinute: number, lengthMinutes: number): string {
  if (lengthMinutes === 0) return 'off all day';
  if (lengthMinutes === DAY_MINUTES) return 'on all day';
  return `${clockTimeOf(onMinute)} to ${clockTimeOf(wrapMinute(onMinute + lengthMinutes))}`;
}

function reportSpacing(care: Care, { group, settings }: SolvedGroup, solution: DialSolution, log: Log): void {
  const timer = group.timer.id;
  if (solution.heldForSpacing) {
    const second = settings[1];
    const until = second ? isoDateOf(care.plan.from + second.fromDayIndex) : 'the plan ends';
    const values = { timer, until, daysBetween: care.plan.atLeastBetweenDays };
    log.report('first-change-held-back', values, care.placeOf(['plan', 'at_least_between']));
  }
  if (!solution.beyondSettingsAtMost) return;
  const values = { timer, atMost: care.plan.settingsAtMost ?? 0, settings: settings.length };
  log.report('settings-above-most', values, care.placeOf(['plan', 'settings_at_most']));
}

function reportNoLight(care: Care, { group }: SolvedGroup, problem: DialProblem, log: Log): void {
  if (problem.noLightBeforeMinute === null && problem.noLightAfterMinute === null) return;
  const room = longestAllowed(problem);
  const beyond = [...problem.highTenths.keys()].filter(
    (day) => (problem.highTenths[day] ?? 0) > room * 10 + problem.stepMinutes * 5,
  );
  const worst = beyond.toSorted((a, b) => (problem.highTenths[b] ?? 0) - (problem.highTenths[a] ?? 0))[0];
  if (worst === undefined) return;
  const enclosure = group.lamps[0]?.enclosure.id ?? '';
  const place =
    care.placeOfTarget(enclosure, 'day.no_light_after') ??
    care.placeOfTarget(enclosure, 'day') ??
    care.placeOf(group.timer.path);
  const values = {
    timer: group.timer.id,
    target: spanWords((problem.highTenths[worst] ?? 0) / 10),
    date: isoDateOf(care.plan.from + worst),
    room: spanWords(room),
    days: beyond.length,
  };
  log.report('day-longer-than-allowed', values, place);
}

function longestAllowed(problem: DialProblem): number {
  for (let length = DAY_MINUTES; length > 0; length -= problem.stepMinutes)
    if (placeWindow(problem, length)) return length;
  return 0;
}
