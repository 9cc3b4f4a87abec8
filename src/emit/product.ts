/** What a writer makes, and what it is asked for. */
import type { Log } from '../diagnostics/log.ts';
import type { CareWish } from '../layout/care-document.ts';

export interface Product {
  /** Relative to the household's folder, with `/`. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

export interface EmitOptions {
  /** Writes PDF files too. */
  readonly pdf: boolean;
  /** What the page for the door is to show; left out: four weeks of all animals. */
  readonly page?: CareWish;
  /** Font files for characters that our own lack, in the order in which they are tried. */
  readonly fonts?: readonly Uint8Array[];
  /** Where it is said what does not fit or cannot be printed. */
  readonly log?: Log;
}
