/** Jobs that are due on one or two days of a page: a box a day, the job, and blanks for what is read; in two columns. */
import { type Block, beside, NOTHING, type Setting, stack, TICK_MM, textBlock } from './block.ts';
import type { DatedJob } from './care-rows.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate } from './printed-values.ts';
import type { Run } from './wrap-text.ts';

const BETWEEN_MM = 4;

/** Returns the list, by date; the second column goes on where the first ends. */
export function datedBlock(jobs: readonly DatedJob[], words: PageWords, widthMm: number, setting: Setting): Block {
  if (jobs.length === 0) return NOTHING;
  const { scale } = setting.style;
  const columns = scale > 1 ? 1 : 2;
  const columnMm = (widthMm - BETWEEN_MM * (columns - 1)) / columns;
  const blocks = jobs.map((job) =>
    textBlock(runsOf(job, words, scale), { role: 'job', widthMm: columnMm, tag: 'LBody' }, setting),
  );
  const entries = blocks.map(
    (block): Block => ({ ...block, at: (left, top) => [{ tag: 'LI', shapes: [], children: block.at(left, top) }] }),
  );
  const head = textBlock(words.onDates, { role: 'heading', widthMm, tag: 'H2' }, setting);
  const split = columns === 1 ? entries.length : shortestSplit(entries);
  const list = beside([
    { block: stack(entries.slice(0, split)), leftMm: 0 },
    { block: stack(entries.slice(split)), leftMm: columnMm + BETWEEN_MM },
  ]);
  const wrapped: Block = {
    heightMm: list.heightMm,
    at: (left, top) => [{ tag: 'L', shapes: [], children: list.at(left, top) }],
  };
  return stack([head, wrapped]);
}

/** How many stand in the first column so that the longer one is as short as can be. */
function shortestSplit(entries: readonly Block[]): number {
  const sum = (some: readonly Block[]): number => some.reduce((all, { heightMm }) => all + heightMm, 0);
  let best = entries.length;
  for (let at = 1; at <= entries.length; at++) {
    const height = (split: number): number => Math.max(sum(entries.slice(0, split)), sum(entries.slice(split)));
    if (height(at) < height(best) - 1e-9) best = at;
  }
  return best;
}

function runsOf({ dates, label, blanks }: DatedJob, words: PageWords, scale: number): readonly Run[] {
  return [
    ...dates.flatMap((date): readonly Run[] => [
      { draw: 'box', widthMm: TICK_MM * scale },
      { text: `\u00a0${dayAndDate(date, words)} `, weight: 'bold' },
    ]),
    `${label} `,
    ...blanks.flatMap(({ before, unit }): readonly Run[] => [
      ...(before === '' ? [] : [`${before}\u00a0`]),
      { draw: 'blank', widthMm: 9 * scale },
      unit === '' ? ' ' : `\u00a0${unit} `,
    ]),
  ];
}
