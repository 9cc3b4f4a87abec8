/** Spans of dates by what is read on a clock in each. */
import type { IsoDate } from '../plan.ts';

export interface ReadSpan {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly reads: string;
}

/**
 * Returns spans with what they read, from a date on: neighbours that read alike as one, as the date on which the clocks change is with the
 * dates behind it; a single date that reads otherwise is left out.
 */
export function spansThatRead<T extends { readonly from: IsoDate; readonly to: IsoDate }>(
  spans: readonly T[],
  from: IsoDate,
  read: (span: T) => string,
): readonly ReadSpan[] {
  const joined: ReadSpan[] = [];
  for (const span of spans.filter(({ to }) => to >= from)) {
    const reads = read(span);
    const last = joined.at(-1);
    if (last?.reads === reads) joined[joined.length - 1] = { ...last, to: span.to };
    else joined.push({ from: span.from > from ? span.from : from, to: span.to, reads });
  }
  return joined.filter((span) => span.from !== span.to);
}
