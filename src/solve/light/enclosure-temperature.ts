/**
 * The temperature of an enclosure by day and by night. Day: the room by day and what the lamps that are on at the middle of the day warm;
 * where one of them does not say (`warms`), the middle of the target band. Night: the room by night, or what a heater behind a thermostat
 * holds (the middle of the night band), whichever is more.
 */
import { civilOf, type EpochDay } from '../../basics/calendar-day.ts';
import { dstMinutesOn, type UtcOffsets } from '../../basics/utc-offsets.ts';
import { isOnAt, type MinuteWindow } from '../../plan/dial-day.ts';
import type { ClockKind, DialPlan, Range } from '../../plan/plan.ts';
import type { Care, CareEnclosure, Lamp } from '../../resolve/care.ts';
import { type DayWindows, dayWindows } from './day-windows.ts';
import { type LampHours, lampHours } from './lamp-hours.ts';
import { restShare } from './target-day-length.ts';

export interface EnclosureTemperature {
  readonly dayC: number;
  readonly nightC: number;
  /** What the day value was taken from. */
  readonly dayFrom: 'room-and-lamps' | 'band';
  readonly nightFrom: 'room' | 'heater';
}

export interface Bands {
  readonly dayC: Range | null;
  readonly nightC: Range | null;
}

/** Returns the target bands on a date; a rest's own are blended in and out over its ramps. */
export function temperatureBandsOn(enclosure: CareEnclosure, day: EpochDay): Bands {
  const { dayC, nightC } = enclosure.targets.temperature;
  const { rest } = enclosure;
  if (!rest?.temperature) return { dayC, nightC };
  const share = restShare(rest, day);
  return { dayC: blended(dayC, rest.temperature.dayC, share), nightC: blended(nightC, rest.temperature.nightC, share) };
}

function blended(usual: Range | null, resting: Range | null, share: number): Range | null {
  if (!resting || share === 0) return usual;
  if (!usual) return resting;
  return [usual[0] + (resting[0] - usual[0]) * share, usual[1] + (resting[1] - usual[1]) * share];
}

/** Works out the temperatures of one enclosure under a planned shelf; dates may be asked in any order. */
export class EnclosureClimate {
  readonly days: DayWindows;
  readonly #hours: readonly { readonly lamp: Lamp; readonly hours: LampHours }[];

  constructor(
    readonly care: Care,
    readonly enclosure: CareEnclosure,
    readonly lighting: readonly DialPlan[],
    readonly offsets: UtcOffsets,
  ) {
    this.days = dayWindows(care, lighting, enclosure.id);
    this.#hours = enclosure.lamps.map((lamp) => ({ lamp, hours: lampHours(care.plan, enclosure, lamp, lighting) }));
  }

  /** Returns the temperatures of a date of the plan. */
  on(day: EpochDay): EnclosureTemperature {
    const room = this.care.site.roomByMonth[civilOf(day).month - 1] ?? { dayC: 20, nightC: 20, humidity: 0.5 };
    const bands = temperatureBandsOn(this.enclosure, day);
    const window = this.days.windows[day - this.care.plan.from] ?? { onMinute: 720, offMinute: 720 };
    const middle = (window.onMinute + window.offMinute) / 2;
    const lit = window.offMinute > window.onMinute ? this.#lampsOnAt(middle, day) : [];
    const heated = this.#lampsOnAt(middle + 720, day).some(isRegulatedHeater);
    return { ...dayValue(room.dayC, lit, bands.dayC), ...nightValue(room.nightC, heated, bands.nightC) };
  }

  #lampsOnAt(minute: number, day: EpochDay): readonly Lamp[] {
    return this.#hours
      .filter(({ hours: { clock, byDay } }) => {
        const windows = byDay[day - this.care.plan.from] ?? [];
        return isOnAt(windows, minute + clockShiftMinutes(this.days.clock, clock, this.offsets, day));
      })
      .map(({ lamp }) => lamp);
  }
}

function dayValue(
  roomC: number,
  lit: readonly Lamp[],
  band: Range | null,
): Pick<EnclosureTemperature, 'dayC' | 'dayFrom'> {
  if (band && lit.some(({ warmsC }) => warmsC === null)) return { dayC: (band[0] + band[1]) / 2, dayFrom: 'band' };
  return { dayC: lit.reduce((sum, { warmsC }) => sum + (warmsC ?? 0), roomC), dayFrom: 'room-and-lamps' };
}

function nightValue(
  roomC: number,
  heated: boolean,
  band: Range | null,
): Pick<EnclosureTemperature, 'nightC' | 'nightFrom'> {
  const held = heated && band ? (band[0] + band[1]) / 2 : Number.NEGATIVE_INFINITY;
  return held > roomC ? { nightC: held, nightFrom: 'heater' } : { nightC: roomC, nightFrom: 'room' };
}

function isRegulatedHeater({ uses, thermostat }: Lamp): boolean {
  return uses.includes('heat') && thermostat !== 'none';
}

/** Returns the minutes to add to a time on one clock to read it on another, on a date; wall and automatic are the same. */
export function clockShiftMinutes(from: ClockKind, to: ClockKind, offsets: UtcOffsets, day: EpochDay): number {
  if ((from === 'standard') === (to === 'standard')) return 0;
  return from === 'standard' ? dstMinutesOn(offsets, day) : -dstMinutesOn(offsets, day);
}

/** Returns a window read on another clock. */
export function shifted({ onMinute, offMinute }: MinuteWindow, minutes: number): MinuteWindow {
  return minutes === 0 ? { onMinute, offMinute } : { onMinute: onMinute + minutes, offMinute: offMinute + minutes };
}
