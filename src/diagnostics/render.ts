/** Messages as text for a person and as JSON for a program. The only place where a diagnostic becomes words on a screen. */
import { cellWidth, printable } from '../basics/printable.ts';
import type { Diagnostic, Place } from './diagnostic.ts';

/** Returns a line of a file that is being spoken of, 1 for the first; null where the file is not at hand. */
export type LineOf = (file: string, line: number) => string | null;

export interface RenderOptions {
  readonly lineOf: LineOf;
  /** Escape codes for colour: only on a terminal. */
  readonly colour?: boolean;
  /** Messages shown before the rest is only counted; 40 where it is left out. */
  readonly most?: number;
}

/** Returns a function that finds lines in the texts of files. */
export function linesOf(texts: ReadonlyMap<string, string>): LineOf {
  const split = new Map<string, readonly string[]>();
  return (file, line) => {
    const text = texts.get(file);
    if (text === undefined) return null;
    const lines = split.get(file) ?? text.replace(/^\ufeff/u, '').split(/\r?\n/u);
    split.set(file, lines);
    return lines[line - 1] ?? null;
  };
}

/** Returns the messages as text in the order given, one blank line between two; empty where there is none. */
export function renderText(diagnostics: readonly Diagnostic[], options: RenderOptions): string {
  const most = options.most ?? 40;
  const blocks = diagnostics.slice(0, most).map((diagnostic) => renderOne(diagnostic, options));
  const more = diagnostics.length - most;
  if (more > 0) blocks.push(`${more} more message${more === 1 ? '' : 's'} not shown\n`);
  return blocks.join('\n');
}

/** Returns the messages as data with fields in a fixed order; `place` fields are null where there is none. */
export function renderJson(diagnostics: readonly Diagnostic[]): readonly Readonly<Record<string, unknown>>[] {
  return diagnostics.map(({ code, kind, weight, place, because, instead }) => ({
    code,
    kind,
    weight,
    file: place?.file ?? null,
    line: place?.line ?? null,
    column: place?.column ?? null,
    length: place?.length ?? null,
    because,
    instead,
  }));
}

const COLOURS: Readonly<Record<Diagnostic['weight'], string>> = {
  error: '31',
  refusal: '31',
  warning: '33',
  note: '36',
};

function renderOne({ code, kind, weight, place, because, instead }: Diagnostic, options: RenderOptions): string {
  const paint = (text: string, codes: string) => (options.colour ? `\u001b[${codes}m${text}\u001b[0m` : text);
  const where = place ? `${printable(place.file)}:${place.line}:${place.column}  ` : '';
  const lines = [`${paint(where, '1')}${paint(kind, `1;${COLOURS[weight]}`)} (${code})`];
  if (place) lines.push(...excerpt(place, options.lineOf, (text) => paint(text, COLOURS[weight])));
  lines.push(`  because  ${printable(because)}`);
  if (instead !== '') lines.push(`  instead  ${printable(instead)}`);
  return `${lines.join('\n')}\n`;
}

/** Widest excerpt in cells; a longer line is cut around the place. */
const WIDEST = 110;
const CONTEXT = 40;

/** Returns the line and its underlining, or nothing where the line is empty or not at hand. */
function excerpt(place: Place, lineOf: LineOf, paint: (text: string) => string): readonly string[] {
  const line = lineOf(place.file, place.line);
  if (line === null || line.trim() === '') return [];
  const characters = [...printable(line)];
  const start = Math.min(place.column - 1, characters.length);
  const cut = cellWidth(characters.join('')) > WIDEST;
  const from = cut ? Math.max(0, start - CONTEXT) : 0;
  const to = cut ? Math.min(characters.length, from + WIDEST) : characters.length;
  const before = `${from > 0 ? '…' : ''}${characters.slice(from, start).join('')}`;
  const marked = characters.slice(start, Math.min(start + place.length, to)).join('');
  const after = `${characters.slice(start + [...marked].length, to).join('')}${to < characters.length ? '…' : ''}`;
  return [
    `  > ${`${before}${marked}${after}`.trimEnd()}`,
    `    ${' '.repeat(cellWidth(before))}${paint('~'.repeat(Math.max(1, cellWidth(marked))))}`,
  ];
}
