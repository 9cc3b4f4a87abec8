/** What the pumps do on a page's days, as keyed in, and what their tanks hold. */

import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { MistSet, Plan } from '../plan/plan.ts';
import { runLength } from '../plan/words/run-length.ts';
import { type Block, type Setting, textBlock } from './block.ts';
import { nameOf } from './care-rows.ts';
import type { PageScope, PageSpan } from './page-span.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, volume } from './printed-values.ts';
import type { Run } from './wrap-text.ts';

/** Returns the mists and tanks of the animals of a page, a block a line; none where no pump or person mists. */
export function mistBlocks(
  plan: Plan,
  span: PageSpan,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): readonly Block[] {
  const lines = mistLines(plan, span, scope, words);
  if (lines.length === 0) return [];
  const said = lines.map(({ name, text }, index): readonly Run[] => [
    ...(index === 0 ? [{ text: `${words.mists} `, weight: 'bold' as const }] : []),
    ...(name === '' ? [`${text} `] : [{ text: `${name}:`, weight: 'bold' as const }, ` ${text}. `]),
  ]);
  const paragraphs = setting.style.density === 'close' ? [said.flat()] : said;
  return paragraphs.map((runs) => textBlock(runs, { role: 'text', widthMm }, setting));
}

interface MistLine {
  readonly name: string;
  readonly text: string;
}

function mistLines(plan: Plan, span: PageSpan, scope: PageScope, words: PageWords): readonly MistLine[] {
  const wanted = new Set(scope.enclosures.map(({ id }) => id));
  const groups = new Map<string, MistLine & { readonly pump: string | null; readonly names: string[] }>();
  for (const { enclosure, pump, device, sets } of plan.misting) {
    if (pump === null || !wanted.has(enclosure)) continue;
    const text = setsText(sets, span, words);
    if (text === '') continue;
    const key = JSON.stringify([device ?? pump, text, pump === 'by-hand' ? enclosure : '']);
    const known = groups.get(key) ?? { name: plainLine(device ?? pump), text, pump, names: [] };
    known.names.push(nameOf(plan, enclosure));
    groups.set(key, known);
  }
  const pumps = [...new Set([...groups.values()].flatMap(({ pump }) => (pump === null ? [] : [pump])))];
  return [
    ...[...groups.values()].map(({ name, text, names, pump }) =>
      pump === 'by-hand'
        ? { name: '', text: `${words.mistByHand(words.list(names), text)}.` }
        : { name: words.mistOf(name, words.list(names)), text },
    ),
    ...pumps.flatMap((pump) => tankLine(plan, pump, words)),
  ];
}

/** The entries of the first day, then those of later sets with their dates. */
function setsText(sets: readonly MistSet[], span: PageSpan, words: PageWords): string {
  return sets
    .filter(({ from, to }) => from <= span.to && span.from <= to)
    .map((set) => {
      const entries = set.interval
        ? words.mistInterval(unbroken(set.interval.onSeconds), unbroken(set.interval.offSeconds))
        : set.entries.length === 0
          ? words.mistNone
          : words.list(
              set.entries.map(({ at, seconds: length }) =>
                words.mistEntry(at, runLength(length)).replaceAll(' ', '\u00a0'),
              ),
            );
      return set.from <= span.from ? entries : `${words.mistFrom(dayAndDate(set.from as IsoDate, words))}: ${entries}`;
    })
    .join('; ');
}

/** A length of a run that no line breaks. */
function unbroken(seconds: number): string {
  return runLength(seconds).replaceAll(' ', '\u00a0');
}

function tankLine(plan: Plan, pump: string, words: PageWords): readonly MistLine[] {
  const tank = plan.hardware.find(({ id }) => id === pump)?.tank;
  if (!tank) return [];
  const days = tankDays(plan, pump);
  const text = words.tank(
    plainLine(pump),
    volume(tank.holdsMl, plan.units, words),
    volume(tank.reserveMl, plan.units, words),
    tank.refillEveryDays,
  );
  return [{ name: '', text: days === null ? text : `${text} ${words.tankLasts(Math.floor(days))}` }];
}

/** The shortest time that a full tank lasts under the planned mists, days. */
function tankDays(plan: Plan, pump: string): number | null {
  const lasts = plan.misting
    .filter((mist) => mist.pump === pump)
    .flatMap(({ sets }) => sets.flatMap(({ conditions }) => conditions.map(({ predicted }) => predicted.tankDays)))
    .filter((days): days is number => days !== null);
  return lasts.length === 0 ? null : Math.min(...lasts);
}
