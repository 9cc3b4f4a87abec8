/** What people do on a day, and how long it takes. */

import type { IsoDate } from '../../basics/civil.ts';
import type { DayView } from '../../plan/day-view.ts';
import type { PersonDay } from '../../plan/people-day.ts';
import { dateInWords } from '../../plan/phrases/date-words.ts';
import { feedWords, gutLoadWords } from '../../plan/phrases/feed-words.ts';
import { runLength } from '../../plan/words/run-length.ts';
import type { Words } from '../../plan/words/words.ts';

interface TimedLine {
  readonly at: string;
  readonly what: string;
}

/** Returns a person's day: what has an hour first, by the clock, then what is done some time that day. */
export function personLines(person: PersonDay, date: IsoDate, told: Words): readonly string[] {
  const { today } = told;
  const timed: readonly TimedLine[] = [
    ...person.feeds.map((feed) => ({ at: feed.feed.time, what: feedWords(feed, told) })),
    ...person.mists.map(({ at, name, seconds }) => ({ at, what: today.mistByHand(name, runLength(seconds)) })),
  ];
  const chores = person.chores.map(({ names, title }) => today.chore(told.shelf.list(names), title));
  const loads = person.gutLoads.map((load) => gutLoadWords(load, date, told));
  const bought = person.shopping.map(({ amount, feeder }) => `${amount} × ${feeder}`);
  return [
    today.person(person.person, person.minutes),
    ...timed.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)).map(({ at, what }) => `  ${at}  ${what}`),
    ...[...chores, ...loads, ...(bought.length > 0 ? [today.buy(told.shelf.list(bought))] : [])].map(
      (line) => `  -      ${line}`,
    ),
  ];
}

/** Returns each person's work over several days, with the longest day. */
export function workLines(views: readonly DayView[], told: Words): readonly string[] {
  const people = [...new Set(views.flatMap((view) => view.people.map(({ person }) => person)))];
  const lines = people.flatMap((person) => {
    const days = views.flatMap(({ date, people: busy }) =>
      busy.filter((each) => each.person === person).map(({ minutes }) => ({ date, minutes })),
    );
    const total = days.reduce((sum, { minutes }) => sum + minutes, 0);
    const longest = days.reduce((most, day) => (day.minutes > most.minutes ? day : most), { date: '', minutes: 0 });
    if (total === 0) return [];
    return [`  ${told.today.work(person, total, dateInWords(longest.date, told), longest.minutes)}`];
  });
  return lines.length === 0 ? [] : [told.today.workTitle, ...lines];
}
