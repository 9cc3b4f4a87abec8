/** What a compile says when it is done: what to set today, when the next change is, how far the light is from its target, every warning. */

import type { IsoDate } from '../../basics/civil.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { Diagnostic, Weight } from '../../diagnostics/diagnostic.ts';
import { dayView, type LightDay } from '../../plan/day-view.ts';
import { settingOn } from '../../plan/dial-day.ts';
import type { DialPlan, Plan } from '../../plan/plan.ts';
import { workDays, workWeeks } from '../../plan/work-load.ts';
import { deviceName, windowListWords } from './dial-lines.ts';

/**
 * Returns the summary, one fact a line.
 *
 * @param folder where the plan was written, or null where nothing was
 * @param today the day whose settings are told; the day the revision was made where it is left out
 */
export function summaryText(plan: Plan, folder: string | null, today: IsoDate = plan.made): string {
  const date = within(plan, today);
  const view = dayView(plan, date, null);
  const lines = [
    `${plan.name}: ${plan.from} to ${plan.to}, revision ${plan.revision}`,
    ...section(`Set on ${date}`, view.lights.map(setLine)),
    ...section(
      'Next change',
      view.nextChange ? [nextLine(plan, view.nextChange.date, view.nextChange.devices)] : ['none in this plan'],
    ),
    ...section(
      'Light against its target, at worst',
      plan.lighting.filter(({ settings }) => settings.length > 0).map(errorLine),
    ),
    ...section('Work', workLines(plan)),
    ...section(
      'Not planned',
      plan.notPlanned.map(({ lamp, why }) => `${lamp}: ${why}`),
    ),
    ...section(`Warnings (${plan.warnings.length})`, plan.warnings.map(warningLine)),
    ...(folder === null
      ? []
      : ['', `written to ${folder}`, `  at the shelf: ${folder}/settings.txt; to look at: ${folder}/index.html`]),
  ];
  return `${lines.join('\n')}\n`;
}

function within(plan: Plan, date: IsoDate): IsoDate {
  const [, middle = plan.from] = [plan.from, date, plan.to].sort();
  return middle;
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
}

function setLine({ dial, setting }: LightDay): string {
  return `${deviceName(dial)}: ${setting ? windowListWords(setting.windows) : 'nothing to set'}`;
}

function nextLine(plan: Plan, date: IsoDate, devices: readonly string[]): string {
  const what = devices.flatMap((id) => {
    const dial = plan.lighting.find(({ device }) => device === id);
    const setting = dial && settingOn(dial, date);
    return [setting ? `${id}: ${windowListWords(setting.windows)}` : `${id}, new mists`];
  });
  return `${date}: ${what.join('; ')}`;
}

function errorLine(dial: DialPlan): string {
  const { device, settings, worstErrorMinutes, meanErrorMinutes } = dial;
  return `${device}: ${spanWords(worstErrorMinutes)}, ${spanWords(meanErrorMinutes)} on average, with ${settings.length} setting${settings.length === 1 ? '' : 's'}`;
}

/** Each person's hours a week, with the longest week. */
function workLines(plan: Plan): readonly string[] {
  const weeks = workWeeks(workDays(plan));
  const people = [...new Set(weeks.map(({ person }) => person))];
  return people.map((person) => {
    const own = weeks.filter((week) => week.person === person);
    const mean = own.reduce((sum, { minutes }) => sum + minutes, 0) / own.length;
    const longest = own.reduce((most, week) => (week.minutes > most.minutes ? week : most));
    const most = `${spanWords(longest.minutes)} in the week of ${longest.from}`;
    return `${person}: about ${spanWords(mean)} a week, at most ${most}`;
  });
}

function warningLine({ code, message, file, line }: Plan['warnings'][number]): string {
  return `${file === null ? '' : `${file}:${line ?? 1}: `}${message} (${code})`;
}

const COUNTED: readonly (readonly [Weight, string, string])[] = [
  ['error', 'error', 'errors'],
  ['refusal', 'part refused', 'parts refused'],
  ['warning', 'warning', 'warnings'],
  ['note', 'note', 'notes'],
];

/** Returns one line on what a check found, for instance `home.yaml: can be planned; 3 warnings, 1 note`. */
export function countsText(file: string, diagnostics: readonly Diagnostic[], hasPlan: boolean): string {
  const counts = COUNTED.flatMap(([weight, one, many]) => {
    const count = diagnostics.filter((each) => each.weight === weight).length;
    return count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  });
  const verdict = hasPlan ? 'can be planned' : 'cannot be planned';
  return `${file}: ${verdict}; ${counts.length === 0 ? 'nothing to say' : counts.join(', ')}\n`;
}
