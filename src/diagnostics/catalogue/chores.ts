/** What there is to say about chores, absences and the time that a person has. */
import { wording } from '../diagnostic.ts';

const list = (items: readonly string[], most: number): string =>
  items.length > most ? `${items.slice(0, most).join(', ')} and ${items.length - most} more` : items.join(', ');
const dayCount = (count: number): string => `${count} day${count === 1 ? '' : 's'}`;

export interface Undone {
  readonly from: string;
  readonly to: string;
  readonly chores: readonly string[];
  readonly isVisited: boolean;
  readonly first: string;
}

export const chores = {
  'default-chore-unknown': wording<{ id: string; nearest: string | null }>(
    'note',
    'warning',
    ({ id }) => `no chore of the default set is called ${id}, so nothing is switched off`,
    ({ nearest }) =>
      nearest === null ? 'the ids stand behind each chore in plan.json, after the /' : `write ${nearest}`,
  ),
  'chore-never-due': wording<{ enclosure: string; chore: string; lampHours: number | null }>(
    'note',
    'note',
    ({ enclosure, chore, lampHours }) =>
      lampHours === null
        ? `${chore} of ${enclosure} is due on no day of the plan`
        : `no lamp of ${enclosure} runs ${lampHours} h within the plan, so ${chore} is due on no day of it`,
    () => '',
  ),
  'gathering-not-proven': wording<{ person: string; days: number; atLeast: number }>(
    'note',
    'note',
    ({ person, days, atLeast }) =>
      days === atLeast
        ? `the chores of ${person} take ${dayCount(days)} of their own, the fewest there are, though they might lie a little better among themselves`
        : `the chores of ${person} take ${dayCount(days)} of their own; fewer than ${atLeast} cannot be, and not all that lies between was tried`,
    () => '',
  ),
  'day-too-full': wording<{
    person: string;
    allowed: number;
    days: number;
    date: string;
    minutes: number;
    longestChores: readonly string[];
  }>(
    'falls short',
    'warning',
    ({ person, allowed, days, date, minutes }) =>
      `${person} has ${allowed} min a day, and the plan asks for more on ${dayCount(days)}, most on ${date}: ${minutes} min`,
    ({ minutes, longestChores }) =>
      [
        ...(longestChores.length > 0
          ? [`give a chore of that day to somebody else or another leeway (${longestChores.join(', ')})`]
          : []),
        `allow ${minutes} min`,
      ].join(', or '),
  ),
  'water-unattended': wording<Undone>(
    'falls short',
    'warning',
    ({ from, to, chores: left }) => `nobody is there from ${from} to ${to} for ${list(left, 6)}`,
    ({ isVisited, first }) =>
      isVisited ? 'let the sitter come on those days too' : `let a sitter come, from ${first} on`,
  ),
  'chores-undone': wording<Undone>(
    'note',
    'note',
    ({ from, to, chores: left }) => `left undone from ${from} to ${to}, as nobody is there: ${list(left, 6)}`,
    ({ isVisited }) =>
      isVisited
        ? 'let the sitter come more often, or say when_away: before'
        : 'let a sitter come, or say when_away: before',
  ),
  'tank-runs-dry': wording<{
    pump: string;
    lasts: number;
    from: string;
    to: string;
    gap: number;
    refill: string;
    needs: number;
  }>(
    'falls short',
    'warning',
    ({ pump, lasts, from, to, gap }) =>
      `the tank of ${pump} lasts ${dayCount(lasts)}, and nobody refills it for ${dayCount(gap)} between ${from} and ${to}`,
    ({ refill, needs }) => `let a sitter refill it by ${refill}, or take a tank of ${needs} L`,
  ),
  'tray-runs-over': wording<{ enclosure: string; lasts: number; from: string; to: string; gap: number; empty: string }>(
    'not safe',
    'warning',
    ({ enclosure, lasts, from, to, gap }) =>
      `the tray of ${enclosure} is full after ${dayCount(lasts)}, and nobody empties it for ${dayCount(gap)} between ${from} and ${to}`,
    ({ empty }) => `let a sitter empty it by ${empty}, or put a larger one under`,
  ),
};
