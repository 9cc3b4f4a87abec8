import { digestOf } from '../basics/digest.ts';
import type { Plan } from './plan.ts';

/**
 * Keeps, for each part of a plan (`lighting.DIAL`, `misting.ENCLOSURE`, …), a digest of what it was solved from.
 * A part whose digest stands in the earlier plan is copied from it whole, whatever the day.
 */
export class Parts {
  readonly #earlier: Plan | null;
  readonly #digests = new Map<string, string>();

  constructor(earlier: Plan | null) {
    this.#earlier = earlier;
  }

  /** Notes what a part is solved from; true where the earlier plan's part was solved from the same. */
  stands(part: string, solvedFrom: unknown): boolean {
    const digest = digestOf(solvedFrom);
    this.#digests.set(part, digest);
    return this.#earlier?.digests[part] === digest;
  }

  /** Returns whether every part, and no other, stands in the earlier plan. */
  allStand(): boolean {
    if (!this.#earlier) return false;
    const before = Object.keys(this.#earlier.digests);
    return (
      before.length === this.#digests.size &&
      before.every((part) => this.#earlier?.digests[part] === this.#digests.get(part))
    );
  }

  digests(): Readonly<Record<string, string>> {
    return Object.fromEntries([...this.#digests].sort(([a], [b]) => (a < b ? -1 : 1)));
  }
}
