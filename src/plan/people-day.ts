/** What people have to do on one date: feeds, mists by hand, chores and shopping, a person at a time. */
import { epochDay, isoDateOf } from '../basics/calendar-day.ts';
import type { ClockTime, IsoDate } from '../basics/civil.ts';
import type { Absence, Chore, Feed, Plan, StockOrder } from './plan.ts';
import { FEED_MINUTES } from './work-load.ts';

export interface PersonDay {
  readonly person: string;
  /** How long it takes together, in minutes. */
  readonly minutes: number;
  /** By time, then in the plan's order; animals that are visited last come last of their time. */
  readonly feeds: readonly NamedFeed[];
  readonly mists: readonly HandMist[];
  readonly chores: readonly ChoreGroup[];
  /** Feeders to be put on good food from this date on. */
  readonly gutLoads: readonly GutLoad[];
  readonly shopping: readonly StockOrder[];
}

export interface NamedFeed {
  readonly name: string;
  readonly feed: Feed;
}

export interface HandMist {
  readonly at: ClockTime;
  readonly name: string;
  readonly seconds: number;
}

/** The same job at several enclosures. */
export interface ChoreGroup {
  readonly title: string;
  readonly kind: string;
  /** Names of the enclosures; empty where it belongs to none. */
  readonly names: readonly string[];
  readonly minutes: number;
}

export interface GutLoad {
  readonly feeder: string;
  /** Date of the feed that they are for. */
  readonly date: IsoDate;
}

/** Returns the people who have anything to do on a date, in the plan's order, then others by name. */
export function peopleDay(plan: Plan, date: IsoDate): readonly PersonDay[] {
  const known = plan.people.map(({ id }) => id);
  const busy = [
    onDuty(plan, date),
    ...plan.feeding.filter((feed) => feed.date === date).map(({ by }) => by),
    ...plan.chores.filter(({ dates }) => dates.includes(date)).map(({ who }) => who),
    ...(plan.stock.some((order) => order.date === date) ? [shopperOn(plan, date)] : []),
  ];
  const others = [...new Set(busy)].filter((person) => !known.includes(person)).sort();
  return [...known, ...others].map((person) => personDay(plan, date, person)).filter(hasWork);
}

function hasWork({ feeds, mists, chores, gutLoads, shopping }: PersonDay): boolean {
  return feeds.length + mists.length + chores.length + gutLoads.length + shopping.length > 0;
}

function personDay(plan: Plan, date: IsoDate, person: string): PersonDay {
  const last = visitedLast(plan, date);
  const chores = plan.chores.filter(({ who, dates }) => who === person && dates.includes(date));
  const feeds = plan.feeding.filter((feed) => feed.date === date && feed.by === person);
  const minutes = chores.reduce((sum, chore) => sum + chore.minutes, 0) + feeds.length * FEED_MINUTES;
  return {
    person,
    minutes,
    feeds: lastLast(feeds, last)
      .toSorted((a, b) => compare(a.time, b.time))
      .map((feed) => ({ name: nameOf(plan, feed.enclosure), feed })),
    mists: chores
      .filter(({ kind }) => kind === 'mist-by-hand')
      .flatMap(({ enclosure }) => handMists(plan, enclosure, date)),
    chores: grouped(
      plan,
      chores.filter(({ kind }) => kind !== 'mist-by-hand'),
      last,
    ),
    gutLoads: onDuty(plan, date) === person ? gutLoadsOf(plan, date) : [],
    shopping: shopperOn(plan, date) === person ? plan.stock.filter((order) => order.date === date) : [],
  };
}

/** Returns the enclosures in quarantine or with an ill animal on a date: everything there is done last. */
export function visitedLast({ enclosures }: Pick<Plan, 'enclosures'>, date: IsoDate): ReadonlySet<string> {
  const apart = enclosures.filter(({ spans }) =>
    spans.some(({ kind, from, to }) => (kind === 'quarantine' || kind === 'ill') && from <= date && date <= to),
  );
  return new Set(apart.map(({ id }) => id));
}

function lastLast<T extends { readonly enclosure: string | null }>(
  jobs: readonly T[],
  last: ReadonlySet<string>,
): readonly T[] {
  const isLast = ({ enclosure }: T) => enclosure !== null && last.has(enclosure);
  return [...jobs.filter((job) => !isLast(job)), ...jobs.filter(isLast)];
}

/** The same words at several enclosures are one line; an enclosure that is visited last has lines of its own. */
function grouped(plan: Plan, chores: readonly Chore[], last: ReadonlySet<string>): readonly ChoreGroup[] {
  const groups = new Map<string, ChoreGroup>();
  for (const { title, kind, enclosure, minutes } of lastLast(chores, last)) {
    const name = enclosure === null ? [] : [nameOf(plan, enclosure)];
    const key = JSON.stringify([title, enclosure === null, enclosure !== null && last.has(enclosure) ? enclosure : '']);
    const known = groups.get(key) ?? { title, kind, names: [], minutes: 0 };
    groups.set(key, { ...known, names: [...known.names, ...name], minutes: known.minutes + minutes });
  }
  return [...groups.values()];
}

function handMists(plan: Plan, enclosure: string | null, date: IsoDate): readonly HandMist[] {
  return plan.misting
    .filter((mist) => mist.enclosure === enclosure && mist.pump === 'by-hand')
    .flatMap(({ sets }) => sets.flatMap(({ wall }) => wall))
    .filter(({ from, to }) => from <= date && date <= to)
    .flatMap(({ entries }) => entries.map(({ at, seconds }) => ({ at, seconds, name: nameOf(plan, enclosure ?? '') })));
}

/** Good food begins on the day that the plan says, or on the last day before on which anybody is there. */
function gutLoadsOf(plan: Plan, date: IsoDate): readonly GutLoad[] {
  const loads = new Map<string, GutLoad>();
  for (const feed of plan.feeding)
    if (feed.gutLoadFrom !== null && feed.gutLoadFrom >= date && lastDayThere(plan, feed.gutLoadFrom) === date)
      loads.set(`${feed.feeder} ${feed.date}`, { feeder: feed.feeder, date: feed.date });
  return [...loads.values()];
}

function lastDayThere(plan: Plan, date: IsoDate): IsoDate {
  const absence = absenceOn(plan, date);
  if (!absence || absence.visits.includes(date)) return date;
  const visit = absence.visits
    .filter((each) => each < date)
    .toSorted()
    .at(-1);
  return visit ?? isoDateOf(epochDay(absence.from) - 1);
}

/** Who is there on a date and does what no job names a person for. */
function onDuty(plan: Plan, date: IsoDate): string {
  const sitter = absenceOn(plan, date)?.sitter ?? '';
  if (sitter !== '') return sitter;
  return (plan.people.find(({ feedsAt }) => feedsAt.length > 0) ?? plan.people[0])?.id ?? 'keeper';
}

/** The person for whom the calendar has the shopping, else the first. */
function shopperOn(plan: Plan, date: IsoDate): string {
  const event = plan.events.find(({ kind, status }) => kind === 'shopping' && status === 'CONFIRMED');
  const sitter = absenceOn(plan, date)?.sitter;
  return (sitter === '' ? undefined : sitter) ?? event?.for ?? plan.people[0]?.id ?? 'keeper';
}

/** Returns the absence that holds a date, or null. */
export function absenceOn({ away }: Pick<Plan, 'away'>, date: IsoDate): Absence | null {
  return away.find(({ from, to }) => from <= date && date <= to) ?? null;
}

/** Returns the next day of an absence after a date on which the sitter comes, or null. */
export function nextVisit({ visits }: Absence, date: IsoDate): IsoDate | null {
  const tomorrow = isoDateOf(epochDay(date) + 1);
  return visits.toSorted().find((visit) => visit >= tomorrow) ?? null;
}

function nameOf({ enclosures }: Plan, id: string): string {
  return enclosures.find((each) => each.id === id)?.name ?? id;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
