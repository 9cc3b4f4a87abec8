/** What is due on a page, as rows of a grid and as a list by date. A job is named once; the same job at several enclosures is one row. */

import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { Plan } from '../plan/plan.ts';
import { isInScope, type PageScope, type PageSpan } from './page-span.ts';
import type { PageWords } from './page-words.ts';
import { degreeSign } from './printed-values.ts';

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

/** A job due at least so often has a row of its own. */
export const ROW_FROM_DATES = 3;

interface Group {
  readonly kind: string;
  readonly title: string;
  readonly enclosures: readonly string[];
  readonly dates: readonly IsoDate[];
}

/** Returns the jobs of a span, most often due first. */
export function dueJobs(plan: Plan, span: PageSpan, scope: PageScope, words: PageWords): DueJobs {
  const groups = groupsOf(plan, span, scope);
  const rows = groups.filter(({ dates }) => dates.length >= ROW_FROM_DATES);
  const dated = groups.filter(({ dates }) => dates.length < ROW_FROM_DATES);
  return {
    rows: rows
      .toSorted((a, b) => b.dates.length - a.dates.length)
      .flatMap((group) => rowsOf(group, plan, scope, words)),
    dated: dated
      .toSorted((a, b) => compare(a.dates.join(), b.dates.join()))
      .map((group) => ({
        dates: group.dates,
        label: labelOf(group, plan, scope, words),
        blanks: blanksOf(group, plan),
      })),
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

function rowsOf(group: Group, plan: Plan, scope: PageScope, words: PageWords): readonly JobRow[] {
  const dates = new Set(group.dates);
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

function labelOf({ kind, title, enclosures }: Group, plan: Plan, scope: PageScope, words: PageWords): string {
  const job = words.jobs[kind] ?? plainLine(title);
  if (enclosures.length === 0 || scope.enclosures.length < 2) return job;
  return words.jobOf(job, namesOf(enclosures, plan, scope, words));
}

export function namesOf(enclosures: readonly string[], plan: Plan, scope: PageScope, words: PageWords): string {
  if (enclosures.length === scope.enclosures.length && enclosures.length > 1) return words.everyone;
  return words.list(enclosures.map((enclosure) => nameOf(plan, enclosure)));
}

export function nameOf(plan: Plan, enclosure: string): string {
  return plainLine(plan.enclosures.find(({ id }) => id === enclosure)?.name ?? enclosure);
}

function blanksOf({ kind, enclosures }: Group, plan: Plan): readonly Blank[] {
  const many = enclosures.length > 1;
  const each = (unit: string): readonly Blank[] =>
    enclosures.map((enclosure) => ({ before: many ? nameOf(plan, enclosure) : '', unit }));
  switch (kind) {
    case 'weigh':
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

/** Returns who comes when, of those who are not there every day, within a span. */
export function visitsIn(
  plan: Plan,
  span: PageSpan,
): readonly { readonly sitter: string; readonly dates: readonly IsoDate[] }[] {
  return plan.away
    .filter(({ from, to }) => from <= span.to && span.from <= to)
    .map(({ sitter, visits }) => ({ sitter, dates: visits.filter((date) => span.from <= date && date <= span.to) }));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
