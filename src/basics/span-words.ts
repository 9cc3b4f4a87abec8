/** Lengths of time in words with units. */

/** Returns `13 h`, `11 h 30 min`, `45 min` or `0 min`, to the whole minute. */
export function spanWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
