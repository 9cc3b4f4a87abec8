/** Why a setting is as it is, from the plan alone: which lamp and day bind, what another change would buy, who said a target. */
import { epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { DialPlan, DialSetting, Plan, PlanEnclosure, TargetRecord } from '../../plan/plan.ts';
import { deviceName, drivenWords, windowListWords } from './dial-lines.ts';
import { targetWords } from './target-value.ts';
import { mistTimes, whyMists } from './why-mist.ts';

export type WhyAnswer =
  | { readonly found: true; readonly text: string }
  | { readonly found: false; readonly askable: readonly string[] };

/** Answers for a dial, an enclosure, or one of its targets (`fern/humidity.day`); without a question it lists what can be asked. */
export function why(plan: Plan, what: string | null): WhyAnswer {
  const dial = plan.lighting.find(({ device }) => device === what);
  if (dial) return { found: true, text: whyDial(plan, dial) };
  const [id, path] = splitOnce(what ?? '', '/');
  const mists = whyMist(plan, id, path);
  if (mists !== null) return { found: true, text: mists };
  const enclosure = plan.enclosures.find((each) => each.id === id);
  const records =
    enclosure?.targets.filter((record) => path === '' || record.path === path || record.path.startsWith(`${path}.`)) ??
    [];
  if (enclosure && records.length > 0) return { found: true, text: whyTargets(enclosure, records) };
  if (what === null)
    return {
      found: true,
      text: `Ask about one of\n${askable(plan)
        .map((each) => `  ${each}\n`)
        .join('')}`,
    };
  return { found: false, askable: askable(plan) };
}

function askable(plan: Plan): readonly string[] {
  return [
    ...plan.lighting.filter(({ settings }) => settings.length > 0).map(({ device }) => device),
    ...plan.enclosures.flatMap(({ id, targets }) => [
      id,
      ...plan.misting
        .filter(({ enclosure, sets }) => enclosure === id && sets.length > 0)
        .flatMap((mist) => [`${id}/mists`, ...mistTimes(plan, mist).map((at) => `${id}/${at}`)]),
      ...[...new Set(targets.map(({ path }) => path.split('.')[0] ?? ''))].map((group) => `${id}/${group}`),
    ]),
  ];
}

/** `fern/mists` is all of them, `fern/16:30` the one at that time. */
function whyMist(plan: Plan, id: string, path: string): string | null {
  const mist = plan.misting.find(({ enclosure }) => enclosure === id);
  if (!mist || !(path === 'mists' || /^\d\d:\d\d$/.test(path))) return null;
  return whyMists(plan, mist, path === 'mists' ? null : path);
}

function splitOnce(text: string, mark: string): readonly [string, string] {
  const at = text.indexOf(mark);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
}

function whyDial(plan: Plan, dial: DialPlan): string {
  return [
    `${deviceName(dial)}: pins of ${dial.stepMinutes} min, drives ${drivenWords(dial.drives)}`,
    '',
    'Settings, each with the day and lamp that bind it',
    ...dial.settings.map((setting) => `  ${settingLine(plan, dial, setting)}`),
    '',
    'What so many settings in the plan can reach',
    `  ${'settings'.padStart(8)}  ${'at worst'.padEnd(14)}${'on average'.padEnd(14)}largest change`,
    ...dial.tradeoff.map(
      (row) =>
        `${row.settings === dial.settings.length ? '>' : ' '} ${String(row.settings).padStart(8)}  ${errorWords(row.worstErrorMinutes).padEnd(14)}${errorWords(row.meanErrorMinutes).padEnd(14)}${spanWords(row.largestJumpMinutes)}`,
    ),
    '',
    nextBuys(dial),
    '',
  ].join('\n');
}

function settingLine(plan: Plan, dial: DialPlan, setting: DialSetting): string {
  const binding = bindingDay(plan, dial, setting);
  const reason =
    binding === null
      ? 'no daylight lamp hangs on it'
      : `at worst ${spanWords(binding.errorMinutes)} ${binding.isLong ? 'longer' : 'shorter'} than ${binding.lamp} needs on ${binding.date} (${spanWords(binding.targetMinutes)})`;
  return `${setting.from} to ${setting.to}  ${windowListWords(setting.windows)}: ${reason}`;
}

interface BindingDay {
  readonly date: string;
  readonly lamp: string;
  readonly targetMinutes: number;
  readonly errorMinutes: number;
  readonly isLong: boolean;
}

/** The day of a setting on which a lamp that it follows is farthest from its target. */
function bindingDay(plan: Plan, dial: DialPlan, setting: DialSetting): BindingDay | null {
  const first = epochDay(plan.from);
  const length = lengthOf(setting);
  const following = dial.lamps.filter(({ uses }) => uses.includes('daylight') || uses.includes('plants'));
  let worst: BindingDay | null = null;
  for (const lamp of following.length > 0 ? following : dial.lamps) {
    for (let day = epochDay(setting.from); day <= epochDay(setting.to); day++) {
      const target = lamp.targetMinutes[day - first];
      if (target === undefined) continue;
      const error = Math.abs(length - target);
      if (worst === null || error > worst.errorMinutes) {
        worst = {
          date: isoDateOf(day),
          lamp: `${lamp.enclosure}/${lamp.lamp}`,
          targetMinutes: target,
          errorMinutes: error,
          isLong: length > target,
        };
      }
    }
  }
  return worst;
}

function lengthOf({ windows }: DialSetting): number {
  const day = windows[0]?.day;
  return windows
    .filter((window) => window.day === day)
    .reduce((sum, { on, off }) => sum + minuteOf(off) - minuteOf(on), 0);
}

function nextBuys(dial: DialPlan): string {
  const used = dial.settings.length;
  const [now, next] = [
    dial.tradeoff.find(({ settings }) => settings === used),
    dial.tradeoff.find(({ settings }) => settings === used + 1),
  ];
  if (!now || !next)
    return 'One more setting would not bring the light nearer: this is the least possible error with these pins.';
  const better = now.worstErrorMinutes - next.worstErrorMinutes;
  return better > 0
    ? `One more setting would take ${errorWords(better)} off the worst error (${errorWords(now.worstErrorMinutes)} to ${errorWords(next.worstErrorMinutes)}).`
    : `One more setting would leave the worst error at ${errorWords(now.worstErrorMinutes)}, and take the average from ${errorWords(now.meanErrorMinutes)} to ${errorWords(next.meanErrorMinutes)}.`;
}

/** Errors to the tenth of a minute that they are solved in. */
function errorWords(minutes: number): string {
  return minutes < 60 ? `${Number(minutes.toFixed(1))} min` : spanWords(minutes);
}

function whyTargets(enclosure: PlanEnclosure, records: readonly TargetRecord[]): string {
  const lines = records.flatMap((record) => {
    const { origin } = record;
    const value = targetWords(record.value, record.unit, isShare(record));
    return [
      `  ${record.path}: ${value}`,
      `      ${originWords(record)}`,
      ...(origin.why === undefined ? [] : [`      why: ${origin.why}`]),
      ...(origin.also ?? []).map(
        (other) => `      others say: ${targetWords(other.value, record.unit, isShare(record))} (${other.source})`,
      ),
    ];
  });
  return `${enclosure.name} (${enclosure.speciesName})\n${lines.join('\n')}\n`;
}

function isShare({ path, unit }: TargetRecord): boolean {
  return (
    unit === '1' &&
    /(^|\.)(humidity|floor|ceiling|peak|day|night|mean|below)(\.|$)/.test(path) &&
    !path.includes('peaks_per_day')
  );
}

function originWords({ origin }: TargetRecord): string {
  const where =
    origin.file === undefined ? '' : `${origin.file}${origin.line === undefined ? '' : `:${origin.line}`}, `;
  const source =
    origin.citation ??
    (origin.source === 'practice'
      ? 'common practice, no source'
      : origin.source === 'ours'
        ? 'chosen for this tool'
        : origin.source);
  const read = origin.read === 'memory' ? ' (from memory, not opened)' : '';
  const said = { file: 'said by your file', profile: 'from the profile', default: 'a default' }[origin.kind];
  return `${said}: ${where}${source === undefined ? 'your own value' : `${source}${read}`}`;
}
