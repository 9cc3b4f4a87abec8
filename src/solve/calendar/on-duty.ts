/** Who does what, and when: as the chores say, else the keeper, and the sitter while the keeper is away. */
import { type EpochDay, epochDay, isoDateOf } from '../../basics/calendar-day.ts';
import type { CalendarParts } from './event-seed.ts';

export type OnDuty = (date: EpochDay | string) => string;

/** Returns the person of a date; without a sitter the keeper stays in charge. */
export function onDutyIn(parts: Pick<CalendarParts, 'away'>, keeper: string): OnDuty {
  const spans = parts.away
    .filter(({ sitter }) => sitter !== '')
    .map(({ from, to, sitter }) => ({ from: epochDay(from), to: epochDay(to), sitter }));
  return (date) => {
    const day = typeof date === 'string' ? epochDay(date) : date;
    return spans.find(({ from, to }) => from <= day && day <= to)?.sitter ?? keeper;
  };
}

/** Whose turn a job is that the calendar words by itself, from the chore that stands for it. */
export interface Roster {
  /** Returns the day on which, and the person by whom, what is due at a device or an enclosure is done. */
  readonly turnOf: (kind: string, at: string, due: EpochDay) => { readonly day: EpochDay; readonly who: string };
  /** Returns what the chores of a kind are called that fall on a day. */
  readonly titlesOn: (kind: string, day: EpochDay) => readonly string[];
}

/** Returns who does what on which day: by the chores, else whoever is on duty. */
export function rosterOf({ chores }: Pick<CalendarParts, 'chores'>, onDuty: OnDuty): Roster {
  return {
    turnOf: (kind, at, due) => {
      const date = isoDateOf(due);
      const own = chores.filter((chore) => chore.kind === kind && chore.id.startsWith(`${at}/`));
      for (const { moved, who } of own) {
        const to = moved.find((one) => one.due === date);
        if (to) return { day: epochDay(to.on), who };
      }
      return { day: due, who: own.find(({ dates }) => dates.includes(date))?.who ?? onDuty(due) };
    },
    titlesOn: (kind, day) => {
      const date = isoDateOf(day);
      const falling = chores.filter((chore) => chore.kind === kind && chore.dates.includes(date));
      return [...new Set(falling.map(({ title }) => title))];
    },
  };
}
