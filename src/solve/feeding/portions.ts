/** How much of a feeder a feed holds, in pieces and in words. */
import type { CareEnclosure, FeedRule } from '../../resolve/care.ts';

export interface Portion {
  /** Pieces for all animals together; null: by eye. */
  readonly count: number | null;
  readonly words: string;
}

/** Returns the portion of a feed: the household's count replaces the profile's pieces; several animals get theirs each. */
export function portionOf(enclosure: CareEnclosure, rule: FeedRule, feederId: string): Portion {
  const said = enclosure.feeders.find(({ id }) => id === feederId)?.count ?? null;
  const each = said ?? rule.pieces;
  if (each === null) return { count: null, words: rule.portion };
  const animals = Math.max(1, enclosure.animalCount);
  const number = animals === 1 ? String(each) : `${each * animals} (${animals} × ${each})`;
  return { count: each * animals, words: withNumber(rule, number) };
}

/** Puts the number in place of the rule's own, before it where the rule gives none. */
function withNumber(rule: FeedRule, number: string): string {
  if (rule.pieces === null) return rule.portion === '' ? number : `${number}; ${rule.portion}`;
  const own = new RegExp(`\\b${rule.pieces}\\b(?!.*\\b${rule.pieces}\\b)`);
  return rule.asEatenMinutes === null
    ? rule.portion.replace(new RegExp(`^${rule.pieces}\\b`), number)
    : rule.portion.replace(own, number);
}
