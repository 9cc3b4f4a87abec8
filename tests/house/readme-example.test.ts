/** The README's example of the library, run against what `npm run build` made. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { README_PRINTS, readmeExample } from './readme-example.ts';

const ROOT = process.env.DEWDIAL_BUILT
  ? resolve(process.env.DEWDIAL_BUILT, '../..')
  : resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'dewdial-readme-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('the example of the README runs as it stands', () => {
  mkdirSync(join(folder, 'node_modules'));
  symlinkSync(ROOT, join(folder, 'node_modules/dewdial'));
  writeFileSync(join(folder, 'example.mjs'), readmeExample());
  const { status, stdout, stderr } = spawnSync(process.execPath, ['example.mjs'], { cwd: folder, encoding: 'utf8' });
  expect({ status, stderr: /Error/.test(stderr) ? stderr : '' }).toEqual({ status: 0, stderr: '' });
  expect(stdout.trim().split('\n')).toEqual(expect.arrayContaining(README_PRINTS));
});
