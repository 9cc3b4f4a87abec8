/** Says where a day holds more work than the person has time for. */
import type { Log } from '../../diagnostics/log.ts';
import type { Chore, Feed } from '../../plan/plan.ts';
import { workDays } from '../../plan/work-load.ts';
import type { Care } from '../../resolve/care.ts';

/** Reports, once a person who says how long a day they have, the days that take longer. */
export function reportLoads(care: Care, chores: readonly Chore[], feeding: readonly Feed[], log: Log): void {
  const days = workDays({ chores, feeding });
  for (const [index, { id, minutesADay }] of care.people.entries()) {
    if (minutesADay === null) continue;
    const full = days.filter(({ person, minutes }) => person === id && minutes > minutesADay);
    const longest = full.reduce(
      (most, day) => (day.minutes > most.minutes ? day : most),
      full[0] ?? { date: '', minutes: 0 },
    );
    if (full.length === 0) continue;
    log.report(
      'day-too-full',
      {
        person: id,
        allowed: minutesADay,
        days: full.length,
        date: longest.date,
        minutes: longest.minutes,
        longestChores: longestChores(chores, id, longest.date),
      },
      care.placeOf(['people', index, 'minutes_a_day']),
    );
  }
}

const NAMED = 2;

function longestChores(chores: readonly Chore[], person: string, date: string): readonly string[] {
  return chores
    .filter(({ who, dates }) => who === person && dates.includes(date))
    .toSorted((a, b) => b.minutes - a.minutes || (a.id < b.id ? -1 : 1))
    .slice(0, NAMED)
    .map(({ id, minutes }) => `${id} ${minutes} min`);
}
