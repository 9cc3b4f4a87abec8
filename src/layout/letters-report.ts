/** Says which characters of a document cannot be set, and which texts run the other way. */
import type { Log } from '../diagnostics/log.ts';
import { textsOf } from './ledger.ts';
import type { PaperDocument } from './page.ts';
import type { TextMeasure } from './text-measure.ts';

const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]+/gu;
const TEXTS_SHOWN = 3;
const CHARACTERS_SHOWN = 8;

/** Reports each text once, and at most a few of each kind. */
export function reportLetters({ pages }: PaperDocument, measure: TextMeasure, log: Log): void {
  const all = [...new Set(pages.flatMap(({ parts }) => textsOf(parts).map(({ text }) => text)))];
  const texts = all.toSorted((a, b) => a.length - b.length);
  const seen = new Set<string>();
  for (const text of texts) {
    const missing = measure.missing(text).filter((character) => !seen.has(character));
    for (const character of missing) seen.add(character);
    if (missing.length > 0)
      log.report('letters-missing', { characters: missing.slice(0, CHARACTERS_SHOWN).map(named).join(', '), text });
  }
  const turned = new Set(texts.flatMap((text) => text.match(RIGHT_TO_LEFT) ?? []));
  for (const text of [...turned].slice(0, TEXTS_SHOWN)) log.report('right-to-left', { text });
}

/** For instance `日 (U+65E5)`. */
function named(character: string): string {
  return `${character} (U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')})`;
}
