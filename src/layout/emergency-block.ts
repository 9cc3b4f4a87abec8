/** The box for when something is wrong: whom to call, the limits of each animal, what to do. It comes first on the page. */

import type { IsoDate } from '../basics/civil.ts';
import type { Plan } from '../plan/plan.ts';
import { type WatchFor, watchFor } from '../plan/watch-for.ts';
import { type Block, framed, listBlock, type Setting, stack, textBlock } from './block.ts';
import { type FlowItem, piecesOf } from './flow.ts';
import { limitsTable } from './limits-table.ts';
import type { PageScope } from './page-span.ts';
import type { PageWords } from './page-words.ts';
import { shortText } from './short-name.ts';
import type { Run } from './wrap-text.ts';

const PADDING_MM = 1.8;

/** Returns the box, `widthMm` wide with its frame. */
export function emergencyBlock(
  plan: Plan,
  date: IsoDate,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): Block {
  const inner = widthMm - 2 * PADDING_MM;
  const watches = watchFor(scope, date);
  const acts = actLines(watches, words);
  const isClose = setting.style.density === 'close';
  return framed(
    stack(
      [
        ...headBlocks(plan, words, inner, setting),
        limitsTable(plan, date, scope, words, inner, setting),
        isClose
          ? textBlock(acts.flatMap(leadRuns), { role: 'text', widthMm: inner }, setting)
          : actsList(acts, inner, setting),
      ],
      0.6,
    ),
    widthMm,
    PADDING_MM,
    0.7,
  );
}

/** With more animals their limits do not stand in the box. */
const ANIMALS_IN_BOX = 3;
/** A table that is taller is parted. */
const TABLE_MM = 150;

/** Returns the box for pages that go on: with many animals their limits stand below it, a few at a time. */
export function emergencyItems(
  plan: Plan,
  date: IsoDate,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): readonly FlowItem[] {
  if (scope.enclosures.length <= ANIMALS_IN_BOX)
    return [{ block: emergencyBlock(plan, date, scope, words, widthMm, setting) }];
  const inner = widthMm - 2 * PADDING_MM;
  const watches = watchFor(scope, date);
  const box = stack(
    [...headBlocks(plan, words, inner, setting), actsList(actLines(watches, words), inner, setting)],
    0.6,
  );
  const table = (some: PageScope['enclosures']): Block =>
    limitsTable(plan, date, { ...scope, enclosures: some }, words, widthMm, setting);
  return [
    { block: framed(box, widthMm, PADDING_MM, 0.7) },
    ...piecesOf(scope.enclosures, table, TABLE_MM).map((block) => ({ block })),
  ];
}

function headBlocks(plan: Plan, words: PageWords, widthMm: number, setting: Setting): readonly Block[] {
  return [
    textBlock(words.wrong, { role: 'emergency', widthMm, tag: 'H2' }, setting),
    textBlock(contactRuns(plan, words), { role: 'job', widthMm }, setting),
  ];
}

function actsList(acts: readonly Act[], widthMm: number, setting: Setting): Block {
  const markMm = 4 * setting.style.scale;
  return listBlock(
    acts.map((act) => ({
      mark: '•',
      block: textBlock(leadRuns(act), { role: 'text', widthMm: widthMm - markMm }, setting),
    })),
    markMm,
    'text',
    setting,
  );
}

/** What to do in a case, the case itself first. */
type Act = readonly [when: string, then: string];

function leadRuns([when, then]: Act): readonly Run[] {
  return [{ text: `${when} `, weight: 'bold' }, `${then} `];
}

/** Numbers to call; where none is given a line to write one on. */
function contactRuns({ contacts }: Pick<Plan, 'contacts'>, words: PageWords): readonly Run[] {
  const one = (label: string, value: string | undefined): readonly Run[] => [
    `${label} `,
    value === undefined ? { draw: 'blank', widthMm: 45 } : { text: shortText(value), weight: 'bold' },
    '   ',
  ];
  return [
    ...one(words.keeper, contacts.keeper),
    ...one(words.vet, contacts.vet),
    ...(contacts.note === undefined ? [] : [`${shortText(contacts.note)}.`]),
  ];
}

function actLines(watches: readonly WatchFor[], words: PageWords): readonly Act[] {
  const hasHumidity = watches.some(({ floorHumidity }) => floorHumidity !== null);
  const hasCeiling = watches.some(({ ceilingHumidity }) => ceilingHumidity !== null && ceilingHumidity < 1);
  return [
    words.tooCold,
    words.tooHot,
    ...(hasHumidity ? [words.tooDry] : []),
    ...(hasCeiling ? [words.tooWet] : []),
    words.signs,
    words.powerCut,
  ];
}
