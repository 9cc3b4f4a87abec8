// The long run: every target in a process of its own, killed where one case hangs. `npm run fuzz -- CASES [SEED] [NAME]`.
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const HANG_MS = 60_000;
const root = join(import.meta.dirname, '../..');
const outfile = join(root, 'dist/fuzz/one-target.mjs');
const [cases = '100000', seed = '1', wanted = ''] = process.argv.slice(2);

mkdirSync(join(root, 'dist/fuzz'), { recursive: true });
await build({
  entryPoints: [join(root, 'tests/fuzz/one-target.ts')],
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  define: { __VERSION__: '"fuzz"', 'import.meta.dirname': JSON.stringify(import.meta.dirname) },
  outfile,
  logLevel: 'warning',
});

for (const name of ['households', 'profiles', 'earlierPlans', 'readings', 'requests']) {
  if (!name.includes(wanted)) continue;
  const ended = await runOne(name);
  if (ended !== 0) process.exitCode = 1;
}

/** Follows the child's line of progress; where it stands still for too long the case it stands at is told. */
function runOne(name) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--max-old-space-size=480', outfile, name, cases, seed], {
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    let at = 'the beginning';
    let watch = setTimeout(hung, HANG_MS);
    function hung() {
      console.log(`${name}: hangs after case ${at}`);
      child.kill('SIGKILL');
    }
    child.on('message', (index) => {
      at = String(index);
      clearTimeout(watch);
      watch = setTimeout(hung, HANG_MS);
    });
    child.on('exit', (code) => {
      clearTimeout(watch);
      resolve(code ?? 1);
    });
  });
}
