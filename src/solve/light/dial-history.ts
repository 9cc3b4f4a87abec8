/** What stood on a dial before: in an earlier plan, else as the household file says. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import type { DialWindow } from '../../hardware/pins.ts';
import { joinedWindows, minutesOn } from '../../plan/dial-day.ts';
import type { DialPlan, DialSetting, Plan } from '../../plan/plan.ts';
import type { CarePlan } from '../../resolve/care.ts';
import { type LampTimer, stepMinutesOf } from './dial-group.ts';
import type { EarlierWindow, PastSettings } from './dial-problem.ts';

export interface DialHistory {
  readonly earlier: EarlierWindow | null;
  readonly past: PastSettings | null;
  /** The settings of the past as the earlier plan wrote them, from the plan's first day to the day before the re-plan. */
  readonly written: readonly DialSetting[];
  /** The day on which it is first set, where it comes, or came, into a plan that had begun; else null. */
  readonly setOn: IsoDate | null;
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
  const past = written.length > 0 ? pastOf(written, plan, today, isOffStep(written, timer)) : null;
  const setOn = earlier ? setOnOf(timer, dial, plan, Math.min(today, plan.from + plan.days - 1)) : null;
  return { earlier: before ?? nowOf(timer), past, written, setOn };
}

/** A dial on which nothing stood, or one of other pins in its place, is set on the day of the re-plan. */
function setOnOf(timer: LampTimer, dial: DialPlan | undefined, { from }: CarePlan, today: EpochDay): IsoDate | null {
  const isOld = dial !== undefined && dial.settings.length > 0 && isSameKind(dial, timer);
  const setOn = isOld ? (dial.setOn ?? null) : isoDateOf(today);
  return setOn !== null && setOn > isoDateOf(from) ? setOn : null;
}

function isSameKind({ stepMinutes, turnsInDays, pins }: DialPlan, timer: LampTimer): boolean {
  const now = timer.kind === 'pin-dial' ? timer : { turnsInDays: 1, pins: null };
  return stepMinutes === stepMinutesOf(timer) && turnsInDays === now.turnsInDays && pins === now.pins;
}

function nowOf(timer: LampTimer): EarlierWindow | null {
  if (timer.kind !== 'pin-dial' || !timer.now) return null;
  const { onMinute, offMinute } = timer.now;
  return { window: dialWindow(onMinute, (offMinute - onMinute + DAY_MINUTES) % DAY_MINUTES), daysSinceChange: null };
}

/** What stood on the dial the day before the plan; a plan that had ended left its last setting there. */
function windowBefore(dial: DialPlan, from: EpochDay): EarlierWindow | null {
  const setting = inOrder(dial.settings).findLast((each) => each.from < isoDateOf(from));
  if (!setting) return null;
  return { window: windowOfSetting(setting), daysSinceChange: from - epochDay(setting.from) };
}

/**
 * Returns what stood from the plan's first day to the day before the re-plan, or to the plan's last where that is over. A dial goes on showing
 * its last setting where the earlier plan had ended, and is taken to have shown its first where that one began later. Empty where the earlier
 * plan had nothing for it by then.
 */
function writtenPast(dial: DialPlan, plan: CarePlan, today: EpochDay): readonly DialSetting[] {
  if (today <= plan.from) return [];
  const [from, to] = [isoDateOf(plan.from), isoDateOf(Math.min(today, plan.from + plan.days) - 1)];
  const begun = inOrder(dial.settings).filter((setting) => setting.from <= to);
  const standing = begun.filter(({ from: since }, index) => {
    const next = begun[index + 1];
    return next === undefined || (next.from > from && next.from > since);
  });
  return standing.map((setting, index) => {
    const next = standing[index + 1];
    const span = {
      from: index === 0 ? from : later(setting.from, from),
      to: next ? isoDateOf(epochDay(next.from) - 1) : to,
    };
    return { ...setting, ...span, wall: inside(setting.wall, span.from, span.to) };
  });
}

function inOrder(settings: readonly DialSetting[]): readonly DialSetting[] {
  return settings.toSorted((a, b) => (a.from < b.from ? -1 : 1));
}

interface Dated {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

function inside<T extends Dated>(spans: readonly T[], from: IsoDate, to: IsoDate): readonly T[] {
  return spans
    .filter((span) => span.from <= to && span.to >= from)
    .map((span) => ({ ...span, from: later(span.from, from), to: earlier(span.to, to) }));
}

function later(a: IsoDate, b: IsoDate): IsoDate {
  return [a, b].sort().at(-1) ?? a;
}

function earlier(a: IsoDate, b: IsoDate): IsoDate {
  return [a, b].sort()[0] ?? a;
}

/** Returns whether what stands lies between the steps of the timer that has come in the place of another. */
function isOffStep(written: readonly DialSetting[], timer: LampTimer): boolean {
  const step = stepMinutesOf(timer);
  const last = written.at(-1);
  return joinedWindows(last?.windows ?? []).some(
    ({ onMinute, offMinute }) => onMinute % step !== 0 || offMinute % step !== 0,
  );
}

function pastOf(written: readonly DialSetting[], plan: CarePlan, today: EpochDay, isReplaced: boolean): PastSettings {
  return {
    settings: written.map((setting) => ({
      fromDayIndex: epochDay(setting.from) - plan.from,
      window: windowOfSetting(setting),
    })),
    untilDayIndex: Math.min(today - plan.from, plan.days),
    ...(isReplaced ? { isReplaced } : {}),
  };
}

/** Returns the longest window of a setting. */
function windowOfSetting(setting: DialSetting): DialWindow {
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
