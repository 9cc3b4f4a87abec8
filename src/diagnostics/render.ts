/** Messages as text for a person and as JSON for a program. The only place where a diagnostic becomes words on a screen. */
import { cellWidth, printable } from '../basics/printable.ts';
import type { Diagnostic, Place } from './diagnostic.ts';

/** The texts that messages point into, by the file's name in places; `shown` is the path that a terminal can follow. */
export type SourceTexts = ReadonlyMap<string, { readonly shown: string; readonly text: string }>;

export interface RenderOptions {
  /** Escape codes for colour: only on a terminal. */
  readonly colour?: boolean;
  /** Width to wrap at; left out: lines are as long as they are. */
  readonly columns?: number;
  /** Messages shown before the rest is only counted; 40 where it is left out. */
  readonly most?: number;
}

/** Returns the messages as text in the order given, an empty line between two; empty where there is none. */
export function renderText(
  diagnostics: readonly Diagnostic[],
  sources: SourceTexts,
  options: RenderOptions = {},
): string {
  const most = options.most ?? 40;
  const lines = new Map<string, readonly string[]>();
  const blocks = diagnostics.slice(0, most).map((diagnostic) => block(diagnostic, sources, lines, options));
  const more = diagnostics.length - most;
  if (more > 0) blocks.push(`${more} more message${more === 1 ? '' : 's'} not shown\n`);
  return blocks.join('\n');
}

/** Returns the messages as a JSON list with fields in a fixed order; what belongs to a place is null where there is none. */
export function renderJson(diagnostics: readonly Diagnostic[]): string {
  return JSON.stringify(plainMessages(diagnostics), null, 2);
}

/** Returns the messages as they are in JSON. */
export function plainMessages(diagnostics: readonly Diagnostic[]) {
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

type Lines = Map<string, readonly string[]>;

function block(diagnostic: Diagnostic, sources: SourceTexts, lines: Lines, options: RenderOptions): string {
  const { code, kind, weight, place, because, instead } = diagnostic;
  const paint = (text: string, codes: string) =>
    options.colour && text !== '' ? `\u001b[${codes}m${text}\u001b[0m` : text;
  const shown = place && printable(sources.get(place.file)?.shown ?? place.file);
  const where = place ? `${shown}:${place.line}:${place.column}` : '';
  const out = [`${paint(where, '1')}${place ? '  ' : ''}${paint(kind, `1;${COLOURS[weight]}`)} (${code})`];
  const line = place && lineAt(place, sources, lines);
  if (place && line) out.push(...excerpt(line, place, options, (text) => paint(text, COLOURS[weight])));
  out.push(...said('because', because, options.columns));
  if (instead !== '') out.push(...said('instead', instead, options.columns));
  return `${out.join('\n')}\n`;
}

function lineAt({ file, line }: Place, sources: SourceTexts, lines: Lines): string | null {
  const text = sources.get(file)?.text;
  if (text === undefined) return null;
  const split = lines.get(file) ?? text.replace(/^\ufeff/u, '').split(/\r?\n/u);
  lines.set(file, split);
  return split[line - 1] ?? null;
}

const INDENT = '  > ';

/** Returns the line, cut around the place where it is too long, and its underlining; nothing where the line is blank. */
function excerpt(
  line: string,
  place: Place,
  { columns = 110 }: RenderOptions,
  paint: (text: string) => string,
): readonly string[] {
  const characters = [...printable(line)];
  if (line.trim() === '') return [];
  const widest = Math.max(40, columns - INDENT.length - 2);
  const start = Math.min(place.column - 1, characters.length);
  const cut = cellWidth(characters.join('')) > widest;
  const from = cut ? Math.max(0, start - Math.floor(widest / 3)) : 0;
  const to = cut ? fitting(characters, from, widest) : characters.length;
  const end = Math.max(start, Math.min(start + place.length, to));
  const before = `${from > 0 ? '…' : ''}${characters.slice(from, start).join('')}`;
  const marked = characters.slice(start, end).join('');
  const after = `${characters.slice(end, Math.max(end, to)).join('')}${to < characters.length ? '…' : ''}`;
  return [
    `${INDENT}${before}${marked}${after}`.trimEnd(),
    `${' '.repeat(INDENT.length + cellWidth(before))}${paint('~'.repeat(Math.max(1, cellWidth(marked))))}`,
  ];
}

/** Returns the index behind the last character that fits the width. */
function fitting(characters: readonly string[], from: number, widest: number): number {
  let [index, width] = [from, 0];
  for (; index < characters.length; index++) {
    width += cellWidth(characters[index] ?? '');
    if (width > widest) break;
  }
  return index;
}

/** Returns a labelled sentence, wrapped under its own beginning. */
function said(label: string, sentence: string, columns: number | undefined): readonly string[] {
  const room = columns === undefined ? Number.POSITIVE_INFINITY : Math.max(30, columns - label.length - 5);
  const lines: string[] = [];
  let line = '';
  for (const word of printable(sentence).split(' ')) {
    if (line !== '' && cellWidth(line) + 1 + cellWidth(word) > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((text, index) => `  ${index === 0 ? label : ' '.repeat(label.length)}  ${text}`);
}
