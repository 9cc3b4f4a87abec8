/** The search over a day's entries: every set where they are few; else from many beginnings down to where no stated move improves. */
import type { Run } from '../../../science/enclosure-day.ts';
import { compareScores, type DayJudge, type Score } from './day-judge.ts';
import { DayMoves, type Family } from './day-moves.ts';
import type { DayProblem, SolveOptions } from './day-problem.ts';
import { placedNear } from './rhythm-placement.ts';
import type { Slot } from './start-grid.ts';

/** So many sets of entries are tried one by one. */
const EXHAUSTIVE_AT_MOST = 4000;
/** A shortfall that differs by less is left to the order. */
const GUIDE_STEP = 0.01;
const RHYTHM_STEP_MINUTES = 30;
/** Beginnings that are taken all the way down. */
const DESCENTS = 2;
/** So many starts stand for all of them where a whole row is tried. */
const SPARSE_STARTS = 24;

/** Searches with one judge. */
export class DaySearch {
  readonly judge: DayJudge;
  readonly problem: DayProblem;
  readonly moves: DayMoves;
  readonly #options: SolveOptions;

  constructor(judge: DayJudge, options: SolveOptions) {
    this.judge = judge;
    this.problem = judge.problem;
    this.moves = new DayMoves(judge.problem, judge.grid);
    this.#options = options;
  }

  /** Returns the best score found; entries that break a limit only where none was found that holds all. */
  best(): Score {
    const nothing = this.#scored([]);
    const seeded = [nothing, ...(this.#options.seeds ?? []).map((seed) => this.#scored(this.judge.ordered(seed)))];
    if (this.#options.untilMet) {
      const met = seeded.find((score) => score && isMet(score));
      if (met) return met;
    }
    const slots = this.judge.grid.slots;
    const all = this.moves.lengths.all;
    const wished = this.moves.lengths.wished;
    const few = setsOf(slots.length, all.length, this.problem.machine.entriesAtMost) <= EXHAUSTIVE_AT_MOST;
    if (few) return this.#everySet(slots, all);
    const free = this.judge.grid.allowed;
    if (setsOf(free.length, wished.length, this.problem.machine.entriesAtMost) <= EXHAUSTIVE_AT_MOST) {
      const found = this.#everySet(free, wished);
      if (found.broken.length === 0) return this.#descend(found);
    }
    return this.#fromBeginnings(seeded);
  }

  #scored(entries: readonly Run[]): Score | null {
    return this.judge.score(entries);
  }

  /** Returns the better of two, where either may be missing. */
  #better(a: Score | null, b: Score | null): Score | null {
    if (!a || !b) return a ?? b;
    return compareScores(b, a, this.judge.grid) < 0 ? b : a;
  }

  #everySet(slots: readonly Slot[], lengths: readonly number[]): Score {
    let best: Score | null = null;
    const most = this.problem.machine.entriesAtMost;
    const isBetter = (least: Score) => this.#better(best, least) !== best;
    const visit = (from: number, entries: readonly Run[]) => {
      best = this.#better(best, this.judge.score(entries, isBetter));
      if (entries.length >= most) return;
      for (let k = from; k < slots.length; k++) {
        for (const seconds of lengths) visit(k + 1, [...entries, { startMinute: slots[k]?.minute ?? 0, seconds }]);
      }
    };
    visit(0, []);
    return mustExist(best);
  }

  #fromBeginnings(seeded: readonly (Score | null)[]): Score {
    const beginnings = seeded.filter((score) => score !== null);
    let worse = 0;
    let best: Score | null = beginnings.reduce<Score | null>((a, b) => this.#better(a, b), null);
    for (const count of this.#counts()) {
      const found = this.#forCount(count);
      if (!found) continue;
      beginnings.push(found);
      if (this.#options.untilMet && isMet(found)) return found;
      const better = this.#better(best, found);
      worse = better === best ? worse + 1 : 0;
      best = better;
      if (worse >= (best && isMet(best) ? 2 : 3)) break;
    }
    beginnings.sort((a, b) => compareScores(a, b, this.judge.grid));
    for (const beginning of beginnings.slice(0, DESCENTS)) this.#descend(beginning);
    // What was seen on the way may be better than where the way led: go down from there until nothing better is seen.
    for (let end: Score | null = null; end !== this.judge.best; )
      end = this.#descendStrictly(mustExist(this.judge.best));
    return mustExist(this.judge.best);
  }

  /** Numbers of mists worth a look, ascending. */
  #counts(): readonly number[] {
    const { entriesAtMost } = this.problem.machine;
    const cadences = this.problem.cases.flatMap(({ cadence }) => (cadence ? [cadence] : []));
    const least = Math.max(1, ...cadences.map(({ perDay }) => Math.ceil(perDay[0])));
    const most = Math.min(entriesAtMost, 48, ...cadences.map(({ perDay }) => Math.floor(perDay[1])));
    const counts: number[] = [];
    for (let count = Math.min(least, entriesAtMost); count <= Math.max(most, Math.min(least, entriesAtMost)); ) {
      if (count > 0) counts.push(count);
      count += count < 8 ? 1 : count < 16 ? 2 : 4;
    }
    return counts;
  }

  /** Returns the best lengths found for so many mists on the places of the rhythm, or near them where these do not serve. */
  #forCount(count: number): Score | null {
    let best: Score | null = null;
    for (const slots of this.#placements(count)) {
      const even = this.#evenLengths(slots);
      if (!even) continue;
      const found = this.#descendBy(even, this.#lengthMoves(), this.#isGuidedOn);
      best = this.#better(best, found);
      if (best && isMet(best)) break;
    }
    return count === 1 && this.#misses(best) ? this.#better(best, this.#singles()) : best;
  }

  #sparse(): readonly Slot[] {
    const { allowed } = this.judge.grid;
    return allowed.filter((_, k) => k % Math.max(1, Math.round(allowed.length / SPARSE_STARTS)) === 0);
  }

  /** A single mist has few neighbours to learn from: tries it all over the day. */
  #singles(): Score | null {
    const { wished } = this.moves.lengths;
    let best: Score | null = null;
    const isBetter = (least: Score) => this.#better(best, least) !== best;
    for (const slot of this.#sparse()) {
      for (const share of [0, 0.25, 0.5, 0.75]) {
        const seconds = wished[Math.floor(share * wished.length)] ?? 0;
        best = this.#better(best, this.judge.score([{ startMinute: slot.minute, seconds }], isBetter));
      }
    }
    return best;
  }

  /** Slots on the places, then the nearest that keep the cadence's gap, then evenly spread ones. */
  *#placements(count: number): Generator<readonly Slot[]> {
    const { grid } = this.judge;
    const gaps = this.problem.cases.map(({ cadence }) => cadence?.gapMinutes ?? 0);
    const spacing = Math.max(this.problem.machine.startStepMinutes, ...gaps);
    const places = grid.places(count);
    for (let steps = 0; steps <= 48; steps++) {
      const near = placedNear(grid.allowed, places, steps * RHYTHM_STEP_MINUTES, spacing);
      if (!near) continue;
      yield near;
      break;
    }
    const spread = Array.from({ length: count }, (_, i) => {
      return grid.allowed[Math.floor(((i + 0.5) * grid.allowed.length) / count)];
    });
    const distinct = [...new Set(spread.filter((slot) => slot !== undefined))];
    if (distinct.length === count) yield distinct;
  }

  /** Gives all mists one length: the one that brings the mean nearest to its middle, or the best of a few. */
  #evenLengths(slots: readonly Slot[]): Score | null {
    const lengths = this.moves.lengths.wished;
    const at = (index: number) => this.#scored(this.#withDrinks(slots, lengths[index] ?? 0));
    let best: Score | null = null;
    let low = 0;
    let high = lengths.length - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const score = at(middle);
      best = this.#guided(best, score);
      if (!score || score.broken.length > 0 || score.meanOff > 0) high = middle - 1;
      else if (score.meanOff < 0) low = middle + 1;
      else break;
    }
    return this.#guided(best, at(0));
  }

  /** Returns mists of one length, as many of them as are to drink from at least so long. */
  #withDrinks(slots: readonly Slot[], seconds: number): readonly Run[] {
    const { lengthStepSeconds } = this.problem.machine;
    const entries = slots.map((slot) => ({ startMinute: slot.minute, seconds }));
    for (const one of this.problem.cases) {
      if (!one.drink) continue;
      let missing = one.drink.mists;
      const long = Math.ceil(one.drink.seconds / lengthStepSeconds - 1e-9) * lengthStepSeconds;
      for (const entry of entries) {
        if (missing <= 0 || !this.judge.drinksAt(one, entry.startMinute)) continue;
        entry.seconds = Math.max(entry.seconds, long);
        missing--;
      }
    }
    return entries;
  }

  #lengthMoves(): readonly Family[] {
    return [
      (entries) => this.moves.together(entries, 4),
      (entries) => this.moves.byLength(entries, 4),
      (entries) => this.moves.together(entries, 1),
      (entries) => this.moves.byLength(entries, 1),
    ];
  }

  #wideMoves(): readonly Family[] {
    const sparse = this.#sparse();
    const { wished } = this.moves.lengths;
    return [
      ...this.#lengthMoves(),
      (entries) => this.moves.shares(entries),
      (entries) => this.moves.byStart(entries, 1),
      (entries) => this.moves.byStart(entries, 4),
      (entries) => this.moves.drops(entries),
      (entries) => this.moves.adds(entries, wished[wished.length >> 1] ?? 0, sparse),
      (entries) => this.moves.relocations(entries, sparse),
    ];
  }

  /** Goes down by the smooth shortfall, then by the order itself, until no stated move improves. */
  #descend(from: Score): Score {
    let here = from;
    if (this.#misses(here)) {
      here = this.#descendBy(here, this.#wideMoves(), this.#isGuidedOn);
    }
    return this.#descendStrictly(here);
  }

  #descendStrictly(from: Score): Score {
    return this.#descendBy(from, this.moves.stated(), (score, best) => compareScores(score, best, this.judge.grid) < 0);
  }

  /** Returns whether a limit, a target or the middle of the band is missed. */
  #misses(score: Score | null): boolean {
    return !score || score.broken.length > 0 || (score.levels[0] ?? 0) > 0 || (score.levels[1] ?? 0) > 1;
  }

  /** First improvements until there is none. A kind of move that has helped is tried on before the next, and each once more at the end. */
  #descendBy(from: Score, families: readonly Family[], isBetter: (score: Score, best: Score) => boolean): Score {
    let here = from;
    let idle = 0;
    for (let turn = 0; idle < families.length; ) {
      const found = this.#firstBetter(here, families[turn], isBetter);
      if (found) {
        here = found;
        idle = 0;
      } else {
        turn = (turn + 1) % families.length;
        idle++;
      }
    }
    return here;
  }

  #firstBetter(
    here: Score,
    family: Family | undefined,
    isBetter: (score: Score, best: Score) => boolean,
  ): Score | null {
    for (const candidate of family?.(here.entries) ?? []) {
      const score = this.judge.score(candidate, (least) => isBetter(least, here));
      if (score && isBetter(score, here)) return score;
    }
    return null;
  }

  readonly #isGuidedOn = (score: Score, best: Score): boolean => this.#guided(best, score) !== best;

  /** Returns the better by the order, or where one falls short by how far exactly. */
  #guided(a: Score | null, b: Score | null): Score | null {
    if (!a || !b) return a ?? b;
    const trouble = this.#trouble(b) - this.#trouble(a);
    if (trouble !== 0) return trouble < 0 ? b : a;
    // In steps of its own, so that it is an order and the search cannot go in circles.
    const more = Math.ceil(b.shortfall / GUIDE_STEP - 1e-6) - Math.ceil(a.shortfall / GUIDE_STEP - 1e-6);
    if (more !== 0) return more < 0 ? b : a;
    return this.#better(a, b);
  }

  /** The limits exceeded, as a smooth sum. */
  #trouble(score: Score): number {
    let sum = 0;
    for (const index of score.broken) sum += 0.1 + (score.amounts[index] ?? 0) / (TROUBLE_SCALE[index] ?? 1);
    return Math.ceil(sum * 1e6);
  }
}

/** Amounts that count as much as each other, in the order of `GIVING_WAY`: min, mists, s, min, g, g, min, min, mists. */
const TROUBLE_SCALE: readonly number[] = [60, 1, 60, 60, 100, 100, 60, 60, 1];

function isMet(score: Score): boolean {
  return score.broken.length === 0 && score.levels[0] === 0;
}

function mustExist(score: Score | null): Score {
  if (!score) throw new Error('no set of entries could be judged, not even the empty one');
  return score;
}

/** Returns how many sets of at most so many entries there are. */
function setsOf(starts: number, lengths: number, entriesAtMost: number): number {
  let sum = 1;
  let term = 1;
  for (let n = 1; n <= Math.min(entriesAtMost, starts) && sum <= 1e9; n++) {
    term *= ((starts - n + 1) * lengths) / n;
    sum += term;
  }
  return sum;
}
