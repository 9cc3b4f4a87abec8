/** What is normal for each animal and the limits at which to act, a row an animal. */
import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { Plan, Range } from '../plan/plan.ts';
import { type WatchFor, watchFor } from '../plan/watch-for.ts';
import { type Block, lineShapes, NOTHING, type Setting, stack, textBlock, textLines } from './block.ts';
import { artifact, type Part } from './page.ts';
import type { PageScope } from './page-span.ts';
import { lineHeightMm } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, percent, percentBand, temperature, temperatureBand } from './printed-values.ts';
import type { Shape } from './shapes.ts';

interface LimitColumn {
  readonly head: string;
  readonly cell: (watch: WatchFor) => string;
  /** Whether it stands under "act at once". */
  readonly isLimit: boolean;
}

const NAME_SHARE = 0.17;

/** Returns the table; columns of which no animal has a value are left out. */
export function limitsTable(
  plan: Plan,
  date: IsoDate,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): Block {
  const watches = watchFor(plan, date).filter(({ enclosure }) => scope.enclosures.some(({ id }) => id === enclosure));
  const columns = columnsOf(plan, words).filter(({ cell }) => watches.some((watch) => cell(watch) !== ''));
  if (watches.length === 0 || columns.length === 0) return NOTHING;
  const nameMm = widthMm * NAME_SHARE;
  const columnMm = (widthMm - nameMm) / columns.length;
  const row = (name: string, cells: readonly string[], isHead: boolean): Block =>
    tableRow(name, cells, isHead, nameMm, columnMm, setting);
  const rows = [
    row(
      words.animal,
      columns.map(({ head }) => head),
      true,
    ),
    ...watches.map((watch) =>
      row(
        plainLine(watch.name),
        columns.map(({ cell }) => cell(watch)),
        false,
      ),
    ),
  ];
  const heightMm = rows.reduce((sum, each) => sum + each.heightMm, 0);
  const limitAt = columns.findIndex(({ isLimit }) => isLimit);
  const table: Block = {
    heightMm,
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
        const x = left + nameMm + limitAt * columnMm - 0.8;
        shapes.push({ kind: 'line', x1: x, y1: top, x2: x, y2: y, stroke: { widthMm: 0.5, shade: 'ink' } });
      }
      return [artifact(...shapes), { tag: 'Table', shapes: [], children: parts }];
    },
  };
  return stack([table, ...spanLines(watches, words, widthMm, setting)], 0.6);
}

function columnsOf({ units }: Plan, words: PageWords): readonly LimitColumn[] {
  const band = (range: Range | null): string => (range === null ? '' : temperatureBand(range, units));
  const share = (range: Range | null): string => (range === null ? '' : percentBand(range));
  return [
    { head: words.day, cell: ({ dayC }) => band(dayC), isLimit: false },
    { head: words.night, cell: ({ nightC }) => band(nightC), isLimit: false },
    { head: words.basking, cell: ({ baskingC }) => band(baskingC), isLimit: false },
    {
      head: words.humidityDay,
      cell: ({ dayHumidity, meanHumidity }) => share(dayHumidity ?? meanHumidity),
      isLimit: false,
    },
    { head: words.humidityNight, cell: ({ nightHumidity }) => share(nightHumidity), isLimit: false },
    {
      head: words.below,
      cell: ({ neverBelowC }) => (neverBelowC === null ? '' : temperature(neverBelowC, units)),
      isLimit: true,
    },
    {
      head: words.above,
      cell: ({ neverAboveC }) => (neverAboveC === null ? '' : temperature(neverAboveC, units)),
      isLimit: true,
    },
    {
      head: words.dryBelow,
      cell: ({ floorHumidity }) => (floorHumidity === null ? '' : percent(floorHumidity)),
      isLimit: true,
    },
    {
      head: words.wetAbove,
      cell: ({ ceilingHumidity }) => (ceilingHumidity === null || ceilingHumidity >= 1 ? '' : percent(ceilingHumidity)),
      isLimit: true,
    },
    {
      head: words.noFood,
      cell: ({ mayGoWithoutDays }) => (mayGoWithoutDays === null ? '' : words.mayGoWithout(mayGoWithoutDays)),
      isLimit: true,
    },
  ];
}

function tableRow(
  name: string,
  cells: readonly string[],
  isHead: boolean,
  nameMm: number,
  columnMm: number,
  setting: Setting,
): Block {
  const weight = isHead ? 'regular' : 'bold';
  const nameWish = { role: 'text', widthMm: nameMm - 1, weight } as const;
  const cellWish = { role: 'text', widthMm: columnMm - 1, weight: 'regular' } as const;
  const nameLines = textLines(name, nameWish, setting);
  const cellLines = cells.map((cell) => textLines(cell, cellWish, setting));
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
            const shapes = lineShapes(each, cellWish, setting, left + nameMm + index * columnMm, top).filter(
              (shape) => shape.kind !== 'text' || shape.text !== '',
            );
            return isHead ? { tag: 'TH', scope: 'Column', shapes } : { tag: 'TD', shapes };
          }),
        ],
      },
    ],
  };
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
          { text: `${plainLine(name)}: `, weight: 'bold' },
          words.resting(words.spans[kind] ?? kind, dayAndDate(to, words)),
        ],
        { role: 'text', widthMm },
        setting,
      ),
    ),
  );
}
