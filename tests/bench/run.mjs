// Bundles each benchmark and runs it in a process of its own, one after the other. `npm run bench -- NAME` runs those whose name holds NAME.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const here = import.meta.dirname;
const root = join(here, '../..');
const into = join(root, 'dist/bench');
const wanted = process.argv[2] ?? '';
const names = readdirSync(here)
  .filter((name) => name.endsWith('.bench.ts') && name.includes(wanted))
  .sort();

mkdirSync(into, { recursive: true });
console.log(`${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`);
for (const name of names) {
  const outfile = join(into, name.replace(/\.ts$/, '.mjs'));
  await build({
    stdin: {
      contents: `import { run } from ${JSON.stringify(join(here, name))};
for (const table of await run()) {
  console.log('## ' + table.name);
  for (const [label, value, unit] of table.rows) console.log('  ' + label.padEnd(64) + String(value).padStart(12) + ' ' + unit);
  console.log('');
}`,
      resolveDir: here,
      loader: 'ts',
    },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    define: { __VERSION__: '"bench"' },
    outfile,
    logLevel: 'warning',
  });
  const { status } = spawnSync(process.execPath, ['--expose-gc', outfile], { stdio: 'inherit', cwd: root });
  if (status !== 0) process.exitCode = 1;
}
