import { digestOf } from '../basics/digest.ts';
import type { PartMessage, Plan } from './plan.ts';

/**
 * Keeps, for each part of a plan (`lighting.DIAL`, `misting.ENCLOSURE`, …), a digest of what it was solved from.
 * A part whose digest stands in the earlier plan is copied from it whole, whatever the day, and so is what was said of it.
 */
export class Parts {
  readonly #earlier: Plan | null;
  readonly #digests = new Map<string, string>();
  readonly #said = new Map<string, readonly PartMessage[]>();

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
    return inOrder(this.#digests);
  }

  /** Keeps what is said of a part in this plan. */
  say(part: string, messages: readonly PartMessage[]): void {
    if (messages.length > 0) this.#said.set(part, messages);
  }

  /** Returns what the earlier plan said of a part. */
  saidBefore(part: string): readonly PartMessage[] {
    return this.#earlier?.said?.[part] ?? [];
  }

  said(): Readonly<Record<string, readonly PartMessage[]>> {
    return inOrder(this.#said);
  }
}

function inOrder<T>(map: ReadonlyMap<string, T>): Readonly<Record<string, T>> {
  return Object.fromEntries([...map].sort(([a], [b]) => (a < b ? -1 : 1)));
}
