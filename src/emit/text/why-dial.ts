/** Why a dial is set as it is: what places its window, which lamp and day bind, which limit, and what another would buy. */
import { epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import { spanWords } from '../../basics/span-words.ts';
import type { DialChoice } from '../../plan/dial-choices.ts';
import type { DialLamp, DialPlan, DialSetting, Plan } from '../../plan/plan.ts';
import { deviceName, drivenWords, windowListWords } from './dial-lines.ts';
import { originWords } from './origin-words.ts';
import { targetWords } from './target-value.ts';

/** Returns the whole answer for a dial; `choices` from the solver, none where it was not asked. */
export function whyDial(plan: Plan, dial: DialPlan, choices: readonly DialChoice[]): string {
  return [
    `${deviceName(dial)}: pins of ${dial.stepMinutes} min, drives ${drivenWords(dial.drives)}`,
    ...placementLines(plan, dial),
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
    ...choiceLines(choices),
    '',
  ].join('\n');
}

/** Returns the answer for a lamp: its timer, what it needs, how far off it is. */
export function whyLamp(dial: DialPlan, lamp: DialLamp): string {
  const targets = lamp.targetMinutes;
  const [low, high] = [Math.min(...targets), Math.max(...targets)];
  const needs =
    targets.length === 0
      ? 'it has no hours of its own and runs while the timer is on'
      : `it needs ${low === high ? '' : `${spanWords(low)} to `}${spanWords(high)} a day, and is at worst ${errorWords(lamp.worstErrorMinutes)} off`;
  return `${lamp.enclosure}/${lamp.lamp} (${lamp.uses.join(', ')}; ${lamp.powerW} W) hangs on ${dial.device}
  ${needs}
  ask about ${dial.device} for its settings and what would be nearer
`;
}

/** What says where in the day the window lies, one line for each enclosure. */
function placementLines(plan: Plan, dial: DialPlan): readonly string[] {
  const ids = new Set(dial.lamps.map(({ enclosure }) => enclosure));
  return plan.enclosures
    .filter(({ id }) => ids.has(id))
    .flatMap(({ id, targets }) =>
      targets
        .filter(({ path }) => path.startsWith('day.'))
        .map(
          (record) =>
            `  placed by ${id}/${record.path}: ${targetWords(record.value, record.unit, false)} (${originWords(record)})`,
        ),
    );
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
    return 'One more setting would not lower the worst error: it is the least possible with these pins and days.';
  const better = now.worstErrorMinutes - next.worstErrorMinutes;
  return better > 0
    ? `One more setting would take ${errorWords(better)} off the worst error (${errorWords(now.worstErrorMinutes)} to ${errorWords(next.worstErrorMinutes)}).`
    : `One more setting would leave the worst error at ${errorWords(now.worstErrorMinutes)}, and take the average from ${errorWords(now.meanErrorMinutes)} to ${errorWords(next.meanErrorMinutes)}.`;
}

/** Errors to the tenth of a minute that they are solved in. */
function errorWords(minutes: number): string {
  return minutes < 60 ? `${Number(minutes.toFixed(1))} min` : spanWords(minutes);
}

const CHOICE_WORDS = {
  'as-planned': () => 'as planned',
  'one-more-setting': () => 'one more evening at the dial',
  'any-day': () => 'changes on any day of the week',
  'any-spacing': () => 'changes as close together as they like',
  'any-jump': () => 'changes as large as they like',
  'any-hour': () => 'light at any hour',
  'finer-pins': ({ stepMinutes }) => `a dial with pins of ${stepMinutes} min`,
  'to-the-minute': () => 'a programmable timer, set to the minute',
  'own-dial': ({ lamp }) => `a dial of its own for ${lamp}`,
} satisfies Record<DialChoice['kind'], (choice: DialChoice) => string>;

function choiceLines(choices: readonly DialChoice[]): readonly string[] {
  const planned = choices.find(({ kind }) => kind === 'as-planned');
  if (!planned) return [];
  const wide = Math.max(...choices.map((choice) => CHOICE_WORDS[choice.kind](choice).length)) + 2;
  const hasInsets = planned.insetWorstMinutes !== null;
  const row = (mark: string, name: string, cells: readonly string[]): string =>
    `${mark} ${name.padEnd(wide)}${cells.map((cell) => cell.padEnd(14)).join('')}`.trimEnd();
  const cells = ({ settings, day, insetWorstMinutes }: DialChoice): readonly string[] => [
    String(settings),
    day === null ? '-' : errorWords(day.worstMinutes),
    day === null ? '-' : errorWords(day.meanMinutes),
    ...(hasInsets ? [insetWorstMinutes === null ? '-' : errorWords(insetWorstMinutes)] : []),
  ];
  return [
    '',
    'What another evening, another limit or another dial would buy',
    row(' ', '', ['settings', 'at worst', 'on average', ...(hasInsets ? ['basking and UV at worst'] : [])]),
    ...choices.map((choice) => row(choice === planned ? '>' : ' ', CHOICE_WORDS[choice.kind](choice), cells(choice))),
    '',
    bindingLimit(planned, choices),
  ];
}

/** The limit whose lifting brings the day nearest to its target: of the worst error, then of the average. */
function bindingLimit(planned: DialChoice, choices: readonly DialChoice[]): string {
  const gained = (choice: DialChoice, of: (each: DialChoice) => number | null): number =>
    (of(planned) ?? 0) - (of(choice) ?? 0);
  const [worst, mean, inset] = [
    (each: DialChoice) => each.day?.worstMinutes ?? null,
    (each: DialChoice) => each.day?.meanMinutes ?? null,
    (each: DialChoice) => each.insetWorstMinutes,
  ] as const;
  const best = (of: (each: DialChoice) => number | null): DialChoice | undefined =>
    choices.filter((each) => gained(each, of) >= 0.05).toSorted((a, b) => gained(b, of) - gained(a, of))[0];
  const said = (
    [
      ['the worst day', best(worst), worst],
      ['the average day', best(mean), mean],
      ['the basking and UV hours', best(inset), inset],
    ] as const
  ).flatMap(([name, choice, of]) =>
    choice ? [`  ${name}: ${errorWords(gained(choice, of))} nearer with ${CHOICE_WORDS[choice.kind](choice)}`] : [],
  );
  return said.length === 0
    ? 'None of these brings the light nearer to its targets.'
    : `What binds most\n${said.join('\n')}`;
}
