/** Breaks text into lines of a width, with boxes to tick and blanks to fill in set into it like words. */
import { plainLine } from '../basics/plain-line.ts';
import type { TextMeasure, Weight } from './text-measure.ts';

export type Run = string | StyledRun | DrawnRun;

export interface StyledRun {
  readonly text: string;
  readonly weight: Weight;
}

/** A square to tick, or a line to write on. */
export interface DrawnRun {
  readonly draw: 'box' | 'blank';
  readonly widthMm: number;
}

export interface TextPiece {
  readonly leftMm: number;
  readonly widthMm: number;
  readonly text: string;
  readonly weight: Weight;
}

export interface DrawnPiece {
  readonly leftMm: number;
  readonly widthMm: number;
  readonly draw: 'box' | 'blank';
}

export type Piece = TextPiece | DrawnPiece;

export interface Line {
  readonly pieces: readonly Piece[];
  readonly widthMm: number;
}

interface Token {
  readonly kind: 'word' | 'draw';
  readonly text: string;
  readonly weight: Weight;
  readonly draw: 'box' | 'blank';
  readonly widthMm: number;
  /** Whether white space stands before it. */
  readonly spaced: boolean;
}

/**
 * Returns the lines of a paragraph; at least one, which may be empty. A word wider than the line is broken between characters, marks
 * staying with theirs.
 */
export function wrapRuns(
  runs: readonly Run[],
  widthMm: number,
  sizePt: number,
  weight: Weight,
  measure: TextMeasure,
): readonly Line[] {
  const spaceOf = (token: Token): number => measure.widthMm(' ', sizePt, token.weight);
  const lines: Token[][] = [];
  let line: Token[] = [];
  let used = 0;
  for (const token of tokensOf(runs, widthMm, sizePt, weight, measure)) {
    const gap = line.length > 0 && token.spaced ? spaceOf(token) : 0;
    if (line.length > 0 && used + gap + token.widthMm > widthMm + 1e-6 && (token.spaced || token.kind === 'word')) {
      lines.push(line);
      line = [token];
      used = token.widthMm;
    } else {
      line.push(token);
      used += gap + token.widthMm;
    }
  }
  lines.push(line);
  return lines.map((tokens) => laidOut(tokens, spaceOf, sizePt, measure));
}

function tokensOf(
  runs: readonly Run[],
  widthMm: number,
  sizePt: number,
  weight: Weight,
  measure: TextMeasure,
): readonly Token[] {
  const tokens: Token[] = [];
  let spaced = true;
  for (const run of runs) {
    if (typeof run !== 'string' && 'draw' in run) {
      tokens.push({ kind: 'draw', text: '', weight, draw: run.draw, widthMm: run.widthMm, spaced });
      spaced = false;
      continue;
    }
    const [text, own] = typeof run === 'string' ? [run, weight] : [run.text, run.weight];
    if (/^\s/u.test(text)) spaced = true;
    const words = plainLine(text.replaceAll(NO_BREAK, HELD))
      .split(' ')
      .filter((word) => word !== '')
      .map((word) => word.replaceAll(HELD, ' '));
    words.forEach((word, index) => {
      for (const [part, piece] of brokenWord(word, widthMm, sizePt, own, measure).entries())
        tokens.push({
          kind: 'word',
          text: piece,
          weight: own,
          draw: 'box',
          widthMm: measure.widthMm(piece, sizePt, own),
          spaced: part === 0 && (index > 0 || spaced),
        });
    });
    spaced = words.length === 0 ? spaced : /\s$/u.test(text);
  }
  return tokens;
}

/** A space at which a line is not broken, and what stands for it while words are told apart. */
const NO_BREAK = '\u00a0';
const HELD = '\ue000';

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

function brokenWord(
  word: string,
  widthMm: number,
  sizePt: number,
  weight: Weight,
  measure: TextMeasure,
): readonly string[] {
  if (measure.widthMm(word, sizePt, weight) <= widthMm) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const { segment } of graphemes.segment(word)) {
    if (piece !== '' && measure.widthMm(piece + segment, sizePt, weight) > widthMm) {
      pieces.push(piece);
      piece = segment;
    } else piece += segment;
  }
  return [...pieces, piece];
}

/** Words of one weight that follow each other are one piece, so that a reader meets them as one text. */
function laidOut(
  tokens: readonly Token[],
  spaceOf: (token: Token) => number,
  sizePt: number,
  measure: TextMeasure,
): Line {
  const pieces: Piece[] = [];
  let left = 0;
  for (const [index, token] of tokens.entries()) {
    const gap = index > 0 && token.spaced ? spaceOf(token) : 0;
    const last = pieces.at(-1);
    if (token.kind === 'word' && last && 'text' in last && last.weight === token.weight) {
      const text = `${last.text}${gap > 0 ? ' ' : ''}${token.text}`;
      const widthMm = measure.widthMm(text, sizePt, token.weight);
      pieces[pieces.length - 1] = { ...last, text, widthMm };
      left = last.leftMm + widthMm;
      continue;
    }
    left += gap;
    pieces.push(
      token.kind === 'word'
        ? { leftMm: left, widthMm: token.widthMm, text: token.text, weight: token.weight }
        : { leftMm: left, widthMm: token.widthMm, draw: token.draw },
    );
    left += token.widthMm;
  }
  return { pieces, widthMm: left };
}
