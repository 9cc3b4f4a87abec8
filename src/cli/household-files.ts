/** Which household files a command line names. */
import { join, resolve } from 'node:path';
import { loadText, resultFolderName } from './files.ts';
import { UsageError } from './usage.ts';
import type { World } from './world.ts';

export interface NamedFile {
  readonly file: string;
  /** Why it is not compiled, said in words; null where it is. */
  readonly refused: string | null;
}

const YAML = /\.ya?ml$/i;
const FITTED = /\.fit\.ya?ml$/i;
/** What every household file has and no profile does, at the beginning of a line or in a map written on one. */
const ENCLOSURES = /(?:^|[{,]\s*)["']?enclosures["']?\s*:/m;
const FORMAT = /(?:^|[{,]\s*)["']?format["']?\s*:/m;

/**
 * Returns the household files that arguments name, each once, by path. A folder stands for the household files in it, its own folders
 * left out. Two whose results would stand in the same folder are both refused.
 */
export function householdFiles(args: readonly string[], world: World): readonly NamedFile[] {
  const byPath = new Map<string, NamedFile>();
  for (const arg of args)
    for (const named of filesOf(arg, world)) {
      const path = resolve(world.cwd, named.file);
      if (!byPath.has(path)) byPath.set(path, named);
    }
  return withoutClashes([...byPath.values()].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0)));
}

function filesOf(arg: string, world: World): readonly NamedFile[] {
  if (!isFolder(arg, world)) return [{ file: arg, refused: null }];
  const files = world.disk
    .readdirSync(arg)
    .map(String)
    .filter((name) => YAML.test(name) && !FITTED.test(name))
    .map((name) => join(arg, name))
    .filter((path) => isHousehold(path, world));
  return files.length > 0
    ? files.map((file) => ({ file, refused: null }))
    : [{ file: arg, refused: 'there is no household file in this folder' }];
}

function isFolder(path: string, world: World): boolean {
  try {
    return world.disk.statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function isHousehold(path: string, world: World): boolean {
  if (isFolder(path, world)) return false;
  const loaded = loadText(path, world.disk);
  return !loaded.ok || (ENCLOSURES.test(loaded.text) && FORMAT.test(loaded.text));
}

/** Names that differ only in case are one folder on many disks. */
function withoutClashes(files: readonly NamedFile[]): readonly NamedFile[] {
  const byName = new Map<string, NamedFile[]>();
  for (const each of files) {
    const name = resultFolderName(each.file).normalize('NFC').toLowerCase();
    byName.set(name, [...(byName.get(name) ?? []), each]);
  }
  return files.map((each) => {
    const other = byName
      .get(resultFolderName(each.file).normalize('NFC').toLowerCase())
      ?.find(({ file }) => file !== each.file);
    if (!other || each.refused !== null) return each;
    const why = `${other.file} has the same name, and both would write the same folder of results; rename one, or compile them with an --out of their own`;
    return { ...each, refused: why };
  });
}

/**
 * Returns every n-th of some files, for `2/8` the second of each eight.
 * @throws UsageError where the text names no part
 */
export function partOf<T>(files: readonly T[], part: string | undefined): readonly T[] {
  if (part === undefined) return files;
  const [, which = '', of = ''] = /^(\d{1,6})\/(\d{1,6})$/.exec(part) ?? [];
  const [index, count] = [Number(which), Number(of)];
  if (which === '' || index < 1 || index > count)
    throw new UsageError(`--part ${part}: a part and the number of parts, for instance 2/8`);
  return files.filter((_file, position) => position % count === index - 1);
}
