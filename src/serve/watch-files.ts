/** Tells when one of some files has other bytes than before, however an editor writes: in place, by renaming, by removing first. */
import { createHash } from 'node:crypto';
import { type FSWatcher, readFileSync, watch } from 'node:fs';
import { dirname } from 'node:path';

/** An editor writes more than once; what comes within this time is one change. */
const QUIET_MS = 200;
/** Folders on other machines tell nothing: every file is looked at so often in any case. */
const LOOK_EVERY_MS = 3_000;

export interface FileWatch {
  /** Watches these files from now on, as they are now. */
  readonly follow: (paths: readonly string[]) => void;
  readonly close: () => void;
}

/** Calls `changed` after each change. */
export function watchFiles(changed: () => void, quietMs = QUIET_MS, lookEveryMs = LOOK_EVERY_MS): FileWatch {
  let seen: ReadonlyMap<string, string> = new Map();
  let watchers: readonly FSWatcher[] = [];
  let soon: NodeJS.Timeout | undefined;
  const look = (): void => {
    const now = digests([...seen.keys()]);
    const isSame = [...now].every(([path, digest]) => seen.get(path) === digest);
    seen = now;
    if (!isSame) changed();
  };
  const lookSoon = (): void => {
    clearTimeout(soon);
    soon = setTimeout(look, quietMs);
  };
  const regular = setInterval(look, lookEveryMs);
  const stop = (): void => {
    for (const each of watchers) each.close();
    watchers = [];
  };
  return {
    follow: (paths) => {
      stop();
      seen = digests(paths);
      watchers = [...new Set(paths.map((path) => dirname(path)))].flatMap((folder) => watched(folder, lookSoon));
    },
    close: () => {
      clearTimeout(soon);
      clearInterval(regular);
      stop();
    },
  };
}

function digests(paths: readonly string[]): ReadonlyMap<string, string> {
  return new Map(paths.map((path) => [path, digestOfFile(path)]));
}

function digestOfFile(path: string): string {
  try {
    return createHash('sha256').update(readFileSync(path)).digest('hex');
  } catch {
    return 'none';
  }
}

/** A folder that cannot be watched is left to the regular look. */
function watched(folder: string, lookSoon: () => void): readonly FSWatcher[] {
  try {
    const watcher = watch(folder, { persistent: false }, lookSoon);
    watcher.on('error', () => watcher.close());
    return [watcher];
  } catch {
    return [];
  }
}
