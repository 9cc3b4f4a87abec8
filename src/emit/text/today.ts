/** A day, or several, on one screen: what is on, what the machines do by the clock, what people do, what is normal, what changes next. */

import { clockTimeOf, DAY_MINUTES, minuteOf } from '../../basics/minute-of-day.ts';
import type { DayView, LightDay } from '../../plan/day-view.ts';
import { dateInWords } from '../../plan/phrases/date-words.ts';
import { noticeWords } from '../../plan/phrases/notice-words.ts';
import { windowsInWords } from '../../plan/phrases/pin-words.ts';
import type { Language, UnitSystem, Window } from '../../plan/plan.ts';
import { runLength } from '../../plan/words/run-length.ts';
import { type Words, words } from '../../plan/words/words.ts';
import { changeStrip } from './dial-strip.ts';
import { personLines, workLines } from './today-people.ts';
import { watchLines } from './today-watch.ts';

export interface TodayLook {
  /** False where the terminal shows plain letters only. */
  readonly unicode: boolean;
  readonly language?: Language;
  readonly units?: UnitSystem;
  /** Telephone numbers as the file has them. */
  readonly contacts?: Readonly<Partial<Record<'keeper' | 'vet' | 'note', string>>>;
}

/**
 * Returns the days one below the other; sections without anything to say are left out. Of several days, what the machines do is told
 * where it differs from the day before, and what is normal, the next change and the work at the end.
 */
export function todayText(views: readonly DayView[], look: TodayLook): string {
  const told = words(look.language ?? 'en');
  const days = views.map((view, index) => dayText(view, views[index - 1] ?? null, look, told));
  const last = views.at(-1);
  const ends = last ? endSections(views, last, look, told) : [];
  return `${[...days, ...ends].join('\n\n')}\n`;
}

function dayText(view: DayView, before: DayView | null, look: TodayLook, told: Words): string {
  const sections = [
    [titleOf(view, told)],
    nowSection(view, told),
    ...machineSections(view, before, look, told),
    [...noticeWords(view, told)],
    ...view.people.map((person) => personLines(person, view.date, told)),
    view.people.length === 0 ? [told.today.nobody] : [],
  ];
  return inSections(sections);
}

function inSections(sections: readonly (readonly string[])[]): string {
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function endSections(views: readonly DayView[], last: DayView, look: TodayLook, told: Words): readonly string[] {
  const sections = [
    watchLines(last.watch, { units: look.units ?? 'metric', contacts: look.contacts ?? {} }, told),
    views.length > 1 ? workLines(views, told) : [],
    [changeLine(last, told)],
  ];
  return sections.filter((lines) => lines.length > 0).map((lines) => lines.join('\n'));
}

function titleOf(view: DayView, told: Words): string {
  const date = dateInWords(view.date, told);
  return view.nowMinute === null ? date : `${date}, ${clockTimeOf(view.nowMinute)}`;
}

/** What is on at this minute, and what the machines do next. */
function nowSection({ nowMinute, lights, mists, switches }: DayView, told: Words): readonly string[] {
  if (nowMinute === null) return [];
  const running = mists.filter(({ at, seconds }) => {
    const on = minuteOf(at);
    return on <= nowMinute && nowMinute < on + seconds / 60;
  });
  const on = [
    ...lights.filter(({ isOnNow }) => isOnNow === true).map(({ device }) => device),
    ...running.map(({ pump }) => pump),
  ];
  const next = eventsOf({ mists, switches }, told).find(({ at }) => minuteOf(at) > nowMinute);
  return [told.today.now(on), ...(next ? [`  ${told.today.nextEvent(next.at, next.what)}`] : [])];
}

function machineSections(
  view: DayView,
  before: DayView | null,
  look: TodayLook,
  told: Words,
): readonly (readonly string[])[] {
  const clock = clockSection(view, told);
  const lights = lightSection(view, look, told);
  if (before === null) return [lights, clock];
  const isSame =
    !view.lights.some(({ changesToday }) => changesToday) &&
    wallOf(view) === wallOf(before) &&
    clock.join('\n') === clockSection(before, told).join('\n');
  return isSame ? [lights.length + clock.length > 0 ? [told.today.machinesAsBefore] : []] : [lights, clock];
}

/** When each light is on, for comparing days. */
function wallOf({ lights }: DayView): string {
  return JSON.stringify(lights.map(({ device, wall }) => [device, wall.map(({ on, off }) => [on, off])]));
}

function lightSection(view: DayView, look: TodayLook, told: Words): readonly string[] {
  const lines = [
    ...view.lights.flatMap((light) => lightLines(light, look, told)),
    ...view.notPlanned.map(({ what, why }) => `  ${told.today.notPlanned(what, told.shelf.why(why))}`),
  ];
  return lines.length === 0 ? [] : [told.today.lights, ...lines];
}

function lightLines(
  { device, dial, driven, wall, setting, changesToday, before }: LightDay,
  look: TodayLook,
  told: Words,
): readonly string[] {
  const change =
    changesToday && setting
      ? [
          told.today.setToday(windowsInWords(setting.windows, told.shelf)),
          ...(before
            ? changeStrip(dial, before.slots, setting.slots, { unicode: look.unicode, words: told.shelf })
            : []),
        ]
      : [];
  return [
    `  ${device}: ${windowsInWords(wall, told.shelf)} (${told.shelf.list(driven)})`,
    ...change.map((line) => `    ${line}`),
    `    ${dayStrip(wall, look)}`,
  ];
}

const STRIP_STEP_MINUTES = 30;

/** Returns the day as 48 half hours, six hours a group: a full mark where the light is on for most of it. */
export function dayStrip(windows: readonly Window[], { unicode }: Pick<TodayLook, 'unicode'>): string {
  const [on, off] = unicode ? ['█', '·'] : ['#', '.'];
  const marks = Array.from({ length: DAY_MINUTES / STRIP_STEP_MINUTES }, (_, index) => {
    const middle = index * STRIP_STEP_MINUTES + STRIP_STEP_MINUTES / 2;
    return windows.some((window) => minuteOf(window.on) <= middle && middle < minuteOf(window.off)) ? on : off;
  });
  return [0, 12, 24, 36]
    .map((from) => `${String(from / 2).padStart(2, '0')} ${marks.slice(from, from + 12).join('')}`)
    .join(' ');
}

interface MachineEvent {
  readonly at: string;
  readonly what: string;
}

function eventsOf({ switches, mists }: Pick<DayView, 'switches' | 'mists'>, told: Words): readonly MachineEvent[] {
  const { today } = told;
  return [
    ...switches.map(({ at, goes, device, driven }) => ({
      at,
      what: today.lightGoes(device, today.goes[goes], told.shelf.list(driven)),
    })),
    ...mists.map(({ at, pump, names, seconds }) => ({
      at,
      what: today.mists(pump, told.shelf.list(names), runLength(seconds)),
    })),
  ].toSorted((a, b) => minuteOf(a.at) - minuteOf(b.at));
}

function clockSection(view: DayView, told: Words): readonly string[] {
  const events = eventsOf(view, told);
  return events.length === 0 ? [] : [told.today.clock, ...events.map(({ at, what }) => `  ${at}  ${what}`)];
}

function changeLine({ nextChange }: DayView, told: Words): string {
  if (!nextChange) return told.today.noChange;
  const { date, inDays, devices } = nextChange;
  return told.today.nextChange(dateInWords(date, told), inDays, told.shelf.list(devices));
}
