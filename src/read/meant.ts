/** What a keeper meant by a word in another form than the file's: hours with am and pm, dates of a country, other names of keys. */
import { epochDayOf, isoDateOf, parseIsoDate } from '../basics/calendar-day.ts';
import { nearestSpelling } from '../basics/nearest-spelling.ts';

/** Returns what was written as a single word or number; nothing for a map, a list or a gap. */
export function plainText(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

const TIME = /^(\d{1,2})(?:\s*[:.h]\s*(\d{2})?)?\s*(?:h|hrs?|o'clock)?\s*(?:([ap])\.?\s?m\.?)?$/iu;

/** Returns a time of day as the file takes it, for instance `19:30` for `7:30 pm` and `00:00` for `24:00`; null where it is unclear. */
export function timeMeant(text: string): string | null {
  const [, hours = '', minutes = '00', half = ''] = TIME.exec(text.trim()) ?? [];
  const [hour, minute] = [Number(hours), Number(minutes)];
  if (hours === '' || minute > 59 || hour > 24 || (hour === 24 && minute > 0)) return null;
  if (half !== '' && (hour < 1 || hour > 12)) return null;
  const onDial = half === '' ? hour % 24 : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return `${String(onDial).padStart(2, '0')}:${minutes}`;
}

/** Returns a date as the file takes it where a text can be read in one way only, for instance `2026-11-26` for `26.11.2026`; else null. */
export function dateMeant(text: string): string | null {
  const parts = text.trim().split(/[./\s-]+/u);
  if (parts.length !== 3 || parts.some((part) => !/^\d+$/u.test(part))) return null;
  const [first = 0, second = 0, third = 0] = parts.map(Number);
  const isYearFirst = /^\d{4}$/u.test(parts[0] ?? '');
  const [year, readings] = isYearFirst
    ? ([first, [[second, third]]] as const)
    : ([
        third,
        [
          [second, first],
          [first, second],
        ],
      ] as const);
  if (year < 1900) return null;
  const dates = new Set(readings.flatMap(([month = 0, day = 0]) => dateOf(year, month, day)));
  return dates.size === 1 ? ([...dates][0] ?? null) : null;
}

function dateOf(year: number, month: number, day: number): readonly string[] {
  if (month < 1 || month > 12 || day < 1 || day > 31) return [];
  const date = isoDateOf(epochDayOf(year, month, day));
  return parseIsoDate(date) !== null && Number(date.slice(8)) === day ? [date] : [];
}

/** Other names that people give to what a key holds. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  lamps: ['lights', 'lighting', 'bulbs', 'light'],
  species: ['animal', 'reptile', 'profile'],
  enclosures: ['cages', 'tanks', 'terrariums', 'vivariums', 'animals'],
  hardware: ['timers', 'timer', 'devices', 'equipment'],
  people: ['keepers', 'keeper', 'persons', 'users'],
  site: ['location', 'place', 'home'],
  latitude: ['lat'],
  longitude: ['lon', 'lng', 'long'],
  timezone: ['tz', 'zone'],
  power: ['watts', 'wattage', 'watt'],
  outlet: ['socket', 'plug', 'timer'],
  feeders: ['food', 'foods', 'insects'],
  supplements: ['dusting', 'powders', 'vitamins'],
  mist: ['misting', 'mister'],
  size: ['dimensions', 'measures'],
  rating: ['max_power', 'load'],
};

/** Returns the key that was meant by a word, of those that may be written there; null where none is near. */
export function keyMeant(word: string, free: readonly string[]): string | null {
  const folded = word.toLowerCase().replace(/[\s-]/gu, '_');
  return nearestSpelling(word, free) ?? free.find((key) => OTHER_NAMES[key]?.includes(folded)) ?? null;
}

/** Returns the word that was meant, of those that may be written there: the nearest in spelling, or one that was written out, `sat` for Saturday. */
export function choiceMeant(word: string, words: readonly string[]): string | null {
  const folded = word.trim().toLowerCase();
  return nearestSpelling(word, words) ?? words.find((each) => each.length >= 3 && folded.startsWith(each)) ?? null;
}
