/** What stands below the token: the feeds and files of the plan that holds, and the page as it reads today. */
import { isoDateOf } from '../basics/calendar-day.ts';
import type { IsoDate } from '../basics/civil.ts';
import { type Today, todayIn } from '../basics/today.ts';
import { pageHtml } from '../emit/html/page.ts';
import type { FeedLink, ServedLook } from '../emit/html/page-look.ts';
import { STYLE_HASH } from '../emit/html/style.ts';
import type { Plan } from '../plan/plan.ts';
import { feedModifiedSecond } from './feed-time.ts';
import type { Results } from './published-results.ts';
import { qrSvg } from './qr.ts';
import type { FeedState } from './serve-state.ts';
import { etagOf, pagePolicy, type ServedFile, servedFile } from './served-file.ts';

export interface SiteOptions {
  /** Host and port under which links name this machine. */
  readonly authority: string;
  /** Whether a phone reaches it there. */
  readonly isReachable: boolean;
  readonly token: string;
  readonly nowMs: () => number;
  /** The day that is told instead of the clock's; null: the clock's. */
  readonly today: IsoDate | null;
}

export type Feeds = Readonly<Record<string, FeedState>>;

/** What is served of one household: its page and its feeds as they stand, replaced whole when a new plan is shown. */
export class HouseholdSite {
  readonly #options: SiteOptions;
  #plan: Plan;
  #files: ReadonlyMap<string, ServedFile> = new Map();
  #feeds: Feeds;
  #problem: string | null = null;
  #page: { readonly date: IsoDate; readonly file: ServedFile } | null = null;

  /** @param feeds when each feed last changed, as far as is known */
  constructor(options: SiteOptions, results: Results, feeds: Feeds) {
    this.#options = options;
    this.#plan = results.plan;
    this.#feeds = feeds;
    this.show(results);
  }

  /** Serves other results from now on; returns when each feed last changed. */
  show({ plan, files }: Results): Feeds {
    const nowMs = this.#options.nowMs();
    const feeds: Record<string, FeedState> = {};
    const served = new Map<string, ServedFile>();
    for (const [path, content] of files) {
      const name = path.replace(/^calendar\//, '');
      const etag = etagOf(content);
      const isFeed = name !== path;
      const known = isFeed ? this.#feeds[name] : undefined;
      const modifiedSecond = isFeed
        ? feedModifiedSecond(etag, plan.events, Math.floor(nowMs / 1000), known)
        : (unchangedSecond(this.#files.get(name), etag) ?? Math.floor(nowMs / 1000));
      if (isFeed) feeds[name] = { etag, modifiedSecond };
      served.set(name, servedFile(name, content, modifiedSecond * 1000));
    }
    this.#plan = plan;
    this.#files = served;
    this.#feeds = feeds;
    this.#page = null;
    return feeds;
  }

  /** Tells on the page why the household file cannot be used as it is; null where it can. */
  tell(problem: string | null): void {
    this.#problem = problem;
    this.#page = null;
  }

  /** Returns the file of a name, the page for none. */
  file(name: string): ServedFile | null {
    return name === '' ? this.#pageOfToday() : (this.#files.get(name) ?? null);
  }

  /** Returns the addresses of the feeds, people in the plan's order. */
  links(): readonly FeedLink[] {
    const { authority, isReachable, token } = this.#options;
    const known = this.#plan.people.map(({ id }) => `${id}.ics`);
    const others = [...this.#files.keys()].filter(
      (name) => /^[^/]+(?<!-import)\.ics$/.test(name) && !known.includes(name),
    );
    return [...known.filter((name) => this.#files.has(name)), ...others].map((name) => {
      const below = `${authority}/c/${token}/${name}`;
      const webcal = `webcal://${below}`;
      return {
        person: name.replace(/\.ics$/, ''),
        file: name,
        plain: `http://${below}`,
        webcal: { address: webcal, svg: isReachable ? qrSvg(webcal) : null },
      };
    });
  }

  /** Returns the address of the page. */
  pageAddress(): string {
    return `http://${this.#options.authority}/c/${this.#options.token}/`;
  }

  #pageOfToday(): ServedFile {
    const nowMs = this.#options.nowMs();
    const date = this.#options.today ?? todayOf(this.#plan, { nowMs });
    if (this.#page?.date === date) return this.#page.file;
    const text = pageHtml(this.#plan, { today: date, files: [...this.#files.keys()], served: this.#look() });
    this.#page = { date, file: servedFile('index.html', text, nowMs, pagePolicy(STYLE_HASH)) };
    return this.#page.file;
  }

  #look(): ServedLook {
    const address = this.pageAddress();
    return {
      feeds: this.links(),
      page: this.#options.isReachable ? { address, svg: qrSvg(address) } : null,
      problem: this.#problem,
    };
  }
}

function todayOf({ timezone }: Plan, today: Today): IsoDate {
  return isoDateOf(todayIn(timezone, today));
}

function unchangedSecond(before: ServedFile | undefined, etag: string): number | null {
  return before?.etag === etag ? before.modifiedSecond : null;
}
