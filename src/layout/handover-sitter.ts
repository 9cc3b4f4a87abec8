/** Whose sheet it is. */
import type { IsoDate } from '../basics/civil.ts';
import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';

/** Returns the sitter of the absence that holds the dates; null where the household has none, which is reported. */
export function handoverSitter(plan: Plan, from: IsoDate, to: IsoDate, log: Log): string | null {
  const sitter = sitterOn(plan, from, to);
  if (sitter === null) log.report('handover-not-away', { from, to, who: plan.people[0]?.id ?? 'the keeper' });
  return sitter;
}

/** Returns the sitter of the absence that holds the dates, or null. */
export function sitterOn({ away }: Pick<Plan, 'away'>, from: IsoDate, to: IsoDate): string | null {
  return away.find((absence) => absence.from <= from && to <= absence.to && absence.sitter !== '')?.sitter ?? null;
}
