import { dirname } from 'node:path';
import type { Disk } from './files.ts';

/**
 * Makes a folder and those above it that are missing, one by one: the system's own way never returns where a parent stands but
 * refuses to hold folders. System errors pass through.
 */
export function makeFolder(path: string, disk: Disk): void {
  if (disk.existsSync(path)) return;
  const parent = dirname(path);
  if (parent !== path) makeFolder(parent, disk);
  try {
    disk.mkdirSync(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'EEXIST') return;
    throw code === 'ENOENT' ? Object.assign(new Error('no folder can be made here'), { code: 'EPERM', path }) : error;
  }
}
