/** The nearest spelling of a word that is not known, and the list of those that are. */

/** What a message about an unknown word knows: the known word nearest to it, null where none is near. */
export interface Nearest {
  readonly nearest: string | null;
}

/** Returns words as a list with commas. */
export const quoted = (words: readonly string[]): string => words.join(', ');

/** Returns the nearest word as a proposal, then the others; the others alone where none is near. */
export const meant = (nearest: string | null, others: string): string =>
  nearest === null ? others : `write ${nearest}${others === '' ? '' : `, if that is meant; ${others}`}`;

/** Returns a list of known words, cut behind `most` with how many more there are. */
export const among = (known: readonly string[], most = 24): string =>
  known.length > most ? `${quoted(known.slice(0, most))} and ${known.length - most} more` : quoted(known);
