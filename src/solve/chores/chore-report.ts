/** What there is to say about the dates of chores: not proven, nobody there, farther off than their leeway. */
import { type EpochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { Log } from '../../diagnostics/log.ts';
import type { Care, CareAbsence } from '../../resolve/care.ts';
import type { JobCourse } from './occurrences.ts';
import type { PersonsChores } from './persons-chores.ts';

/** Reports once a person what was not proven, and once an absence what nobody does. */
export function reportChores(care: Care, { person, courses, gathered }: PersonsChores, log: Log): void {
  if (!gathered.isProven)
    log.report('gathering-not-proven', {
      person,
      days: gathered.newDays.length,
      atLeast: gathered.newDaysAtLeast,
    });
  for (const absence of care.away) {
    reportUndone(care, absence, courses, true, log);
    reportUndone(care, absence, courses, false, log);
  }
}

function reportUndone(
  care: Care,
  absence: CareAbsence,
  courses: readonly JobCourse[],
  isVital: boolean,
  log: Log,
): void {
  const left = courses.flatMap(({ job, undone }) => {
    const dues = undone.filter((each) => each.absence === absence).map(({ due }) => due);
    return job.isVital === isVital && dues.length > 0 ? [{ id: job.id, dues }] : [];
  });
  if (left.length === 0) return;
  const dues = left.flatMap((each) => each.dues);
  log.report(
    isVital ? 'water-unattended' : 'chores-undone',
    {
      from: isoDateOf(absence.from),
      to: isoDateOf(absence.to),
      chores: left.map(({ id, dues: each }) => (each.length === 1 ? id : `${id} ${each.length} times`)),
      isVisited: absence.sitter !== null && absence.visits.length > 0,
      first: isoDateOf(least(dues)),
    },
    care.placeOf(absence.path),
  );
}

function least(days: readonly EpochDay[]): EpochDay {
  return days.reduce((first, day) => Math.min(first, day), days[0] ?? 0);
}
