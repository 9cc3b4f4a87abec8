/** The page for the door in large print: the same parts, one after the other over as many pages as they take. */

import type { Plan } from '../plan/plan.ts';
import { words as allWords } from '../plan/words/words.ts';
import type { Setting } from './block.ts';
import { gridBlock, gridRows } from './care-grid.ts';
import {
  doNotBlock,
  howToBlock,
  legendBlock,
  machineBlocks,
  type PageMatter,
  titleBlock,
  visitsBlock,
} from './care-page.ts';
import { dueJobs } from './care-rows.ts';
import { datedBlock } from './dated-block.ts';
import { emergencyItems } from './emergency-block.ts';
import { feedLetters } from './feed-letters.ts';
import { type FlowItem, piecesOf } from './flow.ts';
import { type PageScope, type PageSpan, pageSpan } from './page-span.ts';
import { MARGIN_MM } from './page-style.ts';

const DAYS_A_GRID = 14;
/** A grid or a list that is taller is parted. */
const PIECE_MM = 150;

/** Returns the parts in the order of the page; grids of two weeks and a few rows each. */
export function carePageItems(plan: Plan, span: PageSpan, scope: PageScope, setting: Setting): readonly FlowItem[] {
  const widthMm = setting.style.paper.widthMm - 2 * MARGIN_MM;
  const words = allWords(plan.language).page;
  const page: PageMatter = { plan, span, scope, words, widthMm, setting };
  const feeds = feedLetters(plan, span, scope, words);
  const jobs = dueJobs(plan, span, scope, words, 'roomy');
  return [
    { block: titleBlock(page), keepWithNext: true },
    ...(scope.enclosures.length === 0 ? [] : emergencyItems(plan, span.from, scope, words, widthMm, setting)),
    { block: visitsBlock(page) },
    { block: howToBlock(page), keepWithNext: true },
    ...gridItems(page, gridRows(feeds.rows, jobs.rows, 'roomy')),
    ...piecesOf(feeds.legend, (some) => legendBlock(some, page), PIECE_MM).map((block) => ({ block })),
    ...piecesOf(jobs.dated, (some) => datedBlock(some, span.from, words, widthMm, setting), PIECE_MM).map((block) => ({
      block,
    })),
    ...machineBlocks(page).map((block) => ({ block })),
    { block: doNotBlock(page) },
  ];
}

function gridItems(
  { span, words, widthMm, setting }: PageMatter,
  rows: ReturnType<typeof gridRows>,
): readonly FlowItem[] {
  return chunked(span.days, DAYS_A_GRID).flatMap((days) => {
    const part = pageSpan(days[0] ?? span.from, days.length);
    return piecesOf(rows, (some) => gridBlock(some, part, widthMm, words, setting), PIECE_MM).map((block) => ({
      block,
    }));
  });
}

/** Returns lists of at most so many. */
export function chunked<T>(items: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, index) =>
    items.slice(index * size, index * size + size),
  );
}
