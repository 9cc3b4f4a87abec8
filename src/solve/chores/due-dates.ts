/** The fixed grid on which a chore is due. */
import { civilOf, type EpochDay, epochDayOf, weekdayIndex } from '../../basics/calendar-day.ts';
import type { Rhythm } from './job.ts';

/** Returns the same day of the month so many months on, or the last of a shorter month. */
export function monthsAfter(day: EpochDay, months: number): EpochDay {
  const { year, month, dayOfMonth } = civilOf(day);
  const first = epochDayOf(year, month + months, 1);
  return Math.min(first + dayOfMonth - 1, epochDayOf(year, month + months + 1, 1) - 1);
}

/** Returns the dates on which a rhythm that starts on a day is due up to and including `to`, ascending. */
export function dueDates(rhythm: Rhythm, start: EpochDay, to: EpochDay): readonly EpochDay[] {
  if (rhythm.kind === 'dates') return [...new Set(rhythm.dates)].filter((day) => day <= to).sort((a, b) => a - b);
  const dues: EpochDay[] = [];
  if (rhythm.kind === 'weekdays') {
    for (let day = start; day <= to; day++) if (rhythm.weekdays.includes(weekdayIndex(day))) dues.push(day);
    return dues;
  }
  const every = Math.max(1, rhythm.every);
  const at = (step: number): EpochDay =>
    rhythm.kind === 'days' ? start + step * every : monthsAfter(start, step * every);
  for (let step = 0, day = at(0); day <= to; step++, day = at(step)) dues.push(day);
  return dues;
}
