/** Jobs that are due on a few days of a page, under their days: a box for each day, the job, and blanks for what is read. */
import type { IsoDate } from '../basics/civil.ts';
import { type Block, beside, NOTHING, type Setting, stack, TICK_MM, textBlock } from './block.ts';
import type { DatedJob } from './care-rows.ts';
import type { PageWords } from './page-words.ts';
import { dayAndMonth, weekdayShort } from './printed-values.ts';
import type { Run } from './wrap-text.ts';

const BETWEEN_MM = 3;

/** Returns the list, by date, in as many columns as make it shortest; a column goes on where the one before ends. */
export function datedBlock(
  jobs: readonly DatedJob[],
  from: IsoDate,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): Block {
  if (jobs.length === 0) return NOTHING;
  const columns = setting.style.scale > 1 ? [1] : [2, 3];
  const lists = columns.map((count) => columnsOf(jobs, from, words, widthMm, count, setting));
  const list = lists.reduce((best, each) => (each.heightMm < best.heightMm - 1e-9 ? each : best));
  if (setting.style.density === 'close') return list;
  const head = textBlock(words.onDates, { role: 'heading', widthMm, tag: 'H2' }, setting);
  return stack([head, list]);
}

function columnsOf(
  jobs: readonly DatedJob[],
  from: IsoDate,
  words: PageWords,
  widthMm: number,
  count: number,
  setting: Setting,
): Block {
  const columnMm = (widthMm - BETWEEN_MM * (count - 1)) / count;
  const entries = byDates(jobs).flatMap(([dates, own]) => groupBlocks(dates, own, from, words, columnMm, setting));
  const columns = shared(entries, count);
  const list = beside(
    columns.map((column, index) => ({ block: stack(column), leftMm: index * (columnMm + BETWEEN_MM) })),
  );
  return {
    heightMm: list.heightMm,
    at: (left, top) => [{ tag: 'L', shapes: [], children: list.at(left, top) }],
  };
}

function byDates(jobs: readonly DatedJob[]): readonly (readonly [readonly IsoDate[], readonly DatedJob[]])[] {
  const groups = new Map<string, DatedJob[]>();
  for (const job of jobs) {
    const known = groups.get(job.dates.join());
    if (known) known.push(job);
    else groups.set(job.dates.join(), [job]);
  }
  return [...groups.values()].map((own) => [own[0]?.dates ?? [], own] as const);
}

/** The days stand before the first job of a group, and stay with it. */
function groupBlocks(
  dates: readonly IsoDate[],
  jobs: readonly DatedJob[],
  from: IsoDate,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): readonly Block[] {
  const days = textBlock(
    [{ text: daysText(dates, from, words), weight: 'bold' }],
    { role: 'job', widthMm, tag: 'P' },
    setting,
  );
  const rows = jobs.map((job) => jobBlock(job, widthMm, setting));
  const [first, ...rest] = rows;
  return first ? [stack([days, first]), ...rest].map(asEntry) : [];
}

function asEntry(block: Block): Block {
  return {
    heightMm: block.heightMm,
    at: (left, top) => [
      { tag: 'LI', shapes: [], children: [{ tag: 'LBody', shapes: [], children: block.at(left, top) }] },
    ],
  };
}

/** For instance `Sat 2, 9, 16, 23`; the month where it is not the one in which the page begins. */
function daysText(dates: readonly IsoDate[], from: IsoDate, words: PageWords): string {
  const said = dates.map((date, index) => {
    const weekday = weekdayShort(date, words);
    const isSaid = index > 0 && weekdayShort(dates[index - 1] ?? date, words) === weekday;
    const day = date.slice(0, 7) === from.slice(0, 7) ? String(Number(date.slice(8))) : dayAndMonth(date, words);
    return isSaid ? day : `${weekday}\u00a0${day}`;
  });
  return words.list(said);
}

function jobBlock({ dates, label, blanks }: DatedJob, widthMm: number, setting: Setting): Block {
  const { scale } = setting.style;
  const boxes = dates.map((): Run => ({ draw: 'box', widthMm: TICK_MM * scale }));
  const indentMm = dates.length * (TICK_MM + 1) * scale + 0.8;
  const text = textBlock(
    [
      blanks.length === 0 ? label : `${label}: `,
      ...blanks.flatMap(({ before, unit }): readonly Run[] => [
        ...(before === '' ? [] : [`${before}\u00a0`]),
        { draw: 'blank', widthMm: 9 * scale },
        unit === '' ? ' ' : `\u00a0${unit} `,
      ]),
    ],
    { role: 'job', widthMm: widthMm - indentMm },
    setting,
  );
  const marks = boxes.map((box, index) => ({
    block: textBlock([box], { role: 'job', widthMm: TICK_MM * scale + 0.1 }, setting),
    leftMm: index * (TICK_MM + 1) * scale,
  }));
  return beside([...marks, { block: text, leftMm: indentMm }]);
}

/** Shares entries out to columns in order so that the tallest column is as short as can be. */
function shared(entries: readonly Block[], count: number): readonly (readonly Block[])[] {
  const heights = entries.map(({ heightMm }) => heightMm);
  const candidates = heights.flatMap((_, first) =>
    heights.slice(first).map((__, length) => heights.slice(first, first + length + 1).reduce((a, b) => a + b, 0)),
  );
  for (const most of [...new Set(candidates)].sort((a, b) => a - b)) {
    const columns = filled(entries, most + 1e-9);
    if (columns.length <= count) return columns;
  }
  return [entries];
}

function filled(entries: readonly Block[], most: number): readonly (readonly Block[])[] {
  const columns: Block[][] = [[]];
  let used = 0;
  for (const entry of entries) {
    if (used > 0 && used + entry.heightMm > most) {
      columns.push([]);
      used = 0;
    }
    columns.at(-1)?.push(entry);
    used += entry.heightMm;
  }
  return used > most ? [...columns, ...columns] : columns;
}
