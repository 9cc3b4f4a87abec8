/** A feed as it stands in the calendar: what, how much and with which dust, all in the title. */
import { epochDay } from '../../basics/calendar-day.ts';
import { minuteOf } from '../../basics/minute-of-day.ts';
import type { Feed } from '../../plan/plan.ts';
import type { CalendarParts, CalendarWords, EventSeed } from './event-seed.ts';

const FEED_MINUTES = 10;

/** Feeds that differ in nothing but the date are one job. */
export function feedSeeds(parts: CalendarParts, words: CalendarWords): readonly EventSeed[] {
  const names = new Map(parts.enclosures.map(({ id, name }) => [id, name]));
  const alike = new Map<
    string,
    { readonly feed: Feed; readonly task: string; readonly slot: number; readonly days: number[] }
  >();
  for (const { feed, task, slot } of withSlots(parts.feeding)) {
    const { by, time, count, portion, standIn, preDosed } = feed;
    const day = epochDay(feed.date);
    const key = [by, task, slot, time, count, portion, leadDays(feed, day), standIn, preDosed].join('\u0000');
    const known = alike.get(key);
    if (known) known.days.push(day);
    else alike.set(key, { feed, task, slot, days: [day] });
  }
  return [...alike.values()].map(({ feed, task, slot, days }) => ({
    days,
    minute: minuteOf(feed.time),
    minutes: FEED_MINUTES,
    title: words.feed(names.get(feed.enclosure) ?? feed.enclosure, words.list(contents(feed, words))),
    description: details(feed, words),
    category: 'feed',
    for: feed.by,
    kind: 'feed',
    task,
    slot,
  }));
}

/** The how-manieth of its task each feed is on its date, by time. */
function withSlots(
  feeding: readonly Feed[],
): readonly { readonly feed: Feed; readonly task: string; readonly slot: number }[] {
  const counts = new Map<string, number>();
  const inOrder = feeding.toSorted((a, b) => compare(a.date, b.date) || compare(a.time, b.time));
  return inOrder.map((feed) => {
    const task = taskOf(feed);
    const slot = counts.get(feed.date + task) ?? 0;
    counts.set(feed.date + task, slot + 1);
    return { feed, task, slot };
  });
}

/** A feed with another dust is another job, so that the rotation of each dust folds into a rule of its own. */
function taskOf({ enclosure, feeder, dusting }: Feed): string {
  return [enclosure, 'feed', feeder, ...(dusting === null ? [] : [dusting])].join('/');
}

function contents(feed: Feed, words: CalendarWords): readonly string[] {
  const what = feed.count === null ? words.byEye(feed.portion, feed.feeder) : words.pieces(feed.count, feed.feeder);
  if (feed.dusting !== null) return [what, (feed.preDosed ? words.preDosed : words.dustWith)(feed.dusting)];
  return feed.food === 'insects' ? [what, words.noDust] : [what];
}

function details(feed: Feed, words: CalendarWords): readonly string[] {
  const lead = leadDays(feed, epochDay(feed.date));
  return [
    ...(feed.count === null || feed.portion === '' ? [] : [words.portion(feed.portion)]),
    ...(lead > 0 ? [words.gutLoad(lead)] : []),
    ...(feed.standIn ? [words.standIn] : []),
  ];
}

function leadDays({ gutLoadFrom }: Feed, day: number): number {
  return gutLoadFrom === null ? 0 : day - epochDay(gutLoadFrom);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
