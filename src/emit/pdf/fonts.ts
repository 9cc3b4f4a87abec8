/** The fonts that pages are set in, and their measure. The one home of fontkit and dejavu-fonts-ttf. */
import { createRequire } from 'node:module';
import { create, type Font, type GlyphRun, openSync } from 'fontkit';
import { MM_PER_PT, type TextMeasure, type Weight } from '../../layout/text-measure.ts';

/** Fonts of one weight, the first that has a character sets it. */
export type FontChain = readonly [Font, ...Font[]];

export interface FontSet {
  readonly regular: FontChain;
  readonly bold: FontChain;
}

/** A part of a text that one font sets. */
export interface FontRun {
  readonly font: Font;
  readonly text: string;
}

/** What stands in the way of using a font file, told to the keeper. */
class FontFault extends Error {}

let own: { readonly regular: Font; readonly bold: Font } | null = null;

function ownFonts(): { readonly regular: Font; readonly bold: Font } {
  const require = createRequire(import.meta.url);
  const open = (name: string): Font => single(openSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
  own ??= { regular: quick(open('DejaVuSansCondensed')), bold: quick(open('DejaVuSansCondensed-Bold')) };
  return own;
}

function single(font: ReturnType<typeof openSync>): Font {
  if ('fonts' in font) {
    const [first] = font.fonts;
    if (!first) throw new FontFault('it is a collection without fonts');
    return first;
  }
  return font;
}

/** Latin letters, digits and the signs that pages use: none of them joins or moves another. */
const SIMPLE = /^[ -~\u00a0-\u024f\u2010-\u2027]*$/;

/**
 * Returns the font with simple text laid out glyph by glyph, without ligatures and kerning: reading the tables for these takes half of the
 * time of a first page. Other text is laid out in full.
 */
function quick(font: Font): Font {
  const light: Font = Object.create(font);
  const layout: Font['layout'] = (text, ...rest) => {
    if (!SIMPLE.test(text)) return font.layout(text, ...rest);
    const glyphs = font.glyphsForString(text);
    const positions = glyphs.map(({ advanceWidth }) => ({
      xAdvance: advanceWidth,
      yAdvance: 0,
      xOffset: 0,
      yOffset: 0,
    }));
    // The pen scales the positions in place and reads the sum of them after.
    const run = {
      glyphs,
      positions,
      get advanceWidth(): number {
        return positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
      },
    };
    return run as unknown as GlyphRun;
  };
  return Object.assign(light, { layout });
}

/**
 * Returns the fonts of the program with others behind them, in order, for what it does not have.
 *
 * @param files contents of TrueType or OpenType files
 * @throws FontFault where one is no font
 */
export function fontSet(files: readonly Uint8Array[] = []): FontSet {
  const { regular, bold } = ownFonts();
  const more = files.map((bytes) => {
    try {
      return single(create(Buffer.from(bytes)));
    } catch (error) {
      throw new FontFault(error instanceof Error ? error.message : String(error));
    }
  });
  return { regular: [regular, ...more], bold: [bold, regular, ...more] };
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
const PLAIN = /^[ -~]*$/;

/** Returns a text by the font that sets each part; a character that none has stays with the first. */
export function fontRuns(text: string, chain: FontChain): readonly FontRun[] {
  const [first] = chain;
  if (chain.length === 1 || PLAIN.test(text)) return [{ font: first, text }];
  const runs: { font: Font; text: string }[] = [];
  for (const { segment } of graphemes.segment(text)) {
    const font = chain.find((each) => hasAll(each, segment)) ?? first;
    const last = runs.at(-1);
    if (last && (last.font === font || segment === ' ')) last.text += segment;
    else runs.push({ font, text: segment });
  }
  return runs;
}

/** Marks that join or turn what stands beside them need no glyph of their own. */
const INVISIBLE = /^[\p{Cf}\p{Variation_Selector}]$/u;

function hasAll(font: Font, text: string): boolean {
  return [...text].every((point) => INVISIBLE.test(point) || font.hasGlyphForCodePoint(point.codePointAt(0) ?? 0));
}

const SMALL_X = 0x78;

/** Returns the measure of a set of fonts; widths are kept, word by word, as the pen lays them out. */
export function measureOf(fonts: FontSet): TextMeasure {
  const { regular } = ownFonts();
  const kept: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), bold: new Map() };
  const wordEm = (word: string, weight: Weight): number => {
    const known = kept[weight].get(word);
    if (known !== undefined) return known;
    const em = fontRuns(word, fonts[weight]).reduce(
      (sum, { font, text }) => sum + font.layout(text).advanceWidth / font.unitsPerEm,
      0,
    );
    kept[weight].set(word, em);
    return em;
  };
  return {
    widthMm: (text, sizePt, weight) =>
      text.split(/(?<= )/).reduce((sum, word) => sum + wordEm(word, weight), 0) * sizePt * MM_PER_PT,
    ascentEm: regular.ascent / regular.unitsPerEm,
    descentEm: -regular.descent / regular.unitsPerEm,
    xHeightEm: regular.glyphForCodePoint(SMALL_X).bbox.maxY / regular.unitsPerEm,
    missing: (text) => {
      if (PLAIN.test(text)) return [];
      const points = [...new Set(text)].filter((point) => !INVISIBLE.test(point) && point !== '\ufffd');
      return points.filter((point) => !fonts.regular.some((font) => hasAll(font, point)));
    },
  };
}
