/** One timer with its lamps, solved: which windows from which day. */
import { WEEKDAYS, weekdayIndex } from '../../basics/calendar-day.ts';
import type { spansOfWindow } from '../../hardware/pins.ts';
import { joinedWindows, type MinuteWindow, minutesOn } from '../../plan/dial-day.ts';
import type { DialSetting, Tradeoff } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import type { DayWindows } from './day-windows.ts';
import { type DialGroup, envelopeOf, leadingLamps, noLightLimits, placementOf, stepMinutesOf } from './dial-group.ts';
import { type DialHistory, dialWindow } from './dial-history.ts';
import type { DialProblem, DialSolution } from './dial-problem.ts';
import type { ShelfLamp, TenthsByDay } from './shelf-lamp.ts';
import { solveDial } from './solve-dial.ts';
import { sharedWindow, spanWindows } from './span-windows.ts';

export interface SolvedSetting {
  readonly fromDayIndex: number;
  readonly toDayIndex: number;
  /** On the timer's clock, joined over midnight. */
  readonly windows: readonly MinuteWindow[];
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
  /** As the earlier plan wrote it, where it lies before the day of the re-plan. */
  readonly written?: DialSetting;
}

export interface SolvedGroup {
  readonly group: DialGroup;
  readonly problem: DialProblem;
  readonly settings: readonly SolvedSetting[];
  readonly worstErrorTenths: number;
  readonly sumErrorTenths: number;
  readonly tradeoff: readonly Tradeoff[];
  /** null where the windows follow the day and nothing was left to choose. */
  readonly solution: DialSolution | null;
}

/** The daylight windows of the group's enclosures, each on the timer's own clock, one a day of the plan; empty for a day dial. */
export type EnclosingDays = readonly (readonly MinuteWindow[])[];

/** Returns the dial problem of a group. */
export function problemOf(care: Care, group: DialGroup, history: DialHistory, enclosing: EnclosingDays): DialProblem {
  const leading = leadingLamps(group);
  const { high, low } = envelopeOf(leading);
  const { plan } = care;
  return {
    days: plan.days,
    firstWeekday: weekdayIndex(plan.from),
    highTenths: high,
    lowTenths: low,
    stepMinutes: stepMinutesOf(group.timer),
    placement: placementOf(group, leading, high),
    ...noLightLimits(leading.map(({ enclosure }) => enclosure)),
    changeOnWeekdays: plan.changeOn?.map((day) => WEEKDAYS.indexOf(day)) ?? null,
    settingsAtMost: plan.settingsAtMost,
    toleranceTenths: plan.toleranceMinutes === null ? null : Math.round(plan.toleranceMinutes * 10),
    atLeastBetweenDays: plan.atLeastBetweenDays,
    jumpAtMostMinutes: plan.jumpAtMostMinutes,
    earlier: history.earlier,
    insideByDay: group.kind === 'inset' ? insideByDay(enclosing, plan.days) : null,
    past: history.past,
  };
}

function insideByDay(enclosing: EnclosingDays, days: number): NonNullable<DialProblem['insideByDay']> {
  return Array.from({ length: days }, (_, day) =>
    enclosing.map((windows) => {
      const window = windows[day] ?? { onMinute: 0, offMinute: 0 };
      return dialWindow(window.onMinute, window.offMinute - window.onMinute);
    }),
  );
}

/** Solves a group; one whose lamps ask for nothing has no settings. */
export function solveGroup(care: Care, group: DialGroup, history: DialHistory, enclosing: EnclosingDays): SolvedGroup {
  const problem = problemOf(care, group, history, enclosing);
  if (group.kind === 'idle')
    return { group, problem, settings: [], worstErrorTenths: 0, sumErrorTenths: 0, tradeoff: [], solution: null };
  const isOver = (problem.past?.untilDayIndex ?? 0) >= problem.days;
  if (group.kind === 'spans' || isOver) return followDay(group, problem, history, enclosing);
  const solution = solveDial(problem);
  return {
    group,
    problem,
    settings: withWritten(
      solution.settings.map(({ window, ...rest }) => ({ ...rest, windows: joinedOf(window) })),
      history,
      problem,
    ),
    worstErrorTenths: solution.worstErrorTenths,
    sumErrorTenths: solution.sumErrorTenths,
    tradeoff: solution.tradeoff.map((row) => ({
      settings: row.settings,
      worstErrorMinutes: row.worstErrorTenths / 10,
      meanErrorMinutes: meanMinutes(row.sumErrorTenths, problem.days),
      largestJumpMinutes: row.largestJumpMinutes,
    })),
    solution,
  };
}

function joinedOf(window: Parameters<typeof spansOfWindow>[0]): readonly MinuteWindow[] {
  if (window.lengthMinutes === 0) return [];
  return [{ onMinute: window.onMinute, offMinute: window.onMinute + window.lengthMinutes }];
}

/** Returns a mean in minutes, to 0.01. */
export function meanMinutes(sumTenths: number, days: number): number {
  return days === 0 ? 0 : Math.round((sumTenths * 10) / days) / 100;
}

/** Spans leave no choice, nor does a plan that is over: a setting for each run of days with the same day windows. */
function followDay(
  group: DialGroup,
  problem: DialProblem,
  history: DialHistory,
  enclosing: EnclosingDays,
): SolvedGroup {
  const windowsOn = spansByDay(group, problem, history, enclosing);
  const settings: SolvedSetting[] = [];
  let from = 0;
  for (let day = 1; day <= problem.days; day++) {
    if (day < problem.days && sameWindows(windowsOn(day), windowsOn(from))) continue;
    settings.push({
      fromDayIndex: from,
      toDayIndex: day - 1,
      windows: windowsOn(from),
      ...errorOver(problem, windowsOn(from), from, day - 1),
    });
    from = day;
  }
  const worstErrorTenths = Math.max(0, ...settings.map((setting) => setting.worstErrorTenths));
  const sumErrorTenths = settings.reduce((sum, setting) => sum + setting.sumErrorTenths, 0);
  const row = {
    settings: settings.length,
    worstErrorMinutes: worstErrorTenths / 10,
    meanErrorMinutes: meanMinutes(sumErrorTenths, problem.days),
    largestJumpMinutes: largestJump(settings),
  };
  return {
    group,
    problem,
    settings: withWritten(settings, history, problem),
    worstErrorTenths,
    sumErrorTenths,
    tradeoff: [row],
    solution: null,
  };
}

function spansByDay(
  group: DialGroup,
  problem: DialProblem,
  history: DialHistory,
  enclosing: EnclosingDays,
): (day: number) => readonly MinuteWindow[] {
  const spans = leadingLamps(group)[0]?.target;
  const known = new Map<string, readonly MinuteWindow[]>();
  const until = history.past?.untilDayIndex ?? 0;
  return (day) => {
    if (day < until) return pastWindows(history, problem, day);
    const shared = sharedWindow(enclosing.map((windows) => windows[day] ?? { onMinute: 0, offMinute: 0 }));
    const key = `${shared.onMinute} ${shared.offMinute}`;
    const windows =
      known.get(key) ?? (spans?.kind === 'spans' ? spanWindows(spans.spans, shared, problem.stepMinutes) : []);
    known.set(key, windows);
    return windows;
  };
}

function pastWindows(history: DialHistory, problem: DialProblem, day: number): readonly MinuteWindow[] {
  const starts = history.past?.settings ?? [];
  const index = starts.findLastIndex(({ fromDayIndex }) => fromDayIndex <= day);
  const setting = history.written[Math.max(0, Math.min(index, problem.days))];
  return setting ? joinedWindows(setting.windows) : [];
}

function sameWindows(a: readonly MinuteWindow[], b: readonly MinuteWindow[]): boolean {
  return (
    a.length === b.length &&
    a.every((window, index) => window.onMinute === b[index]?.onMinute && window.offMinute === b[index]?.offMinute)
  );
}

function errorOver(
  problem: DialProblem,
  windows: readonly MinuteWindow[],
  from: number,
  to: number,
): Pick<SolvedSetting, 'worstErrorTenths' | 'sumErrorTenths'> {
  const lit = minutesOn(windows) * 10;
  let [worstErrorTenths, sumErrorTenths] = [0, 0];
  for (let day = from; day <= to; day++) {
    const error = Math.max(
      Math.abs(lit - (problem.highTenths[day] ?? 0)),
      Math.abs(lit - (problem.lowTenths[day] ?? 0)),
    );
    worstErrorTenths = Math.max(worstErrorTenths, error);
    sumErrorTenths += error;
  }
  return { worstErrorTenths, sumErrorTenths };
}

function largestJump(settings: readonly SolvedSetting[]): number {
  return settings
    .slice(1)
    .reduce(
      (largest, { windows }, index) =>
        Math.max(largest, Math.abs(minutesOn(windows) - minutesOn(settings[index]?.windows ?? []))),
      0,
    );
}

/** Puts the earlier plan's own settings where the past lies. */
function withWritten(
  settings: readonly SolvedSetting[],
  history: DialHistory,
  problem: DialProblem,
): readonly SolvedSetting[] {
  const until = history.past?.untilDayIndex ?? 0;
  return settings.map((setting) => {
    if (setting.toDayIndex >= until) return setting;
    const index = (history.past?.settings ?? []).findLastIndex(
      ({ fromDayIndex }) => fromDayIndex <= setting.fromDayIndex,
    );
    const written = history.written[index];
    return written
      ? {
          ...setting,
          windows: joinedWindows(written.windows),
          written,
          ...errorOver(problem, joinedWindows(written.windows), setting.fromDayIndex, setting.toDayIndex),
        }
      : setting;
  });
}

/** Returns the tenths of a minute a group is on, one a day. */
export function litTenths({ settings, problem }: Pick<SolvedGroup, 'settings' | 'problem'>): TenthsByDay {
  const lit = new Int32Array(problem.days);
  for (const { fromDayIndex, toDayIndex, windows } of settings)
    lit.fill(minutesOn(windows) * 10, fromDayIndex, toDayIndex + 1);
  return lit;
}

/** Returns how far a lamp's own target is missed while it is on for so long: worst and sum over the days, tenths of a minute. */
export function lampError(
  { targetTenths }: ShelfLamp,
  lit: TenthsByDay,
): { readonly worstErrorTenths: number; readonly sumErrorTenths: number } {
  let [worstErrorTenths, sumErrorTenths] = [0, 0];
  for (let day = 0; day < targetTenths.length; day++) {
    const error = Math.abs((lit[day] ?? 0) - (targetTenths[day] ?? 0));
    if (error > worstErrorTenths) worstErrorTenths = error;
    sumErrorTenths += error;
  }
  return { worstErrorTenths, sumErrorTenths };
}

/** Returns the day windows that a solved day dial gives its enclosures. */
export function dayWindowsOf({ group, settings, problem }: SolvedGroup): DayWindows {
  const windows: MinuteWindow[] = new Array(problem.days).fill({ onMinute: 720, offMinute: 720 });
  for (const setting of settings) {
    const [window] = setting.windows;
    if (window) windows.fill(window, setting.fromDayIndex, setting.toDayIndex + 1);
  }
  return { clock: group.timer.clock, device: group.timer.id, windows };
}
