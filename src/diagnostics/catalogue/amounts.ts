/** Counts and states as messages read them. */

/** Returns `1 day`, `2 days`, `1.5 days`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** Returns `once`, `twice`, `3 times`; a number that is given as text, `1.5`, likewise. */
export const times = (count: number | string): string =>
  String(count) === '1' ? 'once' : String(count) === '2' ? 'twice' : `${count} times`;

/** Returns `is` for one, else `are`. */
export const isOrAre = (count: number): string => (count === 1 ? 'is' : 'are');

/** Returns what an enclosure is in a state, for instance `in quarantine`. */
export const stateWords = (state: string): string =>
  state === 'quarantine' ? 'in quarantine' : state === 'new' ? 'new here' : state;
