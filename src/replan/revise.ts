import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { EventDraft } from '../plan/event-draft.ts';
import type { Plan, Warning } from '../plan/plan.ts';
import { identifyEvents } from './identity.ts';

/**
 * Makes a solved plan the next revision: its events take the identities they had in the plan that stands, and what was said is kept in it.
 *
 * @param drafts what the calendar stage wants, without identities
 */
export function revise(
  solved: Plan,
  drafts: readonly EventDraft[],
  earlier: Plan | null,
  said: readonly Diagnostic[],
): Plan {
  const { id, revision: number, made, timezone } = solved;
  const revision = { planId: id, number, made, from: made, timezone };
  return { ...solved, events: identifyEvents(drafts, earlier, revision), warnings: said.flatMap(warningOf) };
}

function warningOf({ code, weight, because, instead, place }: Diagnostic): readonly Warning[] {
  if (weight !== 'warning' && weight !== 'refusal') return [];
  const message = instead === '' ? because : `${because}; ${instead}`;
  return [{ code, message, file: place?.file ?? null, line: place?.line ?? null, column: place?.column ?? null }];
}
