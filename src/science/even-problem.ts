/** What an even sequence is asked for: rates and counts, days that items must keep apart, pairs with a second order. */

export interface EvenProblem {
  /** Numerators of the items' rates over `denominator`; they sum to it. Items in the order that decides ties. */
  readonly rates: readonly number[];
  readonly denominator: number;
  /** How often each item stands; the sum is the length. */
  readonly counts: readonly number[];
  /** Deviations that the prefixes go on from, over `denominator`; they sum to 0. Left out: none. */
  readonly carried?: readonly number[];
  readonly spacing?: Spacing;
  /** The other order over the same places: its groups and their rates. */
  readonly pairing?: Pairing;
}

export interface Spacing {
  /** Day of each place, never falling. */
  readonly days: readonly number[];
  /** Least days between two places by their items, symmetric; 0: no matter. */
  readonly apart: readonly (readonly number[])[];
  /** First day on which an item may stand. */
  readonly notBefore: readonly number[];
  /** Days after which the sequence repeats, and the spacing holds over that seam too; null: it does not repeat. */
  readonly cycleDays: number | null;
}

export interface Pairing {
  readonly groups: readonly number[];
  readonly rates: readonly number[];
  readonly denominator: number;
}
