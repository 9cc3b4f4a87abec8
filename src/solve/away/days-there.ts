/** Who is there on a day: the household, or in an absence a sitter on a visit. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { Care, CareAbsence } from '../../resolve/care.ts';

export interface DaysThere {
  readonly isNeverAway: boolean;
  readonly absenceOn: (day: EpochDay) => CareAbsence | null;
  /** Whether a person of the household, or a sitter who is not only a visitor, is there. */
  readonly isHome: (day: EpochDay) => boolean;
  /** Whether a sitter comes on a day of an absence. */
  readonly isVisit: (day: EpochDay) => boolean;
}

/** Returns what is known of every day; absences that overlap count as the first of them. */
export function daysThere(care: Pick<Care, 'away'>): DaysThere {
  const absences = care.away.map((absence) => ({
    absence,
    visits: new Set(absence.sitter === null ? [] : absence.visits),
  }));
  const on = (day: EpochDay) =>
    absences.length === 0 ? undefined : absences.find(({ absence: { from, to } }) => from <= day && day <= to);
  return {
    isNeverAway: absences.length === 0,
    absenceOn: (day) => on(day)?.absence ?? null,
    isHome: (day) => on(day) === undefined,
    isVisit: (day) => on(day)?.visits.has(day) ?? false,
  };
}
