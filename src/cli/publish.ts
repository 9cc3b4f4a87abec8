/**
 * Puts a household's results in place all at once. The files of a run stand in a folder of their own under `.versions/`;
 * the household's folder is a link to it, and one rename of the link is the moment of change. Killed at any point,
 * the household's folder shows the whole old or the whole new results. Where links are not to be had (some
 * Windows set-ups), two renames take its place and the next run finishes what was cut short between them.
 */

import { createHash } from 'node:crypto';
import { dirname, join, normalize, sep } from 'node:path';
import { type Disk, realDisk } from './files.ts';
import { makeFolder } from './make-folder.ts';
import { writeDurably } from './write-whole.ts';

export interface Product {
  /** Relative, with `/`. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

export interface Published {
  readonly folder: string;
  /** The name of the version that the folder is a link to. */
  readonly version: string;
  /** False where the folder holds the same bytes already. */
  readonly changed: boolean;
}

/** Beside the households' folders: what their links point to. */
export const VERSIONS = '.versions';

/** What stands in the way of writing, told to the keeper. */
export class CannotWrite extends Error {}

/**
 * Writes `products` as the new content of `outFolder/name`, all or nothing.
 * @throws CannotWrite where the place is not ours to replace; system errors pass through.
 */
export function publish(
  outFolder: string,
  name: string,
  products: readonly Product[],
  disk: Disk = realDisk,
): Published {
  const folder = join(outFolder, name);
  guardName(name);
  for (const product of products) guardPath(product.path);
  const version = `${name}-${digestOf(products)}`;
  const current = currentVersion(outFolder, name, disk);
  if (current === version && isComplete(outFolder, version, products, disk)) {
    sweep(outFolder, name, version, disk);
    return { folder, version, changed: false };
  }
  if (current === version) mend(outFolder, name, version, products, disk);
  else switchTo(outFolder, name, writeVersion(outFolder, version, products, disk), disk);
  sweep(outFolder, name, version, disk);
  return { folder, version, changed: true };
}

/** Returns the name of the version that a household's link points to; null where there is no such link. */
export function standingVersion(outFolder: string, name: string, disk: Disk): string | null {
  try {
    return currentVersion(outFolder, name, disk);
  } catch {
    return null;
  }
}

/** @throws CannotWrite where a name could lead out of the folder of results, or hide in it. */
export function guardName(name: string): void {
  if (name === '' || name === '.' || name === '..' || name.startsWith('.') || /[\\/\0]/.test(name)) {
    throw new CannotWrite(`"${name}" cannot name a folder of results`);
  }
}

function guardPath(path: string): void {
  const clean = normalize(path);
  if (clean.startsWith('..') || clean.startsWith(sep) || /[\0]/.test(path))
    throw new CannotWrite(`"${path}" would leave the folder of results`);
}

function digestOf(products: readonly Product[]): string {
  const hash = createHash('sha256');
  for (const product of [...products].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    hash.update(product.path).update('\0').update(product.content).update('\0');
  }
  return hash.digest('hex').slice(0, 16);
}

function currentVersion(outFolder: string, name: string, disk: Disk): string | null {
  const link = join(outFolder, name);
  const stat = statOrNull(link, disk);
  if (!stat) return null;
  if (!stat.isSymbolicLink()) {
    if (stat.isDirectory() && isOurs(link, disk)) return null;
    throw new CannotWrite(`${link} stands there already and was not made by this program`);
  }
  const target = String(disk.readlinkSync(link)).split(sep).join('/');
  const prefix = `${VERSIONS}/${name}-`;
  if (!target.startsWith(prefix) || target.includes('..')) throw new CannotWrite(`${link} is a link to somewhere else`);
  return target.slice(VERSIONS.length + 1);
}

/**
 * Returns the files that stand in a household's folder and are not results of a compile (a handover, a keeper's own note):
 * they are carried into the next version.
 */
export function otherFiles(outFolder: string, name: string, disk: Disk = realDisk): readonly Product[] {
  return standingFiles(outFolder, name, disk).filter(({ path }) => !RESULT_PATHS.test(path));
}

/** Returns every file that stands in a household's folder; empty where there is no folder of ours. */
export function standingFiles(outFolder: string, name: string, disk: Disk = realDisk): readonly Product[] {
  const folder = join(outFolder, name);
  if (
    !exists(folder, disk) ||
    (statOrNull(folder, disk)?.isSymbolicLink() && currentVersion(outFolder, name, disk) === null)
  )
    return [];
  return listFiles(folder, '', disk).map((path) => ({ path, content: disk.readFileSync(join(folder, path)) }));
}

const RESULT_PATHS =
  /^(plan\.json|settings\.txt|changes\.txt|index\.html|care-calendar[^/]*\.pdf|shelf-cards\.pdf|dials\/[^/]+\.svg|charts\/[^/]+\.svg|calendar\/[^/]+\.ics)$/;

function listFiles(folder: string, prefix: string, disk: Disk): readonly string[] {
  return disk
    .readdirSync(join(folder, prefix))
    .map((name) => (prefix === '' ? String(name) : `${prefix}/${String(name)}`))
    .sort()
    .flatMap((path) => {
      const stat = statOrNull(join(folder, path), disk);
      if (stat?.isDirectory()) return listFiles(folder, path, disk);
      return stat?.isFile() ? [path] : [];
    });
}

/** A plain folder is replaced only where it is empty or holds a plan. */
function isOurs(folder: string, disk: Disk): boolean {
  const names = disk.readdirSync(folder).map(String);
  return names.length === 0 || names.includes('plan.json');
}

function isComplete(outFolder: string, version: string, products: readonly Product[], disk: Disk): boolean {
  return products.every((product) => {
    try {
      const stands = disk.readFileSync(join(outFolder, VERSIONS, version, product.path));
      return Buffer.compare(stands, Buffer.from(product.content as string)) === 0;
    } catch {
      return false;
    }
  });
}

function writeVersion(outFolder: string, version: string, products: readonly Product[], disk: Disk): string {
  makeFolder(outFolder, disk);
  const versions = join(outFolder, VERSIONS);
  const stat = statOrNull(versions, disk);
  if (stat?.isSymbolicLink()) throw new CannotWrite(`${versions} is a link to somewhere else`);
  const staged = join(versions, version);
  disk.rmSync(staged, { recursive: true, force: true });
  try {
    for (const { path, content } of products) {
      makeFolder(dirname(join(staged, path)), disk);
      writeDurably(join(staged, path), content, disk);
    }
    for (const folder of [...new Set([...products.map(({ path }) => dirname(join(staged, path))), versions])])
      syncFolder(folder, disk);
  } catch (error) {
    discard(staged, disk);
    throw error;
  }
  return version;
}

/** What stands has lost files or had them changed: they are put back one by one, each whole, and the others are not touched. */
function mend(outFolder: string, name: string, version: string, products: readonly Product[], disk: Disk): void {
  const lost = products.filter((product) => !isComplete(outFolder, version, [product], disk));
  const fresh = join(outFolder, VERSIONS, writeVersion(outFolder, `.${name}.mended`, lost, disk));
  for (const { path } of lost) {
    const stands = join(outFolder, VERSIONS, version, path);
    makeFolder(dirname(stands), disk);
    disk.renameSync(join(fresh, path), stands);
  }
  discard(fresh, disk);
}

/** Makes the names in a folder outlast a power cut, where the system lets a folder be synced. */
function syncFolder(folder: string, disk: Disk): void {
  let handle: number;
  try {
    handle = disk.openSync(folder, 'r');
  } catch (error) {
    if (process.platform === 'win32') return;
    throw error;
  }
  try {
    disk.fsyncSync(handle);
  } finally {
    disk.closeSync(handle);
  }
}

function switchTo(outFolder: string, name: string, version: string, disk: Disk): void {
  const link = join(outFolder, name);
  const fresh = join(outFolder, VERSIONS, `.${name}.link`);
  disk.rmSync(fresh, { force: true });
  try {
    disk.symlinkSync(join(VERSIONS, version), fresh, 'dir');
  } catch (error) {
    if (!isLinkRefused(error)) {
      discard(join(outFolder, VERSIONS, version), disk);
      throw error;
    }
    swapFolders(link, join(outFolder, VERSIONS, version), disk);
    return;
  }
  if (statOrNull(link, disk)?.isDirectory()) {
    swapFolders(link, fresh, disk);
    return;
  }
  try {
    disk.renameSync(fresh, link);
  } catch (error) {
    discard(fresh, disk);
    discard(join(outFolder, VERSIONS, version), disk);
    throw error;
  }
}

function isLinkRefused(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return code === 'EPERM' || code === 'ENOSYS' || code === 'EOPNOTSUPP' || code === 'ENOTSUP';
}

function swapFolders(link: string, fresh: string, disk: Disk): void {
  const aside = `${dirname(fresh)}${sep}.before`;
  disk.rmSync(aside, { recursive: true, force: true });
  if (exists(link, disk)) disk.renameSync(link, aside);
  try {
    disk.renameSync(fresh, link);
  } catch (error) {
    if (exists(aside, disk)) disk.renameSync(aside, link);
    throw error;
  }
  discard(aside, disk);
}

/** Takes away earlier versions of the same household; what cannot be taken away is left for the next run. */
function sweep(outFolder: string, name: string, keep: string, disk: Disk): void {
  const pattern = new RegExp(`^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}-[0-9a-f]{16}$`);
  try {
    for (const entry of disk.readdirSync(join(outFolder, VERSIONS)).map(String)) {
      if (entry !== keep && pattern.test(entry)) discard(join(outFolder, VERSIONS, entry), disk);
    }
  } catch {
    // Nothing depends on it.
  }
}

function discard(path: string, disk: Disk): void {
  try {
    disk.rmSync(path, { recursive: true, force: true });
  } catch {
    // Left for the next run.
  }
}

function exists(path: string, disk: Disk): boolean {
  return statOrNull(path, disk) !== null;
}

function statOrNull(path: string, disk: Disk): ReturnType<Disk['lstatSync']> | null {
  try {
    return disk.lstatSync(path);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}
