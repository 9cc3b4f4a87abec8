/** What a page is made for, beside the plan. */
import type { IsoDate } from '../../basics/civil.ts';

export interface PageLook {
  readonly today: IsoDate;
  /** Paths that the page may point to, relative to it. */
  readonly files: readonly string[];
  /** null in a file that stands by itself. */
  readonly served: ServedLook | null;
}

export interface ServedLook {
  readonly feeds: readonly FeedLink[];
  /** The page itself as a phone reaches it; null where no phone does. */
  readonly page: QrLink | null;
  /** Why the household file cannot be used as it is now, in the words of the messages; null where it can. */
  readonly problem: string | null;
}

export interface FeedLink {
  readonly person: string;
  /** Relative to the page. */
  readonly file: string;
  readonly webcal: QrLink;
  readonly plain: string;
}

export interface QrLink {
  readonly address: string;
  /** A drawing of it as SVG; null where no phone reaches the address. */
  readonly svg: string | null;
}
