/** Writes a file so that a reader sees the old or the new whole, whenever it looks. */
import { basename, dirname, join } from 'node:path';
import type { Disk } from './files.ts';

/** Replaces a file by one rename; where anything fails, what stood there stands. */
export function writeWhole(path: string, content: string, disk: Disk): void {
  const fresh = join(dirname(path), `.${basename(path)}.fresh`);
  disk.rmSync(fresh, { force: true });
  try {
    const handle = disk.openSync(fresh, 'wx');
    try {
      disk.writeFileSync(handle, content);
      disk.fsyncSync(handle);
    } finally {
      disk.closeSync(handle);
    }
    disk.renameSync(fresh, path);
  } catch (error) {
    disk.rmSync(fresh, { force: true });
    throw error;
  }
}
