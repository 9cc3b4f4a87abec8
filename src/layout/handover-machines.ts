/** What the machines do on their own while the keeper is away, by the clock on the wall. */

import { epochDay } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { minuteOf } from '../basics/minute-of-day.ts';
import { plainLine } from '../basics/plain-line.ts';
import { wallChanges } from '../plan/clock-changes.ts';
import { wallWindowsOn } from '../plan/day-view.ts';
import { settingOn } from '../plan/dial-day.ts';
import type { DialPlan, Plan } from '../plan/plan.ts';
import { siteOffsets } from '../plan/site-offsets.ts';
import { mistsOn } from '../plan/water-day.ts';
import { runLength } from '../plan/words/run-length.ts';
import { words as allWords } from '../plan/words/words.ts';
import type { HandoverMatter } from './handover-matter.ts';
import { dayAndDate } from './printed-values.ts';
import { shortName } from './short-name.ts';

/** Returns a line a timer, pump and dripper; what changes within the dates stands behind. */
export function machineLines(matter: HandoverMatter): readonly string[] {
  const { plan, said } = matter;
  const lines = [
    ...plan.lighting.filter(({ settings }) => settings.length > 0).map((dial) => dialLine(dial, matter)),
    ...mistLines(matter),
    ...plan.hardware.filter(({ kind }) => kind === 'dripper').map(({ id }) => said.dripperLine(plainLine(id))),
  ];
  return lines.length === 0 ? [said.nothingRuns] : [...lines, ...clockLines(matter)];
}

/** Days on which a text differs from the day before, with the text; the first day always. */
function whenOther(
  days: readonly IsoDate[],
  textOn: (date: IsoDate) => string,
): readonly { readonly date: IsoDate; readonly text: string }[] {
  const told: { readonly date: IsoDate; readonly text: string }[] = [];
  for (const date of days) {
    const text = textOn(date);
    if (told.at(-1)?.text !== text) told.push({ date, text });
  }
  return told;
}

function dialLine(dial: DialPlan, { plan, span, said, words }: HandoverMatter): string {
  const [first, ...later] = whenOther(span.days, (date) => windowsOn(dial, date, said));
  const drives = `${drivenBy(dial, plan, words.list)} (${plainLine(dial.device)})`;
  return [
    said.dialLine(drives, first?.text ?? said.dialOff),
    ...later.map(({ date, text }) => said.dialChange(dayAndDate(date, words), text)),
  ].join(' ');
}

function drivenBy({ lamps, drives }: DialPlan, plan: Plan, list: (items: readonly string[]) => string): string {
  const named = lamps.map(({ enclosure, lamp }) => {
    const name = plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure;
    return shortName(`${name} ${lamp}`);
  });
  return list(named.length > 0 ? named : drives.map((each) => plainLine(each.replace(/^[a-z]+:/, ''))));
}

function windowsOn(dial: DialPlan, date: IsoDate, said: HandoverMatter['said']): string {
  const setting = settingOn(dial, date);
  const windows = setting ? joined(wallWindowsOn(setting, date)) : [];
  return windows.length === 0 ? said.dialOff : windows.map(([on, off]) => said.onOff(on, off)).join('; ');
}

/** Windows that meet at midnight are one. */
function joined(
  windows: readonly { readonly on: string; readonly off: string }[],
): readonly (readonly [string, string])[] {
  const sorted = windows.map(({ on, off }) => [on, off] as const).toSorted((a, b) => minuteOf(a[0]) - minuteOf(b[0]));
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last || first === last || first[0] !== '00:00' || last[1] !== '24:00') return sorted;
  return [...sorted.slice(1, -1), [last[0], first[1]]];
}

function mistLines({ plan, span, said, words }: HandoverMatter): readonly string[] {
  const names = [...new Set(span.days.flatMap((date) => mistsOn(plan, date).map((mist) => words.list(mist.names))))];
  return names.map((who) => {
    const timesOn = (date: IsoDate): string => {
      const own = mistsOn(plan, date).filter((mist) => words.list(mist.names) === who);
      return own.length === 0
        ? words.mistNone
        : words.list(own.map(({ at, seconds }) => said.mistTime(at, runLength(seconds)).replaceAll(' ', '\u00a0')));
    };
    const [first, ...later] = whenOther(span.days, timesOn);
    return [
      said.mistLine(plainLine(who), first?.text ?? ''),
      ...later.map(({ date, text }) => said.dialChange(dayAndDate(date, words), text)),
    ].join(' ');
  });
}

/** Changes of the clocks within the dates. */
function clockLines({ plan, span, said, words }: HandoverMatter): readonly string[] {
  const timers = plan.hardware.filter(({ clock }) => clock !== null);
  const leave = timers.filter(({ clock }) => clock !== 'wall').map(({ id }) => plainLine(id));
  const turn = timers.filter(({ clock }) => clock === 'wall').map(({ id }) => plainLine(id));
  return wallChanges(siteOffsets(plan), epochDay(span.from), epochDay(span.to)).map(({ date, direction, minutes }) => {
    const by = allWords(plan.language).shelf.span(Math.floor(minutes / 60), minutes % 60);
    const told = direction === 'forward' ? said.clocksForward : said.clocksBack;
    return [
      told(dayAndDate(date, words), by),
      ...(leave.length === 0 ? [] : [said.clocksLeave(words.list(leave))]),
      ...(turn.length === 0 ? [] : [said.clocksTurn(words.list(turn))]),
    ].join(' ');
  });
}
