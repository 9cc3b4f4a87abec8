// The long run: every target on all cores, each process killed where a case hangs. `npm run fuzz -- [CASES] [SEED] [NAME] [INDEX]`.
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const HANG_MS = 60_000;
const TOLD_EVERY_MS = 60_000;
const MEMORY_MB = 512;
const root = join(import.meta.dirname, '../..');
const outfile = join(root, 'dist/fuzz/one-target.mjs');
const [cases = '100000', seed = '1', wanted = '', only] = process.argv.slice(2);
const processes = only === undefined ? availableParallelism() : 1;

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
  const done = new Array(processes).fill(0);
  const telling = setInterval(() => console.error(`${name}: ${sum(done)} cases so far`), TOLD_EVERY_MS);
  const shares = await Promise.all(done.map((_, first) => runShare(name, first, done)));
  clearInterval(telling);
  tell(name, shares);
}

/** Follows the child's word of progress; where it stands still for too long the case it stands at is told. Null where it does not end. */
function runShare(name, first, done) {
  return new Promise((resolve) => {
    const args = [outfile, name, cases, seed, String(first), String(processes), ...(only === undefined ? [] : [only])];
    const child = spawn(process.execPath, ['--max-old-space-size=480', ...args], {
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    let [at, ended] = ['the beginning', null];
    let watch = setTimeout(hung, HANG_MS);
    function hung() {
      console.log(`${name}: hangs after case ${at}`);
      child.kill('SIGKILL');
    }
    child.on('message', (told) => {
      clearTimeout(watch);
      watch = setTimeout(hung, HANG_MS);
      if (told.counts) ended = told;
      else [at, done[first]] = [String(told.index), told.done];
    });
    child.on('exit', (code) => {
      clearTimeout(watch);
      if (!ended) console.log(`${name}: ends with ${code} after case ${at}`);
      resolve(ended);
    });
  });
}

function tell(name, shares) {
  const all = shares.filter((share) => share !== null);
  const counts = all.map((share) => share.counts);
  const faults = counts.flatMap((each) => each.faults).sort((a, b) => a.index - b.index);
  const memory = Math.max(...counts.map(({ mostMemoryMb }) => mostMemoryMb));
  const slowest = Math.max(...counts.map(({ slowestMs }) => slowestMs));
  console.log(
    `${all[0]?.name ?? name}: ${sum(counts.map((each) => each.cases))} cases; ${endingsOf(counts)}; ${faults.length} faults; slowest ${slowest.toFixed(0)} ms; at most ${memory.toFixed(0)} MB`,
  );
  for (const { index, what } of faults) console.log(`  case ${index}: ${what.split('\n').slice(0, 6).join('\n    ')}`);
  if (all.length < shares.length || faults.length > 0 || memory > MEMORY_MB) process.exitCode = 1;
}

function endingsOf(counts) {
  const times = new Map();
  for (const { endings } of counts)
    for (const [ending, count] of Object.entries(endings)) times.set(ending, (times.get(ending) ?? 0) + count);
  return [...times]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([ending, count]) => `${count} ${ending}`)
    .join(', ');
}

function sum(numbers) {
  return numbers.reduce((all, each) => all + each, 0);
}
