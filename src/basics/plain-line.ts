/** Text as other programs may be given it: nothing that breaks a line, hides, or turns the reading direction around. */

/** Bidirectional embeddings, overrides and isolates, byte-order marks, interlinear marks and lone surrogates. */
const TURNING = /[\u202a-\u202e\u2066-\u2069\ufeff\ufff9-\ufffb]/gu;
const LONE_SURROGATES = /\p{Cs}/gu;
const BREAKS = /[\s\u0085\u2028\u2029]+/gu;
const CONTROLS = /\p{Cc}/gu;
/** Whatever is not plain: most texts have nothing of it. */
const NOT_PLAIN = /[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069\ufeff\ufff9-\ufffb]|[^\S ]| {2}|^ | $/u;
/** Marks and joiners that belong to the character before them. */
const TRAILING = /\p{M}|\u200d/u;

/** Returns the text on one line: white space of any kind is one space, control characters and turning marks are gone. */
export function plainLine(text: string): string {
  if (!NOT_PLAIN.test(text)) return text;
  const kept = text.replace(TURNING, '').replace(LONE_SURROGATES, '\ufffd').replace(BREAKS, ' ');
  return kept.replace(CONTROLS, '').trim();
}

/** Returns the text in lines, each a plain one; lines are broken by a line feed only. */
export function plainLines(text: string): string {
  return text
    .split(/\r\n|[\n\r\u0085\u2028\u2029]/u)
    .map(plainLine)
    .join('\n')
    .trim();
}

/** Returns at most `most` code points, the last a dot of omission where text was cut; no character is torn from its marks. */
export function cutAt(text: string, most: number): string {
  const points = [...text];
  if (points.length <= most) return text;
  let end = most - 1;
  while (end > 0 && (TRAILING.test(points[end] ?? '') || points[end - 1] === '\u200d')) end -= 1;
  return `${points.slice(0, end).join('').trimEnd()}…`;
}
