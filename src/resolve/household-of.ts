/** What a household says beside its enclosures and devices, with the figures of ours where it says nothing. */
import { isoDateOf } from '../basics/calendar-day.ts';
import type { Log } from '../diagnostics/log.ts';
import type { ReadHousehold } from '../read/household.ts';
import type { ReadAbsence, ReadPerson } from '../read/household-tree.ts';
import type { CareAbsence, CarePlan, CareSite, MinuteSpan, Person } from './care.ts';

/** Settings where the file gives neither a number nor a tolerance; the design's. */
const SETTINGS_AT_MOST = 8;
const MIST_SETS_AT_MOST = 4;
const PLAN_DAYS = 365;
/** Days of food in reserve; common practice, no source: 7 to 14. */
const RESERVE_DAYS = 14;

/** Returns the site, its room month by month. */
export function siteOf({ tree }: ReadHousehold): CareSite {
  const { timezone, latitude, longitude, room } = tree.site;
  const inMonth = (value: number | readonly number[], month: number) =>
    typeof value === 'number' ? value : (value[month] ?? 0);
  return {
    timezone,
    latitude,
    longitude,
    roomByMonth: Array.from({ length: 12 }, (_, month) => ({
      dayC: inMonth(room.day, month),
      nightC: inMonth(room.night, month),
      humidity: inMonth(room.humidity, month),
    })),
  };
}

/** Returns what the plan is asked for, with our defaults where the file says nothing. */
export function planOf({ tree }: ReadHousehold): CarePlan {
  const { plan } = tree;
  return {
    from: plan.from,
    days: plan.days ?? PLAN_DAYS,
    changeOn: plan.change_on ?? null,
    settingsAtMost: plan.settings_at_most ?? (plan.tolerance === undefined ? SETTINGS_AT_MOST : null),
    toleranceMinutes: plan.tolerance ?? null,
    atLeastBetweenDays: plan.at_least_between ?? 1,
    jumpAtMostMinutes: plan.jump_at_most ?? null,
    mistSetsAtMost: plan.mist_sets_at_most ?? MIST_SETS_AT_MOST,
  };
}

/** Returns the people in the file's order; one `keeper` where it names none, and the first shops where nobody else does. */
export function peopleOf({ tree }: ReadHousehold): readonly Person[] {
  const said: readonly ReadPerson[] = tree.people ?? [{ id: 'keeper' }];
  const somebodyShops = said.some(({ shops }) => shops);
  return said.map((person, index) => ({
    id: person.id,
    choresOn: person.chores_on ?? null,
    reminderMinutes: person.reminder ?? null,
    feedsAtMinutes: [...(person.feeds_at ?? [])].sort((a, b) => a - b),
    minutesADay: person.minutes_a_day ?? null,
    shops: somebodyShops ? (person.shops ?? false) : index === 0,
  }));
}

/** Returns the hours in which no pump may run; empty where the file has none. */
export function noiseOf({ tree }: ReadHousehold): readonly MinuteSpan[] {
  return (tree.noise?.none ?? []).map(([fromMinute, toMinute]) => ({ fromMinute, toMinute }));
}

/** Returns the shopping days, empty where any day will do, and the days of reserve. */
export function shoppingOf({ tree }: ReadHousehold): {
  readonly days: NonNullable<ReadHousehold['tree']['shopping']>['days'];
  readonly reserveDays: number;
} {
  return { days: tree.shopping?.days ?? [], reserveDays: tree.shopping?.reserve ?? RESERVE_DAYS };
}

/** Returns the absences with their visits; without dates a named sitter comes every day. */
export function absencesOf(household: ReadHousehold, log: Log): readonly CareAbsence[] {
  return (household.tree.away ?? []).map((absence, index) => {
    const path = ['away', index];
    return {
      from: absence.from,
      to: absence.to,
      sitter: absence.sitter ?? null,
      visits: visitsOf(absence, path, household, log),
      path,
    };
  });
}

function visitsOf(
  absence: ReadAbsence,
  path: readonly (string | number)[],
  household: ReadHousehold,
  log: Log,
): readonly number[] {
  const { from, to, visits, sitter } = absence;
  if (visits && 'dates' in visits) {
    for (const [index, date] of visits.dates.entries()) {
      if (date < from || date > to)
        log.report(
          'visit-outside-absence',
          { date: isoDateOf(date), from: isoDateOf(from), to: isoDateOf(to) },
          household.placeOf([...path, 'visits', 'dates', index]),
        );
    }
    return [...new Set(visits.dates)].filter((date) => date >= from && date <= to).sort((a, b) => a - b);
  }
  if (!visits && sitter === undefined) return [];
  const every = Math.max(1, Math.round(visits?.every ?? 1));
  return Array.from({ length: Math.max(0, Math.floor((to - from) / every) + 1) }, (_, visit) => from + visit * every);
}
