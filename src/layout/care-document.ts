/** Which page is made: the span of days, the animals on it, one page or a page each; and what is said where it does not fit. */
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';
import { words as allWords } from '../plan/words/words.ts';
import type { Setting } from './block.ts';
import { NOTHING } from './block.ts';
import { type CarePage, carePage, footerBlock } from './care-page.ts';
import { dueJobs } from './care-rows.ts';
import { reportContacts } from './contacts-report.ts';
import { flowPages } from './flow.ts';
import { carePageItems } from './large-print.ts';
import { reportLetters } from './letters-report.ts';
import type { Page, PaperDocument } from './page.ts';
import { monthOf, type PageScope, type PageSpan, weeksFrom } from './page-span.ts';
import { LARGE_PRINT, PAPERS, type PageStyle } from './page-style.ts';
import { reportCuts, shortName } from './short-name.ts';
import type { TextMeasure } from './text-measure.ts';

/** What the keeper asked for; null: nothing said. */
export interface CareWish {
  readonly weeks: number | null;
  /** `YYYY-MM`. */
  readonly month: string | null;
  readonly largePrint: boolean;
  /** A page for each enclosure, and one for the shelf. */
  readonly perEnclosure: boolean;
}

export const NO_WISH: CareWish = { weeks: null, month: null, largePrint: false, perEnclosure: false };
const USUAL_WEEKS = 4;
export const MOST_WEEKS = 5;

/** Returns the document, or null where it does not fit; reports why and what would. */
export function careDocument(plan: Plan, wish: CareWish, measure: TextMeasure, log: Log): PaperDocument | null {
  reportContacts(plan.contacts, log);
  reportCuts(plan, log);
  const pages = wish.largePrint ? largePages(plan, wish, measure, log) : onePages(plan, wish, measure, log);
  if (pages === null) return null;
  const words = allWords(plan.language).page;
  const document: PaperDocument = {
    title: `${shortName(plan.name)}: ${words.pageSubject}`,
    subject: words.pageSubject,
    language: plan.language,
    made: plan.made,
    pages,
  };
  reportLetters(document, measure, log);
  return document;
}

/** Returns the animals of each page. */
function scopesOf(plan: Plan, perEnclosure: boolean): readonly PageScope[] {
  if (!perEnclosure || plan.enclosures.length < 2) return [{ enclosures: plan.enclosures, shelf: true }];
  return [
    ...plan.enclosures.map((enclosure) => ({ enclosures: [enclosure], shelf: false })),
    { enclosures: [], shelf: true },
  ];
}

function onePages(plan: Plan, wish: CareWish, measure: TextMeasure, log: Log): readonly Page[] | null {
  const scopes = scopesOf(plan, wish.perEnclosure);
  const wanted = spanOf(plan, wish);
  const made = pagesOf(plan, wanted, scopes, measure);
  if (made.fits) return made.pages;
  const isOpen = wish.weeks === null && wish.month === null;
  const fewer = isOpen ? fewerWeeks(plan, scopes, USUAL_WEEKS - 1, measure) : null;
  const remedies = remediesOf(plan, wish, wanted, measure);
  const about = aboutPage(plan, wish, wanted);
  if (fewer) {
    const others = remedies.filter((remedy) => !remedy.startsWith('print --weeks'));
    log.report('page-fewer-weeks', { ...about, weeks: fewer.weeks, fits: others });
    return fewer.pages;
  }
  const overMm = Number.isFinite(made.overMm) ? Math.ceil(made.overMm) : null;
  log.report('page-too-long', { ...about, overMm, fits: remedies });
  return null;
}

interface PagesThatFit {
  readonly fits: true;
  readonly pages: readonly Page[];
}

/** As roomy as fits; all pages of a document look alike. */
function pagesOf(
  plan: Plan,
  span: PageSpan,
  scopes: readonly PageScope[],
  measure: TextMeasure,
): PagesThatFit | Extract<CarePage, { fits: false }> {
  let over = 0;
  for (const density of ['roomy', 'close'] as const) {
    const setting: Setting = { style: styleOf(plan, 1, density), measure };
    const made = scopes.map((scope) => carePage(plan, span, scope, setting));
    if (made.every((page) => page.fits)) return { fits: true, pages: made.map(({ page }) => page) };
    over = Math.max(...made.map((page) => (page.fits ? 0 : page.overMm)));
  }
  return { fits: false, overMm: over };
}

function fewerWeeks(
  plan: Plan,
  scopes: readonly PageScope[],
  from: number,
  measure: TextMeasure,
): (PagesThatFit & { readonly weeks: number }) | null {
  for (let weeks = from; weeks >= 1; weeks--) {
    const made = pagesOf(plan, weeksFrom(plan, weeks), scopes, measure);
    if (made.fits) return { ...made, weeks };
  }
  return null;
}

/** What would fit, tried and found to. */
function remediesOf(plan: Plan, wish: CareWish, wanted: PageSpan, measure: TextMeasure): readonly string[] {
  const asked = wish.month === null ? (wish.weeks ?? USUAL_WEEKS) : MOST_WEEKS;
  const fewer = fewerWeeks(plan, scopesOf(plan, wish.perEnclosure), asked - 1, measure);
  const isAlone = wish.perEnclosure || plan.enclosures.length < 2;
  const each = isAlone ? null : pagesOf(plan, wanted, scopesOf(plan, true), measure);
  const eachFewer = isAlone || each?.fits ? null : fewerWeeks(plan, scopesOf(plan, true), asked - 1, measure);
  return [
    ...(fewer ? [`print --weeks ${fewer.weeks}, which fits`] : []),
    ...(each?.fits ? ['print --per enclosure, a page each, which fits'] : []),
    ...(eachFewer ? [`print --per enclosure --weeks ${eachFewer.weeks}, a page each, which fits`] : []),
    ...(fewer || each?.fits || eachFewer ? [] : ['print --large-print, which goes on over several pages']),
  ];
}

/** Large print goes on over as many pages as it takes. */
function largePages(plan: Plan, wish: CareWish, measure: TextMeasure, log: Log): readonly Page[] | null {
  const words = allWords(plan.language).page;
  const setting: Setting = { style: styleOf(plan, LARGE_PRINT, 'roomy'), measure };
  const span = spanOf(plan, wish);
  const inner = setting.style.paper.widthMm - 20;
  const flowed = scopesOf(plan, wish.perEnclosure).map((scope) =>
    flowPages(
      carePageItems(plan, span, scope, setting),
      { head: NOTHING, footOf: () => footerBlock(plan, span, words, inner, setting), gapMm: 2.5 },
      setting,
    ),
  );
  const over = Math.max(0, ...flowed.map((each) => (each.fits ? 0 : each.overMm)));
  if (over > 0) {
    log.report('page-too-long', { ...aboutPage(plan, wish, span), overMm: Math.ceil(over), fits: [] });
    return null;
  }
  const pages = flowed.flatMap((each) => (each.fits ? each.pages : []));
  if (pages.length > 1) log.report('page-more-pages', { pages: pages.length });
  return pages;
}

function spanOf(plan: Plan, wish: CareWish): PageSpan {
  const month = wish.month === null ? null : monthOf(plan, wish.month);
  return month ?? weeksFrom(plan, wish.weeks ?? USUAL_WEEKS);
}

function styleOf(plan: Plan, scale: number, density: PageStyle['density']): PageStyle {
  return { paper: PAPERS[plan.paper], scale, density };
}

function aboutPage(plan: Plan, wish: CareWish, span: PageSpan) {
  const words = allWords(plan.language).page;
  const scope = { enclosures: plan.enclosures, shelf: true };
  const { rows, dated } = dueJobs(plan, span, scope, words, 'roomy');
  const weeks = wish.weeks ?? USUAL_WEEKS;
  return {
    span: wish.month ?? (weeks === 1 ? '1 week' : `${weeks} weeks`),
    enclosures: plan.enclosures.length,
    jobs: rows.length + dated.length,
    paper: plan.paper === 'a4' ? 'A4' : 'Letter',
  };
}
