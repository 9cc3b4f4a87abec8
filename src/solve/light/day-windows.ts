/**
 * The daylight window of an enclosure on every date of the plan, on the animal's clock: that of the dial of its daylight lamp. Where no
 * dial switches one: standard time, the target of each month's 15th.
 */
import { civilOf, type EpochDay, epochDayOf } from '../../basics/calendar-day.ts';
import { DAY_MINUTES } from '../../basics/minute-of-day.ts';
import { type MinuteWindow, minutesOn } from '../../plan/dial-day.ts';
import type { ClockKind, DialPlan } from '../../plan/plan.ts';
import type { Care, CareEnclosure, DayPlacement } from '../../resolve/care.ts';
import { windowsByDay } from './lamp-hours.ts';
import { targetDayLengthTenths } from './target-day-length.ts';

export interface DayWindows {
  readonly clock: ClockKind;
  /** The dial of the daylight lamp; null where none switches one. */
  readonly device: string | null;
  /** One a day of the plan; off may lie past 1440; off equal to on: no light that day. */
  readonly windows: readonly MinuteWindow[];
}

/** Returns the daylight windows of one enclosure; throws where the household has no such enclosure. */
export function dayWindows(care: Care, lighting: readonly DialPlan[], enclosureId: string): DayWindows {
  const enclosure = care.enclosures.find(({ id }) => id === enclosureId);
  if (!enclosure) throw new Error(`no enclosure ${enclosureId}`);
  const dial = daylightDial(enclosure, lighting);
  if (!dial) return { clock: 'standard', device: null, windows: monthlyWindows(care, enclosure) };
  return { clock: dial.clock, device: dial.device, windows: dialWindows(care, dial) };
}

/** Returns the planned dial of the enclosure's first daylight lamp that has one, or null. */
function daylightDial(enclosure: CareEnclosure, lighting: readonly DialPlan[]): DialPlan | null {
  for (const lamp of enclosure.lamps) {
    if (!lamp.uses.includes('daylight')) continue;
    const dial = lighting.find(
      ({ settings, lamps }) =>
        settings.length > 0 && lamps.some((each) => each.enclosure === enclosure.id && each.lamp === lamp.id),
    );
    if (dial) return dial;
  }
  return null;
}

function dialWindows(care: Care, dial: DialPlan): readonly MinuteWindow[] {
  const known = new Map<readonly MinuteWindow[], MinuteWindow>();
  return windowsByDay(care.plan, dial).map((windows) => {
    const window = known.get(windows) ?? widest(windows);
    known.set(windows, window);
    return window;
  });
}

const NO_LIGHT: MinuteWindow = { onMinute: DAY_MINUTES / 2, offMinute: DAY_MINUTES / 2 };

function widest(windows: readonly MinuteWindow[]): MinuteWindow {
  return windows.toSorted((a, b) => minutesOn([b]) - minutesOn([a]))[0] ?? NO_LIGHT;
}

/** The window that a month's 15th asks for, to the whole minute, held through that month. */
function monthlyWindows(care: Care, enclosure: CareEnclosure): readonly MinuteWindow[] {
  const byMonth = new Map<EpochDay, MinuteWindow>();
  return Array.from({ length: care.plan.days }, (_, index) => {
    const { year, month } = civilOf(care.plan.from + index);
    const fifteenth = epochDayOf(year, month, 15);
    const window = byMonth.get(fifteenth) ?? placedExactly(targetOn(care, enclosure, fifteenth), enclosure.targets.day);
    byMonth.set(fifteenth, window);
    return window;
  });
}

function targetOn(care: Care, enclosure: CareEnclosure, day: EpochDay): number {
  const { photoperiod, rangeLatitude } = enclosure.targets;
  return (targetDayLengthTenths(photoperiod, enclosure.rest, care.site, rangeLatitude, day, 1)[0] ?? 0) / 10;
}

/** Returns the window of a length as the placement asks for it, to the whole minute, on in [0, 1440). */
function placedExactly(lengthMinutes: number, { anchor }: DayPlacement): MinuteWindow {
  const share = anchor.kind === 'midday' ? 0.5 : anchor.kind === 'lights-on' ? 0 : 1;
  const on = Math.floor(anchor.minute - lengthMinutes * share + 0.5);
  const onMinute = ((on % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
  return { onMinute, offMinute: onMinute + Math.round(lengthMinutes) };
}
