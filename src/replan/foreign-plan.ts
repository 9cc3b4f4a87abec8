import type { Plan } from '../plan/plan.ts';
import type { Care } from '../resolve/care.ts';

/** Ids that the program makes where a file names none. */
const MADE_ID = /^[0-9a-f]{32}$/;

/**
 * Returns, in words, why a plan is that of another household; null where it is this one's. Told by the id that both name; where one of them
 * names none, a plan that shares neither the name nor an enclosure with the file is another's.
 */
export function foreignWords(
  plan: Plan,
  { id, name, enclosures }: Pick<Care, 'id' | 'name' | 'enclosures'>,
): string | null {
  if (id === plan.id) return null;
  if (id !== null && !MADE_ID.test(plan.id))
    return `is the plan of another household: its id is ${plan.id}, and the file says ${id}`;
  const known = new Set(plan.enclosures.map((enclosure) => enclosure.id));
  if (name === plan.name || enclosures.some((enclosure) => known.has(enclosure.id))) return null;
  return `is the plan of another household, ${plan.name}; not one enclosure is the same`;
}
