/**
 * The page for the door: whom to call and when to act, the days with their boxes, what the dials and pumps do, a footer that says when
 * the page is stale. One page or a refusal: sizes are never made smaller.
 */
import { epochDay } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { digestOf } from '../basics/digest.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { DialPlan, Plan } from '../plan/plan.ts';
import { words as allWords } from '../plan/words/words.ts';
import { type Block, beside, NOTHING, type Setting, stack, textBlock } from './block.ts';
import { closeGrid, gridRows } from './care-grid.ts';
import { dueJobs, visitsIn } from './care-rows.ts';
import { datedBlock } from './dated-block.ts';
import { dialBlock } from './dial-block.ts';
import { emergencyBlock } from './emergency-block.ts';
import { feedLetters } from './feed-letters.ts';
import { mistBlocks } from './mist-block.ts';
import type { Page, Part } from './page.ts';
import type { PageScope, PageSpan } from './page-span.ts';
import { MARGIN_MM } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { dayAndDate, fullDate } from './printed-values.ts';
import { shortName } from './short-name.ts';

export type CarePage =
  | { readonly fits: true; readonly page: Page; readonly leftMm: number }
  | { readonly fits: false; readonly overMm: number };

const GAP_MM = { roomy: 1.8, close: 0.9 } as const;

/** Returns the page of a span of days and some animals, or by how much it is too long. */
export function carePage(plan: Plan, span: PageSpan, scope: PageScope, setting: Setting): CarePage {
  const { widthMm, heightMm } = setting.style.paper;
  const inner = widthMm - 2 * MARGIN_MM;
  const words = allWords(plan.language).page;
  const body = careBody(plan, span, scope, words, inner, setting);
  if (body === null) return { fits: false, overMm: Number.POSITIVE_INFINITY };
  const footer = footerBlock(plan, span, words, inner, setting);
  const room = heightMm - 2 * MARGIN_MM - footer.heightMm - 1;
  if (body.heightMm > room + 1e-6) return { fits: false, overMm: body.heightMm - room };
  const parts: readonly Part[] = [
    ...body.at(MARGIN_MM, MARGIN_MM),
    ...footer.at(MARGIN_MM, heightMm - MARGIN_MM - footer.heightMm),
  ];
  return { fits: true, page: { size: { widthMm, heightMm }, parts }, leftMm: room - body.heightMm };
}

function careBody(
  plan: Plan,
  span: PageSpan,
  scope: PageScope,
  words: PageWords,
  widthMm: number,
  setting: Setting,
): Block | null {
  const { density } = setting.style;
  const feeds = feedLetters(plan, span, scope, words);
  const jobs = dueJobs(plan, span, scope, words, density);
  const rows = gridRows(feeds.rows, jobs.rows, density);
  const grid = rows.length === 0 ? NOTHING : closeGrid(rows, span, widthMm, words, setting);
  if (grid === null) return null;
  const page = { plan, span, scope, words, widthMm, setting };
  return stack(
    [
      titleBlock(page),
      scope.enclosures.length === 0 ? NOTHING : emergencyBlock(plan, span.from, scope, words, widthMm, setting),
      rows.length === 0 ? NOTHING : howToBlock(page),
      visitsBlock(page),
      grid,
      legendBlock(feeds.legend, page),
      datedBlock(jobs.dated, span.from, words, widthMm, setting),
      stack(machineBlocks(page), GAP_MM[density]),
      doNotBlock(page),
    ],
    GAP_MM[density],
  );
}

/** What every part of a page is made from. */
export interface PageMatter {
  readonly plan: Plan;
  readonly span: PageSpan;
  readonly scope: PageScope;
  readonly words: PageWords;
  readonly widthMm: number;
  readonly setting: Setting;
}

/** Returns the heading of a page: whose, and for which dates. */
export function titleBlock({ plan, span, scope, words, widthMm, setting }: PageMatter): Block {
  return textBlock(titleOf(plan, span, scope, words), { role: 'title', widthMm, tag: 'H1' }, setting);
}

/** Returns the sentence that says how the grid is filled in. */
export function howToBlock({ words, widthMm, setting }: PageMatter): Block {
  const how = setting.style.density === 'close' ? words.howToFillClose : words.howToFill;
  return textBlock([{ text: `${words.toDo}. `, weight: 'bold' }, how], { role: 'text', widthMm }, setting);
}

/** Returns what a helper is never to do. */
export function doNotBlock({ words, widthMm, setting }: PageMatter): Block {
  return textBlock([{ text: `${words.doNot}: `, weight: 'bold' }, words.doNots], { role: 'text', widthMm }, setting);
}

/** Who comes in the keeper's place, and when. */
export function visitsBlock({ plan, span, words, widthMm, setting }: PageMatter): Block {
  const lines = visitsIn(plan, span).map(({ from, to, sitter, dates }) =>
    sitter === '' || dates.length === 0
      ? words.nobodyFrom(words.span(dayAndDate(from, words), dayAndDate(to, words)))
      : words.visitsBy(plainLine(sitter), datesText(dates, words)),
  );
  return stack(lines.map((line) => textBlock(line, { role: 'text', widthMm }, setting)));
}

/** Days in a row are told by the first and the last. */
function datesText(dates: readonly IsoDate[], words: PageWords): string {
  const runs: IsoDate[][] = [];
  for (const date of dates) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && epochDay(date) === epochDay(last) + 1) run.push(date);
    else runs.push([date]);
  }
  return words.list(
    runs.map((run) => {
      const [first = '', last = first] = [run[0], run.at(-1)];
      return first === last ? dayAndDate(first, words) : words.span(dayAndDate(first, words), dayAndDate(last, words));
    }),
  );
}

/** Returns what the letters of the grid stand for; nothing where it has none. */
export function legendBlock(
  legend: readonly { readonly letter: string; readonly means: string }[],
  { words, widthMm, setting }: PageMatter,
): Block {
  if (legend.length === 0) return NOTHING;
  return textBlock(legendRuns(legend, words), { role: 'text', widthMm }, setting);
}

function titleOf(plan: Plan, span: PageSpan, scope: PageScope, words: PageWords): string {
  const all = scope.enclosures.length === plan.enclosures.length;
  const [only] = scope.enclosures;
  const name = all ? plan.name : only ? only.name : `${shortName(plan.name)}, ${words.shelfPage}`;
  return words.pageTitle(shortName(name), dayAndDate(span.from, words), fullDate(span.to, words));
}

function legendRuns(legend: readonly { readonly letter: string; readonly means: string }[], words: PageWords) {
  return [
    { text: `${words.feedLetters} `, weight: 'bold' as const },
    ...legend.flatMap(({ letter, means }, index) => [
      { text: `${letter}\u00a0`, weight: 'bold' as const },
      `${means}${index === legend.length - 1 ? '.' : ';'} `,
    ]),
  ];
}

/** Dials two to a row, then mists and tanks: beside the last dial where there is room. */
export function machineBlocks({ plan, span, scope, words, widthMm, setting }: PageMatter): readonly Block[] {
  const half = setting.style.scale > 1 ? widthMm : (widthMm - 3) / 2;
  const drawn = dialsOf(plan, scope).map((dial) => dialBlock(dial, span.from, plan.language, half, setting));
  const isOdd = half < widthMm && drawn.length % 2 === 1;
  const mists = mistBlocks(plan, span, scope, words, isOdd ? half : widthMm, setting);
  const cells = isOdd ? [...drawn, stack(mists)] : drawn;
  const rows: Block[] = [];
  const perRow = half < widthMm ? 2 : 1;
  for (let i = 0; i < cells.length; i += perRow)
    rows.push(beside(cells.slice(i, i + perRow).map((block, column) => ({ block, leftMm: column * (half + 3) }))));
  if (isOdd) return rows;
  return setting.style.scale > 1 ? [...rows, ...mists] : [...rows, stack(mists)];
}

/** Returns the dials that switch something for the animals of a page, or for the shelf. */
function dialsOf(plan: Plan, scope: PageScope): readonly DialPlan[] {
  const wanted = new Set(scope.enclosures.map(({ id }) => id));
  return plan.lighting.filter(
    ({ settings, lamps }) =>
      settings.length > 0 &&
      (lamps.some(({ enclosure }) => wanted.has(enclosure)) || (lamps.length === 0 && scope.shelf)),
  );
}

/** Returns when the page was made, from which plan, and when to replace it. */
export function footerBlock(plan: Plan, span: PageSpan, words: PageWords, widthMm: number, setting: Setting): Block {
  const text = `${words.footer(fullDate(plan.made, words), planDigest(plan), fullDate(span.to, words))}. ${words.footerNote}`;
  return textBlock(text, { role: 'footer', widthMm }, setting);
}

/** Eight characters that tell one revision of a plan from another. */
export function planDigest({ id, revision, digests }: Plan): string {
  return digestOf({ id, revision, digests }).slice(0, 8);
}
