/**
 * The packed package on a clean machine: installed into an empty folder without scripts, it compiles, serves as a library and has types;
 * and it writes the same bytes on every version of Node that it is for.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { README_PRINTS, readmeExample } from '../../house/readme-example.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const LATER_NODES = ['22', '24', '26'];
const EXAMPLES = ['one-gecko.yaml', 'porch-tortoise.yaml', 'reading-room.yaml'];

const clean = mkdtempSync(join(tmpdir(), 'dewdial-package-'));
const home = join(clean, 'home');
const installed = join(home, 'node_modules/dewdial');
afterAll(() => rmSync(clean, { recursive: true, force: true }));

function run(command: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, encoding: 'utf8', maxBuffer: 1e8 });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')}: ${error?.message ?? stderr}`);
  return stdout;
}

beforeAll(() => {
  mkdirSync(home);
  run('npm', ['pack', '--pack-destination', clean], ROOT);
  const [packed = ''] = readdirSync(clean).filter((name) => name.endsWith('.tgz'));
  writeFileSync(join(home, 'package.json'), '{ "private": true, "type": "module" }\n');
  run('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', join(clean, packed)], home);
});

/** A digest of every file that a compile of the examples writes, by path; but for the note which runtime a standing plan was made by. */
function compiled(node: string, out: string): Readonly<Record<string, string>> {
  const program = join(installed, 'dist/dewdial.js');
  for (const example of EXAMPLES)
    run(node, [program, 'compile', join(installed, 'examples', example), '--out', out, '--today', '2027-01-01'], home);
  const files = readdirSync(join(home, out, '.versions'), { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    files
      .filter((entry) => entry.isFile() && !entry.name.endsWith('.standing'))
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        const shown = path.slice(join(home, out, '.versions').length).replace(/-[0-9a-f]{16}\//, '/');
        return [shown, createHash('sha256').update(readFileSync(path)).digest('hex')] as const;
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

describe('the packed package', () => {
  it('holds the program, profiles, examples, types, schemas and licences, and no tests', () => {
    const held = readdirSync(installed, { recursive: true }).map(String);
    for (const path of [
      'LICENSE',
      'README.md',
      'dist/dewdial.js',
      'dist/index.js',
      'dist/compile-worker.js',
      'dist/types/index.d.ts',
      'dist/schemas/household.json',
      'dist/schemas/profile.json',
      'dist/third-party-licences.txt',
      'profiles/leopard-gecko.yaml',
      'examples/one-gecko.yaml',
    ])
      expect(held).toContain(path);
    expect(held.filter((path) => /test|bench|fuzz|^src|\.map$/.test(path))).toEqual([]);
  });

  it('compiles one household, and many, by its command', () => {
    const command = join(home, 'node_modules/.bin/dewdial');
    expect(run(command, ['--version'], home).trim()).toMatch(/^\d+\.\d+\.\d+$/);
    const many = run(command, ['compile', join(installed, 'examples'), '--out', 'many', '--today', '2027-01-01'], home);
    expect(many).toContain('3 households');
    expect(existsSync(join(home, 'many/reading-room/care-calendar.pdf'))).toBe(true);
  });

  it('is a library: the README example runs, and its types hold', () => {
    writeFileSync(join(home, 'example.mjs'), readmeExample());
    expect(run(process.execPath, ['example.mjs'], home).trim().split('\n')).toEqual(
      expect.arrayContaining(README_PRINTS),
    );
    writeFileSync(
      join(home, 'typed.ts'),
      [
        "import { type Compiled, type CompileInput, compile, type Plan } from 'dewdial';",
        'const input = {} as CompileInput;',
        'const compiled: Compiled = compile(input);',
        'const plan: Plan | null = compiled.plan;',
        'export const days: string | undefined = plan?.from;',
        '// @ts-expect-error: a file has a text',
        "compile({ file: 'x' });",
        '',
      ].join('\n'),
    );
    const compiler = join(ROOT, 'node_modules/typescript/bin/tsc');
    const types = [
      '--noEmit',
      '--strict',
      '--skipLibCheck',
      '--types',
      '',
      '--module',
      'nodenext',
      '--target',
      'es2022',
      'typed.ts',
    ];
    run(process.execPath, [compiler, ...types], home);
  });

  it('carries schemas that a program can read', () => {
    writeFileSync(
      join(home, 'schema.mjs'),
      "import schema from 'dewdial/schemas/household.json' with { type: 'json' };\nconsole.log(Object.keys(schema.properties).join(' '));\n",
    );
    expect(run(process.execPath, ['schema.mjs'], home)).toContain('enclosures');
  });
});

describe('on later versions of Node', () => {
  const here = () => compiled(process.execPath, 'here');

  it.each(LATER_NODES)('Node %s writes the same bytes', (major) => {
    const folder = join(clean, `node-${major}`);
    mkdirSync(folder);
    writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
    const carrier = `node-${process.platform}-${process.arch}@${major}`;
    run('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', carrier], folder);
    const node = join(folder, `node_modules/node-${process.platform}-${process.arch}/bin/node`);
    const version = run(node, ['--version'], folder).trim();
    console.info(
      `${version}, zones of ${run(node, ['-p', 'process.versions.tz'], folder).trim()}; here ${process.version}, ${process.versions.tz}`,
    );
    expect(version.startsWith(`v${major}.`)).toBe(true);
    expect(compiled(node, `on-${major}`)).toEqual(here());
  });
});
