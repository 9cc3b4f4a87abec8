/** What is installed: exact versions, known licences, and nothing that must run code to be installed. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly engines?: { readonly node?: string };
}

const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
};
const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
  readonly packages: Readonly<Record<string, Locked>>;
};
const locked = Object.entries(lock.packages).filter(([path]) => path !== '');
const shipped = locked.filter(([, { dev }]) => dev !== true);

/** Permissive, and without a duty that a keeper would have to know of. */
const PERMISSIVE = [
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Unlicense',
  'CC0-1.0',
  'BlueOak-1.0.0',
  'Zlib',
  'Python-2.0',
];
/** Further licences, each with the reason why it may be. */
const FURTHER: Readonly<Record<string, string>> = {
  'node_modules/dejavu-fonts-ttf':
    'the Bitstream Vera licence, which lets fonts be embedded; changes are in the public domain',
  'node_modules/png-js': 'says nothing in its package.json; its file LICENSE is MIT',
  'node_modules/pdfmake/node_modules/png-js': 'the same in an older version, beside a benchmark only',
};
/** For development only: used as a whole and never shipped. */
const DEVELOPMENT = ['MPL-2.0'];

/** Splits what a package says, for instance `(MIT AND Zlib)`. */
function licencesOf(said: string): readonly string[] {
  return said.replace(/[()]/g, '').split(/ AND | OR /);
}

describe('dependencies', () => {
  it('are named with their exact versions, and the lock holds those with a digest', () => {
    for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
      expect(lock.packages[`node_modules/${name}`]?.version, name).toBe(version);
    }
    for (const [path, { integrity }] of locked) expect(integrity, path).toMatch(/^sha512-/);
  });

  it('have licences that let them be shipped', () => {
    expect(shipped.length).toBeGreaterThan(Object.keys(manifest.dependencies).length - 1);
    for (const [path, { license = 'none' }] of shipped)
      expect(
        path in FURTHER || licencesOf(license).every((each) => PERMISSIVE.includes(each)),
        `${path}: ${license}`,
      ).toBe(true);
    for (const [path, { license = 'none' }] of locked.filter(([each]) => !(each in FURTHER)))
      expect(
        licencesOf(license).some((each) => [...PERMISSIVE, ...DEVELOPMENT].includes(each)),
        `${path}: ${license}`,
      ).toBe(true);
  });

  it('run nothing when they are installed; what is for development works without', () => {
    expect(shipped.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path)).toEqual([]);
    const developing = locked.filter(([, { hasInstallScript, optional }]) => hasInstallScript && !optional);
    expect(developing.map(([path]) => path)).toEqual(['node_modules/esbuild']);
  });

  it('are installed by the lock', () => {
    for (const [path, { version, optional }] of locked) {
      const file = join(ROOT, path, 'package.json');
      if (optional && !existsSync(file)) continue;
      expect((JSON.parse(readFileSync(file, 'utf8')) as { readonly version: string }).version, path).toBe(version);
    }
  });

  it('each have a sentence in DEVELOPERS.md', () => {
    const markdown = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    for (const name of Object.keys(manifest.dependencies))
      expect(markdown).toMatch(new RegExp(`^\\| \`${name}\`.*\\|`, 'm'));
  });
});
