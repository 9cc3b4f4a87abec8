// Bundles each benchmark and runs it in a process of its own, one after the other. `npm run bench -- NAME …` runs those whose names hold
// one of the NAMEs; with `--readme` what they print goes into the README too.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const here = import.meta.dirname;
const root = join(here, '../..');
const into = join(root, 'dist/bench');
const isForReadme = process.argv.includes('--readme');
const wanted = process.argv.slice(2).filter((argument) => argument !== '--readme');
const names = readdirSync(here)
  .filter((name) => name.endsWith('.bench.ts') && (wanted.length === 0 || wanted.some((part) => name.startsWith(part))))
  .sort();

mkdirSync(into, { recursive: true });
const machine = `${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}\n`;
let printed = `${machine}\n`;
console.log(machine);
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
  const { status, stdout } = spawnSync(process.execPath, ['--expose-gc', outfile], {
    stdio: ['inherit', 'pipe', 'inherit'],
    cwd: root,
    encoding: 'utf8',
  });
  console.log(stdout);
  printed += stdout;
  if (status !== 0) process.exitCode = 1;
}

if (isForReadme) {
  const path = join(root, 'README.md');
  const block = `<!-- bench -->\n\`\`\`\n${printed.trim()}\n\`\`\`\n<!-- /bench -->`;
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace(/<!-- bench -->[\s\S]*<!-- \/bench -->/, () => block),
  );
}
