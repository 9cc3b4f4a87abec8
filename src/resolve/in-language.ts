/** The words that resolving puts into the plan, in the household's language. */
import type { Language } from '../plan/plan.ts';
import { PROFILE_WORDS_ES } from './profile-words-es.ts';

/** Returns a shipped profile's words in the language; the keeper's own stay as they are. */
export function inLanguage(text: string, language: Language): string {
  return language === 'es' ? (PROFILE_WORDS_ES[text] ?? text) : text;
}

export interface PortionWords {
  readonly noLongerThan: (pieces: number, what: string) => string;
  readonly asEaten: (minutes: number, most: number | null) => string;
}

export const PORTION_WORDS: Readonly<Record<Language, PortionWords>> = {
  en: {
    noLongerThan: (pieces, what) => `${pieces}, no longer than ${what}`,
    asEaten: (minutes, most) => `as much as is eaten in ${minutes} min${most === null ? '' : `, at most ${most}`}`,
  },
  es: {
    noLongerThan: (pieces, what) => `${pieces}, no más largos que ${what}`,
    asEaten: (minutes, most) => `lo que coma en ${minutes} min${most === null ? '' : `, como mucho ${most}`}`,
  },
};
