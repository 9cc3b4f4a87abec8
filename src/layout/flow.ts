/** Lays blocks down page after page: a block is never torn, a heading never left alone at the foot of a page. */
import { type Block, type Setting, stack } from './block.ts';
import type { Page, Part } from './page.ts';
import { MARGIN_MM } from './page-style.ts';

export interface FlowItem {
  readonly block: Block;
  /** Stays on one page with what follows it. */
  readonly keepWithNext?: boolean;
}

export interface FlowFrame {
  /** Above the text of every page but the first. */
  readonly head: Block;
  readonly footOf: (page: number, count: number) => Block;
  readonly gapMm: number;
}

export type Flowed =
  | { readonly fits: true; readonly pages: readonly Page[] }
  /** A block is taller than a page. */
  | { readonly fits: false; readonly overMm: number };

/** Returns the pages, or by how much a block is taller than a page. */
export function flowPages(items: readonly FlowItem[], frame: FlowFrame, setting: Setting): Flowed {
  const { heightMm } = setting.style.paper;
  const footMm = frame.footOf(1, 1).heightMm;
  const room = heightMm - 2 * MARGIN_MM - footMm - 1.5;
  const sheets: Block[][] = [[]];
  let used = 0;
  for (const chunk of chunksOf(items)) {
    const block = stack(
      chunk.map((item) => item.block),
      frame.gapMm,
    );
    if (block.heightMm === 0) continue;
    const headMm = frame.head.heightMm === 0 ? 0 : frame.head.heightMm + frame.gapMm;
    if (block.heightMm > room - headMm + 1e-6) return { fits: false, overMm: block.heightMm - (room - headMm) };
    if (used > 0 && used + frame.gapMm + block.heightMm > room + 1e-6) {
      sheets.push([frame.head]);
      used = frame.head.heightMm;
    }
    sheets.at(-1)?.push(block);
    used += (used > 0 ? frame.gapMm : 0) + block.heightMm;
  }
  return { fits: true, pages: sheets.map((blocks, index) => pageOf(blocks, index, sheets.length, frame, setting)) };
}

function pageOf(blocks: readonly Block[], index: number, count: number, frame: FlowFrame, { style }: Setting): Page {
  const { widthMm, heightMm } = style.paper;
  const foot = frame.footOf(index + 1, count);
  const parts: readonly Part[] = [
    ...stack(blocks, frame.gapMm).at(MARGIN_MM, MARGIN_MM),
    ...foot.at(MARGIN_MM, heightMm - MARGIN_MM - foot.heightMm),
  ];
  return { size: { widthMm, heightMm }, parts };
}

/** Items that stay together. */
function chunksOf(items: readonly FlowItem[]): readonly (readonly FlowItem[])[] {
  const chunks: FlowItem[][] = [];
  let open = false;
  for (const item of items) {
    if (open) chunks.at(-1)?.push(item);
    else chunks.push([item]);
    open = item.keepWithNext === true;
  }
  return chunks;
}

/** Returns blocks made of a list's items in order, each of as many as are at most so tall together; a single item may be taller. */
export function piecesOf<T>(
  items: readonly T[],
  make: (some: readonly T[]) => Block | null,
  mostMm: number,
): readonly Block[] {
  const whole = items.length === 0 ? null : make(items);
  if (whole === null) return [];
  if (whole.heightMm <= mostMm || items.length === 1) return [whole];
  const half = Math.ceil(items.length / 2);
  return [...piecesOf(items.slice(0, half), make, mostMm), ...piecesOf(items.slice(half), make, mostMm)];
}
