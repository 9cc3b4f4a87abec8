/** Finds nests so deep that the full parser, which calls itself for each level, could run out of stack. */

/** More than any file needs, and far less than the stack bears. */
const DEEPEST_BRACES = 400;
const DEEPEST_MARKS = 40;

/**
 * Returns the offset of the brace, bracket or list mark that goes too deep, or null. Counts without regard to quotes and comments: text
 * with hundreds of braces that never close is taken for a nest.
 */
export function deepNestIn(text: string): number | null {
  let open = 0;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (character === '[' || character === '{') {
      if (++open > DEEPEST_BRACES) return at;
    } else if (character === ']' || character === '}') open = Math.max(0, open - 1);
    else if ((character === '-' || character === '?' || character === ':') && isMarkRun(text, at)) return at;
  }
  return null;
}

/** Whether marks such as `- - - -` go on from here for more levels than any list has. */
function isMarkRun(text: string, from: number): boolean {
  let at = from;
  for (let marks = 0; marks < DEEPEST_MARKS; marks++) {
    if (!'-?:'.includes(text[at] ?? ' ') || !' \t'.includes(text[at + 1] ?? '')) return false;
    at += 2;
    while (text[at] === ' ' || text[at] === '\t') at++;
  }
  return true;
}
