import { Log } from '../../diagnostics/log.ts';
import { careDocument, NO_WISH } from '../../layout/care-document.ts';
import type { Plan } from '../../plan/plan.ts';
import type { EmitOptions, Product } from '../product.ts';
import { fontSet, measureOf } from './fonts.ts';
import { paintPdf } from './paint-pdf.ts';

/** Returns the page for the door; nothing where it does not fit, which is said in the log. */
export async function careCalendarFiles(plan: Plan, options: EmitOptions): Promise<readonly Product[]> {
  const fonts = fontSet(options.fonts);
  const document = careDocument(plan, options.page ?? NO_WISH, measureOf(fonts), options.log ?? new Log());
  return document === null ? [] : [{ path: 'care-calendar.pdf', content: await paintPdf(document, fonts) }];
}
