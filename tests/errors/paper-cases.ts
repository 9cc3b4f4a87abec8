/** What is said of printed pages: from a household's plan, as its pages are laid out. */
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { fontSet, measureOf } from '../../src/emit/pdf/fonts.ts';
import { type CareWish, careDocument, NO_WISH } from '../../src/layout/care-document.ts';
import { handoverSitter } from '../../src/layout/handover-sitter.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { compiledOnce, planIn } from '../compiled-household.ts';
import { householdText, type PageHousehold } from '../generated/page-household.ts';
import type { Said } from './gallery.ts';
import type { OtherCase } from './other-cases.ts';

const SHELF: PageHousehold = {
  paper: 'a4',
  language: 'en',
  enclosures: 1,
  chores: 0,
  names: ['Fern', 'Moss', 'Ochre'],
  contacts: true,
  seed: 7,
};

function saidOfPages(household: Partial<PageHousehold>, work: (plan: Plan, log: Log) => void): Said {
  const plan = planIn(compiledOnce(householdText({ ...SHELF, ...household })));
  const log = new Log();
  work(plan, log);
  const said = log.sorted();
  return { diagnostics: said, text: (wanted) => renderText(said.filter(wanted), new Map()) };
}

function saidOfPage(household: Partial<PageHousehold>, wish: Partial<CareWish> = {}): Said {
  return saidOfPages(household, (plan, log) => {
    careDocument(plan, { ...NO_WISH, ...wish }, measureOf(fontSet()), log);
  });
}

export const paperCases: Readonly<Record<string, OtherCase>> = {
  'page-too-long': {
    said: () => saidOfPage({ chores: 30 }, { weeks: 4 }),
    expected: `cannot be done (page-too-long)
  because  4 weeks of 1 enclosure with 46 jobs do not fit on one A4 page at sizes that can be read; it is 40 mm too long
  instead  print --weeks 1, which fits
`,
  },
  'page-fewer-weeks': {
    said: () => saidOfPage({ enclosures: 3 }),
    expected: `falls short (page-fewer-weeks)
  because  4 weeks of 3 enclosures with 24 jobs do not fit on one A4 page at sizes that can be read; the page shows 1 week
  instead  print --per enclosure, a page each, which fits
`,
  },
  'page-more-pages': {
    said: () => saidOfPage({}, { largePrint: true }),
    expected: `note (page-more-pages)
  because  large print takes 3 pages
  instead  keep them together, the one with the telephone numbers on top
`,
  },
  'contacts-missing': {
    said: () => saidOfPage({ contacts: false }),
    expected: `note (contacts-missing)
  because  the file gives no number of the keeper or the vet, so the page leaves a line to write it on
  instead  write it in before the page is hung up, or give it under contacts
`,
  },
  'name-cut': {
    said: () => saidOfPage({ names: ['A name of many words that goes on and on and does not end'] }),
    expected: `falls short (name-cut)
  because  "A name of many word…" has 57 characters; pages print 40 of them
  instead  give it a shorter name
`,
  },
  'letters-missing': {
    said: () => saidOfPage({ names: ['日本 Fern'] }),
    expected: `falls short (letters-missing)
  because  the fonts have no 日 (U+65E5), 本 (U+672C), which stands in "日本 Fern"; an empty box is printed for it
  instead  name a font file that has it with --font, or write the name in other letters
`,
  },
  'right-to-left': {
    said: () => saidOfPage({ names: ['سرخس'] }),
    expected: `falls short (right-to-left)
  because  "سرخس" is written from right to left, and pages are laid out from left to right
  instead  look at the page before it is handed over, or write the name in other letters
`,
  },
  'handover-not-away': {
    said: () => saidOfPages({}, (plan, log) => void handoverSitter(plan, '2027-02-01', '2027-02-03', log)),
    expected: `falls short (handover-not-away)
  because  the file has no absence from 2027-02-01 to 2027-02-03, so the sheet gives the sitter all that keeper would do, at a visit every day
  instead  give it under away with from: 2027-02-01, to: 2027-02-03 and a sitter, so that calendars, chores and orders know of it
`,
  },
};
