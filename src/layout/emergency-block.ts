/** The box for when something is wrong: whom to call, the limits of each animal, what to do. It comes first on the page. */

import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { Plan } from '../plan/plan.ts';
import { type WatchFor, watchFor } from '../plan/watch-for.ts';
import { type Block, framed, listBlock, type Setting, stack, textBlock } from './block.ts';
import { limitsTable } from './limits-table.ts';
import type { PageScope } from './page-span.ts';
import type { PageWords } from './page-words.ts';
import type { Run } from './wrap-text.ts';

const PADDING_MM = 2;

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
  const watches = watchFor(plan, date).filter(({ enclosure }) => scope.enclosures.some(({ id }) => id === enclosure));
  const acts = actLines(watches, words).map((line) => ({
    mark: '•',
    block: textBlock(line, { role: 'text', widthMm: inner - 4 }, setting),
  }));
  return framed(
    stack(
      [
        textBlock(words.wrong, { role: 'emergency', widthMm: inner, tag: 'H2' }, setting),
        textBlock(contactRuns(plan, words), { role: 'job', widthMm: inner }, setting),
        limitsTable(plan, date, scope, words, inner, setting),
        listBlock(acts, 4, 'text', setting),
      ],
      0.8,
    ),
    widthMm,
    PADDING_MM,
    0.7,
  );
}

/** Numbers to call; where none is given a line to write one on. */
export function contactRuns({ contacts }: Pick<Plan, 'contacts'>, words: PageWords): readonly Run[] {
  const one = (label: string, value: string | undefined): readonly Run[] => [
    `${label} `,
    value === undefined ? { draw: 'blank', widthMm: 45 } : { text: plainLine(value), weight: 'bold' },
    '   ',
  ];
  return [
    ...one(words.keeper, contacts.keeper),
    ...one(words.vet, contacts.vet),
    words.callOrder,
    ...(contacts.note === undefined ? [] : [` ${plainLine(contacts.note)}`]),
  ];
}

function actLines(watches: readonly WatchFor[], words: PageWords): readonly string[] {
  const hasHumidity = watches.some(({ floorHumidity }) => floorHumidity !== null);
  const hasCeiling = watches.some(({ ceilingHumidity }) => ceilingHumidity !== null && ceilingHumidity < 1);
  return [
    words.tooCold,
    words.tooHot,
    ...(hasHumidity ? [words.tooDry] : []),
    ...(hasCeiling ? [words.tooWet] : []),
    words.signsPlain,
    words.powerCut,
  ];
}
