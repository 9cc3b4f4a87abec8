/**
 * One date of a plan as a person meets it: what the machines do by the clock on the wall, what is on now, what people do, what is
 * normal, what changes next.
 */
import { epochDay, isoDateOf, weekdayOf } from '../basics/calendar-day.ts';
import type { ClockTime, IsoDate, Weekday } from '../basics/civil.ts';
import { minuteOf } from '../basics/minute-of-day.ts';
import { type WallChange, wallChanges } from './clock-changes.ts';
import { dialTasks, settingOn } from './dial-day.ts';
import { absenceOn, nextVisit, type PersonDay, peopleDay } from './people-day.ts';
import { loadName } from './phrases/load-words.ts';
import type { DialPlan, DialSetting, Plan, Window } from './plan.ts';
import { siteOffsets } from './site-offsets.ts';
import { type WatchFor, watchFor } from './watch-for.ts';
import { mistChanges, mistsOn, type PumpMist } from './water-day.ts';

export interface DayView {
  readonly date: IsoDate;
  readonly weekday: Weekday;
  /** Wall-clock minute of the day, or null where the date is not today. */
  readonly nowMinute: number | null;
  /** One a timer that drives lamps, in the plan's order. */
  readonly lights: readonly LightDay[];
  /** One a timer of which no light is planned, and one a lamp that is left out otherwise. */
  readonly notPlanned: readonly LeftOut[];
  /** Everything that goes on or off, by wall time, then by device. */
  readonly switches: readonly Switch[];
  /** Mists of pumps by wall time. */
  readonly mists: readonly PumpMist[];
  /** Those who have anything to do, or the one person who was asked for. */
  readonly people: readonly PersonDay[];
  readonly absence: AbsenceDay | null;
  /** What the clocks do on this date; null on all but two dates a year. */
  readonly clockChange: ClockChangeDay | null;
  /** One an enclosure. */
  readonly watch: readonly WatchFor[];
  /** The first change of a dial or of mists after this date; null where none is left. */
  readonly nextChange: NextChange | null;
}

export interface AbsenceDay {
  readonly to: IsoDate;
  /** Empty where nobody comes. */
  readonly sitter: string;
  readonly comesToday: boolean;
  readonly comesNext: IsoDate | null;
}

export interface ClockChangeDay {
  readonly direction: WallChange['direction'];
  readonly minutes: number;
  /** Timers that are left alone: they stay on standard time or change by themselves. */
  readonly leave: readonly string[];
}

export interface LightDay {
  readonly device: string;
  readonly dial: DialPlan;
  /** What hangs on it, by name. */
  readonly driven: readonly string[];
  readonly setting: DialSetting | null;
  /** In wall time; windows end at 24:00. */
  readonly wall: readonly Window[];
  /** null where the date is not today. */
  readonly isOnNow: boolean | null;
  /** Whether this setting begins on this date. */
  readonly changesToday: boolean;
  /** The setting that it takes the place of today; null on all other dates. */
  readonly before: DialSetting | null;
}

export interface LeftOut {
  /** The timer, or the lamp by name. */
  readonly what: string;
  readonly why: string;
}

export interface Switch {
  readonly at: ClockTime;
  readonly goes: 'on' | 'off';
  readonly device: string;
  readonly drives: readonly string[];
  /** The same by name. */
  readonly driven: readonly string[];
}

export interface NextChange {
  readonly date: IsoDate;
  readonly inDays: number;
  readonly devices: readonly string[];
}

/**
 * Returns the view of a date; outside the plan it has no lights.
 *
 * @param person whose work alone is told; null: everybody's
 */
export function dayView(plan: Plan, date: IsoDate, nowMinute: number | null, person: string | null = null): DayView {
  const lights = plan.lighting
    .filter(({ settings }) => settings.length > 0)
    .map((dial) => lightDay(plan, dial, date, nowMinute));
  return {
    date,
    weekday: weekdayOf(epochDay(date)),
    nowMinute,
    lights,
    notPlanned: leftOut(plan),
    switches: lights.flatMap(switchesOf).toSorted(bySwitchTime),
    mists: mistsOn(plan, date),
    people: peopleDay(plan, date).filter((each) => person === null || each.person === person),
    absence: absenceDay(plan, date),
    clockChange: clockChangeDay(plan, date),
    watch: watchFor(plan, date),
    nextChange: nextChange(plan, date),
  };
}

/** Where nothing is planned of a timer, its lamps are left out together, for the reason of the first. */
function leftOut(plan: Plan): readonly LeftOut[] {
  const lit = plan.lighting.filter(({ settings }) => settings.length > 0).map(({ device }) => device);
  const whys = new Map<string, string>();
  for (const { lamp, device, why } of plan.notPlanned) {
    const what = device === null || lit.includes(device) ? loadName(plan, `lamp:${lamp}`) : device;
    whys.set(what, whys.get(what) ?? why);
  }
  return [...whys].map(([what, why]) => ({ what, why }));
}

function lightDay(plan: Plan, dial: DialPlan, date: IsoDate, nowMinute: number | null): LightDay {
  const setting = settingOn(dial, date);
  const wall = setting ? wallWindowsOn(setting, date) : [];
  const task = dialTasks(dial).find((each) => each.date === date);
  return {
    device: dial.device,
    dial,
    driven: dial.drives.map((load) => loadName(plan, load)),
    setting,
    wall,
    isOnNow:
      nowMinute === null ? null : wall.some(({ on, off }) => minuteOf(on) <= nowMinute && nowMinute < minuteOf(off)),
    changesToday: task !== undefined && (task.before !== null || date === dial.setOn),
    before: task?.before ?? null,
  };
}

/** Returns the windows of a setting on a date in wall time. */
export function wallWindowsOn(setting: DialSetting, date: IsoDate): readonly Window[] {
  const weekday = weekdayOf(epochDay(date));
  const span = setting.wall.find(({ from, to }) => from <= date && date <= to);
  return (span?.windows ?? []).filter(({ day }) => day === undefined || day === weekday);
}

/** Midnight is no switch where the light runs on over it. */
function switchesOf({ device, dial, driven, wall }: LightDay): readonly Switch[] {
  const runsOver = wall.some(({ on }) => on === '00:00') && wall.some(({ off }) => off === '24:00');
  const sides = wall.flatMap(({ on, off }) => [
    { at: on, goes: 'on' as const },
    { at: off, goes: 'off' as const },
  ]);
  return sides
    .filter(({ at }) => !(runsOver && (at === '00:00' || at === '24:00')))
    .map(({ at, goes }) => ({ at, goes, device, drives: dial.drives, driven }));
}

function bySwitchTime(a: Switch, b: Switch): number {
  return minuteOf(a.at) - minuteOf(b.at) || (a.device < b.device ? -1 : a.device > b.device ? 1 : 0);
}

function absenceDay(plan: Plan, date: IsoDate): AbsenceDay | null {
  const absence = absenceOn(plan, date);
  if (!absence) return null;
  const { to, sitter, visits } = absence;
  return { to, sitter, comesToday: visits.includes(date), comesNext: nextVisit(absence, date) };
}

function clockChangeDay(plan: Plan, date: IsoDate): ClockChangeDay | null {
  const [change] = wallChanges(siteOffsets(plan), epochDay(date), epochDay(date));
  if (!change) return null;
  const leave = plan.hardware.filter(({ clock }) => clock === 'standard' || clock === 'automatic').map(({ id }) => id);
  return { direction: change.direction, minutes: change.minutes, leave };
}

function nextChange(plan: Plan, date: IsoDate): NextChange | null {
  const dials = plan.lighting.flatMap(({ device, settings }) =>
    settings.slice(1).map(({ from }) => ({ device, from })),
  );
  const mists = mistChanges(plan).map(({ device, date: from }) => ({ device, from }));
  const later = [...dials, ...mists].filter(({ from }) => from > date);
  const first = later.map(({ from }) => from).toSorted()[0];
  if (first === undefined) return null;
  return {
    date: first,
    inDays: epochDay(first) - epochDay(date),
    devices: later.filter(({ from }) => from === first).map(({ device }) => device),
  };
}

/** Returns the dates of a view of several days. */
export function datesFrom(date: IsoDate, days: number): readonly IsoDate[] {
  return Array.from({ length: days }, (_, index) => isoDateOf(epochDay(date) + index));
}
