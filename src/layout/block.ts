/** Blocks of a page: measured when made, placed later. They stack, stand beside each other and take a frame. */
import { artifact, type Part, type Tag } from './page.ts';
import { lineHeightMm, type PageStyle, sizePtOf, type TextRole, WEIGHT_OF } from './page-style.ts';
import type { Shape } from './shapes.ts';
import { lineBoxMm, type TextMeasure, type Weight } from './text-measure.ts';
import { type Line, type Run, wrapRuns } from './wrap-text.ts';

export interface Setting {
  readonly style: PageStyle;
  readonly measure: TextMeasure;
}

export interface Block {
  readonly heightMm: number;
  readonly at: (left: number, top: number) => readonly Part[];
}

export interface TextWish {
  readonly role: TextRole;
  readonly widthMm: number;
  readonly tag?: Tag;
  readonly weight?: Weight;
  readonly anchor?: 'start' | 'middle';
}

export const NOTHING: Block = { heightMm: 0, at: () => [] };

/** Side of a square to tick, in mm. */
export const TICK_MM = 3.4;

/** Returns a paragraph. */
export function textBlock(runs: readonly Run[] | string, wish: TextWish, setting: Setting): Block {
  const lines = textLines(runs, wish, setting);
  return {
    heightMm: lines.length * lineHeightMm(wish.role, setting.style),
    at: (left, top) => [{ tag: wish.tag ?? 'P', shapes: lineShapes(lines, wish, setting, left, top) }],
  };
}

/** Returns runs of text broken into lines of the wished width. */
export function textLines(runs: readonly Run[] | string, wish: TextWish, { style, measure }: Setting): readonly Line[] {
  const list = typeof runs === 'string' ? [runs] : runs;
  return wrapRuns(list, wish.widthMm, sizePtOf(wish.role, style), wish.weight ?? WEIGHT_OF[wish.role], measure);
}

/** Returns the shapes of lines whose first has its top there. */
export function lineShapes(
  lines: readonly Line[],
  wish: TextWish,
  { style, measure }: Setting,
  left: number,
  top: number,
): readonly Shape[] {
  const sizePt = sizePtOf(wish.role, style);
  const height = lineHeightMm(wish.role, style);
  const box = lineBoxMm(measure, sizePt);
  const baseline = (height - box) / 2 + (measure.ascentEm * box) / (measure.ascentEm + measure.descentEm);
  return lines.flatMap((line, row) => {
    const shift = wish.anchor === 'middle' ? (wish.widthMm - line.widthMm) / 2 : 0;
    const y = top + row * height + baseline;
    return line.pieces.map((piece): Shape => {
      const x = left + shift + piece.leftMm;
      if ('text' in piece)
        return { kind: 'text', x, y, text: piece.text, sizePt, weight: piece.weight, anchor: 'start', role: wish.role };
      return piece.draw === 'box'
        ? { kind: 'rect', x, y: y - piece.widthMm + 0.4, width: piece.widthMm, height: piece.widthMm, stroke: PEN }
        : { kind: 'line', x1: x, y1: y + 0.6, x2: x + piece.widthMm, y2: y + 0.6, stroke: PEN };
    });
  });
}

const PEN = { widthMm: 0.25, shade: 'ink' } as const;

/** Returns blocks one above the other; those without height take no gap. */
export function stack(blocks: readonly Block[], gapMm = 0): Block {
  const shown = blocks.filter(({ heightMm }) => heightMm > 0);
  const heightMm = shown.reduce((sum, block) => sum + block.heightMm, 0) + gapMm * Math.max(0, shown.length - 1);
  return {
    heightMm,
    at: (left, top) => {
      let y = top;
      return shown.flatMap((block) => {
        const parts = block.at(left, y);
        y += block.heightMm + gapMm;
        return parts;
      });
    },
  };
}

export interface Column {
  readonly block: Block;
  readonly leftMm: number;
}

/** Returns blocks beside each other, tops in line. */
export function beside(columns: readonly Column[]): Block {
  return {
    heightMm: Math.max(0, ...columns.map(({ block }) => block.heightMm)),
    at: (left, top) => columns.flatMap(({ block, leftMm }) => block.at(left + leftMm, top)),
  };
}

/** Returns a block in a frame; its inner block is narrower by twice the padding. */
export function framed(inner: Block, widthMm: number, paddingMm: number, strokeMm: number): Block {
  const heightMm = inner.heightMm + 2 * paddingMm;
  return {
    heightMm,
    at: (left, top) => [
      artifact({
        kind: 'rect',
        x: left + strokeMm / 2,
        y: top + strokeMm / 2,
        width: widthMm - strokeMm,
        height: heightMm - strokeMm,
        stroke: { widthMm: strokeMm, shade: 'ink' },
      }),
      ...inner.at(left + paddingMm, top + paddingMm),
    ],
  };
}

/** Returns a list whose entries stand behind a mark or a number of `markMm`. */
export function listBlock(
  entries: readonly { readonly mark: readonly Run[] | string; readonly block: Block }[],
  markMm: number,
  role: TextRole,
  setting: Setting,
  gapMm = 0,
): Block {
  const rows = entries.map(({ mark, block }) => {
    const label = textBlock(mark, { role, widthMm: markMm, tag: 'Lbl', weight: 'bold' }, setting);
    const heightMm = Math.max(label.heightMm, block.heightMm);
    return {
      heightMm,
      at: (left: number, top: number): readonly Part[] => [
        {
          tag: 'LI',
          shapes: [],
          children: [...label.at(left, top), { tag: 'LBody', shapes: [], children: block.at(left + markMm, top) }],
        },
      ],
    };
  });
  const all = stack(rows, gapMm);
  if (rows.length === 0) return NOTHING;
  return { heightMm: all.heightMm, at: (left, top) => [{ tag: 'L', shapes: [], children: all.at(left, top) }] };
}

/** Returns an empty space. */
export function space(heightMm: number): Block {
  return { heightMm, at: () => [] };
}
