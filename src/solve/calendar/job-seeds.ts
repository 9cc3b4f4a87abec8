/** Jobs that are to be done some time on a date: chores, shopping, absences and visits. */
import { civilOf, epochDay } from '../../basics/calendar-day.ts';
import type { Chore } from '../../plan/plan.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { OnDuty } from './on-duty.ts';

/** Kinds of chores whose events are written from the settings themselves, which say what to push, lift and key in, and when. */
const SETTING_CHORES: ReadonlySet<string> = new Set([
  're-pin',
  'mist-entries',
  'change-sheet',
  'turn-dial',
  'mist-by-hand',
]);

/** Returns the events of chores, but for those that dials and mists have events of their own for. */
export function choreSeeds(parts: CalendarParts, words: CalendarWords): readonly EventSeed[] {
  const names = new Map(parts.enclosures.map(({ id, name }) => [id, name]));
  const wanted = parts.chores.filter(({ kind }) => !SETTING_CHORES.has(kind));
  return wanted.map((chore) => ({
    ...ALL_DAY,
    days: chore.dates.map(epochDay),
    title: choreTitle(chore, names.get(chore.enclosure ?? '') ?? null, words),
    description: chore.minutes > 0 ? [words.takes(chore.minutes)] : [],
    category: chore.kind === 'refill' ? 'water' : 'chore',
    for: chore.who,
    kind: chore.kind,
    task: chore.id,
  }));
}

function choreTitle(chore: Chore, enclosure: string | null, words: CalendarWords): string {
  const named = enclosure === null || chore.title.includes(enclosure);
  return named ? chore.title : words.inEnclosure(enclosure, chore.title);
}

/**
 * Each feeder is an event of its own: what is bought of one repeats, what is bought on one day seldom does. Why so much names a
 * date, so it stands in the plan alone.
 */
export function shoppingSeeds(parts: CalendarParts, words: CalendarWords, shopper: OnDuty): readonly EventSeed[] {
  return parts.stock.map(({ date, feeder, amount }) => ({
    ...ALL_DAY,
    days: [epochDay(date)],
    title: words.buy(words.pieces(amount, feeder)),
    description: [],
    category: 'shopping',
    for: shopper(date),
    kind: 'shopping',
    task: `shopping/${feeder}`,
  }));
}

/** Returns the events of absences: for the keeper that they are away, for the sitter each visit. */
export function absenceSeeds(parts: CalendarParts, words: CalendarWords, keeper: string): readonly EventSeed[] {
  return parts.away.flatMap(({ from, to, sitter, visits }) => {
    const { year, month, dayOfMonth } = civilOf(epochDay(to));
    const away = {
      ...ALL_DAY,
      days: [epochDay(from)],
      minutes: (epochDay(to) - epochDay(from) + 1) * ALL_DAY.minutes,
      title: words.away(words.date(year, month, dayOfMonth)),
      description: [sitter === '' ? words.awayNobody : words.awaySitter(sitter, visits.length)],
      category: 'away',
      for: keeper,
      kind: 'away',
      task: 'away',
    };
    const visit = {
      ...ALL_DAY,
      days: visits.map(epochDay),
      title: words.visit(parts.name),
      description: [],
      category: 'visit',
      for: sitter,
      kind: 'visit',
      task: 'visit',
    };
    return sitter === '' || visits.length === 0 ? [away] : [away, visit];
  });
}
