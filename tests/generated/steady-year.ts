/** A year of three enclosures as a keeper would have it: three kinds of feeding, a dozen chores each, two dials, one absence. */
import { epochDayOf, isoDateOf, weekdayIndex } from '../../src/basics/calendar-day.ts';
import type { Chore, Feed, Plan } from '../../src/plan/plan.ts';
import { generatedParts, siteOf } from './calendar-plan.ts';

const FROM = epochDayOf(2027, 1, 1);
const DAYS = 365;
const EVERY_DAYS = [1, 2, 2, 3, 7, 7, 7, 14, 30, 60, 90, 182];
const days = Array.from({ length: DAYS }, (_, index) => FROM + index);

/** Feeds by weekday (0 = Monday) or every so many days, with a cycle of dusts. */
const FEEDINGS = [
  {
    enclosure: 'fern',
    feeders: ['cricket', 'cricket', 'cricket', 'mealworm'],
    due: (day: number) => [0, 2, 4].includes(weekdayIndex(day)),
    cycle: 6,
    odd: ['calcium-d3', 'multivitamin'],
  },
  { enclosure: 'moss', feeders: ['fruit fly'], due: () => true, cycle: 14, odd: ['multivitamin'] },
  { enclosure: 'slate', feeders: ['mouse'], due: (day: number) => (day - FROM) % 10 === 0, cycle: 1, odd: [] },
] as const;

function feeds(): readonly Feed[] {
  return FEEDINGS.flatMap(({ enclosure, feeders, due, cycle, odd }) =>
    days.filter(due).map((day, index) => {
      const at = Math.floor((index % cycle) / Math.max(1, cycle / Math.max(1, odd.length)));
      const isOdd = odd.length > 0 && index % (cycle / odd.length) === 0;
      const isPrey = enclosure === 'slate';
      return {
        date: isoDateOf(day),
        time: '08:15',
        slot: index % cycle,
        enclosure,
        food: isPrey ? ('rodents' as const) : ('insects' as const),
        feeder: feeders[index % feeders.length] ?? '',
        count: isPrey ? 1 : 5,
        portion: isPrey ? '1, as wide as the animal' : '5, no longer than the head is wide',
        dusting: isPrey ? null : isOdd ? (odd[at] ?? null) : 'calcium',
        by: day >= FROM + 63 && day < FROM + 73 ? 'sitter' : 'keeper',
        gutLoadFrom: isPrey ? null : isoDateOf(day - 1),
        standIn: false,
      };
    }),
  );
}

function chores(): readonly Chore[] {
  return FEEDINGS.flatMap(({ enclosure }) =>
    EVERY_DAYS.map((every, number) => {
      const dates = days.filter((day) => (day - FROM - (number % 7)) % every === 0 && day - FROM >= number % 7);
      const gathered = dates.map((day) =>
        every < 7 || weekdayIndex(day) === 5 ? day : day + ((5 - weekdayIndex(day) + 7) % 7),
      );
      const within = [...new Set(gathered)].filter((day) => day < FROM + DAYS);
      return {
        id: `${enclosure}/chore-${number}`,
        title: `Chore number ${number}`,
        kind: 'chore',
        who: 'keeper',
        minutes: 5,
        enclosure,
        dates: within.map(isoDateOf),
        moved: [],
      };
    }),
  );
}

export function steadyYear(): Plan {
  const generated = generatedParts(0);
  const dial = generated.lighting[0];
  const named = (id: string, name: string): Plan['enclosures'][number] => ({
    ...(generated.enclosures[0] ?? lacking()),
    id,
    name,
  });
  return {
    ...generated,
    id: 'steady-year',
    name: 'Reading room',
    language: 'en',
    from: isoDateOf(FROM),
    to: isoDateOf(FROM + DAYS - 1),
    people: generated.people.map((person) => ({ ...person, reminderMinutes: 15 })),
    site: siteOf('Europe/Madrid', FROM, DAYS),
    enclosures: [named('fern', 'Fern'), named('moss', 'Moss'), named('slate', 'Slate')],
    lighting: dial ? ['wall-dial', 'shelf-dial'].map((device) => ({ ...dial, device })) : [],
    misting: [],
    feeding: feeds(),
    chores: chores(),
    stock: days
      .filter((day) => weekdayIndex(day) === 4)
      .map((day, week) => ({
        date: isoDateOf(day),
        feeder: 'cricket',
        amount: week % 2 === 0 ? 40 : 30,
        why: 'feeds until the next shopping day',
      })),
    away: [
      {
        from: isoDateOf(FROM + 63),
        to: isoDateOf(FROM + 72),
        sitter: 'sitter',
        visits: [63, 65, 67, 69, 71].map((day) => isoDateOf(FROM + day)),
      },
    ],
  };
}

function lacking(): never {
  throw new Error('the generated household has no enclosure');
}
