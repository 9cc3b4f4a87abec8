import type { Log } from '../../diagnostics/log.ts';
import { type HandoverWish, handoverDocument } from '../../layout/handover-pages.ts';
import type { Plan } from '../../plan/plan.ts';
import { fontSet, measureOf } from './fonts.ts';
import { paintPdf } from './paint-pdf.ts';

/** Returns the sitter's sheet as PDF, with fonts for letters that ours lack. */
export async function handoverPdf(
  plan: Plan,
  wish: HandoverWish,
  fontFiles: readonly Uint8Array[],
  log: Log,
): Promise<Uint8Array> {
  const fonts = fontSet(fontFiles);
  return paintPdf(handoverDocument(plan, wish, measureOf(fonts), log), fonts);
}
