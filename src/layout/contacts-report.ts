import type { Log } from '../diagnostics/log.ts';
import type { Plan } from '../plan/plan.ts';

/** Says which numbers are missing, so that lines are left to write them on. */
export function reportContacts(contacts: Plan['contacts'], log: Log): void {
  const missing = (['keeper', 'vet'] as const).filter((who) => contacts[who] === undefined);
  if (missing.length > 0) log.report('contacts-missing', { who: missing.map((who) => `the ${who}`).join(' or ') });
}
