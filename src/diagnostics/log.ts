import { type Code, catalogue, type ValuesOf } from './catalogue.ts';
import type { Diagnostic, Place, Weight, Wording } from './diagnostic.ts';

/** Collects everything there is to say in a run, so that all of it is said at once. */
export class Log {
  readonly #entries: Diagnostic[] = [];

  /** Notes one message of the catalogue; `weight` overrides the catalogue's where the same fact weighs more or less. */
  report<C extends Code>(code: C, values: ValuesOf<C>, place: Place | null = null, weight?: Weight): void {
    const entry = catalogue[code] as unknown as Wording<ValuesOf<C>>;
    this.#entries.push({
      code: code as string,
      kind: entry.kind,
      weight: weight ?? entry.weight,
      place,
      because: entry.because(values),
      instead: entry.instead(values),
    });
  }

  add(diagnostics: readonly Diagnostic[]): void {
    this.#entries.push(...diagnostics);
  }

  has(weight: Weight): boolean {
    return this.#entries.some((entry) => entry.weight === weight);
  }

  /** Returns all messages, by file, line and column, those without a place last; equal ones once. */
  sorted(): readonly Diagnostic[] {
    const seen = new Set<string>();
    return this.#entries
      .map((entry, order) => ({ entry, order }))
      .sort((a, b) => comparePlaces(a.entry.place, b.entry.place) || a.order - b.order)
      .map(({ entry }) => entry)
      .filter((entry) => {
        const key = JSON.stringify(entry);
        return seen.has(key) ? false : seen.add(key) !== undefined;
      });
  }
}

function comparePlaces(a: Place | null, b: Place | null): number {
  if (!a || !b) return a ? -1 : b ? 1 : 0;
  return a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line || a.column - b.column;
}
