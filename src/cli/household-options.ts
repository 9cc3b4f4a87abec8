/** What the compiling of one household is asked for. */
import type { Language } from '../plan/plan.ts';
import type { PageOptions } from './page-options.ts';
import type { CommonOptions } from './usage.ts';

export interface HouseholdOptions extends CommonOptions, PageOptions {
  readonly out: string;
  /** Writes PDF files too. */
  readonly pdf: boolean;
  /** Of everything that is written, instead of the file's. */
  readonly language?: Language;
}
