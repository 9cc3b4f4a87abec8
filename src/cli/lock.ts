import { CannotWrite } from './publish.ts';
import type { World } from './world.ts';

/**
 * Runs `work` while no other run writes into the same folder; waits up to about ten seconds for one that does.
 * @throws CannotWrite where the other run does not end.
 */
export async function underLock<T>(folder: string, world: World, work: () => Promise<T>): Promise<T> {
  world.disk.mkdirSync(folder, { recursive: true });
  const { default: lockfile } = await import('proper-lockfile');
  let release: () => Promise<void>;
  try {
    release = await lockfile.lock(folder, {
      stale: 15_000,
      retries: { retries: 40, minTimeout: 20, maxTimeout: 400, factor: 1.5 },
    });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ELOCKED') {
      throw new CannotWrite(
        `another run has been writing into ${folder} for a while; wait for it, or remove ${folder}.lock if none is running`,
      );
    }
    throw error;
  }
  try {
    return await work();
  } finally {
    await release();
  }
}
