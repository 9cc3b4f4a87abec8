/** What is in the powders, and how far apart two of them must lie. */
import type { EpochDay } from '../../basics/calendar-day.ts';
import type { CareEnclosure, Content, Stage } from '../../resolve/care.ts';
import { contentsTaken } from '../../resolve/supplements-of.ts';

export type ApartRule = Stage['apart'][number];

/** Returns what a powder holds, as the keeper says or as its name is taken. */
export function contentsOf(enclosure: CareEnclosure, powder: string): readonly Content[] {
  return enclosure.supplements.find(({ id }) => id === powder)?.contains ?? contentsTaken(powder);
}

/** Returns a content as messages name it. */
export function contentWord(content: Content): string {
  return content === 'd3' ? 'D3' : 'vitamin A';
}

/** Returns whether a powder is what a side of an apart rule names: itself, or one of its contents. */
function isNamed(enclosure: CareEnclosure, powder: string, side: string): boolean {
  return powder === side || contentsOf(enclosure, powder).some((content) => content === side);
}

/** Returns the days that two powders must lie apart, 0 for none; a powder and itself likewise. */
export function daysApart(enclosure: CareEnclosure, rules: readonly ApartRule[], a: string, b: string): number {
  return rules.reduce((most, { between: [left, right], days }) => {
    const meets =
      (isNamed(enclosure, a, left) && isNamed(enclosure, b, right)) ||
      (isNamed(enclosure, a, right) && isNamed(enclosure, b, left));
    return meets ? Math.max(most, days) : most;
  }, 0);
}

/** A powder that was given: its id, or a content where the keeper names only that. */
export interface Given {
  readonly powder: string;
  readonly day: EpochDay;
  /** The rules in force when it was given. */
  readonly rules: readonly ApartRule[];
}

/** Returns the first day on which a powder may be given after what was given before; -Infinity where nothing is near. */
export function firstDayFor(
  enclosure: CareEnclosure,
  rules: readonly ApartRule[],
  powder: string,
  given: readonly Given[],
): EpochDay {
  return given.reduce((first, event) => {
    const days = Math.max(
      apartFromGiven(enclosure, rules, powder, event.powder),
      apartFromGiven(enclosure, event.rules, powder, event.powder),
    );
    return days > 0 ? Math.max(first, event.day + days) : first;
  }, Number.NEGATIVE_INFINITY);
}

/** As `daysApart`, where the second may be a bare content such as `d3`. */
export function apartFromGiven(
  enclosure: CareEnclosure,
  rules: readonly ApartRule[],
  powder: string,
  given: string,
): number {
  if (given !== 'd3' && given !== 'vitamin-a') return daysApart(enclosure, rules, powder, given);
  return rules.reduce((most, { between: [left, right], days }) => {
    const meets =
      (left === given && isNamed(enclosure, powder, right)) || (right === given && isNamed(enclosure, powder, left));
    return meets ? Math.max(most, days) : most;
  }, 0);
}

/** Returns the powders and contents of the file's `last`, as if given under the rules of a stage. */
export function givenBefore(enclosure: CareEnclosure, rules: readonly ApartRule[]): readonly Given[] {
  const powders = new Set([...enclosure.supplements.map(({ id }) => id), 'd3', 'vitamin-a']);
  return Object.entries(enclosure.last)
    .filter(([key]) => powders.has(key))
    .map(([powder, day]) => ({ powder, day, rules }));
}
