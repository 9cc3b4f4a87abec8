/** What stood on a dial before: in an earlier plan, else as the household file says. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { DialWindow } from '../../hardware/pins.ts';
import { joinedWindows, minutesOn, settingOn } from '../../plan/dial-day.ts';
import type { DialPlan, DialSetting, Plan } from '../../plan/plan.ts';
import type { CarePlan } from '../../resolve/care.ts';
import type { LampTimer } from './dial-group.ts';
import type { EarlierWindow, PastSettings } from './dial-problem.ts';

export interface DialHistory {
  readonly earlier: EarlierWindow | null;
  readonly past: PastSettings | null;
  /** The settings of the past as the earlier plan wrote them, from the plan's first day to the day before the re-plan. */
  readonly written: readonly DialSetting[];
}

/**
 * Returns the history of one timer.
 *
 * @param earlier the plan that stands in the folder, or null
 * @param today the day of the run; what lies before max(today, the plan's first day) is past
 */
export function historyOf(timer: LampTimer, earlier: Plan | null, plan: CarePlan, today: EpochDay): DialHistory {
  const dial = earlier?.lighting.find(({ device }) => device === timer.id);
  const before = dial ? windowBefore(dial, plan.from) : null;
  const written = dial ? writtenPast(dial, plan, Math.max(today, plan.from)) : [];
  const past = written.length > 0 ? pastOf(written, plan, today) : null;
  return { earlier: before ?? nowOf(timer), past, written };
}

function nowOf(timer: LampTimer): EarlierWindow | null {
  if (timer.kind !== 'pin-dial' || !timer.now) return null;
  const { onMinute, offMinute } = timer.now;
  return { window: dialWindow(onMinute, (offMinute - onMinute + DAY_MINUTES) % DAY_MINUTES), daysSinceChange: null };
}

function windowBefore(dial: DialPlan, from: EpochDay): EarlierWindow | null {
  const setting = settingOn(dial, isoDateOf(from - 1));
  if (!setting) return null;
  return { window: windowOfSetting(setting), daysSinceChange: from - epochDay(setting.from) };
}

/** Empty where the earlier plan does not cover every day from the plan's first to the day before the re-plan. */
function writtenPast(dial: DialPlan, plan: CarePlan, today: EpochDay): readonly DialSetting[] {
  if (today <= plan.from || today >= plan.from + plan.days) return [];
  const [from, to] = [isoDateOf(plan.from), isoDateOf(today - 1)];
  if (!settingOn(dial, from) || !settingOn(dial, to)) return [];
  return inside(dial.settings, from, to).map((setting) => ({ ...setting, wall: inside(setting.wall, from, to) }));
}

interface Dated {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

function inside<T extends Dated>(spans: readonly T[], from: IsoDate, to: IsoDate): readonly T[] {
  return spans.filter((span) => span.from <= to && span.to >= from).map((span) => clipped(span, from, to));
}

function clipped<T extends Dated>(span: T, from: IsoDate, to: IsoDate): T {
  return { ...span, from: later(span.from, from), to: earlier(span.to, to) };
}

function later(a: IsoDate, b: IsoDate): IsoDate {
  return [a, b].sort().at(-1) ?? a;
}

function earlier(a: IsoDate, b: IsoDate): IsoDate {
  return [a, b].sort()[0] ?? a;
}

function pastOf(written: readonly DialSetting[], plan: CarePlan, today: EpochDay): PastSettings {
  return {
    settings: written.map((setting) => ({
      fromDayIndex: epochDay(setting.from) - plan.from,
      window: windowOfSetting(setting),
    })),
    untilDayIndex: today - plan.from,
  };
}

/** Returns the longest window of a setting. */
export function windowOfSetting(setting: DialSetting): DialWindow {
  const longest = joinedWindows(setting.windows).toSorted((a, b) => minutesOn([b]) - minutesOn([a]))[0];
  return longest
    ? dialWindow(longest.onMinute, longest.offMinute - longest.onMinute)
    : { onMinute: 0, lengthMinutes: 0 };
}

/** Returns a window in its plain form: none at 00:00, all day at 00:00, on folded into the day. */
export function dialWindow(onMinute: number, lengthMinutes: number): DialWindow {
  if (lengthMinutes <= 0 || lengthMinutes >= DAY_MINUTES)
    return { onMinute: 0, lengthMinutes: Math.max(0, Math.min(DAY_MINUTES, lengthMinutes)) };
  return { onMinute: ((onMinute % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES, lengthMinutes };
}
