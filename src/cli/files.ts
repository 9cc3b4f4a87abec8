/** The only door to the disk. Every call goes through `Disk`, so that a test can make any of them fail. */
import * as fs from 'node:fs';
import { basename, dirname, join, resolve as resolvePath } from 'node:path';
import { fileURLToPath } from 'node:url';

export type Disk = Pick<
  typeof fs,
  | 'readFileSync'
  | 'writeFileSync'
  | 'mkdirSync'
  | 'renameSync'
  | 'rmSync'
  | 'readdirSync'
  | 'lstatSync'
  | 'statSync'
  | 'symlinkSync'
  | 'readlinkSync'
  | 'openSync'
  | 'fsyncSync'
  | 'closeSync'
  | 'existsSync'
  | 'chmodSync'
>;

export const realDisk: Disk = fs;

export type Loaded =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: string; readonly isMissing: boolean };

/** Reads a text file; a reason in plain words where it cannot be read or is not UTF-8. */
export function loadText(path: string, disk: Disk = realDisk): Loaded {
  try {
    return { ok: true, text: decodeUtf8(disk.readFileSync(path)) };
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    return { ok: false, reason: reasonOf(error), isMissing };
  }
}

function decodeUtf8(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw Object.assign(new Error('not UTF-8 text'), { code: 'NOT_UTF8' });
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'reading or writing is not permitted',
  EPERM: 'the system does not permit it',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of its path is not a folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  EIO: 'the disk reports an input/output error',
  EMFILE: 'too many files are open',
  ELOOP: 'its links run in a circle',
  ENAMETOOLONG: 'the name is too long for this disk',
  NOT_UTF8: 'it is not UTF-8 text',
};

/** Returns a system error in plain words. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

/** Returns the folder of the installed package, where profiles/ stands. */
export function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!fs.existsSync(join(folder, 'profiles')) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

/** Returns the folder name that a household file's results get: the file's name without its ending. */
export function resultFolderName(file: string): string {
  return basename(file).replace(/\.ya?ml$/i, '') || 'household';
}

/** Returns where a profile stands: our own by its id, a keeper's by its path from the household file. */
export function profilePath(idOrPath: string, householdFile: string): string {
  return isProfilePath(idOrPath)
    ? resolvePath(dirname(householdFile), idOrPath)
    : join(packageFolder(), 'profiles', `${idOrPath}.yaml`);
}

/** Returns the path of the fitted values that stand beside a household file. */
export function fittedPath(householdFile: string): string {
  return `${householdFile.replace(/\.ya?ml$/i, '')}.fit.yaml`;
}

/** Tells whether a species is named by the path of a profile file. */
export function isProfilePath(idOrPath: string): boolean {
  return idOrPath.includes('/') || idOrPath.includes('\\') || /\.ya?ml$/i.test(idOrPath);
}

/** Returns the ids of the shipped profiles, sorted. */
export function shippedProfiles(disk: Disk = realDisk): readonly string[] {
  return disk
    .readdirSync(join(packageFolder(), 'profiles'))
    .map(String)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.replace(/\.yaml$/, ''))
    .sort();
}
