/** When a lamp is due to be replaced: after months or days from when it was fitted, or after hours of running. */
import { civilOf, type EpochDay, epochDayOf } from '../../basics/calendar-day.ts';
import type { CarePlan, Lamp } from '../../resolve/care.ts';
import type { TenthsByDay } from './shelf-lamp.ts';

const TENTHS_AN_HOUR = 600;

/**
 * Returns the dates within the plan, each counted from the one before; one that was due before the plan stands on its first day. Without
 * a date of fitting the lamp counts as new on the plan's first day.
 *
 * @param lit tenths of a minute that the lamp is on, one a day; days before the plan count like its first
 */
export function replacementDates(
  lamp: Lamp,
  plan: Pick<CarePlan, 'from' | 'days'>,
  lit: TenthsByDay,
): readonly EpochDay[] {
  const end = plan.from + plan.days;
  const dates: EpochDay[] = [];
  for (let fitted = lamp.fitted ?? plan.from; ; ) {
    const due = dueAfter(lamp, fitted, plan, lit);
    if (due === null || due >= end) return dates;
    const date = Math.max(due, plan.from);
    dates.push(date);
    fitted = date;
  }
}

function dueAfter(
  lamp: Lamp,
  fitted: EpochDay,
  plan: Pick<CarePlan, 'from' | 'days'>,
  lit: TenthsByDay,
): EpochDay | null {
  const byAge = lamp.replaceAfter ? ageDue(lamp.replaceAfter, fitted) : null;
  const byHours = lamp.replaceAfterHours === null ? null : hoursDue(lamp.replaceAfterHours, fitted, plan, lit);
  if (byAge === null || byHours === null) return byAge ?? byHours;
  return Math.min(byAge, byHours);
}

function ageDue(after: NonNullable<Lamp['replaceAfter']>, fitted: EpochDay): EpochDay {
  if ('days' in after) return fitted + Math.max(1, after.days);
  const { year, month, dayOfMonth } = civilOf(fitted);
  const lastOfMonth = epochDayOf(year, month + after.months + 1, 1) - 1;
  return Math.max(fitted + 1, Math.min(epochDayOf(year, month + after.months, 1) + dayOfMonth - 1, lastOfMonth));
}

/** The first date by whose end the lamp has run its hours; null where it does not within the plan. */
function hoursDue(
  hours: number,
  fitted: EpochDay,
  plan: Pick<CarePlan, 'from' | 'days'>,
  lit: TenthsByDay,
): EpochDay | null {
  if (hours <= 0) return null;
  let left = hours * TENTHS_AN_HOUR - Math.max(0, plan.from - fitted) * (lit[0] ?? 0);
  if (left <= 0) return plan.from;
  for (let day = Math.max(0, fitted - plan.from); day < plan.days; day++) {
    left -= lit[day] ?? 0;
    if (left <= 0) return plan.from + Math.max(day, fitted - plan.from + 1);
  }
  return null;
}
