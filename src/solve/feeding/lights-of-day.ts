/** The lights of each enclosure and date in wall time, as feeding hours need them. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { UtcOffsets } from '../../basics/utc-offsets.ts';
import type { MinuteWindow } from '../../plan/dial-day.ts';
import type { ClockKind, DialPlan } from '../../plan/plan.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { type DayWindows, dayWindows } from '../light/day-windows.ts';
import { clockShiftMinutes } from '../light/enclosure-temperature.ts';
import { lampHours } from '../light/lamp-hours.ts';
import type { EnclosureDay, LightsOfDay } from './feeding-hours.ts';

/** Returns a function that knows the planned lights of every enclosure; null for dates outside the plan or without light. */
export function lightsOfDay(care: Care, lighting: readonly DialPlan[], offsets: UtcOffsets): LightsOfDay {
  const days = new Map<string, EnclosureLights>();
  return (id, day) => {
    const enclosure = care.enclosures.find((each) => each.id === id);
    if (!enclosure) return null;
    const lights = days.get(id) ?? enclosureLights(care, lighting, enclosure);
    days.set(id, lights);
    return dayOf(lights, offsets, day, day - care.plan.from);
  };
}

interface EnclosureLights {
  readonly daylight: DayWindows;
  readonly basking: readonly { readonly clock: ClockKind; readonly byDay: readonly (readonly MinuteWindow[])[] }[];
}

function enclosureLights(care: Care, lighting: readonly DialPlan[], enclosure: CareEnclosure): EnclosureLights {
  const planned = new Set(
    lighting.flatMap(({ lamps }) => lamps.filter((lamp) => lamp.enclosure === enclosure.id).map(({ lamp }) => lamp)),
  );
  const lamps = enclosure.lamps.filter(({ id, uses }) => uses.includes('basking') && planned.has(id));
  return {
    daylight: dayWindows(care, lighting, enclosure.id),
    basking: lamps.map((lamp) => lampHours(care.plan, enclosure, lamp, lighting)),
  };
}

function dayOf(
  { daylight, basking }: EnclosureLights,
  offsets: UtcOffsets,
  day: EpochDay,
  index: number,
): EnclosureDay | null {
  const window = daylight.windows[index];
  if (!window || window.offMinute === window.onMinute) return null;
  const shift = clockShiftMinutes(daylight.clock, 'wall', offsets, day);
  const offs = basking.flatMap(({ clock, byDay }) => {
    const last = (byDay[index] ?? []).at(-1);
    return last ? [last.offMinute + clockShiftMinutes(clock, 'wall', offsets, day)] : [];
  });
  return {
    lightsOnWallMinute: window.onMinute + shift,
    lightsOffWallMinute: window.offMinute + shift,
    baskingOffWallMinute: offs.length > 0 ? Math.max(...offs) : null,
    wallLessAnimalMinutes: shift,
  };
}
