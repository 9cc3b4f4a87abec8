/** What there is to say about printed pages. */
import { wording } from '../diagnostic.ts';

const weeksOf = (weeks: number): string => (weeks === 1 ? '1 week' : `${weeks} weeks`);
const animals = (count: number): string => (count === 1 ? '1 enclosure' : `${count} enclosures`);

export interface PageMeasure {
  /** What was to stand on the page, for instance `4 weeks` or `May 2027`. */
  readonly span: string;
  readonly enclosures: number;
  readonly jobs: number;
  readonly paper: string;
}

const onPaper = ({ span, enclosures, jobs, paper }: PageMeasure): string =>
  `${span} of ${animals(enclosures)} with ${jobs === 1 ? '1 job' : `${jobs} jobs`} do not fit on one ${paper} page at sizes that can be read`;

export const paper = {
  'page-too-long': wording<PageMeasure & { readonly overMm: number | null; readonly fits: readonly string[] }>(
    'cannot be done',
    'refusal',
    (values) =>
      `${onPaper(values)}${values.overMm === null ? '; its days would be narrower than a hand can write in' : `; it is ${values.overMm} mm too long`}`,
    ({ fits }) =>
      fits.length === 0
        ? 'nothing that can be asked for fits; split the household, or let several jobs be one'
        : `${fits.join(', or ')}`,
  ),
  'page-fewer-weeks': wording<PageMeasure & { readonly weeks: number; readonly fits: readonly string[] }>(
    'falls short',
    'warning',
    (values) => `${onPaper(values)}; the page shows ${weeksOf(values.weeks)}`,
    ({ fits }) => (fits.length === 0 ? 'let several jobs be one to have more weeks on it' : fits.join(', or ')),
  ),
  'page-more-pages': wording<{ readonly pages: number }>(
    'note',
    'note',
    ({ pages }) => `large print takes ${pages} pages`,
    () => 'keep them together, the one with the telephone numbers on top',
  ),
  'contacts-missing': wording<{ readonly who: string }>(
    'note',
    'note',
    ({ who }) => `the file gives no number of ${who}, so the page leaves a line to write it on`,
    () => 'write it in before the page is hung up, or give it under contacts',
  ),
  'name-cut': wording<{ readonly start: string; readonly length: number; readonly most: number }>(
    'falls short',
    'warning',
    ({ start, length, most }) => `"${start}" has ${length} characters; pages print ${most} of them`,
    () => 'give it a shorter name',
  ),
  'letters-missing': wording<{ readonly characters: string; readonly text: string }>(
    'falls short',
    'warning',
    ({ characters, text }) =>
      `the fonts have no ${characters}, which stands in "${text}"; an empty box is printed for it`,
    () => 'name a font file that has it with --font, or write the name in other letters',
  ),
  'right-to-left': wording<{ readonly text: string }>(
    'falls short',
    'warning',
    ({ text }) => `"${text}" is written from right to left, and pages are laid out from left to right`,
    () => 'look at the page before it is handed over, or write the name in other letters',
  ),
  'handover-not-away': wording<{ readonly from: string; readonly to: string; readonly who: string }>(
    'falls short',
    'warning',
    ({ from, to, who }) =>
      `the file has no absence from ${from} to ${to}, so the sheet gives the sitter all that ${who} would do, at a visit every day`,
    ({ from, to }) =>
      `give it under away with from: ${from}, to: ${to} and a sitter, so that calendars, chores and orders know of it`,
  ),
};
