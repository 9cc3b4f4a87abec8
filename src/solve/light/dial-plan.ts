/** A solved timer as the plan keeps it: windows in words of the clock, slots, wall time, errors. */
import { isoDateOf, WEEKDAYS } from '../../basics/calendar-day.ts';
import { clockTimeOf } from '../../basics/minute-of-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import { slotsOfDay, slotsOfWindow } from '../../hardware/pins.ts';
import { joinedWindows, type MinuteWindow, splitAtMidnight } from '../../plan/dial-day.ts';
import type { DialLamp, DialPlan, DialSetting, IsoDate, Window } from '../../plan/plan.ts';
import type { Care } from '../../resolve/care.ts';
import { type LampTimer, stepMinutesOf } from './dial-group.ts';
import { dialWindow } from './dial-history.ts';
import { replacementDates } from './lamp-replacement.ts';
import type { ShelfLamp, TenthsByDay } from './shelf-lamp.ts';
import { lampError, litTenths, meanMinutes, type SolvedGroup, type SolvedSetting } from './solve-group.ts';
import { wallWindows } from './wall-windows.ts';

/** Returns the plan of a timer with its lamps; `drives` in the plan's words, `setOn` where it came into a plan that had begun. */
export function dialPlan(
  care: Care,
  solved: SolvedGroup,
  drives: readonly string[],
  offsets: UtcOffsets,
  setOn: IsoDate | null,
): DialPlan {
  const { problem, group } = solved;
  const lit = litTenths(solved);
  const isIdle = group.kind === 'idle';
  return {
    ...deviceOf(group.timer, drives),
    lamps: group.lamps.map((lamp) => dialLamp(care, lamp, lit)),
    settings: solved.settings.map((setting) => dialSetting(care, group.timer, setting, offsets)),
    ...(setOn === null ? {} : { setOn }),
    targetHighMinutes: isIdle ? [] : minutes(problem.highTenths),
    targetLowMinutes: isIdle ? [] : minutes(problem.lowTenths),
    targetMinutes: isIdle
      ? []
      : Array.from(problem.highTenths, (high, day) => Math.round((high + (problem.lowTenths[day] ?? 0)) * 5) / 100),
    worstErrorMinutes: solved.worstErrorTenths / 10,
    meanErrorMinutes: meanMinutes(solved.sumErrorTenths, problem.days),
    tradeoff: solved.tradeoff,
  };
}

/** Returns the plan of a timer for which no setting is written. */
export function unsetDialPlan(timer: LampTimer, drives: readonly string[]): DialPlan {
  return {
    ...deviceOf(timer, drives),
    lamps: [],
    settings: [],
    targetHighMinutes: [],
    targetLowMinutes: [],
    targetMinutes: [],
    worstErrorMinutes: 0,
    meanErrorMinutes: 0,
    tradeoff: [],
  };
}

function deviceOf(timer: LampTimer, drives: readonly string[]) {
  return {
    device: timer.id,
    clock: timer.clock,
    stepMinutes: stepMinutesOf(timer),
    turnsInDays: turnsInDays(timer),
    pins: timer.kind === 'pin-dial' ? timer.pins : null,
    drives,
  } as const;
}

function turnsInDays(timer: LampTimer): 1 | 7 {
  return timer.kind === 'pin-dial' ? timer.turnsInDays : 1;
}

function minutes(tenths: TenthsByDay): readonly number[] {
  return Array.from(tenths, (value) => value / 10);
}

function dialLamp(care: Care, shelf: ShelfLamp, lit: TenthsByDay): DialLamp {
  return {
    enclosure: shelf.enclosure.id,
    lamp: shelf.lamp.id,
    uses: shelf.lamp.uses,
    powerW: shelf.lamp.powerW,
    targetMinutes: minutes(shelf.targetTenths),
    worstErrorMinutes: lampError(shelf, lit).worstErrorTenths / 10,
    replaceOn: replacementDates(shelf.lamp, care.plan, lit).map(isoDateOf),
  };
}

function dialSetting(care: Care, timer: LampTimer, setting: SolvedSetting, offsets: UtcOffsets): DialSetting {
  const [fromDay, toDay] = [care.plan.from + setting.fromDayIndex, care.plan.from + setting.toDayIndex];
  const windows = clockWindows(setting.windows, turnsInDays(timer));
  const errors = {
    worstErrorMinutes: setting.worstErrorTenths / 10,
    meanErrorMinutes: meanMinutes(setting.sumErrorTenths, toDay - fromDay + 1),
  };
  if (setting.written) {
    const written = onSteps(setting.written, timer);
    const { from, to, wall } = written;
    const isTold = wall[0]?.from === from && wall.at(-1)?.to === to;
    const told = isTold ? wall : wallWindows(written.windows, timer.clock, offsets, fromDay, toDay);
    return { ...written, wall: told, ...errors, past: true };
  }
  return {
    from: isoDateOf(fromDay),
    to: isoDateOf(toDay),
    windows,
    slots: slotsOf(setting.windows, stepMinutesOf(timer), turnsInDays(timer)),
    wall: wallWindows(windows, timer.clock, offsets, fromDay, toDay),
    ...errors,
  };
}

/** A timer may have come in the place of one with other steps: its past is told in its own, by what stood on the first minute of each. */
function onSteps(written: DialSetting, timer: LampTimer): DialSetting {
  const windows = joinedWindows(written.windows);
  const turns = turnsInDays(timer);
  return { ...written, windows: clockWindows(windows, turns), slots: slotsOf(windows, stepMinutesOf(timer), turns) };
}

/** Returns windows as the plan writes them: split at midnight; on a 7-day dial once a weekday, Monday first. */
export function clockWindows(windows: readonly MinuteWindow[], turns: 1 | 7): readonly Window[] {
  const day = splitAtMidnight(windows).map(({ onMinute, offMinute }) => ({
    on: clockTimeOf(onMinute),
    off: clockTimeOf(offMinute),
  }));
  return turns === 1 ? day : WEEKDAYS.flatMap((weekday) => day.map((window) => ({ day: weekday, ...window })));
}

/** Returns the ON slots of a day's windows, on a 7-day dial once a weekday; ascending. */
export function slotsOf(windows: readonly MinuteWindow[], stepMinutes: number, turns: 1 | 7): readonly number[] {
  const slots = new Set(
    windows.flatMap(({ onMinute, offMinute }) =>
      slotsOfWindow(dialWindow(onMinute, offMinute - onMinute), stepMinutes),
    ),
  );
  const day = [...slots].sort((a, b) => a - b);
  return Array.from({ length: turns }, (_, turn) => day.map((slot) => slot + turn * slotsOfDay(stepMinutes))).flat();
}
