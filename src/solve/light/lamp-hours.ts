/** When a lamp is on: its dial's windows, all day on a live outlet, never where nothing was planned. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { joinedWindows, type MinuteWindow } from '../../plan/dial-day.ts';
import type { ClockKind, DialPlan } from '../../plan/plan.ts';
import type { CareEnclosure, Lamp } from '../../resolve/care.ts';

export interface LampHours {
  /** The clock that the windows are read on; standard on a live outlet. */
  readonly clock: ClockKind;
  /** One list a day of the plan; off may lie past 1440. */
  readonly byDay: readonly (readonly MinuteWindow[])[];
}

const ALL_DAY: readonly MinuteWindow[] = [{ onMinute: 0, offMinute: DAY_MINUTES }];
const NEVER: readonly MinuteWindow[] = [];

/** Returns the windows of a lamp on every day of the plan. */
export function lampHours(
  plan: { readonly from: EpochDay; readonly days: number },
  enclosure: CareEnclosure,
  lamp: Lamp,
  lighting: readonly DialPlan[],
): LampHours {
  const dial = lighting.find(({ lamps }) =>
    lamps.some((each) => each.enclosure === enclosure.id && each.lamp === lamp.id),
  );
  if (dial) return { clock: dial.clock, byDay: windowsByDay(plan, dial) };
  return { clock: 'standard', byDay: new Array(plan.days).fill(lamp.outlet === 'always' ? ALL_DAY : NEVER) };
}

/** Returns the windows of a dial on every day of the plan, joined over midnight; empty lists where it has no setting. */
export function windowsByDay(
  plan: { readonly from: EpochDay; readonly days: number },
  dial: DialPlan,
): readonly (readonly MinuteWindow[])[] {
  const byDay: (readonly MinuteWindow[])[] = new Array(plan.days).fill(NEVER);
  for (const { from, to, windows } of dial.settings)
    byDay.fill(
      joinedWindows(windows),
      Math.max(0, epochDay(from) - plan.from),
      Math.max(0, epochDay(to) - plan.from + 1),
    );
  return byDay;
}
