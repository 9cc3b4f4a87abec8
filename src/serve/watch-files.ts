/** Tells when one of some files or folders is another than before, however an editor writes: in place, by renaming, by removing first. */
import { type FSWatcher, statSync, watch } from 'node:fs';
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
    const now = marks([...seen.keys()]);
    const isSame = [...now].every(([path, mark]) => seen.get(path) === mark);
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
      seen = marks(paths);
      watchers = [...new Set(paths.map((path) => dirname(path)))].flatMap((folder) => watched(folder, lookSoon));
    },
    close: () => {
      clearTimeout(soon);
      clearInterval(regular);
      stop();
    },
  };
}

/** Returns a text that is another one when any of the files is. */
export function markOfAll(paths: readonly string[]): string {
  return JSON.stringify([...marks(paths)]);
}

function marks(paths: readonly string[]): ReadonlyMap<string, string> {
  return new Map(paths.map((path) => [path, markOf(path)]));
}

/** A link is followed: another target is another mark. */
function markOf(path: string): string {
  try {
    const { ino, size, mtimeNs } = statSync(path, { bigint: true });
    return `${ino} ${size} ${mtimeNs}`;
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
