/** Guesses what a misspelt word was meant to be. */

/**
 * Returns the candidate nearest to a word, at most max(1, a third of its length) edits away, or null; of equally near ones the first.
 * Edits are insertion, deletion, substitution, and the swap of two neighbours (optimal string alignment).
 */
export function nearestSpelling(word: string, candidates: readonly string[]): string | null {
  const from = folded(word);
  let best: string | null = null;
  let least = Math.max(1, Math.floor(from.length / 3)) + 1;
  for (const candidate of candidates) {
    const to = folded(candidate);
    if (Math.abs(to.length - from.length) >= least) continue;
    const edits = editDistance(from, to);
    if (edits < least) [best, least] = [candidate, edits];
  }
  return best;
}

/** A wrong case, a space or an underscore for a hyphen is no edit. */
function folded(word: string): string {
  return word.slice(0, 64).toLowerCase().replace(/[\s_]/gu, '-');
}

/**
 * Returns the optimal string alignment distance of two words.
 * Source: Damerau (1964) Communications of the ACM 7:171-176, in the restricted form that edits no piece twice.
 */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1] ? 0 : 1;
      let edits = Math.min((last[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + same);
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) edits = Math.min(edits, (beforeLast[column - 2] ?? 0) + 1);
      current.push(edits);
    }
    [beforeLast, last] = [last, current];
  }
  return last[to.length] ?? 0;
}
