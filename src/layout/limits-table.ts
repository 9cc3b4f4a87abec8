/** What is normal for each animal and the limits at which to act, a row an animal. */
import type { IsoDate } from '../basics/civil.ts';
import type { Plan, Range } from '../plan/plan.ts';
import { type WatchFor, watchFor } from '../plan/watch-for.ts';
import { type Block, lineShapes, NOTHING, type Setting, stack, textBlock, textLines } from './block.ts';
import { artifact, type Part } from './page.ts';
import type { PageScope } from './page-span.ts';
import { lineHeightMm, sizePtOf } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, degreeSign, degrees, percentNumbers, temperatureNumbers } from './printed-values.ts';
import type { Shape } from './shapes.ts';
import { shortName } from './short-name.ts';

interface LimitColumn {
  readonly head: string;
  readonly cell: (watch: WatchFor) => string;
  /** Whether it stands under "act at once". */
  readonly isLimit: boolean;
}

const NAME_SHARE = { usual: 0.13, large: 0.3 } as const;
const COLUMN_GAP_MM = 1.6;

/** Returns the table; columns of which no animal has a value are left out. */
export function limitsTable(
  plan: Plan,
  date: IsoDate,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): Block {
  const watches = watchFor(scope, date);
  const columns = titled(
    columnsOf(plan, words).filter(({ cell }) => watches.some((watch) => cell(watch) !== '')),
    words,
  );
  if (watches.length === 0 || columns.length === 0) return NOTHING;
  const matter = { watches, words, widthMm, setting };
  const parts = isTooWide(columns, matter)
    ? [columns.filter(({ isLimit }) => !isLimit), columns.filter(({ isLimit }) => isLimit)]
    : [columns];
  const tables = parts.filter((some) => some.length > 0).map((some) => tableOf(some, matter));
  return stack([...tables, ...spanLines(watches, words, widthMm, setting)], 0.6);
}

interface TableMatter {
  readonly watches: readonly WatchFor[];
  readonly words: PageWords;
  readonly widthMm: number;
  readonly setting: Setting;
}

function tableOf(columns: readonly LimitColumn[], { watches, words, widthMm, setting }: TableMatter): Block {
  const nameMm = widthMm * nameShare(setting);
  const widths = columnWidths(columns, watches, widthMm - nameMm, setting);
  const row = (name: string, cells: readonly string[], isHead: boolean): Block =>
    tableRow(name, cells, isHead, nameMm, widths, setting);
  const rows = [
    row(
      words.animal,
      columns.map(({ head }) => head),
      true,
    ),
    ...watches.map((watch) =>
      row(
        shortName(watch.name),
        columns.map(({ cell }) => cell(watch)),
        false,
      ),
    ),
  ];
  const limitAt = columns.findIndex(({ isLimit }) => isLimit);
  return {
    heightMm: rows.reduce((sum, each) => sum + each.heightMm, 0),
    at: (left, top) => {
      let y = top;
      const shapes: Shape[] = [];
      const parts = rows.flatMap((each): readonly Part[] => {
        const placed = each.at(left, y);
        y += each.heightMm;
        shapes.push({
          kind: 'line',
          x1: left,
          y1: y,
          x2: left + widthMm,
          y2: y,
          stroke: { widthMm: 0.15, shade: 'ink' },
        });
        return placed;
      });
      if (limitAt > 0) {
        const x = left + nameMm + leftOf(widths, limitAt) - 0.8;
        shapes.push({ kind: 'line', x1: x, y1: top, x2: x, y2: y, stroke: { widthMm: 0.5, shade: 'ink' } });
      }
      return [artifact(...shapes), { tag: 'Table', shapes: [], children: parts }];
    },
  };
}

function nameShare({ style }: Setting): number {
  return style.scale > 1 ? NAME_SHARE.large : NAME_SHARE.usual;
}

function isTooWide(columns: readonly LimitColumn[], { watches, widthMm, setting }: TableMatter): boolean {
  const widths = columnWidths(columns, watches, 0, setting);
  return widths.reduce((sum, width) => sum + width, 0) > widthMm * (1 - nameShare(setting));
}

/** The first limit says that all after it are limits. */
function titled(columns: readonly LimitColumn[], words: PageWords): readonly LimitColumn[] {
  const first = columns.findIndex(({ isLimit }) => isLimit);
  return columns.map((column, index) => (index === first ? { ...column, head: words.act(column.head) } : column));
}

function columnsOf({ units }: Plan, words: PageWords): readonly LimitColumn[] {
  const sign = degreeSign(units);
  const band = (range: Range | null): string => (range === null ? '' : temperatureNumbers(range, units));
  const share = (range: Range | null): string => (range === null ? '' : percentNumbers(range));
  const one = (value: number | null): string => (value === null ? '' : String(degrees(value, units)));
  const part = (value: number): string => String(Math.round(value * 100));
  const normal = (head: string, unit: string, cell: LimitColumn['cell']): LimitColumn => ({
    head: `${head}\u00a0${unit}`,
    cell,
    isLimit: false,
  });
  const limit = (head: string, unit: string, cell: LimitColumn['cell']): LimitColumn => ({
    head: `${head}\u00a0${unit}`,
    cell,
    isLimit: true,
  });
  return [
    normal(words.day, sign, ({ dayC }) => band(dayC)),
    normal(words.night, sign, ({ nightC }) => band(nightC)),
    normal(words.basking, sign, ({ baskingC }) => band(baskingC)),
    normal(words.humidityDay, '%', ({ dayHumidity, meanHumidity }) => share(dayHumidity ?? meanHumidity)),
    normal(words.humidityNight, '%', ({ nightHumidity }) => share(nightHumidity)),
    limit(words.below, sign, ({ neverBelowC }) => one(neverBelowC)),
    limit(words.above, sign, ({ neverAboveC }) => one(neverAboveC)),
    limit(words.humidityLimit, '%', ({ floorHumidity, ceilingHumidity }) =>
      [
        ...(floorHumidity === null ? [] : [`<\u00a0${part(floorHumidity)}`]),
        ...(ceilingHumidity === null || ceilingHumidity >= 1 ? [] : [`>\u00a0${part(ceilingHumidity)}`]),
      ].join(' '),
    ),
    limit(words.noFood, words.days, ({ mayGoWithoutDays }) =>
      mayGoWithoutDays === null ? '' : String(mayGoWithoutDays),
    ),
  ];
}

function tableRow(
  name: string,
  cells: readonly string[],
  isHead: boolean,
  nameMm: number,
  widths: readonly number[],
  setting: Setting,
): Block {
  const weight = isHead ? 'regular' : 'bold';
  const nameWish = { role: 'text', widthMm: nameMm - 1, weight } as const;
  const cellWish = (index: number) =>
    ({ role: 'text', widthMm: (widths[index] ?? 0) - COLUMN_GAP_MM, weight: 'regular' }) as const;
  const nameLines = textLines(name, nameWish, setting);
  const cellLines = cells.map((cell, index) => textLines(cell, cellWish(index), setting));
  const lines = Math.max(nameLines.length, ...cellLines.map((each) => each.length));
  return {
    heightMm: lines * lineHeightMm('text', setting.style) + 0.4,
    at: (left, top) => [
      {
        tag: 'TR',
        shapes: [],
        children: [
          { tag: 'TH', scope: isHead ? 'Column' : 'Row', shapes: lineShapes(nameLines, nameWish, setting, left, top) },
          ...cellLines.map((each, index): Part => {
            const shapes = lineShapes(
              each,
              cellWish(index),
              setting,
              left + nameMm + leftOf(widths, index),
              top,
            ).filter((shape) => shape.kind !== 'text' || shape.text !== '');
            return isHead ? { tag: 'TH', scope: 'Column', shapes } : { tag: 'TD', shapes };
          }),
        ],
      },
    ],
  };
}

/** Each column as wide as its longest word or value asks, the rest of the width shared out alike. */
function columnWidths(
  columns: readonly LimitColumn[],
  watches: readonly WatchFor[],
  widthMm: number,
  { style, measure }: Setting,
): readonly number[] {
  const sizePt = sizePtOf('text', style);
  const needs = columns.map(({ head, cell }) => {
    const texts = [head, ...watches.map(cell)].flatMap((text) => text.split(' '));
    return COLUMN_GAP_MM + 0.1 + Math.max(...texts.map((text) => measure.widthMm(text, sizePt, 'regular')));
  });
  const spare = (widthMm - needs.reduce((sum, need) => sum + need, 0)) / columns.length;
  return needs.map((need) => need + Math.max(0, spare));
}

function leftOf(widths: readonly number[], index: number): number {
  return widths.slice(0, index).reduce((sum, width) => sum + width, 0);
}

/** Rests and states of the animals. */
function spanLines(
  watches: readonly WatchFor[],
  words: PageWords,
  widthMm: number,
  setting: Setting,
): readonly Block[] {
  return watches.flatMap(({ name, spans }) =>
    spans.map(({ kind, to }) =>
      textBlock(
        [
          { text: `${shortName(name)}: `, weight: 'bold' },
          words.resting(words.spans[kind] ?? kind, dayAndDate(to, words)),
        ],
        { role: 'text', widthMm },
        setting,
      ),
    ),
  );
}
