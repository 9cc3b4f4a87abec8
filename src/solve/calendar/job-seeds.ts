/** Jobs that are to be done some time on a date: chores, shopping, absences and visits. */
import { civilOf, epochDay } from '../../basics/calendar-day.ts';
import type { Chore } from '../../plan/plan.ts';
import { ALL_DAY, type CalendarParts, type CalendarWords, type EventSeed } from './event-seed.ts';
import type { OnDuty } from './on-duty.ts';

/** Kinds of chores whose events are written from the settings themselves, which say what to push, lift and key in, and when. */
export const SETTING_CHORES: ReadonlySet<string> = new Set([
  're-pin',
  'mist-entries',
  'change-sheet',
  'turn-dial',
  'mist-by-hand',
]);

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

/** Everything to buy on one day is one event. */
export function shoppingSeeds(parts: CalendarParts, words: CalendarWords, shopper: OnDuty): readonly EventSeed[] {
  const dates = [...new Set(parts.stock.map(({ date }) => date))].sort();
  return dates.map((date) => {
    const orders = parts.stock.filter((order) => order.date === date);
    return {
      ...ALL_DAY,
      days: [epochDay(date)],
      title: words.buy(words.list(orders.map(({ amount, feeder }) => words.pieces(amount, feeder)))),
      description: [...new Set(orders.map(({ why }) => why).filter((why) => why !== ''))],
      category: 'shopping',
      for: shopper(date),
      kind: 'shopping',
      task: 'shopping',
    };
  });
}

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
