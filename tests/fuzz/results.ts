/** Whether a household's folder of results is whole: what stands in it is what its version was named after. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, readlinkSync } from 'node:fs';
import { join } from 'node:path';

/** Returns the name of the version that stands, null where there is none; throws where it is not whole. */
export function wholeVersion(out: string, name: string): string | null {
  const link = join(out, name);
  if (!existsSync(link)) return null;
  const version = readlinkSync(link).replace(/^.*\//, '');
  const files = readdirSync(link, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(link.length + 1))
    .sort();
  const hash = createHash('sha256');
  for (const path of files)
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(link, path)))
      .update('\0');
  const digest = hash.digest('hex').slice(0, 16);
  if (version !== `${name}-${digest}`) throw new Error(`${version} holds ${files.length} files of digest ${digest}`);
  return version;
}
