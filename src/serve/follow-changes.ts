/** Keeps a served household up to date: its file is compiled again when it changes, and new results are shown, whoever made them. */
import * as fs from 'node:fs';
import type { CompileOutcome } from './compile-apart.ts';
import type { Feeds, HouseholdSite } from './household-site.ts';
import { readResults } from './published-results.ts';
import { markOfAll, watchFiles } from './watch-files.ts';

export interface Followed {
  readonly site: HouseholdSite;
  /** Where the results stand. */
  readonly folder: string;
  /** Files that the household is compiled from, as they are now. */
  readonly inputs: () => readonly string[];
  readonly compile: () => Promise<CompileOutcome>;
  /** What the first compile said, and the mark of its inputs before it. */
  readonly first: CompileOutcome;
  readonly firstMark: string;
  readonly keep: (feeds: Feeds) => void;
  readonly say: (text: string) => void;
}

/** Follows until it is closed; one compile at a time, and another where a file changed meanwhile. */
export function followChanges(followed: Followed, ended: AbortSignal): { readonly close: () => void } {
  const { site, folder, inputs, compile, first, firstMark, keep, say } = followed;
  const reload = (): void => {
    results.follow([folder]);
    const read = readResults(folder, fs);
    if (read.ok) keep(site.show(read.results));
  };
  const compileAgain = async (): Promise<void> => {
    household.follow(inputs());
    const outcome = await compile();
    if (ended.aborted) return;
    say(outcome.said);
    say(outcome.isWritten ? 'dewdial: compiled again\n' : 'dewdial: the last good plan is still served\n');
    site.tell(problemOf(outcome));
    reload();
  };
  const start = oneAtATime(compileAgain, ended);
  const household = watchFiles(start);
  const results = watchFiles(reload);
  household.follow(inputs());
  site.tell(problemOf(first));
  reload();
  if (markOfAll(inputs()) !== firstMark) start();
  return {
    close: () => {
      household.close();
      results.close();
    },
  };
}

function problemOf({ isWritten, said }: CompileOutcome): string | null {
  return isWritten ? null : said.trimEnd();
}

/** Returns a call that starts `work`, or has it done once more after the one that runs. */
function oneAtATime(work: () => Promise<void>, ended: AbortSignal): () => void {
  let running = false;
  let again = false;
  const run = async (): Promise<void> => {
    running = true;
    do {
      again = false;
      await work();
    } while (again && !ended.aborted);
    running = false;
  };
  return () => {
    again = true;
    if (!running && !ended.aborted) void run();
  };
}
