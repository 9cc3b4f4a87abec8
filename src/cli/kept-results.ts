/**
 * What a household's results were made from, kept beside them in `OUT/.versions/.kept/`. Where every input still reads the same and the
 * results stand untouched, the household need not be compiled again. An entry is trusted only where it is whole (it carries a digest of
 * itself), was written by this version on this runtime, and the files stand with the sizes and times noted: anything else is compiled.
 */

import { join, resolve, sep } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Disk } from './files.ts';
import type { HouseholdOptions } from './household-options.ts';
import { makeFolder } from './make-folder.ts';
import { type Published, standingVersion, VERSIONS } from './publish.ts';
import { textDigest } from './text-digest.ts';
import type { World } from './world.ts';

/** A file that was read: its absolute path, and a digest of its bytes; null where there was none. */
export type InputFile = readonly [path: string, digest: string | null];

export interface KeptResults {
  readonly inputs: readonly InputFile[];
  /** The name of the version that the household's link pointed to. */
  readonly standing: string;
  readonly files: readonly (readonly [path: string, size: number, changedMs: number])[];
  readonly diagnostics: readonly Diagnostic[];
  /** The files that messages may point into: their names in messages, the absolute paths, and whether those are what is shown. */
  readonly sources: readonly (readonly [label: string, path: string, isShownWhole: boolean])[];
  readonly products: readonly string[];
  readonly enclosures: number;
}

const KEPT = '.kept';

/** Names the program, the runtime and the wishes that results were made with: others may make other results. */
export function madeWith(
  version: string,
  { pdf, language, weeks, month, largePrint, per, font }: HouseholdOptions,
): string {
  const wishes = { pdf, language, weeks, month, largePrint, per, font };
  return JSON.stringify([version, process.version, process.versions.tz, process.versions.icu, wishes]);
}

/** Returns what is kept for a household, or null where it must be compiled again. */
export function keptResults(out: string, name: string, file: string, made: string, world: World): KeptResults | null {
  const kept = readEntry<KeptResults>(out, `${name}.json`, made, world.disk);
  if (!kept || kept.inputs[0]?.[0] !== resolve(world.cwd, file)) return null;
  const isSame =
    standingVersion(out, name, world.disk) === kept.standing &&
    areUnchanged(kept.inputs, world.disk) &&
    JSON.stringify(filesOf(join(out, VERSIONS, kept.standing), world.disk)) === JSON.stringify(kept.files);
  return isSame ? kept : null;
}

/** Returns whether every file still reads as it did. */
export function areUnchanged(inputs: readonly InputFile[], disk: Disk): boolean {
  return inputs.every(([path, digest]) => digestOfFile(path, disk) === digest);
}

/** Returns what was kept under a name by the same makings, or null where there is none or it is not whole. */
export function readEntry<T>(out: string, entry: string, made: string, disk: Disk): T | null {
  try {
    const text = String(disk.readFileSync(join(out, VERSIONS, KEPT, entry)));
    const [head = '', body = ''] = [text.slice(0, text.indexOf('\n')), text.slice(text.indexOf('\n') + 1)];
    return head === textDigest(`${made}\n${body}`) ? (JSON.parse(body) as T) : null;
  } catch {
    return null;
  }
}

/** Keeps an entry; a disk that refuses it costs the next run its time and nothing else. */
export function writeEntry(out: string, entry: string, made: string, kept: unknown, disk: Disk): void {
  const folder = join(out, VERSIONS, KEPT);
  try {
    if (isLink(folder, disk)) return;
    const body = JSON.stringify(kept);
    makeFolder(folder, disk);
    const fresh = join(folder, `.${entry}.fresh`);
    disk.rmSync(fresh, { force: true });
    disk.writeFileSync(fresh, `${textDigest(`${made}\n${body}`)}\n${body}`, { flag: 'wx' });
    disk.renameSync(fresh, join(folder, entry));
  } catch {
    // Compiled again next time.
  }
}

/** Keeps what a household's results were made from. */
export function keepResults(
  out: string,
  name: string,
  made: string,
  { version: standing }: Published,
  kept: Omit<KeptResults, 'standing' | 'files'>,
  disk: Disk,
): void {
  const whole: KeptResults = { ...kept, standing, files: filesOf(join(out, VERSIONS, standing), disk) };
  writeEntry(out, `${name}.json`, made, whole, disk);
}

function isLink(path: string, disk: Disk): boolean {
  try {
    return disk.lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

function filesOf(folder: string, disk: Disk, prefix = ''): readonly (readonly [string, number, number])[] {
  try {
    return disk
      .readdirSync(join(folder, prefix))
      .map(String)
      .sort()
      .flatMap((name) => {
        const path = prefix === '' ? name : `${prefix}/${name}`;
        const stat = disk.lstatSync(join(folder, path));
        return stat.isDirectory() ? filesOf(folder, disk, path) : [[path, stat.size, stat.mtimeMs] as const];
      });
  } catch {
    return [];
  }
}

function digestOfFile(path: string, disk: Disk): string | null {
  try {
    return textDigest(disk.readFileSync(path).toString('latin1'));
  } catch {
    return null;
  }
}

/** A disk that notes every file read from outside a household's results. */
export function notingDisk(
  world: World,
  out: string,
  name: string,
): { readonly disk: Disk; readonly inputs: () => readonly InputFile[] } {
  const noted = new Map<string, string | null>();
  const results = [name, VERSIONS].map((each) => `${resolve(world.cwd, out, each)}${sep}`);
  const note = (path: unknown, digest: string | null): void => {
    const whole = resolve(world.cwd, String(path));
    if (!results.some((folder) => whole.startsWith(folder)) && !noted.has(whole)) noted.set(whole, digest);
  };
  const readFileSync = ((...args: Parameters<Disk['readFileSync']>) => {
    try {
      const content = world.disk.readFileSync(...args);
      note(args[0], textDigest(typeof content === 'string' ? content : content.toString('latin1')));
      return content;
    } catch (error) {
      note(args[0], null);
      throw error;
    }
  }) as Disk['readFileSync'];
  return { disk: { ...world.disk, readFileSync }, inputs: () => [...noted] };
}
