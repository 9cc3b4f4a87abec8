/**
 * What makes a run short changes no byte of what is written: generated households compiled as the program is built, without the code that is
 * kept of it, and as a plain module that tells the runtime nothing; then again with and without what was kept of the plan.
 * `SAME_HOUSEHOLDS` sets how many, `SAME_FIRST` the first seed.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { generateHousehold } from '../property/household-generator.ts';
import { PROGRAM } from './built.ts';

const HOUSEHOLDS = Number(process.env.SAME_HOUSEHOLDS ?? 2);
const FIRST = Number(process.env.SAME_FIRST ?? 0);
/** Of so many households one has its PDF files compared too. */
const PDF_EVERY = 8;
const ROOT = join(import.meta.dirname, '../..');

const folder = mkdtempSync(join(tmpdir(), 'dewdial-same-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Copies of the built program beside each other: as it is, and without the code that is kept of it. */
const [BUILT, PLAIN] = [join(folder, 'dist'), join(folder, 'plain')];
cpSync(dirname(PROGRAM), BUILT, { recursive: true });
cpSync(dirname(PROGRAM), PLAIN, { recursive: true, filter: (path) => !path.endsWith('.code') });
for (const name of ['profiles', 'package.json', 'node_modules']) symlinkSync(join(ROOT, name), join(folder, name));
writeFileSync(
  join(PLAIN, 'module.js'),
  `import { createRequire } from 'node:module';
const { main } = createRequire(import.meta.url)('./program.cjs');
await main(process.argv.slice(2), (name) => import(name));
`,
);

const WAYS = {
  built: join(BUILT, 'dewdial.js'),
  'without kept code': join(PLAIN, 'dewdial.js'),
  'as a plain module': join(PLAIN, 'module.js'),
} as const;

interface Ended {
  readonly exit: number | null;
  readonly out: string;
  readonly said: string;
}

function run(program: string, args: readonly string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], { cwd: folder, encoding: 'utf8' });
  return { exit: status, out: stdout, said: stderr };
}

/** Every file below a folder by its path, byte for byte. */
function bytesOf(of: string): ReadonlyMap<string, string> {
  const paths = readdirSync(of, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  return new Map(paths.map((path) => [path.slice(of.length), readFileSync(path, 'latin1')]));
}

/** Compiles twice, what was kept of the plan taken away in between where that is wanted, and asks for the day. */
function results(program: string, file: string, seed: number, forgets: boolean) {
  rmSync(join(folder, 'out'), { recursive: true, force: true });
  const compile = ['compile', file, '--today', '2027-06-01', ...(seed % PDF_EVERY === 0 ? [] : ['--no-pdf'])];
  const first = run(program, compile);
  if (forgets) rmSync(join(folder, 'out/.versions/.kept'), { recursive: true, force: true });
  const asked = [
    run(program, ['check', file, '--today', '2027-06-02', '--json']),
    run(program, ['today', file, '--today', '2027-06-02', '--days', '3']),
  ];
  const second = run(program, compile);
  return { first, asked, second, files: bytesOf(join(folder, 'out', file.replace('.yaml', ''))) };
}

const seeds = Array.from({ length: HOUSEHOLDS }, (_, index) => FIRST + index);

it.each(seeds)('household %i comes out the same however it is run', (seed) => {
  const file = `home-${seed}.yaml`;
  writeFileSync(
    join(folder, file),
    generateHousehold(seed, { enclosures: 1 + (seed % 3), days: 60 + (seed % 4) * 40 }),
  );
  const built = results(WAYS.built, file, seed, false);
  expect([0, 1]).toContain(built.first.exit);
  expect(built.files.size).toBeGreaterThan(5);
  for (const [way, program] of Object.entries(WAYS)) {
    const other = results(program, file, seed, true);
    expect({ ...other, files: null }, way).toEqual({ ...built, files: null });
    expect([...other.files.keys()], way).toEqual([...built.files.keys()]);
    for (const [path, bytes] of built.files) expect(other.files.get(path) === bytes, `${way}: ${path}`).toBe(true);
  }
  console.info(`household ${seed}: ${built.files.size} files, ${Object.keys(WAYS).length + 1} ways`);
});
