/** The rows of a delimited text, each with its line (the one home of `csv-parse`). */
import { CsvError, parse } from 'csv-parse/sync';
import type { Place } from '../diagnostics/diagnostic.ts';

export interface CsvRow {
  /** 1 for the first line of the file. */
  readonly line: number;
  readonly cells: readonly string[];
  /** The row as it stands in the file, without the end of its line. */
  readonly raw: string;
}

export type Delimiter = ',' | ';' | '\t' | '|';

export type CsvTable =
  | { readonly ok: true; readonly delimiter: Delimiter; readonly rows: readonly CsvRow[] }
  /** A quote that begins on this line is never closed. */
  | { readonly ok: false; readonly line: number };

/** In the order in which they are believed: a comma may be a decimal comma. */
const DELIMITERS: readonly Delimiter[] = [';', '\t', '|', ','];
const LOOKED_AT_LINES = 60;

interface ParsedRow {
  readonly record: readonly string[];
  readonly raw: string;
  readonly info: { readonly lines: number };
}

/** Returns the rows that are not empty; quotes, byte-order marks and any end of line, mixed even, are taken care of. */
export function csvRows(source: string): CsvTable {
  const text = source.replace(/\r\n?/gu, '\n');
  const delimiter = delimiterOf(text);
  try {
    const parsed = parse(text, {
      bom: true,
      delimiter,
      info: true,
      raw: true,
      trim: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
    }) as unknown as readonly ParsedRow[];
    return { ok: true, delimiter, rows: parsed.map(rowOf).filter(({ cells }) => cells.some((cell) => cell !== '')) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ok: false, line: openQuoteLine(text, delimiter) };
  }
}

function rowOf({ record, raw, info }: ParsedRow): CsvRow {
  const own = raw.replace(/^[\r\n]+|[\r\n]+$/gu, '').replace(/^\ufeff/u, '');
  return { line: info.lines - (own.match(/\n/gu)?.length ?? 0), cells: record, raw: own };
}

/** The delimiter that cuts the most of the first lines into as many parts as their neighbours. */
function delimiterOf(text: string): Delimiter {
  const lines = text
    .slice(0, 100_000)
    .split(/\r?\n|\r/u)
    .filter((line) => line.trim() !== '')
    .slice(0, LOOKED_AT_LINES);
  let [best, most]: [Delimiter, number] = [',', 0];
  for (const delimiter of DELIMITERS) {
    const counts = lines.map((line) => line.replace(/"[^"]*"/gu, '').split(delimiter).length - 1);
    const usual = counts.filter((count) => count > 0).sort((a, b) => a - b)[counts.length >> 2] ?? 0;
    const alike = counts.filter((count) => count > 0 && count >= usual).length;
    if (alike > 1.2 * most) [best, most] = [delimiter, alike];
  }
  return best;
}

/** The first line from which the quotes of the rest do not come out even. */
function openQuoteLine(text: string, delimiter: Delimiter): number {
  const lines = text.split('\n');
  const opens = (line: string) =>
    line.trimStart().startsWith('"') || line.includes(`${delimiter}"`) || line.includes(`${delimiter} "`);
  const odd = lines.findIndex((line) => opens(line) && (line.match(/"/gu)?.length ?? 0) % 2 === 1);
  return Math.max(0, odd) + 1;
}

/** Returns the place of a cell of a row, or of the row where it has no such cell. */
export function placeOfCell(file: string, delimiter: Delimiter, row: CsvRow, index: number): Place {
  const [line = ''] = row.raw.split(/\r?\n/u);
  const spans = cellSpans(line, delimiter);
  const [from, to] = spans[index] ?? [0, line.length];
  const own = line.slice(from, to);
  const start = from + (own.length - own.trimStart().length);
  const length = [...own.trim()].length;
  return { file, line: row.line, column: [...line.slice(0, start)].length + 1, length: Math.max(1, length) };
}

function cellSpans(line: string, delimiter: Delimiter): readonly (readonly [number, number])[] {
  const spans: [number, number][] = [];
  let [from, quoted] = [0, false];
  for (let at = 0; at < line.length; at++) {
    if (line[at] === '"') quoted = !quoted;
    if (line[at] !== delimiter || quoted) continue;
    spans.push([from, at]);
    from = at + 1;
  }
  return [...spans, [from, line.length]];
}
