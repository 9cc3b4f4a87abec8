/** Runs the built program in a folder of its own. `npm test` builds it first; `DEWDIAL_BUILT` names another build. */
import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

export const PROGRAM = process.env.DEWDIAL_BUILT ?? join(import.meta.dirname, '../../dist/dewdial.js');
const EXAMPLES = join(import.meta.dirname, '../../examples');

export interface Ended {
  readonly exit: number | null;
  readonly out: string;
  readonly said: string;
}

export interface Bench {
  /** The folder that every command runs in. */
  readonly folder: string;
  readonly run: (args: readonly string[], env?: Readonly<Record<string, string>>) => Ended;
  /** Runs a line of the shell in which `dewdial` is the program. */
  readonly shell: (line: string) => Ended;
  /** Files below a folder, relative, sorted; hidden ones left out. */
  readonly files: (folder?: string) => readonly string[];
}

/**
 * Returns an empty folder with the examples copied in, removed after the tests of the file; plans of so many days where that is enough for
 * what is asked.
 */
export function bench(days: number | null = null): Bench {
  if (!existsSync(PROGRAM)) throw new Error('dist/ is missing: npm run build');
  const folder = mkdtempSync(join(tmpdir(), 'dewdial-cli-'));
  cpSync(EXAMPLES, folder, { recursive: true });
  const households = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml'));
  if (days !== null) for (const name of households) shorten(join(folder, name), days);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const env = (more: Readonly<Record<string, string>> = {}) => ({ ...process.env, NO_COLOR: '', ...more });
  return {
    folder,
    run: (args, more) =>
      ended(
        spawnSync(process.execPath, [PROGRAM, ...args], { cwd: folder, encoding: 'utf8', env: env(more), input: '' }),
      ),
    shell: (line) =>
      ended(
        spawnSync('bash', ['-c', `dewdial() { "${process.execPath}" "${PROGRAM}" "$@"; }; ${line}`], {
          cwd: folder,
          encoding: 'utf8',
          env: env(),
          input: '',
        }),
      ),
    files: (below = '.') => filesBelow(join(folder, below)),
  };
}

function shorten(file: string, days: number): void {
  const text = readFileSync(file, 'utf8');
  const shorter = text
    .replace(/^( {2}days:) \d+$/m, `$1 ${days}`)
    .replace(/^(plan: \{ from: \S+) \}$/m, `$1, days: ${days} }`);
  if (shorter === text) throw new Error(`${file} does not say how long its plan is`);
  writeFileSync(file, shorter);
}

function ended({ status, stdout, stderr }: SpawnSyncReturns<string>): Ended {
  return { exit: status, out: stdout, said: stderr };
}

function filesBelow(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter(({ name }) => !name.startsWith('.'))
    .flatMap(({ name }) =>
      statSync(join(folder, name)).isDirectory()
        ? filesBelow(join(folder, name)).map((file) => `${name}/${file}`)
        : [name],
    )
    .sort();
}
