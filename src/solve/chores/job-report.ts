/** What there is to say about chores before they have dates. */
import { nearestSpelling } from '../../basics/nearest-spelling.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareEnclosure } from '../../resolve/care.ts';
import { DEFAULT_CHORES, DERIVED_IDS } from './default-set.ts';
import { dueDates } from './due-dates.ts';
import type { JobContext } from './job-context.ts';
import type { OwnJob } from './own-jobs.ts';

/** Returns the ids by which a file may switch a chore off. */
function switchableIds(): readonly string[] {
  return [...Object.keys(DEFAULT_CHORES), ...DERIVED_IDS].sort();
}

/** Reports switches that name no chore; one of a chore that its profile names is known too. */
export function reportSwitches(care: Care, log: Log): void {
  const ids = switchableIds();
  for (const enclosure of care.enclosures)
    for (const id of enclosure.choresOff)
      if (!ids.includes(id) && !enclosure.chores.some((chore) => chore.id === id))
        log.report(
          'default-chore-unknown',
          { id, nearest: nearestSpelling(id, ids) },
          care.placeOf([...enclosure.path, 'defaults', id]),
        );
}

/** Reports named chores that are due on no day of the plan. */
export function reportNamed(context: JobContext, enclosure: CareEnclosure, own: readonly OwnJob[], log: Log): void {
  for (const { job, chore } of own) {
    if (dueDates(job.rhythm, context.first, context.last).some((day) => day >= context.first)) continue;
    const byHours = chore.rhythm.kind === 'lamp-hours' ? chore.rhythm.hours : null;
    log.report(
      'chore-never-due',
      { enclosure: enclosure.id, chore: chore.id, lampHours: byHours },
      context.care.placeOf(chore.path),
    );
  }
}
