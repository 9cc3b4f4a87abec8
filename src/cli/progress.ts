import { spanWords } from '../basics/span-words.ts';
import type { World } from './world.ts';

const EVERY_MS = 100;
const CLEAR = '\r\u001b[K';

/** One line on a terminal that says how far a run is; silent anywhere else. */
export class Progress {
  readonly #world: World;
  readonly #all: number;
  readonly #allWork: number;
  readonly #beganMs: number;
  #done = 0;
  #doneWork = 0;
  #shownMs = Number.NEGATIVE_INFINITY;
  #isShown = false;

  /** @param work how much there is to do, in whatever `done` counts in */
  constructor(world: World, all: number, work: number) {
    this.#world = world;
    this.#all = all;
    this.#allWork = work;
    this.#beganMs = world.nowMs();
  }

  done(work: number): void {
    this.#done += 1;
    this.#doneWork += work;
    const now = this.#world.nowMs();
    if (!this.#world.isSayTerminal || (now - this.#shownMs < EVERY_MS && this.#done < this.#all)) return;
    this.#shownMs = now;
    this.#isShown = true;
    this.#world.say(`${CLEAR}${progressWords(this.#done, this.#all, this.#leftSeconds(now))}`);
  }

  /** Takes the line away, so that something else can be said. */
  clear(): void {
    if (this.#isShown) this.#world.say(CLEAR);
    this.#isShown = false;
  }

  #leftSeconds(nowMs: number): number {
    return (((nowMs - this.#beganMs) / 1000) * (this.#allWork - this.#doneWork)) / Math.max(1, this.#doneWork);
  }
}

/** Returns for instance `12 of 148 done, 136 left, about 40 s`. */
function progressWords(done: number, all: number, leftSeconds: number): string {
  const left = all - done;
  const time = leftSeconds < 90 ? `${Math.ceil(Math.max(0, leftSeconds))} s` : spanWords(Math.round(leftSeconds / 60));
  return `${done} of ${all} done${left === 0 ? '' : `, ${left} left, about ${time}`}`;
}
