/** Writes files so that what is written stands on the disk, and that a reader sees the old or the new whole whenever it looks. */
import { basename, dirname, join } from 'node:path';
import type { Disk } from './files.ts';

/** Replaces a file by one rename; where anything fails, what stood there stands. */
export function writeWhole(path: string, content: string, disk: Disk): void {
  const fresh = join(dirname(path), `.${basename(path)}.fresh`);
  disk.rmSync(fresh, { force: true });
  try {
    writeDurably(fresh, content, disk);
    disk.renameSync(fresh, path);
  } catch (error) {
    disk.rmSync(fresh, { force: true });
    throw error;
  }
}

/** Writes a new file and waits until the disk has it; refused where something of the name stands there. */
export function writeDurably(path: string, content: string | Uint8Array, disk: Disk): void {
  const handle = disk.openSync(path, 'wx');
  try {
    disk.writeFileSync(handle, content);
    disk.fsyncSync(handle);
  } finally {
    disk.closeSync(handle);
  }
}
