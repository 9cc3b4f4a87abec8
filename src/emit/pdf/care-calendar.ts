import { carePage } from '../../layout/care-page.ts';
import type { PaperDocument } from '../../layout/page.ts';
import { weeksFrom } from '../../layout/page-span.ts';
import { PAPERS } from '../../layout/page-style.ts';
import type { Plan } from '../../plan/plan.ts';
import { words } from '../../plan/words/words.ts';
import type { Product } from '../emitters.ts';
import { type FontSet, fontSet, measureOf } from './fonts.ts';
import { paintPdf } from './paint-pdf.ts';

/** Returns the page for the door, or nothing where not even a week fits. */
export async function careCalendar(plan: Plan, fonts: FontSet): Promise<Uint8Array | null> {
  const said = words(plan.language).page;
  const setting = { style: { paper: PAPERS[plan.paper], scale: 1 }, measure: measureOf(fonts) };
  for (const weeks of [4, 3, 2, 1]) {
    const made = carePage(plan, weeksFrom(plan, weeks), { enclosures: plan.enclosures, shelf: true }, setting);
    if (!made.fits) continue;
    const paper: PaperDocument = {
      title: plan.name,
      subject: said.pageSubject,
      language: plan.language,
      made: plan.made,
      pages: [made.page],
    };
    return paintPdf(paper, fonts);
  }
  return null;
}

/** Returns the files of the page. */
export async function careCalendarFiles(plan: Plan): Promise<readonly Product[]> {
  const content = await careCalendar(plan, fontSet());
  return content === null ? [] : [{ path: 'care-calendar.pdf', content }];
}
