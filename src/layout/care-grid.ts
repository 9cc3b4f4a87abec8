/** The grid of a page: a row a job, a column a day; a framed cell where something is due, nothing where nothing is. */
import { civilOf, epochDay, weekdayOf } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { type Block, beside, lineShapes, type Setting, textLines } from './block.ts';
import type { JobRow } from './care-rows.ts';
import type { FeedRow } from './feed-letters.ts';
import { artifact, type Part } from './page.ts';
import type { PageSpan } from './page-span.ts';
import { lineHeightMm, type PageStyle, sizePtOf, type TextRole } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate } from './printed-values.ts';
import type { Shape } from './shapes.ts';
import { MM_PER_PT } from './text-measure.ts';

export interface GridRow {
  readonly label: string;
  readonly halves: readonly [string, string] | null;
  /** A letter, or nothing to be told, for each day that is due. */
  readonly due: ReadonlyMap<IsoDate, string>;
  /** One storey for initials, two for two values or a letter with initials. */
  readonly storeys: 1 | 2;
}

/** Returns the rows of the grid: feeds, which are filled with letters, then jobs, which are ticked. */
export function gridRows(
  feeds: readonly FeedRow[],
  jobs: readonly JobRow[],
  density: PageStyle['density'],
): readonly GridRow[] {
  return [
    ...feeds.map(
      ({ label, letters }): GridRow => ({ label, halves: null, due: letters, storeys: density === 'close' ? 1 : 2 }),
    ),
    ...jobs.map(
      ({ label, halves, form, dates }): GridRow => ({
        label,
        halves,
        due: new Map([...dates].map((date) => [date, ''])),
        storeys: form === 'two-values' ? 2 : 1,
      }),
    ),
  ];
}

/** At most so wide: wider, a row is hard to follow. */
const WIDEST_DAY_MM = 9;
/** A cell holds a square to write in of at least 3.2 mm. */
const NARROWEST_DAY_MM = 3.9;
/** Of the width, for the names of the jobs. */
const LABEL_SHARE = 0.375;
/** A grid narrower than this gives its names more. */
const NARROW_MM = 120;
const NARROW_LABEL_SHARE = 0.62;
const ROW_PAD_MM = 0.25;
const HEAVY = { widthMm: 0.4, shade: 'ink' } as const;
const FINE = { widthMm: 0.12, shade: 'ink' } as const;

interface Grid {
  readonly widthMm: number;
  readonly labelMm: number;
  readonly dayMm: number;
}

const PAIR_GAP_MM = 4;
const PAIR_MOST_DAYS = 7;
const PAIR_LEAST_ROWS = 6;

/** Returns the grid of a close page: of a week two beside each other, so that the width is used. */
export function closeGrid(
  rows: readonly GridRow[],
  span: PageSpan,
  widthMm: number,
  words: PageWords,
  setting: Setting,
): Block | null {
  if (setting.style.density !== 'close' || span.days.length > PAIR_MOST_DAYS || rows.length < PAIR_LEAST_ROWS)
    return gridBlock(rows, span, widthMm, words, setting);
  const halfMm = (widthMm - PAIR_GAP_MM) / 2;
  const split = Math.ceil(rows.length / 2);
  const [left, right] = [rows.slice(0, split), rows.slice(split)].map((some) =>
    gridBlock(some, span, halfMm, words, setting),
  );
  if (!left || !right) return null;
  return beside([
    { block: left, leftMm: 0 },
    { block: right, leftMm: halfMm + PAIR_GAP_MM },
  ]);
}

/** Returns the grid, or null where the days would be narrower than a hand can write in. */
export function gridBlock(
  rows: readonly GridRow[],
  span: PageSpan,
  widthMm: number,
  words: PageWords,
  setting: Setting,
): Block | null {
  const { scale } = setting.style;
  const share = widthMm < NARROW_MM * scale ? NARROW_LABEL_SHARE : LABEL_SHARE;
  const dayMm = Math.min(WIDEST_DAY_MM * scale, (widthMm * (1 - share)) / span.days.length);
  if (dayMm < NARROWEST_DAY_MM * scale) return null;
  const grid: Grid = { widthMm, labelMm: widthMm - dayMm * span.days.length, dayMm };
  const head = headRow(span, grid, words, setting);
  const body = rows.map((row) => bodyRow(row, span, grid, words, setting));
  const heightMm = [head, ...body].reduce((sum, row) => sum + row.heightMm, 0);
  return {
    heightMm,
    at: (left, top) => {
      let y = top;
      const parts = [head, ...body].flatMap((row) => {
        const placed = row.at(left, y);
        y += row.heightMm;
        return placed;
      });
      return [...rules(span, grid, head, body, left, top), { tag: 'Table', shapes: [], children: parts }];
    },
  };
}

/** Lines between rows and days; before each Monday a heavy one. */
function rules(
  span: PageSpan,
  grid: Grid,
  head: Block,
  body: readonly Block[],
  left: number,
  top: number,
): readonly Part[] {
  const shapes: Shape[] = [];
  let y = top + head.heightMm;
  const right = left + grid.widthMm;
  for (const row of [null, ...body]) {
    y += row?.heightMm ?? 0;
    shapes.push({ kind: 'line', x1: left, y1: y, x2: right, y2: y, stroke: row === null ? HEAVY : FINE });
  }
  for (const [index, date] of span.days.entries()) {
    const x = left + grid.labelMm + index * grid.dayMm;
    const isHeavy = index === 0 || weekdayOf(epochDay(date)) === 'mon';
    shapes.push({ kind: 'line', x1: x, y1: top, x2: x, y2: y, stroke: isHeavy ? HEAVY : FINE });
  }
  shapes.push({ kind: 'line', x1: right, y1: top, x2: right, y2: y, stroke: HEAVY });
  return [artifact(...shapes)];
}

/** Letters of the weekdays above the numbers of the days; the name of a month stands in the column of labels. */
function headRow(span: PageSpan, grid: Grid, words: PageWords, setting: Setting): Block {
  const height = lineHeightMm('numeral', setting.style);
  const first = civilOf(epochDay(span.from));
  const last = civilOf(epochDay(span.to));
  const months = [
    words.month(first.year, first.month),
    ...(first.month === last.month && first.year === last.year ? [] : [words.month(last.year, last.month)]),
  ];
  const wish = { role: 'heading', widthMm: grid.labelMm - 1, tag: 'TH' } as const;
  const label = textLines(months.join(' – '), wish, setting);
  const heightMm = Math.max(2 * height, label.length * lineHeightMm('heading', setting.style)) + 0.6;
  const cell = (date: IsoDate, x: number, top: number): Part => {
    const middle = (text: string, row: number, weight: 'bold' | 'regular') =>
      lineShapes(
        textLines([{ text, weight }], { role: 'numeral', widthMm: grid.dayMm, anchor: 'middle' }, setting),
        { role: 'numeral', widthMm: grid.dayMm, anchor: 'middle' },
        setting,
        x,
        top + heightMm - (2 - row) * height - 0.3,
      );
    return {
      tag: 'TH',
      scope: 'Column',
      shapes: [
        ...middle(words.weekdayLetters[weekdayOf(epochDay(date))], 0, 'bold'),
        ...middle(String(civilOf(epochDay(date)).dayOfMonth), 1, 'regular'),
      ],
    };
  };
  return {
    heightMm,
    at: (left, top) => [
      {
        tag: 'TR',
        shapes: [],
        children: [
          { tag: 'TH', scope: 'Column', shapes: lineShapes(label, wish, setting, left, top) },
          ...span.days.map((date, index) => cell(date, left + grid.labelMm + index * grid.dayMm, top)),
        ],
      },
    ],
  };
}

function bodyRow(row: GridRow, span: PageSpan, grid: Grid, words: PageWords, setting: Setting): Block {
  const line = lineHeightMm('job', setting.style);
  const storeys = row.storeys === 1 ? line : row.halves ? 2 * line : line + lineHeightMm('code', setting.style);
  const halvesMm = row.halves ? Math.max(...row.halves.map((half) => halfWidth(half, setting))) + 1.5 : 0;
  const wish = { role: 'job', widthMm: grid.labelMm - 1.5 - halvesMm } as const;
  const label = textLines(row.label, wish, setting);
  const heightMm = Math.max(storeys, label.length * line) + 2 * ROW_PAD_MM;
  const halves = row.halves ?? [];
  return {
    heightMm,
    at: (left, top) => [
      {
        tag: 'TR',
        shapes: [],
        children: [
          {
            tag: 'TH',
            scope: 'Row',
            shapes: [
              ...lineShapes(label, wish, setting, left + 0.3, top + ROW_PAD_MM),
              ...halves.flatMap((half, index) =>
                lineShapes(
                  textLines(half, { role: 'text', widthMm: halvesMm }, setting),
                  { role: 'text', widthMm: halvesMm },
                  setting,
                  left + grid.labelMm - halvesMm,
                  top + ROW_PAD_MM + index * line + (line - lineHeightMm('text', setting.style)) / 2,
                ),
              ),
            ],
          },
          ...span.days.map((date, index) => ({
            ...dayCell(row, date, left + grid.labelMm + index * grid.dayMm, top, grid.dayMm, heightMm, setting),
            ...(row.due.has(date) ? { alt: `${row.label}, ${dayAndDate(date, words)}` } : {}),
          })),
        ],
      },
    ],
  };
}

function halfWidth(text: string, { style, measure }: Setting): number {
  return measure.widthMm(text, sizePtOf('text', style), 'regular');
}

function dayCell(
  row: GridRow,
  date: IsoDate,
  left: number,
  top: number,
  dayMm: number,
  heightMm: number,
  setting: Setting,
): Part {
  const letter = row.due.get(date);
  if (letter === undefined) return { tag: 'TD', shapes: [] };
  const inset = 0.35;
  const frame: Shape = {
    kind: 'rect',
    x: left + inset,
    y: top + inset,
    width: dayMm - 2 * inset,
    height: heightMm - 2 * inset,
    stroke: { widthMm: 0.35, shade: 'ink' },
  };
  if (letter === '' && row.halves === null) return { tag: 'TD', shapes: [frame] };
  if (letter === '') {
    const y = top + heightMm / 2;
    return {
      tag: 'TD',
      shapes: [frame, { kind: 'line', x1: left + inset, y1: y, x2: left + dayMm - inset, y2: y, stroke: FINE }],
    };
  }
  return { tag: 'TD', shapes: [frame, ...letterShapes(letter, left, top, dayMm, setting)] };
}

/** Letters stand in the upper half; the lower is for initials. */
function letterShapes(
  letter: string,
  left: number,
  top: number,
  dayMm: number,
  { style, measure }: Setting,
): readonly Shape[] {
  const role: TextRole = 'code';
  const sizePt = sizePtOf(role, style);
  const y = top + 0.6 + measure.ascentEm * sizePt * MM_PER_PT;
  return [{ kind: 'text', x: left + dayMm / 2, y, text: letter, sizePt, weight: 'bold', anchor: 'middle', role }];
}
