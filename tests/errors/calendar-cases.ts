/** What is said of a plan's calendar, provoked by parts of a plan: a household file reaches it only through everything before. */
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { calendarEvents } from '../../src/solve/calendar/events.ts';
import { steadyYear } from '../generated/steady-year.ts';

interface CalendarCase {
  readonly said: () => {
    readonly diagnostics: readonly Diagnostic[];
    readonly text: (wanted: (diagnostic: Diagnostic) => boolean) => string;
  };
  readonly expected: string;
}

const BARE: Plan = { ...steadyYear(), lighting: [], feeding: [], chores: [], stock: [], away: [] };

function saidOf(parts: Partial<Plan>): ReturnType<CalendarCase['said']> {
  const log = new Log();
  calendarEvents({ ...BARE, ...parts }, null, log);
  const diagnostics = log.sorted();
  return { diagnostics, text: (wanted) => renderText(diagnostics.filter(wanted), new Map()) };
}

function chore(title: string, dates: readonly string[]): Plan['chores'][number] {
  return { id: 'fern/bowl', title, kind: 'chore', who: 'keeper', minutes: 5, enclosure: 'fern', dates, moved: [] };
}

/** Two dates of three, then one of three, for two hundred days: more than forty dates that no few rules hold. */
const IRREGULAR = Array.from({ length: 200 }, (_, day) => day)
  .filter((day) => (day * day + Math.floor(day / 7)) % 3 < (day < 100 ? 2 : 1))
  .map((day) => new Date(Date.UTC(2027, 0, 1 + day)).toISOString().slice(0, 10));

export const calendarCases: Readonly<Record<string, CalendarCase>> = {
  'title-cut': {
    said: () => saidOf({ chores: [chore('x'.repeat(10_000), ['2027-01-02'])] }),
    expected: `falls short (title-cut)
  because  the calendar title of fern/bowl has 10006 characters; 200 are written
  instead  give it a shorter title
`,
  },
  'event-all-day': {
    said: () =>
      saidOf({
        feeding: steadyYear()
          .feeding.slice(0, 1)
          .map((feed) => ({ ...feed, time: '02:15' })),
      }),
    expected: `note (event-all-day)
  because  fern/feed/cricket/calcium-d3 at 02:15 touches 01:00 to 02:59, where clocks change and calendar programs disagree; it stands as all day, with 02:15 in its title
  instead  choose a time that ends before 01:00 or begins after 02:59
`,
  },
  'more-events': {
    said: () => saidOf({ chores: [chore('Wipe the glass', IRREGULAR)] }),
    expected: `note (more-events)
  because  the calendar has 18 recurring events; fewer than 9 cannot hold the same dates
`,
  },
};
