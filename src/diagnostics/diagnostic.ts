/** What is said to the keeper, as data; turned into text in `render.ts` alone. */

export interface Place {
  readonly file: string;
  /** 1 for the first. */
  readonly line: number;
  /** In code points, 1 for the first. */
  readonly column: number;
  /** Code points to underline on that line. */
  readonly length: number;
}

/** The words that open a message. */
export type Kind = 'cannot be read' | 'cannot be done' | 'not safe' | 'falls short' | 'note';

/**
 * What it does to the run: an `error` stops the household; a `refusal` leaves a part out and writes the rest (exit 1);
 * a `warning` changes nothing but is counted; a `note` is only said.
 */
export type Weight = 'error' | 'refusal' | 'warning' | 'note';

export interface Diagnostic {
  readonly code: string;
  readonly kind: Kind;
  readonly weight: Weight;
  readonly place: Place | null;
  readonly because: string;
  readonly instead: string;
}

/** One entry of the catalogue: the words of a message from its values. Lower case, no full stop, units on numbers. */
export interface Wording<V> {
  readonly kind: Kind;
  readonly weight: Weight;
  readonly because: (values: V) => string;
  readonly instead: (values: V) => string;
}

/** Types a catalogue entry; `instead` may be empty where there is nothing to do. */
export function wording<V>(
  kind: Kind,
  weight: Weight,
  because: (values: V) => string,
  instead: (values: V) => string,
): Wording<V> {
  return { kind, weight, because, instead };
}
