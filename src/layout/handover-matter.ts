/** What a sitter's sheet is made from. */
import { epochDay } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { MistPlan, Plan } from '../plan/plan.ts';
import { words as allWords, type Words } from '../plan/words/words.ts';
import type { Setting } from './block.ts';
import { type PageScope, type PageSpan, pageSpan } from './page-span.ts';
import { MARGIN_MM } from './page-style.ts';
import type { PageWords } from './page-words.ts';

export type HandoverWords = Words['handover'];

export interface HandoverMatter {
  /** The plan with the sitter's feeds and chores alone. */
  readonly plan: Plan;
  readonly sitter: string;
  readonly span: PageSpan;
  readonly visits: readonly IsoDate[];
  readonly scope: PageScope;
  readonly said: HandoverWords;
  readonly words: PageWords;
  readonly widthMm: number;
  readonly setting: Setting;
}

/** Returns what the sheet of the dates [from, to] is made from; visits are those of the absences of that sitter. */
export function handoverMatter(
  plan: Plan,
  sitter: string,
  from: IsoDate,
  to: IsoDate,
  setting: Setting,
): HandoverMatter {
  const span = pageSpan(from, epochDay(to) - epochDay(from) + 1);
  const visits = plan.away
    .filter((absence) => absence.sitter === sitter)
    .flatMap((absence) => absence.visits)
    .filter((date) => from <= date && date <= to)
    .toSorted();
  const all = allWords(plan.language);
  return {
    plan: {
      ...plan,
      chores: plan.chores.filter(({ who }) => who === sitter),
      feeding: plan.feeding.filter(({ by }) => by === sitter),
    },
    sitter,
    span,
    visits: [...new Set(visits)],
    scope: { enclosures: plan.enclosures, shelf: true },
    said: all.handover,
    words: all.page,
    widthMm: setting.style.paper.widthMm - 2 * MARGIN_MM,
    setting,
  };
}

/** Returns the pumps that mist an animal, each once. */
export function pumpsOf({ misting }: Pick<Plan, 'misting'>): readonly string[] {
  const pumps = misting.flatMap(({ pump }) => (pump === null || pump === 'by-hand' ? [] : [pump]));
  return [...new Set(pumps)].map(plainLine);
}

/** Returns the entries of a mist plan on a date by the clock on the wall. */
export function wallEntriesOn({ sets }: MistPlan, date: IsoDate): MistPlan['sets'][number]['entries'] {
  return sets
    .flatMap(({ wall }) => wall)
    .filter(({ from, to }) => from <= date && date <= to)
    .flatMap(({ entries }) => entries);
}
