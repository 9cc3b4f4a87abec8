/** Every example on both papers and in both languages: the page, the cards and a sitter's sheet. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Log } from '../../../src/diagnostics/log.ts';
import { fontSet, measureOf } from '../../../src/emit/pdf/fonts.ts';
import { careDocument, NO_WISH } from '../../../src/layout/care-document.ts';
import { handoverDocument } from '../../../src/layout/handover-pages.ts';
import { LARGE_PRINT } from '../../../src/layout/page-style.ts';
import { shelfCards } from '../../../src/layout/shelf-cards.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { compiledHousehold, planIn } from '../../compiled-household.ts';
import { pageFaults } from './page-faults.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const measure = measureOf(fontSet());

function planOf(file: string, language: 'en' | 'es', paper: 'a4' | 'letter'): Plan {
  const text = readFileSync(new URL(file, EXAMPLES), 'utf8')
    .replace(/^language: .*\n/m, '')
    .replace(/^paper: .*\n/m, '');
  return planIn(compiledHousehold(`${text}\nlanguage: ${language}\npaper: ${paper}\n`, { file }));
}

const files = readdirSync(EXAMPLES).filter((file) => file.endsWith('.yaml'));
const languages = files.flatMap((file) => [[file, 'en'] as const, [file, 'es'] as const]);

describe.each(languages)('%s in %s', (file, language) => {
  const a4 = planOf(file, language, 'a4');
  const onEach: readonly Plan[] = [a4, { ...a4, paper: 'letter' }];

  it('has one page for the door, with nothing outside, on each other or too small', () => {
    for (const plan of onEach) {
      const log = new Log();
      const document = careDocument(plan, NO_WISH, measure, log);
      expect(document?.pages.length, JSON.stringify(log.sorted())).toBe(1);
      if (document) expect(pageFaults(document, measure)).toEqual([]);
    }
  });

  it('has four weeks on a page an enclosure', () => {
    for (const plan of onEach) {
      const wish = { ...NO_WISH, weeks: 4, perEnclosure: true };
      const document = careDocument(plan, wish, measure, new Log());
      expect(document?.pages.length).toBe(plan.enclosures.length < 2 ? 1 : plan.enclosures.length + 1);
      if (document) expect(pageFaults(document, measure)).toEqual([]);
    }
  });

  it('has large print over several pages', () => {
    const document = careDocument(a4, { ...NO_WISH, largePrint: true }, measure, new Log());
    expect(document?.pages.length).toBeGreaterThan(1);
    if (document) expect(pageFaults(document, measure, LARGE_PRINT)).toEqual([]);
  });

  it('has cards within a quarter of a sheet', () => {
    for (const plan of onEach) {
      const document = shelfCards(plan, measure);
      if (document) expect(pageFaults(document, measure, 1, 5)).toEqual([]);
    }
  });

  it('has a sheet for the sitter, also in large print', () => {
    for (const plan of onEach)
      for (const largePrint of [false, true]) {
        const wish = { sitter: 'sitter', from: '2027-03-06', to: '2027-03-11', largePrint };
        const document = handoverDocument(plan, wish, measure, new Log());
        expect(pageFaults(document, measure, largePrint ? LARGE_PRINT : 1)).toEqual([]);
      }
  });
});
