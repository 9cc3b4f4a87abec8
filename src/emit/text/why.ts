/** Why a setting is as it is, from the plan alone: which lamp and day bind, what another change would buy, who said a target. */
import type { DialChoice } from '../../plan/dial-choices.ts';
import type { Plan, PlanEnclosure, TargetRecord } from '../../plan/plan.ts';
import { autoWords } from './auto-words.ts';
import { originWords } from './origin-words.ts';
import { targetWords } from './target-value.ts';
import { whyAir } from './why-air.ts';
import { whyDial, whyLamp } from './why-dial.ts';
import { mistTimes, whyMists } from './why-mist.ts';

export type WhyAnswer =
  | { readonly found: true; readonly text: string }
  | { readonly found: false; readonly askable: readonly string[] };

/**
 * Answers for a dial, a lamp (`fern/sun`), an enclosure, or one of its targets (`fern/humidity.day`); without a question it lists what can
 * be asked. `choicesOf` returns what else a dial could be.
 */
export function why(
  plan: Plan,
  what: string | null,
  choicesOf: (device: string) => readonly DialChoice[] = () => [],
): WhyAnswer {
  const dial = plan.lighting.find(({ device }) => device === what);
  if (dial) return { found: true, text: whyDial(plan, dial, choicesOf(dial.device)) };
  const [id, path] = splitOnce(what ?? '', '/');
  const enclosure = plan.enclosures.find((each) => each.id === id);
  const records =
    enclosure?.targets.filter((record) => path === '' || record.path === path || record.path.startsWith(`${path}.`)) ??
    [];
  const targets = enclosure && records.length > 0 ? whyTargets(enclosure, records) : null;
  const lamp = lampAnswer(plan, what ?? '');
  if (lamp !== null) return { found: true, text: targets === null ? lamp : `${lamp}\n${targets}` };
  const mists = whyMist(plan, id, path);
  if (mists !== null) return { found: true, text: `${mists}${path === 'mists' ? autoWords(plan, 'pumps', id) : ''}` };
  const air = path === 'air' ? whyAir(plan, id) : null;
  if (air !== null) return { found: true, text: air };
  if (targets !== null) return { found: true, text: targets };
  if (what === null) return { found: true, text: askableText(plan) };
  return { found: false, askable: askable(plan) };
}

function askableText(plan: Plan): string {
  const names = askable(plan);
  const width = Math.max(0, ...names.map((name) => name.length)) + 2;
  const lines = names.map((name) => `  ${name.padEnd(width)}${askableWords(plan, name)}`.trimEnd());
  return `Ask about one of\n${lines.map((line) => `${line}\n`).join('')}`;
}

/** What is told of a name; nothing of a single group of targets, whose name says it. */
function askableWords(plan: Plan, name: string): string {
  const [id, path] = splitOnce(name, '/');
  if (plan.lighting.some(({ device }) => device === name)) return 'its settings, and what others would buy';
  if (path === '') return 'all that it needs, and who says so';
  if (path === 'mists') return 'its mists, and what each is for';
  if (/^\d\d:\d\d$/.test(path)) return 'this mist';
  if (path === 'air') return 'the forecast of its air, and what it is made from';
  return plan.lighting.some(({ lamps }) => lamps.some((lamp) => lamp.enclosure === id && lamp.lamp === path))
    ? 'this lamp'
    : '';
}

function askable(plan: Plan): readonly string[] {
  return [...new Set(allAskable(plan))];
}

function allAskable(plan: Plan): readonly string[] {
  return [
    ...plan.lighting.filter(({ settings }) => settings.length > 0).map(({ device }) => device),
    ...plan.enclosures.flatMap(({ id, targets }) => [
      id,
      ...plan.lighting
        .flatMap(({ lamps }) => lamps)
        .filter(({ enclosure }) => enclosure === id)
        .map(({ lamp }) => `${id}/${lamp}`),
      ...plan.misting
        .filter(({ enclosure, sets }) => enclosure === id && sets.length > 0)
        .flatMap((mist) => [`${id}/mists`, ...mistTimes(plan, mist).map((at) => `${id}/${at}`)]),
      ...(plan.misting.some(({ enclosure }) => enclosure === id) ? [`${id}/air`] : []),
      ...[...new Set(targets.map(({ path }) => path.split('.')[0] ?? ''))].map((group) => `${id}/${group}`),
    ]),
  ];
}

/** A lamp on a timer, or one that was left out with its reason; a lamp on a live outlet has nothing to explain. */
function lampAnswer(plan: Plan, what: string): string | null {
  for (const dial of plan.lighting) {
    const lamp = dial.lamps.find((each) => `${each.enclosure}/${each.lamp}` === what);
    if (lamp) return `${whyLamp(dial, lamp)}${autoWords(plan, 'lamps', what)}`;
  }
  const left = plan.notPlanned.find(({ lamp }) => lamp === what);
  return left ? `${what} is not planned: ${left.why}\n` : null;
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
