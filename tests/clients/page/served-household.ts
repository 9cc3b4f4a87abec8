/** The built program serving a household from a folder of its own. `npm run test:clients` builds it first. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '../../..');
const PROGRAM = join(ROOT, 'dist/dewdial.js');

export interface ServedHousehold {
  readonly folder: string;
  readonly file: string;
  readonly page: string;
  readonly feeds: readonly { readonly person: string; readonly http: string; readonly webcal: string }[];
  /** Everything it has said on standard error. */
  readonly said: () => string;
  /** Changes the household file and waits until it is compiled again; returns what was said meanwhile. */
  readonly edit: (change: (text: string) => string) => Promise<string>;
  /** Ends it as a terminal does; returns the exit code. */
  readonly end: (signal?: NodeJS.Signals) => Promise<number | null>;
}

/** Serves a copy of an example, changed first where asked for. */
export async function serveHousehold(
  example: string,
  options: readonly string[] = [],
  change: (text: string) => string = (text) => text,
): Promise<ServedHousehold> {
  if (!existsSync(PROGRAM)) throw new Error('dist/ is missing: npm run build');
  const folder = mkdtempSync(join(tmpdir(), 'dewdial-serve-'));
  const file = join(folder, example);
  cpSync(join(ROOT, 'examples', example), file);
  writeFileSync(file, change(readFileSync(file, 'utf8')));
  const child = spawn(process.execPath, [PROGRAM, 'serve', example, '--port', '0', '--json', ...options], {
    cwd: folder,
    env: { ...process.env, XDG_STATE_HOME: join(folder, 'state') },
  });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  const started: unknown = JSON.parse(await firstLine(child, () => said));
  const { page, feeds } = started as Pick<ServedHousehold, 'page' | 'feeds'>;
  const edit = async (next: (text: string) => string): Promise<string> => {
    const before = said.length;
    writeFileSync(file, next(readFileSync(file, 'utf8')));
    await until(() => /dewdial: (compiled again|the last good plan)/.test(said.slice(before)), 60_000);
    return said.slice(before);
  };
  return { folder, file, page, feeds, said: () => said, edit, end: (signal) => ended(child, folder, signal) };
}

function firstLine(child: ChildProcess, said: () => string): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout?.setEncoding('utf8').on('data', (part: string) => {
      text += part;
      if (text.includes('\n')) resolve(text);
    });
    child.once('exit', (code) => reject(new Error(`serve ended with ${code}: ${said()}`)));
  });
}

function ended(child: ChildProcess, folder: string, signal: NodeJS.Signals = 'SIGINT'): Promise<number | null> {
  return new Promise((resolve) => {
    child.once('exit', (code) => {
      rmSync(folder, { recursive: true, force: true });
      resolve(code);
    });
    child.kill(signal);
  });
}

export async function until(isSo: () => boolean, withinMs: number): Promise<void> {
  for (let waited = 0; !isSo(); waited += 50) {
    if (waited > withinMs) throw new Error('waited too long');
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
