/** A day, or several, on one screen: what is on, what the machines do by the clock, what changes next. */
import { clockTimeOf, DAY_MINUTES, minuteOf } from '../../basics/minute-of-day.ts';
import type { DayView, LightDay } from '../../plan/day-view.ts';
import type { Window } from '../../plan/plan.ts';
import { drivenWords, windowListWords } from './dial-lines.ts';

export interface TodayLook {
  /** False where the terminal shows plain letters only. */
  readonly unicode: boolean;
  /** Whose work alone is told; everybody's where it is left out. */
  readonly person?: string;
}

/** Returns the days one below the other; sections without anything to say are left out. */
export function todayText(views: readonly DayView[], look: TodayLook): string {
  return `${views.map((view) => dayText(view, look)).join('\n\n')}\n`;
}

function dayText(view: DayView, look: TodayLook): string {
  const title =
    view.nowMinute === null
      ? `${view.weekday} ${view.date}`
      : `${view.weekday} ${view.date}, ${clockTimeOf(view.nowMinute)}`;
  const sections = [[title], lightSection(view, look), machineSection(view), changeSection(view)];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function lightSection(view: DayView, look: TodayLook): readonly string[] {
  if (view.lights.length === 0) return [];
  return ['Lights (wall time)', ...view.lights.flatMap((light) => lightLines(light, look))];
}

function lightLines(
  { device, dial, wall, isOnNow, changesToday, setting }: LightDay,
  look: TodayLook,
): readonly string[] {
  const now = isOnNow === null ? '' : isOnNow ? ', on now' : ', off now';
  const change =
    changesToday && setting ? [`    set it today: ${windowListWords(setting.windows)} on its own clock`] : [];
  return [
    `  ${device}${now}: ${windowListWords(wall)} (${drivenWords(dial.drives)})`,
    ...change,
    `    ${dayStrip(wall, look)}`,
  ];
}

const STRIP_STEP_MINUTES = 30;

/** Returns the day as 48 half hours, six hours a group: a full mark where the light is on for most of it. */
export function dayStrip(windows: readonly Window[], { unicode }: TodayLook): string {
  const [on, off] = unicode ? ['█', '·'] : ['#', '.'];
  const marks = Array.from({ length: DAY_MINUTES / STRIP_STEP_MINUTES }, (_, index) => {
    const middle = index * STRIP_STEP_MINUTES + STRIP_STEP_MINUTES / 2;
    return windows.some((window) => minuteOf(window.on) <= middle && middle < minuteOf(window.off)) ? on : off;
  });
  return [0, 12, 24, 36]
    .map((from) => `${String(from / 2).padStart(2, '0')} ${marks.slice(from, from + 12).join('')}`)
    .join(' ');
}

function machineSection({ switches }: DayView): readonly string[] {
  if (switches.length === 0) return [];
  return [
    'By the clock',
    ...switches.map(({ at, goes, device, drives }) => `  ${at}  ${device} ${goes}: ${drivenWords(drives)}`),
  ];
}

function changeSection({ nextChange }: DayView): readonly string[] {
  if (!nextChange) return ['No further dial change in this plan'];
  const { date, inDays, devices } = nextChange;
  return [`Next dial change: ${date}, in ${inDays} day${inDays === 1 ? '' : 's'}: ${devices.join(', ')}`];
}
