/** What a sitter does at a visit: the steps in order, under ten of them, and the days with their boxes. */

import { plainLine } from '../basics/plain-line.ts';
import { visitedLast } from '../plan/people-day.ts';
import { runLength } from '../plan/words/run-length.ts';
import { type Block, listBlock, type Setting, textBlock } from './block.ts';
import { type GridRow, gridBlock, gridRows } from './care-grid.ts';
import { legendBlock } from './care-page.ts';
import { dueJobs, nameOf } from './care-rows.ts';
import { datedBlock } from './dated-block.ts';
import { feedLetters } from './feed-letters.ts';
import { type FlowItem, piecesOf } from './flow.ts';
import { type HandoverMatter, wallEntriesOn } from './handover-matter.ts';
import { chunked } from './large-print.ts';
import { pageSpan } from './page-span.ts';
import type { TextRole } from './page-style.ts';

const DAYS_A_GRID = 21;
const GRID_MM = 190;
const DAYS_LARGE = 14;
const LIST_MM = 120;

/** Returns numbered steps; what the household has nothing of is left out. */
export function visitSteps(matter: HandoverMatter): readonly string[] {
  const { plan, span, said, words } = matter;
  const last = [...visitedLast(plan, span.from)].map((id) => nameOf(plan, id));
  const mists = plan.misting
    .filter(({ pump }) => pump === 'by-hand')
    .flatMap((mist) => {
      const times = wallEntriesOn(mist, span.from).map(({ at, seconds }) => words.mistEntry(at, runLength(seconds)));
      return times.length === 0 ? [] : [said.steps.mistOf(nameOf(plan, mist.enclosure), words.list(times))];
    });
  const feeds = plan.feeding.some(({ date }) => span.from <= date && date <= span.to);
  const { steps } = said;
  return [
    [steps.arrive, ...(last.length === 0 ? [] : [steps.arriveLast(words.list(last))])].join(' '),
    ...(plan.lighting.length === 0 ? [] : [steps.lamps]),
    steps.values,
    steps.water,
    ...(mists.length === 0 ? [] : [steps.mist(words.list(mists))]),
    ...(feeds ? [steps.feed] : []),
    steps.clean,
    steps.jobs,
    `${steps.close} ${steps.leave}`,
  ];
}

/** Returns lines as a list numbered from 1. */
export function numbered(lines: readonly string[], role: TextRole, widthMm: number, setting: Setting): Block {
  const markMm = 7 * setting.style.scale;
  return listBlock(
    lines.map((line, index) => ({
      mark: `${index + 1}.`,
      block: textBlock(line, { role, widthMm: widthMm - markMm }, setting),
    })),
    markMm,
    role,
    setting,
    0.6,
  );
}

/** Returns the grid of the days, three weeks and a few rows at a time, the letters of the feeds and the jobs by date. */
export function dayItems(matter: HandoverMatter): readonly FlowItem[] {
  const { plan, span, scope, said, words, widthMm, setting } = matter;
  const feeds = feedLetters(plan, span, scope, words);
  const jobs = dueJobs(plan, span, scope, words, 'roomy');
  const rows = [...gridRows(feeds.rows, jobs.rows, 'roomy'), ...ownRows(matter)];
  const page = { plan, span, scope, words, widthMm, setting };
  return [
    { block: textBlock(said.days, { role: 'heading', widthMm, tag: 'H2' }, setting), keepWithNext: true },
    { block: textBlock(said.howToFill, { role: 'text', widthMm }, setting), keepWithNext: true },
    ...gridItems(rows, matter),
    ...piecesOf(feeds.legend, (some) => legendBlock(some, page), LIST_MM).map((block) => ({ block })),
    ...piecesOf(jobs.dated, (some) => datedBlock(some, span.from, words, widthMm, setting), LIST_MM).map((block) => ({
      block,
    })),
    ...portionItems(feeds, matter),
  ];
}

/** The humidity of each animal and the sitter's initials, at every visit. */
function ownRows({ plan, visits, said, scope }: HandoverMatter): readonly GridRow[] {
  const due = new Map(visits.map((date) => [date, '']));
  const row = (label: string): GridRow => ({ label, halves: null, due, storeys: 1 });
  return [
    ...scope.enclosures
      .filter(({ targets }) => targets.some(({ path }) => path.startsWith('humidity.')))
      .map(({ id }) => row(said.humidityOf(nameOf(plan, id)))),
    row(said.initials),
  ];
}

function gridItems(rows: readonly GridRow[], { span, words, widthMm, setting }: HandoverMatter): readonly FlowItem[] {
  return chunked(span.days, setting.style.scale > 1 ? DAYS_LARGE : DAYS_A_GRID).flatMap((days) => {
    const part = pageSpan(days[0] ?? span.from, days.length);
    const due = rows.filter((row) => days.some((date) => row.due.has(date)));
    return piecesOf(due, (some) => gridBlock(some, part, widthMm, words, setting), GRID_MM).map((block) => ({ block }));
  });
}

/** How many packets of each letter the keeper puts up beforehand; how much powder goes in is on its label. */
function portionItems(
  { legend, rows }: ReturnType<typeof feedLetters>,
  { plan, span, said, widthMm, setting }: HandoverMatter,
): readonly FlowItem[] {
  const dusted = plan.feeding.some(({ date, dusting }) => span.from <= date && date <= span.to && dusting !== null);
  if (!dusted) return [];
  const letters = rows.flatMap((row) => [...row.letters.values()].join('').split(''));
  const lines = legend.map(({ letter, means }) =>
    said.portions(letter, letters.filter((each) => each === letter).length, plainLine(means)),
  );
  const text = (words: string): Block => textBlock(words, { role: 'text', widthMm }, setting);
  return [
    { block: textBlock(said.feeds, { role: 'heading', widthMm, tag: 'H2' }, setting), keepWithNext: true },
    { block: text(said.portionsHow), keepWithNext: true },
    ...piecesOf(lines, (some) => text(`${some.join('; ')}.`), LIST_MM).map((block) => ({ block })),
  ];
}
