/** What is due on a page, as rows of a grid and as a list by date. A job is named once; the same job at several enclosures is one row. */

import type { IsoDate } from '../basics/civil.ts';
import type { Plan } from '../plan/plan.ts';
import { dateWithin, isInScope, type PageScope, type PageSpan } from './page-span.ts';
import type { PageStyle } from './page-style.ts';
import type { PageWords } from './page-words.ts';
import { degreeSign } from './printed-values.ts';
import { shortName, shortText } from './short-name.ts';

/** What is written into a due cell: initials, or one or two values one above the other. */
export type CellForm = 'initials' | 'value' | 'two-values';

export interface JobRow {
  readonly label: string;
  /** Beside the upper and the lower half of a cell for two values. */
  readonly halves: readonly [string, string] | null;
  readonly form: CellForm;
  readonly dates: ReadonlySet<IsoDate>;
}

/** A job that is due on one or two days of the page. */
export interface DatedJob {
  readonly dates: readonly IsoDate[];
  readonly label: string;
  /** Blanks for what is read: a unit each, with what stands before. */
  readonly blanks: readonly Blank[];
}

export interface Blank {
  readonly before: string;
  readonly unit: string;
}

export interface DueJobs {
  readonly rows: readonly JobRow[];
  readonly dated: readonly DatedJob[];
}

/** A job due at least so often on a page has a row of its own. */
const ROW_FROM_DATES = { roomy: 3, close: 5 } as const;

interface Group {
  readonly kind: string;
  readonly title: string;
  readonly enclosures: readonly string[];
  readonly dates: readonly IsoDate[];
}

/** Returns the jobs of a span, most often due first. */
export function dueJobs(
  plan: Plan,
  span: PageSpan,
  scope: PageScope,
  words: PageWords,
  density: PageStyle['density'],
): DueJobs {
  const groups = groupsOf(plan, span, scope);
  const rowFrom = span.days.length <= 7 ? ROW_FROM_DATES.roomy : ROW_FROM_DATES[density];
  const rows = groups.filter(({ dates }) => dates.length >= rowFrom);
  const dated = groups.filter(({ dates }) => dates.length < rowFrom);
  return {
    rows: rows
      .toSorted((a, b) => b.dates.length - a.dates.length)
      .flatMap((group) => rowsOf(group, plan, scope, words, density)),
    dated: dated
      .toSorted((a, b) => compare(a.dates.join(), b.dates.join()))
      .map((group) => {
        const blanks = blanksOf(group, plan);
        const isNamed = blanks.some(({ before }) => before !== '');
        return {
          dates: group.dates,
          label: isNamed ? jobWords(group, words) : labelOf(group, plan, scope, words),
          blanks,
        };
      }),
  };
}

/** The same words on the same days are one group; whoever does them. */
function groupsOf(plan: Plan, span: PageSpan, scope: PageScope): readonly Group[] {
  const perPlace = new Map<string, { kind: string; title: string; enclosure: string | null; dates: IsoDate[] }>();
  for (const chore of plan.chores) {
    if (!isInScope(chore, scope)) continue;
    const dates = chore.dates.filter((date) => span.from <= date && date <= span.to);
    if (dates.length === 0) continue;
    const key = JSON.stringify([chore.title, chore.kind, chore.enclosure]);
    const known = perPlace.get(key) ?? { kind: chore.kind, title: chore.title, enclosure: chore.enclosure, dates: [] };
    known.dates.push(...dates);
    perPlace.set(key, known);
  }
  const groups = new Map<string, Group>();
  for (const { kind, title, enclosure, dates } of perPlace.values()) {
    const sorted = [...new Set(dates)].sort();
    const key = JSON.stringify([kind, title, enclosure === null, sorted]);
    const known = groups.get(key) ?? { kind, title, enclosures: [], dates: sorted };
    groups.set(key, { ...known, enclosures: [...known.enclosures, ...(enclosure === null ? [] : [enclosure])] });
  }
  return [...groups.values()];
}

function rowsOf(
  group: Group,
  plan: Plan,
  scope: PageScope,
  words: PageWords,
  density: PageStyle['density'],
): readonly JobRow[] {
  const dates = new Set(group.dates);
  if (group.kind === 'temperatures' && density === 'close')
    return group.enclosures.map((enclosure) => ({
      label: words.warmEndOf(nameOf(plan, enclosure), degreeSign(plan.units)),
      halves: null,
      form: 'value',
      dates,
    }));
  if (group.kind === 'temperatures')
    return group.enclosures.map((enclosure) => ({
      label: words.temperaturesOf(nameOf(plan, enclosure), degreeSign(plan.units)),
      halves: [words.warmEnd, words.coolEnd],
      form: 'two-values',
      dates,
    }));
  if (group.kind === 'weigh')
    return group.enclosures.map((enclosure) => ({
      label: words.weightOf(nameOf(plan, enclosure)),
      halves: null,
      form: 'value',
      dates,
    }));
  return [{ label: labelOf(group, plan, scope, words), halves: null, form: 'initials', dates }];
}

function jobWords({ kind, title }: Group, words: PageWords): string {
  return words.jobs[kind] ?? shortText(title);
}

/** Of all animals of a page, none is named. */
function labelOf(group: Group, plan: Plan, scope: PageScope, words: PageWords): string {
  const job = jobWords(group, words);
  if (group.enclosures.length === 0 || group.enclosures.length === scope.enclosures.length) return job;
  return words.jobOf(job, words.list(group.enclosures.map((enclosure) => nameOf(plan, enclosure))));
}

/** Returns the name of an enclosure as the grid has room for it; its id where the plan lacks it. */
export function nameOf(plan: Plan, enclosure: string): string {
  return shortName(plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure);
}

function blanksOf({ kind, enclosures }: Group, plan: Plan): readonly Blank[] {
  const many = enclosures.length > 1;
  const each = (unit: string): readonly Blank[] =>
    enclosures.map((enclosure) => ({ before: many ? nameOf(plan, enclosure) : '', unit }));
  switch (kind) {
    case 'weigh':
    case 'soak':
      return each(plan.units === 'us' ? 'oz' : 'g');
    case 'temperatures':
    case 'thermometer':
    case 'probe':
      return each(degreeSign(plan.units));
    case 'gauge':
      return enclosures.flatMap((enclosure) => [
        { before: many ? nameOf(plan, enclosure) : '', unit: '%' },
        { before: '', unit: '%' },
      ]);
    case 'salt-test':
      return each('%');
    case 'uv-index':
      return each('');
    case 'nozzle-flow':
      return [{ before: '', unit: plan.units === 'us' ? 'fl oz' : 'mL' }];
    default:
      return [];
  }
}

export interface VisitsIn {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly sitter: string;
  readonly dates: readonly IsoDate[];
}

/** Returns the absences that touch a span, cut to it, with the days on which somebody comes. */
export function visitsIn(plan: Plan, span: PageSpan): readonly VisitsIn[] {
  return plan.away
    .filter(({ from, to }) => from <= span.to && span.from <= to)
    .map(({ from, to, sitter, visits }) => ({
      from: dateWithin(from, span),
      to: dateWithin(to, span),
      sitter,
      dates: visits.filter((date) => span.from <= date && date <= span.to).toSorted(),
    }));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
