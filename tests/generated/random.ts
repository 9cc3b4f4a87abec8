/** A seeded source of choices (mulberry32), so that a generated household is the same on every machine. */
export class Choices {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** In [0, 1). */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number, both ends included. */
  between(least: number, most: number): number {
    return least + Math.floor(this.share() * (most - least + 1));
  }

  oneOf<T>(items: readonly T[]): T {
    const item = items[this.between(0, items.length - 1)];
    if (item === undefined) throw new Error('nothing to choose from');
    return item;
  }

  chance(share: number): boolean {
    return this.share() < share;
  }
}
