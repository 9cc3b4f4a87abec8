/** What becomes of a chore that is due in an absence: the sitter does it, it is done before or after, or it is left out. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { CareAbsence } from '../../resolve/care.ts';
import type { WhenAway } from '../chores/job.ts';
import type { DaysThere } from './days-there.ts';

export interface Due {
  readonly due: EpochDay;
  /** The days of its leeway that lie in the plan and are not past, ascending. */
  readonly days: readonly EpochDay[];
}

export interface AwayDue extends Due {
  /** An absence let it stand farther off than its leeway. */
  readonly isForced: boolean;
}

export interface AwayOutcome {
  readonly kept: readonly AwayDue[];
  /** Due, not to be skipped, and nobody to do it. */
  readonly undone: readonly { readonly due: EpochDay; readonly absence: CareAbsence }[];
}

export interface AwayJob {
  readonly whenAway: WhenAway;
  /** Shortest days between two of the chore. */
  readonly intervalDays: number;
  /** What nobody did in the absence is done on return: water. */
  readonly isVital?: boolean;
}

/** Returns each occurrence with the days on which somebody is there for it; occurrences that fall together are one. */
export function aroundAbsences(
  dues: readonly Due[],
  job: AwayJob,
  there: DaysThere,
  first: EpochDay,
  last: EpochDay,
): AwayOutcome {
  if (there.isNeverAway) return { kept: dues.map((due) => ({ ...due, isForced: false })), undone: [] };
  const kept: AwayDue[] = [];
  const undone: { due: EpochDay; absence: CareAbsence }[] = [];
  for (const due of dues) {
    const absence = there.absenceOn(due.due);
    const placed = absence ? inAbsence(due, job, absence, there, first, last) : atHome(due, there);
    if (placed !== null && placed !== 'left-out') kept.push(placed);
    if (placed !== null || !absence) continue;
    undone.push({ due: due.due, absence });
    const home = job.isVital === true ? nearestHome(absence.to + 1, 1, there, first, last) : null;
    if (home !== null) kept.push({ ...due, days: [home], isForced: true });
  }
  return { kept: withoutDoubles(kept, job.intervalDays), undone };
}

function atHome(due: Due, there: DaysThere): AwayDue | null {
  const days = due.days.every(there.isHome) ? due.days : due.days.filter(there.isHome);
  return days.length > 0 ? { ...due, days, isForced: false } : null;
}

function inAbsence(
  due: Due,
  { whenAway, intervalDays }: AwayJob,
  absence: CareAbsence,
  there: DaysThere,
  first: EpochDay,
  last: EpochDay,
): AwayDue | 'left-out' | null {
  const within = (days: readonly EpochDay[]): AwayDue | null =>
    days.length > 0 ? { ...due, days, isForced: false } : null;
  const forced = (day: EpochDay | null): AwayDue | null =>
    day !== null && day >= first && day <= last ? { ...due, days: [day], isForced: true } : null;
  if (whenAway === 'skip') return 'left-out';
  if (whenAway === 'before')
    return (
      within(due.days.filter((day) => day < absence.from && there.isHome(day))) ??
      forced(nearestHome(absence.from - 1, -1, there, first, last))
    );
  if (whenAway === 'after')
    return (
      within(due.days.filter((day) => day > absence.to && there.isHome(day))) ??
      forced(nearestHome(absence.to + 1, 1, there, first, last))
    );
  const visits = absence.sitter === null ? [] : absence.visits;
  return (
    within(due.days.filter((day) => visits.includes(day))) ??
    forced(nearestVisit(due.due, visits, intervalDays)) ??
    within(due.days.filter(there.isHome))
  );
}

function nearestHome(from: EpochDay, step: 1 | -1, there: DaysThere, first: EpochDay, last: EpochDay): EpochDay | null {
  for (let day = from; day >= first && day <= last; day += step) if (there.isHome(day)) return day;
  return null;
}

/** The visit nearest to a due date, the earlier of two, less than an interval away. */
function nearestVisit(due: EpochDay, visits: readonly EpochDay[], intervalDays: number): EpochDay | null {
  const near = visits.filter((day) => Math.abs(day - due) < intervalDays);
  return near.toSorted((a, b) => Math.abs(a - due) - Math.abs(b - due) || a - b)[0] ?? null;
}

/** A forced occurrence goes where the chore is done nearby anyway: less than half an interval from a due date of its own, or on the same day. */
function withoutDoubles(kept: readonly AwayDue[], intervalDays: number): readonly AwayDue[] {
  if (!kept.some(({ isForced }) => isForced)) return kept;
  const own = kept.filter(({ isForced }) => !isForced);
  const taken = new Set<EpochDay>();
  return kept.filter(({ days, isForced }) => {
    const day = days[0];
    if (!isForced || day === undefined) return true;
    const isNear = own.some(
      (other) => other.days.some((each) => each === day) || Math.abs(other.due - day) < intervalDays / 2,
    );
    if (isNear || taken.has(day)) return false;
    taken.add(day);
    return true;
  });
}
