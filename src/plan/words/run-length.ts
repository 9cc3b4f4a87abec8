/** How long a pump runs or a hand sprays. */

/** Below this a length is said in seconds alone, as a timer's entry is often keyed in. */
const SECONDS_ALONE = 120;
const MINUTES_ALONE = 120;

/**
 * Returns a length in words, for instance `90 s`, `2 min 15 s` or `2 h 30 min`; `seconds` is whole. The symbols are those of the SI, the same
 * in every language, so that every sheet says one length in one way.
 */
export function runLength(seconds: number): string {
  if (seconds < SECONDS_ALONE) return `${seconds} s`;
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  if (rest !== 0) return `${minutes} min ${rest} s`;
  if (minutes < MINUTES_ALONE) return `${minutes} min`;
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
