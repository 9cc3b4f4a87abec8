/** What a person gives to eat, in words. */
import { epochDay } from '../../basics/calendar-day.ts';
import type { IsoDate } from '../../basics/civil.ts';
import type { GutLoad, NamedFeed } from '../people-day.ts';
import type { Words } from '../words/words.ts';
import { dateInWords } from './date-words.ts';

/** Returns a feed with amount and dust, for instance `Feed Fern: 5 × cricket, no longer than the head is wide; dust with calcium`. */
export function feedWords({ name, feed }: NamedFeed, { today }: Words): string {
  const { count, feeder, portion, dusting, food, preDosed, standIn } = feed;
  const amount = count === null ? today.byEye(feeder, portion) : countedWords(feeder, portion, count, today);
  const dust =
    dusting === null
      ? food === 'insects'
        ? [today.noDust]
        : []
      : [preDosed ? today.preDosed(dusting) : today.dustWith(dusting)];
  return today.feed(name, [standIn ? `${amount} (${today.standIn})` : amount, ...dust].join('; '));
}

/** The portion repeats the count in front of what it says of the size, with what each of several animals gets of it. */
function countedWords(feeder: string, portion: string, count: number, today: Words['today']): string {
  const repeated = new RegExp(`^${count}( \\(\\d+ × \\d+\\))?(?:[,;] |$)`).exec(portion);
  const rest = repeated ? portion.slice(repeated[0].length) : portion;
  return today.pieces(count, `${feeder}${repeated?.[1] ?? ''}`, rest);
}

/** Returns which feeders get good food, and for which feed. */
export function gutLoadWords({ feeder, date: fedOn }: GutLoad, date: IsoDate, told: Words): string {
  const days = epochDay(fedOn) - epochDay(date);
  if (days === 0) return told.today.gutLoadToday(feeder);
  return days === 1 ? told.today.gutLoadTomorrow(feeder) : told.today.gutLoad(feeder, dateInWords(fedOn, told));
}
