import { join } from 'node:path';
import { makeFolder } from './make-folder.ts';
import { CannotWrite, VERSIONS } from './publish.ts';
import type { World } from './world.ts';

const STALE_MS = 15_000;
const WAIT = { retries: 40, minTimeout: 20, maxTimeout: 400, factor: 1.5 };

/**
 * Runs `work` while no other run writes the same household's results; waits up to about ten seconds for one that does.
 * @throws CannotWrite where the other run does not end.
 */
export async function underLock<T>(outFolder: string, name: string, world: World, work: () => Promise<T>): Promise<T> {
  const versions = join(outFolder, VERSIONS);
  makeFolder(outFolder, world.disk);
  if (isLink(versions, world)) throw new CannotWrite(`${versions} is a link to somewhere else`);
  makeFolder(versions, world.disk);
  const release = await lock(join(versions, name), world);
  try {
    return await work();
  } finally {
    await release().catch(() => undefined);
  }
}

function isLink(path: string, world: World): boolean {
  try {
    return world.disk.lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

async function lock(path: string, world: World): Promise<() => Promise<void>> {
  const { default: lockfile } = await import('proper-lockfile');
  const take = () =>
    lockfile.lock(path, { stale: STALE_MS, realpath: false, retries: WAIT, onCompromised: () => undefined });
  const before = touchedMs(path, world);
  try {
    return await take();
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ELOCKED')) throw error;
    const after = touchedMs(path, world);
    if (after !== null && after === before && after > world.nowMs()) {
      // Nobody has touched it while we waited, and the clock was set back since: its owner is gone.
      world.disk.rmSync(`${path}.lock`, { recursive: true, force: true });
      return take();
    }
    throw new CannotWrite(
      `another run has been writing ${path} for a while; wait for it, or remove ${path}.lock if none is running`,
    );
  }
}

function touchedMs(path: string, world: World): number | null {
  try {
    return world.disk.lstatSync(`${path}.lock`).mtimeMs;
  } catch {
    return null;
  }
}
