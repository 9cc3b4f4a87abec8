/** Drawings within the page; of a room with many dials and enclosures they stand in files of their own, and the page points to them. */
import type { Drawing } from '../../layout/shapes.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Words } from '../../plan/words/words.ts';
import { paintInline } from '../paint-svg.ts';
import { html, type Markup, NOTHING, trusted } from './markup.ts';
import type { PageLook } from './page-look.ts';

/** A phone reads some megabytes at most. */
const DIALS_AND_ENCLOSURES_AT_MOST = 24;

/** Returns whether drawings stand in the page itself. */
export function drawsWithin({ lighting, misting }: Pick<Plan, 'lighting' | 'misting'>): boolean {
  return lighting.length + misting.length <= DIALS_AND_ENCLOSURES_AT_MOST;
}

/** Returns a small drawing. */
export function drawn(drawing: Drawing, prefix: string): Markup {
  return trusted(paintInline(drawing, prefix));
}

/** Returns a chart that scrolls sideways where the screen is narrow. */
export function wideChart(drawing: Drawing, prefix: string, label: string): Markup {
  return html`<div class="wide" role="region" tabindex="0" aria-label="${label}">${drawn(drawing, prefix)}</div>`;
}

/** Returns a link to the first of some files that stands beside the page; nothing where none does. */
export function fileLink(paths: readonly string[], { files }: PageLook, { web }: Words): Markup {
  const path = paths.find((each) => files.includes(each));
  return path === undefined ? NOTHING : html`<p><a href="${path}">${web.drawing}: ${path}</a></p>`;
}
