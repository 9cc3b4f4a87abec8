import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { makeFolder } from './make-folder.ts';
import { CannotWrite, VERSIONS } from './publish.ts';
import type { World } from './world.ts';

const STALE_MS = 15_000;
const TRIES = 40;
const WAIT = { firstMs: 20, mostMs: 400, factor: 1.5 };

/**
 * Runs `work` while no other run writes the same household's results; waits up to about fifteen seconds for one that does.
 * @throws CannotWrite where the other run does not end, or something stands in the place that is not this program's.
 */
export async function underLock<T>(outFolder: string, name: string, world: World, work: () => Promise<T>): Promise<T> {
  const versions = join(outFolder, VERSIONS);
  makeFolder(outFolder, world.disk);
  if (kindOf(versions, world) === 'link') throw new CannotWrite(`${versions} is a link to somewhere else`);
  makeFolder(versions, world.disk);
  const path = join(versions, name);
  for (const folder of [versions, `${path}.lock`])
    if (kindOf(folder, world) === 'other' || kindOf(folder, world) === 'link')
      throw new CannotWrite(`${folder} stands there already and was not made by this program`);
  const release = await lock(path, world);
  try {
    return await work();
  } finally {
    await release().catch(() => undefined);
  }
}

function kindOf(path: string, world: World): 'none' | 'folder' | 'link' | 'other' {
  try {
    const stat = world.disk.lstatSync(path);
    if (stat.isSymbolicLink()) return 'link';
    return stat.isDirectory() ? 'folder' : 'other';
  } catch {
    return 'none';
  }
}

async function lock(path: string, world: World): Promise<() => Promise<void>> {
  const before = touchedMs(path, world);
  const release = await waitedFor(path);
  if (release) return release;
  const after = touchedMs(path, world);
  if (after !== null && after === before && after > world.nowMs()) {
    // Nobody has touched it while we waited, and the clock was set back since: its owner is gone.
    world.disk.rmSync(`${path}.lock`, { recursive: true, force: true });
    const taken = await waitedFor(path);
    if (taken) return taken;
  }
  throw new CannotWrite(
    `another run has been writing ${path} for a while; wait for it, or remove ${path}.lock if none is running`,
  );
}

/** Waits for another run alone: a disk that refuses will not think better of it. Null where the other run does not end. */
async function waitedFor(path: string): Promise<(() => Promise<void>) | null> {
  const { default: lockfile } = await import('proper-lockfile');
  for (let [left, waitMs] = [TRIES, WAIT.firstMs]; ; left--) {
    try {
      return await lockfile.lock(path, { stale: STALE_MS, realpath: false, onCompromised: () => undefined });
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'ELOCKED')) throw error;
      if (left === 0) return null;
    }
    await sleep(waitMs);
    waitMs = Math.min(WAIT.mostMs, waitMs * WAIT.factor);
  }
}

function touchedMs(path: string, world: World): number | null {
  try {
    return world.disk.lstatSync(`${path}.lock`).mtimeMs;
  } catch {
    return null;
  }
}
