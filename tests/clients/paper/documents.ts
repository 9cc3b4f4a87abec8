/** The printed documents that the programs read: every example in both languages, and some generated households. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Log } from '../../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../../src/emit/pdf/fonts.ts';
import { paintPdf } from '../../../src/emit/pdf/paint-pdf.ts';
import { careDocument, NO_WISH } from '../../../src/layout/care-document.ts';
import { handoverDocument } from '../../../src/layout/handover-pages.ts';
import type { PaperDocument } from '../../../src/layout/page.ts';
import { shelfCards } from '../../../src/layout/shelf-cards.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledHousehold } from '../../compiled-household.ts';
import { householdText } from '../../generated/page-household.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
export const fonts = fontSet();
export const measure = measureOf(fonts);
export const folder = mkdtempSync(join(tmpdir(), 'pages-'));

export interface Printed {
  readonly name: string;
  readonly kind: 'page' | 'cards' | 'sheet';
  readonly plan: Plan;
  readonly paper: PaperDocument;
  readonly path: string;
}

function planOf(text: string, file: string): Plan {
  const { plan } = compiledHousehold(text, { file });
  if (!plan) throw new Error(`${file} has no plan`);
  return plan;
}

function plans(): readonly (readonly [string, Plan])[] {
  const examples = readdirSync(EXAMPLES)
    .filter((file) => file.endsWith('.yaml'))
    .flatMap((file) =>
      (['en', 'es'] as const).map((language) => {
        const text = readFileSync(new URL(file, EXAMPLES), 'utf8').replace(/^language: .*\n/m, '');
        return [`${file.replace('.yaml', '')}-${language}`, planOf(`${text}\nlanguage: ${language}\n`, file)] as const;
      }),
    );
  const generated = Array.from({ length: process.env.CLIENTS_ALL ? 20 : 3 }, (_, index) => {
    const wish = {
      paper: index % 2 === 0 ? ('letter' as const) : ('a4' as const),
      language: index % 3 === 0 ? ('es' as const) : ('en' as const),
      enclosures: 1 + (index % 2),
      chores: 2,
      names: ['Señor Ñandú', 'Salt & Pepper <3'],
      contacts: index % 2 === 1,
      seed: 500 + index,
    };
    return [`generated-${index}`, planOf(householdText(wish), 'home.yaml')] as const;
  });
  return [...examples, ...generated];
}

/** Returns every document, written to a folder of its own. */
export async function printed(): Promise<readonly Printed[]> {
  const all: Printed[] = [];
  for (const [name, plan] of plans()) {
    const last = plan.from;
    const made = [
      ['page', careDocument(plan, NO_WISH, measure, new Log())],
      ['cards', shelfCards(plan, measure)],
      [
        'sheet',
        handoverDocument(
          plan,
          { sitter: 'sitter', from: last, to: '2027-01-07', largePrint: false },
          measure,
          new Log(),
        ),
      ],
    ] as const;
    for (const [kind, paper] of made) {
      if (paper === null) continue;
      const path = join(folder, `${name}-${kind}.pdf`);
      writeFileSync(path, await paintPdf(paper, fonts));
      all.push({ name: `${name} ${kind}`, kind, plan, paper, path });
    }
  }
  return all;
}
