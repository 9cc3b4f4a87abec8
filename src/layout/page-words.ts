import type { Words } from '../plan/words/words.ts';

/** What the papers say, in one language. */
export type PageWords = Words['page'];
