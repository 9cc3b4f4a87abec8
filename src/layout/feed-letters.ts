/** Feeds as letters: one for each feeder, count and dusting of a page, told in words below the grid. */

import type { IsoDate } from '../basics/civil.ts';
import { plainLine } from '../basics/plain-line.ts';
import type { Feed, Plan } from '../plan/plan.ts';
import { nameOf } from './care-rows.ts';
import type { PageScope, PageSpan } from './page-span.ts';
import type { PageWords } from './page-words.ts';

export interface FeedRow {
  readonly label: string;
  /** Letters by date; more than one where a day has several feeds of the row. */
  readonly letters: ReadonlyMap<IsoDate, string>;
}

export interface FeedLetters {
  readonly rows: readonly FeedRow[];
  readonly legend: readonly { readonly letter: string; readonly means: string }[];
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz';

/** Returns a row for each enclosure, food and time of day. */
export function feedLetters(plan: Plan, span: PageSpan, scope: PageScope, words: PageWords): FeedLetters {
  const wanted = new Set(scope.enclosures.map(({ id }) => id));
  const feeds = plan.feeding.filter(
    ({ date, enclosure }) => span.from <= date && date <= span.to && wanted.has(enclosure),
  );
  const letters = new Map<string, string>();
  for (const feed of feeds) {
    const means = meaning(feed, words);
    if (!letters.has(means)) letters.set(means, ALPHABET[letters.size] ?? String(letters.size));
  }
  return {
    rows: scope.enclosures.flatMap(({ id }) =>
      rowsOf(
        feeds.filter(({ enclosure }) => enclosure === id),
        plan,
        letters,
        words,
      ),
    ),
    legend: [...letters].map(([means, letter]) => ({ letter, means })),
  };
}

function rowsOf(
  feeds: readonly Feed[],
  plan: Plan,
  letters: ReadonlyMap<string, string>,
  words: PageWords,
): readonly FeedRow[] {
  const kinds = [...new Set(feeds.map(({ food }) => food))];
  const keys = [...new Set(feeds.map(({ food, time }) => `${food} ${time}`))].sort();
  return keys.map((key) => {
    const own = feeds.filter(({ food, time }) => `${food} ${time}` === key);
    const [first] = own;
    const byDate = new Map<IsoDate, string>();
    for (const feed of own)
      byDate.set(feed.date, (byDate.get(feed.date) ?? '') + (letters.get(meaning(feed, words)) ?? ''));
    const name = nameOf(plan, first?.enclosure ?? '');
    const time = first?.time ?? '';
    const food = first?.food ?? 'insects';
    return {
      label: kinds.length > 1 ? words.feedOf(name, words.feedKind[food], time) : words.feedRow(name, time),
      letters: byDate,
    };
  });
}

/** What a feed is, in words: how many of which feeder, dusted with what. */
function meaning({ count, feeder, portion, food, dusting, standIn, preDosed }: Feed, words: PageWords): string {
  const what =
    count === null ? words.byEye(plainLine(feeder), plainLine(portion)) : words.pieces(count, plainLine(feeder));
  const dust =
    dusting === null
      ? food === 'insects'
        ? [words.noDust]
        : []
      : [preDosed ? words.preDosed(plainLine(dusting)) : words.dustWith(plainLine(dusting))];
  return [what, ...dust, ...(standIn ? [words.standIn] : [])].join(', ');
}
