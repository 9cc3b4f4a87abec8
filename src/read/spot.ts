/** Where a value stands, and what stands in it; offsets in UTF-16 units, the end exclusive. */
export type Span = readonly [from: number, to: number];

export interface Spot {
  /** What to underline of the value: a block or an empty value is shown by its key, where it has one. */
  readonly value: Span;
  readonly key: Span | null;
  readonly children: ReadonlyMap<string | number, Spot>;
}
