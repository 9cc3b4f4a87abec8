import { shelfCards } from '../../layout/shelf-cards.ts';
import type { Plan } from '../../plan/plan.ts';
import type { EmitOptions, Product } from '../product.ts';
import { fontSet, measureOf } from './fonts.ts';
import { paintPdf } from './paint-pdf.ts';

/** Returns the cards of the dials; nothing where the plan has none. */
export async function shelfCardFiles(plan: Plan, options: EmitOptions): Promise<readonly Product[]> {
  const fonts = fontSet(options.fonts);
  const document = shelfCards(plan, measureOf(fonts));
  return document === null ? [] : [{ path: 'shelf-cards.pdf', content: await paintPdf(document, fonts) }];
}
