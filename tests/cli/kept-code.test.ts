/** Code that the runtime has made of another text of the program, by chance of the same length, is never run. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { PROGRAM } from './built.ts';

const ROOT = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'dewdial-code-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function species() {
  return spawnSync(process.execPath, [join(folder, 'dist/dewdial.js'), 'species'], { cwd: folder, encoding: 'utf8' });
}

it('a program that was exchanged runs as it stands, whatever is kept of the one before', () => {
  cpSync(dirname(PROGRAM), join(folder, 'dist'), { recursive: true });
  for (const name of ['profiles', 'package.json', 'node_modules']) symlinkSync(join(ROOT, name), join(folder, name));
  const before = species();
  expect(before.status).toBe(0);
  expect(readdirSync(join(folder, 'dist')).some((name) => name.endsWith('.code'))).toBe(true);

  const path = join(folder, 'dist/program.cjs');
  const text = readFileSync(path, 'utf8');
  const [at, remark] = [text.indexOf('function ', 2000), text.lastIndexOf('*/')];
  const moved = `${text.slice(0, at)} ${text.slice(at, remark - 1)}${text.slice(remark, -64)}${'0'.repeat(64)}`;
  expect(moved.length).toBe(text.length);
  writeFileSync(path, moved);
  expect(species()).toMatchObject({ status: 0, stdout: before.stdout, stderr: before.stderr });
});
